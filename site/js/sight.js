// @ts-check
// Which job is in sight, and the group that is open in it, as in an address:
// "water/timer". An address is a plan's link, and behind a slash what is in sight.

import { find } from "./places.js";

const { dataset } = document.documentElement;

/** What is in sight. */
export let at = "answer";
/** The job of which the page shows that it is. */
let shows = "";

/** The link in an address, with its "#"; empty where there is none. @param {string} hash */
export const linkIn = (hash) => hash.replace(/\/.*/, "").replace(/^#$/, "");

/** What an address leads to on the page; empty where it does not say. @param {string} hash */
export const placeIn = (hash) => /\/(.*)/.exec(hash)?.[1] ?? "";

/** The address of a plan, with what is in sight of it. @param {string} link */
export const addressOf = (link) => (at === "answer" ? link : (link || "#") + "/" + at);

/** The job of a place. @param {string} place */
export const jobOf = (place) => place.split("/")[0];

/** Another job is in sight, or another group is open. @param {string} place */
export function inSight(place) {
  at = place;
  const job = jobOf(place);
  if (job === shows) return;
  dataset.at = shows = job;
  const heading = find("#h-job");
  heading.textContent = heading.dataset[job] ?? heading.textContent;
  for (const link of document.querySelectorAll("[data-job]")) {
    if (link.getAttribute("data-job") !== job) link.removeAttribute("aria-current");
    else {
      link.setAttribute("aria-current", "page");
      heading.textContent = link.textContent;
    }
  }
  for (const part of document.querySelectorAll("[data-in]")) {
    if (part instanceof HTMLElement) part.hidden = !part.dataset.in?.split(" ").includes(job);
  }
}

/** The ways to all jobs, as the page lists them. */
const ways = [...document.querySelectorAll(".jobs li")];

/** A job comes first among them. @param {string} job */
export function comesFirst(job) {
  const first = ways.filter((way) => way.querySelector(`[data-job="${job}"]`));
  const list = first[0]?.parentElement;
  if (!list || list.firstElementChild === first[0]) return;
  const focus = document.activeElement;
  list.append(...first, ...ways.filter((way) => way !== first[0]));
  if (focus instanceof HTMLElement && list.contains(focus)) focus.focus({ preventScroll: true });
}
