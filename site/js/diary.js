// @ts-check
// The log of the plan that stands on the page, in its place there, and what
// stands beside it: whether this device keeps what is typed.

import { keep } from "./keeping.js";
import { logbook } from "./log.js";
import { find, logForm } from "./places.js";
import { ask, drop } from "./questions.js";
import { site } from "./site.js";
import { troubles } from "./store.js";

export const book = logbook(logForm);

/** Keeps what is typed, at once: the page may be gone a moment later. */
export function keepTyped() {
  keep(true);
  if (book.lost()) agree(true); // a plan is kept with its log
}

/** Says whether the device keeps what is typed, and what it cannot read. */
export function keeping() {
  const found = troubles();
  site.keeps = found.denied || found.full || book.lost() ? "no" : "yes";
  for (const [name, so] of Object.entries(found)) find(`[data-${name}]`).hidden = !so;
}

/** Brings the log together with what is kept of it; says whether it is drawn again. @param {boolean} [work] whether something was typed just now */
export function agree(work) {
  const differs = book.keep(work);
  if (differs) openLog(book.id());
  return differs;
}

/** Shows the log of a plan. @param {string} plan */
export function openLog(plan) {
  const text = book.kept(plan);
  if (!logForm.hidden && text === book.typed()) return openBook(plan, text);
  drop((q) => q.action === "log-open");
  ask({ ask: "feedback", text, action: "log-open", quiet: true, plan });
}

/** The log's form is of a plan. @param {string} plan @param {string} text of its log */
export function openBook(plan, text) {
  book.open(plan, text);
  logForm.hidden = false;
  keeping();
}
