// @ts-check
// Which of the plans that the device keeps stands on the page, what is kept of
// it, and how one comes back to another: every plan that is opened is an entry of
// the browser's history, which holds its id.

import { formText } from "./boxes.js";
import { planForm } from "./places.js";
import { allPlans, logOf, newPlan, planBy, planOf, putLog, putPlan, putTicks, takeUp, textOf, ticksOf } from "./plans.js";
import { addressOf, linkIn, placeIn } from "./sight.js";
import { get, note } from "./store.js";

/**
 * @typedef {object} Opening what is asked of the planner for another plan to stand on the page
 * @property {"open" | "openFile" | "restore"} ask
 * @property {string} text
 * @property {string} [plan] its id, when it has one
 * @property {string} [link] that its form falls back to, when that is restored
 * @property {string} [from] the id of the plan that it is a change of
 * @property {boolean} [last] whether it is the one that was worked on last, which nobody asked for by a link
 * @property {boolean} [worked] whether it is a plan to keep, and no example
 * @property {string} [to] what is to be in sight of it
 */

/** The link of the plan that the page comes with. */
export const example = document.querySelector("[data-link]")?.getAttribute("value") ?? "";

/** The id of the plan that stands on the page. */
export let planId = newPlan();
/** The id of what is to stand there, which may be on its way; empty when it has none yet. */
let wanted = planId;
/** Whether this tab has changed it, or brought it here: then it is kept. */
let worked = false;
/** When it was typed last, in this tab or the one that it was taken up from. */
let when = Date.now();
/** What this tab has kept of it on the device. @type {string | undefined} */
let ours;
let title = document.title;
/** The address before this one: a reload may still find that. */
let was = location.hash;

/** The plan that stands there has a title. @param {string} name */
export function call(name) {
  title = name;
}

/** What was wanted does not come. */
export function stay() {
  wanted = planId;
}

/**
 * Keeps the form as it is, right or wrong: for this tab also when it was only opened.
 * @param {string} link of the last good plan
 * @param {boolean} [work] whether it was changed just now
 */
export function keepForm(link, work) {
  worked ||= Boolean(work);
  if (!worked && link === example) return;
  if (work) when = Date.now();
  const plan = { id: planId, text: formText(planForm), link, title, when };
  putPlan(plan, true);
  // A form that only stands here writes over nothing that another tab has typed or forgotten since.
  if (work || (worked && textOf(planId) === ours)) {
    putPlan(plan);
    ours = plan.text;
  }
  if (work) write(""); // a reload brings it, whatever could not be opened here
}

/**
 * What is to be asked for the plan that the address and the history want;
 * nothing when it stands there, or is on its way.
 * @param {string} link of what stands there
 * @param {boolean} [first] whether the page is new: without a link in its address it shows what was worked on last
 * @returns {Opening | undefined}
 */
export function wants(link, first) {
  const place = document.getElementById(location.hash.slice(1));
  if (place && !first) return;
  const text = place ? "" : linkIn(location.hash);
  const to = place ? "" : placeIn(location.hash);
  // A reload that comes a moment after a change of the history may find its
  // state as it was before that, which is none.
  const here = first && /** @type {any} */ (performance.getEntriesByType("navigation")[0]).type === "reload" && get("here", true);
  const { plan, from } = history.state ?? (here?.at?.includes(location.hash) ? { plan: here.text } : {});
  if (plan ? plan === wanted : text === link && wanted === planId && !first) return;
  const last = !plan && !text && (first || to) ? allPlans()[0] : undefined;
  // A place without a link is of the plan that was worked on last: that which stands there, perhaps.
  if (!first && !plan && !text && to && (!last || last.id === wanted)) return;
  const found = text && !plan ? known(text) : last;
  if (found) takeUp(found.id);
  const kept = found ? planOf(found.id) : plan && planOf(plan);
  if (!kept && first && !text && !to) return write("");
  wanted = kept ? kept.id : plan ?? "";
  if (kept) {
    const data = new URLSearchParams(kept.text);
    data.delete("shape"); // the form is drawn, whatever the page shows
    data.set("good", kept.link);
    if (to || text) data.set("at", to || "answer"); // as an address says it
    return { ask: "restore", text: String(data), plan: wanted, link: kept.link, last: !plan && !text, to };
  }
  // What a guide leads to is an example.
  const guided = first && document.referrer.startsWith(new URL("./", location.href).href);
  return { ask: "open", text: to ? (text || "#") + "/" + to : text, plan, from, worked: plan ? Boolean(from) : text !== "" && !guided, to };
}

/**
 * Another plan stands on the page.
 * @param {Opening} opening
 * @param {string} link that it has now
 */
export function stand(opening, link) {
  const kept = opening.plan || opening.ask === "openFile" ? undefined : known(link);
  const last = wanted === (opening.plan ?? "");
  planId = opening.plan ?? kept?.id ?? newPlan();
  if (last) wanted = planId;
  worked = !kept && Boolean(opening.worked);
  if (kept) takeUp(planId);
  when = planOf(planId)?.when ?? Date.now();
  ours = undefined;
  // One that was changed by a link on its own page goes on with its log.
  if (opening.from && logOf(opening.from)) putLog(planId, logOf(opening.from));
  if (opening.from) putTicks(planId, ticksOf(opening.from));
  if (opening.ask === "openFile") {
    wanted = planId;
    history.pushState({ plan: planId }, "", addressOf(link));
  } else {
    write("");
  }
}

/**
 * Puts what stands on the page into the address and the history, unless
 * another is on its way there.
 * @param {string} link empty to leave the address as it is
 * @returns {undefined}
 */
export function write(link) {
  if (wanted !== planId) return;
  const address = link && addressOf(link);
  const moves = address && location.hash !== address;
  if (moves) was = location.hash;
  if (moves || history.state?.plan !== planId) history.replaceState({ plan: planId, shape: history.state?.shape }, "", address || undefined);
  note("here", { text: planId, at: [was, location.hash] });
}

/**
 * Puts what is in sight into the address and the history.
 * @param {boolean} [push] whether Back is to lead to what was in sight before
 * @param {number} [shape] a mark of which rows and other records there are
 */
export function entered(push, shape) {
  const address = addressOf(linkIn(location.hash)) || location.pathname + location.search;
  was = location.hash;
  history[push ? "pushState" : "replaceState"]({ plan: planId, shape: shape ?? history.state?.shape }, "", address);
  note("here", { text: planId, at: [was, location.hash] });
}

/**
 * Enters the address of another plan, before it is opened.
 * @param {HTMLAnchorElement} a one that is kept, or one that begins with a link: that of an example, or a change of this one
 */
export function enter(a) {
  const from = a.closest("#examples") ? undefined : planId;
  if (a.dataset.plan) takeUp(a.dataset.plan);
  history.pushState(a.dataset.plan ? { plan: a.dataset.plan } : { plan: newPlan(), from }, "", a.hash);
}

/** The plan that is kept with a link, unless that is an example's, which anybody may be led to. @param {string} link */
function known(link) {
  return document.querySelector(`#examples a[href="${CSS.escape(link)}"]`) ? undefined : planBy(link);
}
