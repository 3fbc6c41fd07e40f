// What tests of what is typed, kept and brought back have in common.
import { atRest, box, fields, see } from "./form.js";

/** @typedef {import("puppeteer-core").Page} Page */

/** What is typed in a field of the plan, in sight or not, or of its log. @param {Page} page @param {string} path */
export const held = async (page, path) => (path.startsWith("log.") ? page.$eval(box(path), (e) => e.value) : (await fields(page))[path]);

/** Waits until a plan of that name stands on the page. @param {Page} page @param {string} name */
export async function stands(page, name) {
  await page.waitForFunction(
    (name) => {
      const form = document.querySelector("form#plan");
      const typed = document.querySelector('[id="f-name"]')?.value ?? new URLSearchParams(form?.elements.namedItem("rest")?.value).get("name");
      return typed === name && document.documentElement.dataset.opening === undefined;
    },
    {},
    name,
  );
  await atRest(page);
}

/** Opens the tool by its plain address, as a person comes again. @param {Page} page @param {string} address */
export async function again(page, address) {
  await page.goto(address);
  await atRest(page);
}

/** Goes back in the history. @param {Page} page */
export const back = (page) => page.evaluate(() => history.back());

/** A key, or a paste, as the page hears it, whatever the test is doing. @param {Page} page @param {string} path @param {string} typed */
export async function typedNow(page, path, typed) {
  if (!(await page.$(box(path) + ":not([hidden] *)"))) await see(page, "f-" + path);
  await page.$eval(box(path), (field, typed) => {
    field.value = typed;
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  }, typed);
}

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
