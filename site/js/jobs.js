// @ts-check
// How another job comes into sight.

import { find, planForm, reveal } from "./places.js";
import { ask } from "./questions.js";
import { at, inSight, jobOf } from "./sight.js";
import { entered } from "./standing.js";

/**
 * Brings a place of the plan into sight, as an address names it: "water/timer". The
 * planner draws it; only what the page itself holds comes at once.
 * @param {string} place
 * @param {boolean} [back] whether the history led there
 */
export function show(place, back) {
  if (jobOf(place) !== "all") return ask({ ask: "answer", action: "show." + place, back });
  const moves = jobOf(at) !== "all";
  inSight("all");
  if (!back) entered(moves);
  reveal(find("#h-job"));
}

/** A long part was closed by hand: it is drawn no more. @param {string} id */
export function closed(id) {
  const box = planForm.querySelector('input[name="open"]');
  if (box instanceof HTMLInputElement) box.value = box.value.split(" ").filter((one) => one !== id).join(" ");
}

/** A group was opened or closed by hand. @param {HTMLDetailsElement} group */
export function turned(group) {
  const [job, now] = at.split("/");
  const name = group.dataset.group ?? "";
  if (group.open ? now === name : now !== name) return;
  inSight(group.open ? job + "/" + name : job);
  entered();
  const carried = group.closest("form")?.querySelector('input[name="at"]');
  if (carried instanceof HTMLInputElement) carried.value = at;
}
