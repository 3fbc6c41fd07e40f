// @ts-check
// The plans that stood on the page one after another, so that a change can be
// taken back and made again: each as the form was when it was kept.

import { formText } from "./boxes.js";
import { planForm } from "./places.js";
import { ask } from "./questions.js";
import { placeIn } from "./sight.js";

const steps = 100; // plans that are held

/** @type {{link: string, text: string, shape: number}[]} */
let stood = [];
/** Which of them stands. */
let here = -1;
/** How often rows and other records came and went, up to the plan that stands. */
let shape = 0;

/** Another plan stands on the page, of which nothing was before. */
export function forgetSteps() {
  stood = [];
  here = -1;
  shape = 0;
}

/**
 * A plan is kept.
 * @param {string} link
 */
export function stands(link) {
  const text = formText(planForm);
  if (stood[here]?.link === link) stood[here].text = text;
  else {
    stood = [...stood.slice(Math.max(0, here + 2 - steps), here + 1), { link, text, shape }];
    here = stood.length - 1;
  }
  canStep();
}

/** A record came or went: Back takes that back. */
export function reshaped() {
  shape += 1;
}

/** The mark of how things stand for the history. */
export const shapeNow = () => shape;

/** Takes changes back, or makes them again; says whether there is one. @param {-1 | 1} by */
export const step = (by) => to(here + by);

/** Goes to how things stood at a mark of the history; says whether that is elsewhere. @param {number | undefined} mark */
export function unshape(mark) {
  if (mark === undefined || mark === shape) return false;
  const n = mark < shape ? stood.findLastIndex((was) => was.shape <= mark) : stood.findIndex((was) => was.shape >= mark);
  return n !== here && to(n);
}

/** @param {number} n */
function to(n) {
  const was = stood[n];
  if (!was) return false;
  here = n;
  ({ shape } = was);
  const data = new URLSearchParams(was.text);
  data.delete("shape"); // all is drawn
  const place = placeIn(location.hash);
  data.set("at", !place || place === "all" ? "answer" : place);
  data.set("good", was.link);
  ask({ ask: "answer", text: String(data), undo: true });
  canStep();
  return true;
}

/** Says by its buttons what can be done. */
export function canStep() {
  for (const button of document.querySelectorAll('[data-do="undo"], [data-do="redo"]')) {
    if (button instanceof HTMLButtonElement) button.disabled = !stood[here + (button.dataset.do === "undo" ? -1 : 1)];
  }
}
