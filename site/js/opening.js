// @ts-check
// How another plan comes to stand on the page: by a link, the history or a file.

import { openLog } from "./diary.js";
import { kept, leave, standOn } from "./keeping.js";
import { listed } from "./list.js";
import { find } from "./places.js";
import { ask } from "./questions.js";
import { site } from "./site.js";
import { forgetSteps } from "./undo.js";
import { marked } from "./ticks.js";
import { enter, planId, stand, wants, write } from "./standing.js";

let hiding = 0;

/**
 * Opens the plan that the address and the history want; says whether there is one.
 * @param {boolean} [first] whether the page is new
 * @param {boolean} [led] whether a link to it was followed, far from the answer perhaps
 */
export function openWanted(first, led) {
  const opening = wants(kept, first);
  if (!opening) {
    write(kept);
    return false;
  }
  // What stands on the page is of another plan, and must not pass for this one.
  clearTimeout(hiding);
  hiding = setTimeout(() => { site.opening = ""; }, find("[data-wait]").hidden ? 200 : 0);
  ask({ ...opening, led });
  return true;
}

/** Opens the plan of a link on the page: its answer is what the reader wants to see. @param {HTMLAnchorElement} a */
export function followed(a) {
  leave();
  write(kept);
  enter(a);
  openWanted(false, true);
}

/** What was on its way to be opened no longer is. */
export function opened() {
  clearTimeout(hiding);
  delete site.opening;
}

/** Another plan stands on the page. @param {any} opening @param {import("./questions.js").Reply} reply */
export function become(opening, reply) {
  forgetSteps();
  stand({ ...opening, worked: opening.worked || opening.ask === "openFile" }, reply.link);
  standOn(opening.link ?? reply.link);
  find("[data-back]").hidden = !opening.last;
  listed(planId);
  openLog(planId);
  marked(document);
}
