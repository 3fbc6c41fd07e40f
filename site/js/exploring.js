// @ts-check
// What there is still to tell of the plan whose answer stands on the page: its
// explorations are asked for one by one, and until they come, what stands in
// their places is marked as of the plan before.

import { arrange, draw, drew, undraw } from "./fragments.js";
import { find } from "./places.js";
import { askLast, busy } from "./questions.js";
import { comesFirst } from "./sight.js";

// What helps, what the answer rests on and the season come at once, the others when the typing rests, so that a change
// does not wait for them.
const atOnce = 3; // of the explorations
const pause = 400; // ms

/** The exploration that is to be asked for next; 0 for none. */
export let due = 0;
/** The places that they have still to fill, by id. @type {Set<string>} */
let owed = new Set();
/** Those among them that were given up. @type {Set<string>} */
let givenUp = new Set();
/** Whether the last one that was asked for was given up. */
let skipped = false;
/** Whether the typing has rested since the answer. */
let rested = false;
let pausing = 0;

/**
 * The explorations of another plan are to come.
 * @param {import("./questions.js").Reply} reply with its answer
 * @param {boolean} typed whether it is a change of the plan before, of which all may stand until then
 */
export function owe(reply, typed) {
  owed = new Set(reply.owed);
  givenUp = new Set();
  skipped = rested = false;
  if (!typed) for (const id of owed) outdate(id, "");
}

/** Tells what an exploration has found. @param {import("./questions.js").Reply} reply */
export function explored(reply) {
  for (const { id, html } of reply.fragments) draw(id, html);
  arrange(reply.order);
  if (reply.first) comesFirst(reply.first);
  drew(reply.number);
  const still = new Set(reply.owed);
  // A planner that was started anew sends all that it has found: what it does not send was given up.
  if (skipped) for (const id of owed) if (!still.has(id) && !reply.fragments.some((fragment) => fragment.id === id)) givenUp.add(id);
  skipped = false;
  owed = still;
  if (reply.more) later(reply.more);
  else leaveOut();
}

/** Goes on without an exploration. @param {number} step which */
export function skip(step) {
  skipped = true;
  later(step + 1);
}

/** Marks what is still not told of the plan whose answer stands, and will not be. */
export function leaveOut() {
  later(0);
  for (const id of [...givenUp, ...owed]) outdate(id, "left");
}

/**
 * Asks for an exploration.
 * @param {number} step which; 0 for none
 */
export function later(step) {
  const { dataset } = find("#job");
  clearTimeout(pausing);
  due = step;
  if (step) dataset.more = String(step);
  else delete dataset.more;
  const go = () => {
    rested ||= step > atOnce;
    busy() || askLast({ ask: "rest", step }); // another plan, and its rest, come next
  };
  if (step > atOnce && !rested) pausing = setTimeout(go, pause);
  else if (step) go();
}

/** Marks what is not of the plan whose answer stands, if the job in sight has it. @param {string} id @param {"" | "left"} how still on its way, or left out */
export function outdate(id, how) {
  document.getElementById(id)?.setAttribute("data-before", how);
  undraw(id);
}
