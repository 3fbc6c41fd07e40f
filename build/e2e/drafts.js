// What tests of what is typed, kept and brought back have in common.
import { atRest, box } from "./form.js";

/** @typedef {import("puppeteer-core").Page} Page */

/** What is typed in a field. @param {Page} page @param {string} path */
export const held = (page, path) => page.$eval(box(path), (e) => e.value);

/** Waits until a plan of that name stands on the page. @param {Page} page @param {string} name */
export async function stands(page, name) {
  await page.waitForFunction((name) => document.querySelector('[id="f-name"]')?.value === name && document.documentElement.dataset.opening === undefined, {}, name);
  await atRest(page);
}

/** Goes back in the history. @param {Page} page */
export const back = (page) => page.evaluate(() => history.back());

/** A key, or a paste, as the page hears it, whatever the test is doing. @param {Page} page @param {string} path @param {string} typed */
export const typedNow = (page, path, typed) =>
  page.$eval(box(path), (field, typed) => {
    field.value = typed;
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  }, typed);

/**
 * Waits until the log has these drains, by row. A tab that nobody sees draws no
 * frames to wait for.
 * @param {Page} page
 * @param {Record<number, string>} rows
 */
export const noted = (page, rows) => page.waitForFunction((rows) => Object.entries(rows).every(([row, out]) => document.getElementById(`f-log.${row}.out`)?.value === out), { polling: 100 }, rows);

/** Has every reply of the planner come late, by as long as the page is told. @param {Page} page not yet at the site */
export const slowly = (page) =>
  page.evaluateOnNewDocument(() => {
    window.lateBy = 0;
    const Real = window.Worker;
    window.Worker = class extends Real {
      addEventListener(kind, hear) {
        super.addEventListener(kind, kind === "message" ? (event) => (window.lateBy && event.data.reply ? setTimeout(hear, window.lateBy, event) : hear(event)) : hear);
      }
    };
  });
