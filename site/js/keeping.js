// @ts-check
// Which plan is kept, and when. The answer follows every letter, but its plan is
// put into the address and the links, and fallen back to on an error, only once
// its field is left or nothing was typed for a while.

import { draw } from "./fragments.js";
import { find } from "./places.js";
import { busy } from "./questions.js";
import { addressOf } from "./sight.js";
import { example, keepForm, write } from "./standing.js";
import { stands } from "./undo.js";

const patience = 2000; // ms that a number which is being typed stands before its plan is kept
const often = 400; // ms between two changes of the address: browsers allow some three a second

/** The link of the plan that is kept; empty before any is. */
export let kept = "";
/** That of the plan whose answer stands on the page, be it of a number that is still being typed. */
export let shown = "";
/** How that plan is shared, while it is not kept yet. */
let share = "";
/** Whether what was typed was left, or has rested: only then is the plan kept. */
let left = true;
let resting = 0;
let wroteAt = 0;

/** Something was typed. @param {boolean} text in a box, and may go on */
export function typing(text) {
  left = !text;
  letRest();
}

/** Waits until a number that is being typed, and its answer, have stood for a while. */
function letRest() {
  clearTimeout(resting);
  if (!left) resting = setTimeout(() => (busy() ? letRest() : leave()), patience);
}

/** What is typed is to stay: its plan is kept, now or when its answer has come. */
export function leave() {
  clearTimeout(resting);
  left = true;
  if (!busy()) keepShown();
}

/** A box is left, whether it has told of a change or not. */
export function blurred() {
  if (!left) leave();
}

/** Keeps the plan whose answer stands on the page. */
function keepShown() {
  kept = shown;
  if (kept) stands(kept);
  keep();
  offer();
  // A reload right after a change must not lose it.
  if (performance.now() - wroteAt > often) writeKept();
  else setTimeout(writeKept, often);
}

/** Keeps the form. @param {boolean} [work] whether it was changed just now */
export const keep = (work) => keepForm(kept || example, work);

/** Another plan stands on the page. @param {string} link */
export function standOn(link) {
  shown = kept = link;
}

/**
 * An answer stands on the page.
 * @param {import("./questions.js").Question} question
 * @param {import("./questions.js").Reply} reply to it
 */
export function answered(question, reply) {
  if (reply.link) {
    shown = reply.link;
    left ||= question.ask !== "answer";
  }
  if (reply.errors.length && question.good !== undefined) {
    shown = kept; // an error falls back to it
    share = "";
  }
  share = reply.fragments.find(({ id }) => id === "share")?.html ?? share;
  if (shown === kept) offer();
}

/** Keeps the plan whose answer has come, unless it is still being typed. */
export function keepAnswered() {
  if (left) keepShown();
  else letRest();
}

/** Offers the link of the plan that is kept. */
function offer() {
  if (share && draw("share", share)) address();
  share = "";
}

/** Puts the plan that is kept into the address. */
export function writeKept() {
  if (!kept || location.hash === addressOf(kept)) return;
  write(kept);
  wroteAt = performance.now();
}

/** Writes the whole address of the plan where the page shows it. */
export function address() {
  const box = /** @type {HTMLInputElement} */ (find("[data-link]"));
  const whole = new URL(box.getAttribute("value") ?? "", location.href).href;
  box.value = whole;
  for (const line of document.querySelectorAll("[data-link-text]")) line.textContent = whole;
  for (const line of document.querySelectorAll("[data-date]")) line.textContent = new Date().toLocaleDateString();
  for (const line of document.querySelectorAll("[data-name]")) line.textContent = find("#head").textContent;
  // On hosts that have it: the same plan as a page without scripts.
  const plain = document.querySelector("[data-plain]");
  if (plain instanceof HTMLAnchorElement) plain.search = new URL(whole).hash.slice(1);
}
