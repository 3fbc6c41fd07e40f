// @ts-check
// The log of a plan between its form and the device: two tabs may write in one.

import { formText } from "./boxes.js";
import { hasLog, logOf, putLog } from "./plans.js";

/**
 * The rows of a log, by number, each as one text.
 * @param {string} text form data, with names such as "log.2.day"
 */
function rows(text) {
  /** @type {URLSearchParams[]} */
  const all = [];
  for (const [path, typed] of new URLSearchParams(text)) {
    const [, number, name] = /^log\.(\d+)\.(.+)/.exec(path) ?? [];
    if (name && typed) (all[Number(number)] ??= new URLSearchParams()).append(name, typed);
  }
  return Array.from(all, (row) => (row?.sort(), String(row ?? "")));
}

/** @param {string[]} all */
function written(all) {
  const pairs = new URLSearchParams();
  all.forEach((row, number) => {
    for (const [name, typed] of new URLSearchParams(row)) pairs.append(`log.${number}.${name}`, typed);
  });
  return String(pairs);
}

/** The same log in the one order. @param {string} text */
const tidy = (text) => written(rows(text));

/**
 * Brings together what two have made of one log, row by row. One that both have
 * changed stands twice, that from there at the end, and the reader takes out one.
 * @param {string} base what both began with
 * @param {string} here
 * @param {string} there
 */
export function merged(base, here, there) {
  const [was, ours, theirs] = [base, here, there].map(rows);
  /** @type {string[]} */
  const twice = [];
  const longest = [was, ours, theirs].sort((a, b) => b.length - a.length)[0];
  const all = Array.from(longest, (_, n) => {
    const [old = "", our = "", their = ""] = [was[n], ours[n], theirs[n]];
    if (our === old || our === their) return their;
    if (their !== old && their) twice.push(their);
    return our;
  });
  return written([...all, ...twice]);
}

/**
 * A log's form, and what is kept of it.
 * @param {HTMLFormElement} form
 */
export function logbook(form) {
  let id = "";
  /** What the form held when that was last brought together with what is kept: what differs from it was typed since. */
  let base = "";
  const typed = () => tidy(formText(form));
  /** Whether it was forgotten elsewhere, and stands only here. */
  const lost = () => base !== "" && !hasLog(id);
  return {
    id: () => id,
    typed,
    lost,
    /** What is kept of a plan's log. @param {string} plan */
    kept: (plan) => tidy(logOf(plan)),
    /** Is from now on that of a plan. @param {string} plan @param {string} text of it that the form shows */
    open(plan, text) {
      id = plan;
      base = text;
    },
    /**
     * Keeps what was typed, together with what another tab has; says whether the form has to be drawn again.
     * What was forgotten elsewhere takes no rows from here, and is kept anew only with what is typed next.
     * @param {boolean} [work] whether something was typed just now
     */
    keep(work) {
      if (lost()) {
        if (!work) return false;
        base = "";
      }
      const kept = tidy(logOf(id));
      const here = typed();
      const both = merged(base, here, kept);
      base = here;
      if (both !== kept) putLog(id, both);
      return both !== here;
    },
  };
}
