// @ts-check
// The plans that this device keeps, each with its log. A plan has an id from when
// it is begun, which no change of it changes. The device has it as it was typed
// last, in whatever tab; each tab also has it as it was typed there.

import { former, get, names, note, put, remove, size } from "./store.js";

/** As much as is kept, of letters a third of what browsers give. Of what is more the oldest plans go. */
const room = { plans: 50, letters: 1_600_000 };

/**
 * @typedef {object} Plan
 * @property {string} id
 * @property {string} text the form as it was typed last, right or wrong
 * @property {string} link the last good plan
 * @property {string} title
 * @property {number} when it was last worked on, in ms since 1970
 */

/** The id of a plan that is begun. */
export const newPlan = () => Math.random().toString(36).slice(2);

/** The plans, that which was worked on last first. @param {boolean} [own] in this tab @returns {Plan[]} */
export function allPlans(own) {
  const all = names("plan-", own).map((name) => ({ ...get(name, own), id: name.slice(5) }));
  return all.filter(({ when }) => when).sort((a, b) => b.when - a.when);
}

/** The plans of the device and of this tab, each as it was typed last. */
function latest() {
  const all = [...allPlans(), ...allPlans(true)].sort((a, b) => b.when - a.when);
  return all.filter((plan, i) => all.findIndex(({ id }) => id === plan.id) === i);
}

/** A plan as this tab has left it, or else as it was worked on last. @param {string} id @returns {Plan | undefined} */
export function planOf(id) {
  const plan = get("plan-" + id, true) ?? get("plan-" + id);
  return plan && { ...plan, id };
}

/** The plan whose link it is, as it was typed last. @param {string} link */
export const planBy = (link) => latest().find((plan) => plan.link === link);

/** The text that the device has of a plan. @param {string} id @returns {string | undefined} */
export const textOf = (id) => get("plan-" + id)?.text;

/**
 * Has this tab go on with a plan as it was typed last, in whatever tab; one that
 * the device keeps is then the one that was worked on last.
 * @param {string} id
 */
export function takeUp(id) {
  const last = latest().find((plan) => plan.id === id);
  if (!last || textOf(id) === undefined) return;
  const now = { ...last, when: Date.now() };
  putPlan(now, true);
  putPlan(now);
}

/**
 * Keeps a plan.
 * @param {Plan} plan
 * @param {boolean} [own] in this tab alone
 */
export function putPlan({ id, text, link, title, when }, own) {
  const name = "plan-" + id;
  const known = own || size(name);
  (own ? note : put)(name, { text, link, title, when });
  if (known) return;
  let letters = 0;
  allPlans().forEach(({ id: other }, i) => {
    letters += size("plan-" + other) + size("log-" + other);
    if (other !== id && (i >= room.plans || letters > room.letters)) forgetPlan(other);
  });
}

/** Forgets a plan with its log and its ticks; what this returns brings all back. @param {string} id */
export function forgetPlan(id) {
  const all = ["plan-" + id, "log-" + id, "ticks-" + id].map((name) => {
    const what = get(name);
    remove(name);
    return () => what && put(name, what);
  });
  return () => all.forEach((back) => back());
}

/** The log of a plan. One from before each plan had its own is that of the plan whose log is written next. @param {string} id @returns {string} */
export const logOf = (id) => get("log-" + id)?.text ?? former();

/** What is ticked in a plan's list and steps. @param {string} id @returns {string[]} */
export const ticksOf = (id) => get("ticks-" + id)?.text.split("\n") ?? [];

/** @param {string} id @param {string[]} all */
export const putTicks = (id, all) => put("ticks-" + id, { text: all.join("\n") });

/** Whether a plan has a log, be it an empty one. @param {string} id */
export const hasLog = (id) => size("log-" + id) > 0 || former() !== "";

/** @param {string} id @param {string} text */
export function putLog(id, text) {
  if (put("log-" + id, { text })) former(true);
}
