// @ts-check
// The list of the plans that the device keeps, where each can be opened, forgotten
// and brought back.

import { find, words } from "./places.js";
import { allPlans, forgetPlan, logOf, newPlan, planOf, putLog, putPlan, putTicks, ticksOf } from "./plans.js";

/** The plans that are to be compared, by id. */
const chosen = new Set();

/**
 * Chooses a plan to be compared; with two, their forms.
 * @param {string} id
 * @returns {string | undefined} what the planner is asked
 */
export function compared(id) {
  if (!chosen.delete(id)) chosen.add(id);
  const [one, other] = [...chosen].map(planOf);
  if (!one || !other) return undefined;
  chosen.clear();
  return String(new URLSearchParams({ one: one.text, other: other.text }));
}

/** Copies a plan with its log, under a name that says so. @param {string} id @param {string} mark @param {number} most letters of a name */
export function copied(id, mark, most) {
  const plan = planOf(id);
  if (!plan) return;
  const data = new URLSearchParams(plan.text);
  const title = [...plan.title].slice(0, most - mark.length - 1).join("").trim() + " " + mark;
  data.set("name", title);
  data.delete("shape");
  const copy = newPlan();
  putPlan({ ...plan, id: copy, text: String(data), title, when: Date.now() }); // until it is opened its last good link is that of the first
  if (logOf(id)) putLog(copy, logOf(id));
  putTicks(copy, ticksOf(id));
}

/** The plans that the reader has had forgotten, as long as the page is there to bring them back. @type {Map<string, {plan: import("./plans.js").Plan, back: () => void}>} */
const forgotten = new Map();

/**
 * Lists the plans that the device keeps besides the one that stands on the page;
 * returns what there is to say of it.
 * @param {string} standing its id
 * @param {string} [turned] the id of one that is forgotten now or, if it was, brought back
 */
export function listed(standing, turned = "") {
  const was = forgotten.get(turned);
  const plan = allPlans().find(({ id }) => id === turned);
  chosen.delete(turned);
  if (was) {
    was.back();
    forgotten.delete(turned);
  } else if (plan) {
    forgotten.set(turned, { plan, back: forgetPlan(turned) });
  }
  let said = was ? words("put-back").replace("…", () => was.plan.title) : "";
  const kept = allPlans();
  for (const { id } of kept) forgotten.delete(id); // another page has it again
  const all = [...kept, ...[...forgotten.values()].map(({ plan }) => plan)].filter(({ id }) => id !== standing);
  const list = find("[data-plans]");
  list.hidden = !all.length;
  const lines = all.sort((a, b) => b.when - a.when).map(({ id, link, title, when }) => {
    const line = document.createElement("li");
    const part = list.querySelector("template")?.content.querySelector(forgotten.has(id) ? ".forgotten" : ".kept");
    line.append(...(part?.cloneNode(true).childNodes ?? []));
    for (const place of line.querySelectorAll("[data-title]")) place.textContent = title;
    for (const a of line.querySelectorAll("a")) {
      a.href = link;
      a.dataset.plan = id;
      a.after(" ", new Date(when).toLocaleDateString(), " ");
    }
    for (const button of line.querySelectorAll("button")) {
      button.dataset.plan = id;
      button.id = button.dataset.do + "-" + id; // it has the focus still when its line is drawn anew
      if (button.hasAttribute("aria-pressed")) button.setAttribute("aria-pressed", String(chosen.has(id)));
    }
    if (id === turned && forgotten.has(id)) said = line.querySelector("span")?.textContent ?? "";
    return line;
  });
  const place = list.querySelector("ul");
  const held = document.activeElement?.id ?? "";
  lines.forEach((line, n) => {
    const old = place?.children[n];
    // What is as it was stays: somebody may be about to press it.
    if (!old) place?.append(line);
    else if (old.textContent !== line.textContent || old.querySelector("button")?.id !== line.querySelector("button")?.id) old.replaceWith(line);
    else old.querySelector("a")?.setAttribute("href", line.querySelector("a")?.getAttribute("href") ?? "");
  });
  while (place?.children[lines.length]) place.lastElementChild?.remove();
  if (/^(forget|duplicate|compare)-/.test(held)) document.getElementById(held)?.focus();
  return said;
}
