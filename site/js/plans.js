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

/** A plan as this tab has left it, or else as it was worked on last. @param {string} id @returns {Plan | undefined} */
export function planOf(id) {
  const plan = get("plan-" + id, true) ?? get("plan-" + id);
  return plan && { ...plan, id };
}

/** The plan with that link. @param {string} link @param {boolean} [own] of this tab */
export const planBy = (link, own) => allPlans(own).find((plan) => plan.link === link);

/**
 * Keeps a plan, as the one that was worked on last.
 * @param {Omit<Plan, "when">} plan
 * @param {boolean} [own] in this tab alone
 */
export function putPlan({ id, text, link, title }, own) {
  const name = "plan-" + id;
  const known = own || size(name);
  (own ? note : put)(name, { text, link, title, when: Date.now() });
  if (known) return;
  let letters = 0;
  allPlans().forEach(({ id: other }, i) => {
    letters += size("plan-" + other) + size("log-" + other);
    if (other !== id && (i >= room.plans || letters > room.letters)) forgetPlan(other);
  });
}

/** Forgets a plan and its log; what this returns brings both back. @param {string} id */
export function forgetPlan(id) {
  const all = ["plan-" + id, "log-" + id].map((name) => {
    const what = get(name);
    remove(name);
    return () => what && put(name, what);
  });
  return () => all.forEach((back) => back());
}

/** The log of a plan. One from before each plan had its own is that of the plan whose log is written next. @param {string} id @returns {string} */
export const logOf = (id) => get("log-" + id)?.text ?? former();

/** @param {string} id @param {string} text */
export function putLog(id, text) {
  if (put("log-" + id, { text })) former(true);
}
