// @ts-check
// What is ticked in the list of parts and in the steps, kept with the plan as it is
// ticked; and which part's places are lit up on the plan view. It knows no part: the
// planner has named each box, and each place.

import { putTicks, ticksOf } from "./plans.js";
import { planId } from "./standing.js";

/** What is said of the part whose places are lit; empty for none. */
let lit = "";

/** Keeps a box that was ticked, or emptied. @param {HTMLInputElement} box */
export function ticking({ checked, dataset }) {
  const kept = new Set(ticksOf(planId));
  if (checked) kept.add(dataset.tick ?? "");
  else kept.delete(dataset.tick ?? "");
  putTicks(planId, [...kept]);
  marked(document);
}

/** Ticks the boxes that were ticked, and lights up what was lit. @param {ParentNode} root what was drawn anew */
export function marked(root) {
  /** @type {NodeListOf<HTMLInputElement>} */
  const boxes = root.querySelectorAll("[data-tick]");
  if (boxes.length) {
    const kept = ticksOf(planId);
    for (const box of boxes) box.checked = kept.includes(box.dataset.tick ?? "");
  }
  if (lit) relight();
}

/** Lights up the places of a part, or no longer; what is to be said of it. @param {HTMLElement} button */
export function light(button) {
  const said = button.dataset.said ?? "";
  lit = lit === said ? "" : said;
  relight();
  if (lit) [...document.querySelectorAll(".lit")].find((place) => place.getClientRects().length)?.scrollIntoView({ block: "nearest" });
  return lit;
}

function relight() {
  let line = "";
  /** @type {NodeListOf<HTMLElement>} */
  const buttons = document.querySelectorAll('[data-do="where"]');
  for (const button of buttons) {
    const pressed = button.dataset.said === lit;
    if (pressed) line = button.dataset.line ?? "";
    button.setAttribute("aria-pressed", String(pressed));
  }
  for (const place of document.querySelectorAll("[data-spot]")) place.classList.toggle("lit", Boolean(line) && (place.getAttribute("data-spot") ?? "").includes(` ${line} `));
}
