// The plans of this device: copied, compared, and all forgotten.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, fields, inJob, open, paste, text, type } from "./form.js";

/** @param {import("puppeteer-core").Page} page @param {string} selector */
const click = (page, selector) => page.$eval(selector, (e) => /** @type {HTMLElement} */ (e).click());

/** The names of the plans that are listed. @param {import("puppeteer-core").Page} page */
const listed = (page) => page.$$eval("[data-plans] li > a", (all) => all.map((a) => a.textContent));

/** A plan of that name stands on the page. @param {import("puppeteer-core").Page} page @param {string} name */
const stands = (page, name) => page.waitForFunction((name) => document.querySelector("#head")?.textContent === name, {}, name);

behaviour("a plan is copied with its log, the copy is opened and changed, and the two are compared", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "One");
  await stands(page, "One");
  await inJob(page, "water");
  await page.$eval('[id="f-log.1.out"]', (box) => {
    /** @type {HTMLInputElement} */ (box).value = "33";
    box.dispatchEvent(new InputEvent("input", { bubbles: true }));
  });
  await atRest(page);
  await inJob(page, "all");
  await click(page, '.share__do [data-do="duplicate"]');
  assert.deepEqual(await listed(page), ["One (copy)"]);
  await click(page, "[data-plans] li > a");
  await stands(page, "One (copy)");
  await atRest(page);
  assert.equal(await page.$eval('[id="f-log.1.out"]', (box) => /** @type {HTMLInputElement} */ (box).value), "33");
  await type(page, "runs.1.rise", "3");
  await inJob(page, "all");
  assert.deepEqual(await listed(page), ["One"]);
  await click(page, '.share__do [data-do="compare"]');
  assert.equal(await page.$eval('.share__do [data-do="compare"]', (button) => button.getAttribute("aria-pressed")), "true");
  await click(page, '[data-plans] [data-do="compare"]');
  await atRest(page);
  const table = await page.$$eval("#compared tr", (all) => all.map((row) => [...row.children].map((cell) => cell.textContent?.replace(/\s/g, " ").trim())));
  assert.deepEqual(table[0], ["What", "One (copy)", "One"]);
  const rise = table.find(([name]) => name?.includes("Rise"));
  assert.deepEqual(rise?.slice(1), ["3 m", "0.4 m"]);
  assert.ok(!table.some(([name]) => name?.includes("Spacing")), "what is the same in both is listed");
  // What is changed in one is not in the other.
  await click(page, "[data-plans] li > a");
  await stands(page, "One");
  await atRest(page);
});

behaviour("a copy of a plan with the longest name there may be is a plan as well, and what is chosen to be compared stays chosen", async ({ page, address }) => {
  await open(page, address);
  const long = "🌱".repeat(59) + "a";
  await paste(page, "name", long);
  await stands(page, long);
  await inJob(page, "all");
  await click(page, '.share__do [data-do="duplicate"]');
  const name = "🌱".repeat(53) + " (copy)";
  assert.deepEqual(await listed(page), [name]);
  const pressed = () => page.$$eval('[data-plans] [data-do="compare"]', (all) => all.map((button) => button.getAttribute("aria-pressed")));
  await click(page, '[data-plans] [data-do="compare"]');
  await click(page, '.share__do [data-do="duplicate"]'); // the list is drawn anew, with another before it
  assert.deepEqual(await pressed(), ["false", "true"]);
  await click(page, "[data-plans] li > a");
  await stands(page, name);
  await atRest(page);
  assert.equal(await text(page, "#errors"), "");
  assert.equal((await fields(page)).name, name);
});

behaviour("everything on the device is forgotten by one button, and what was typed a moment ago with it", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "Gone");
  await inJob(page, "all");
  const keys = () => page.evaluate(() => [...Object.keys(localStorage), ...Object.keys(sessionStorage)].filter((key) => /^evenrow-1-(plan|log|here)/.test(key)));
  assert.ok((await keys()).length > 0);
  await Promise.all([page.waitForNavigation(), click(page, '[data-do="forget-all"]')]);
  await atStart(page);
  assert.deepEqual((await keys()).filter((key) => !key.includes("here")), []);
  assert.equal(new URL(page.url()).hash, "");
  assert.equal(await text(page, "#always"), "Answer five questions");
  await page.reload();
  await atStart(page);
  assert.ok(!(await page.content()).includes("Gone"), "a plan that was forgotten is back");
});

behaviour("Ctrl and Z leave a box of the questions to the browser, where there is no plan to take back", async ({ page, address }) => {
  await page.goto(address);
  await atStart(page);
  await page.focus('[id="f-ask.length"]');
  await page.keyboard.type("6");
  const left = await page.evaluate(() => new Promise((resolve) => {
    addEventListener("keydown", (event) => { if (event.key === "z") setTimeout(() => resolve(event.defaultPrevented)); });
    document.activeElement?.dispatchEvent(new KeyboardEvent("keydown", { key: "z", ctrlKey: true, bubbles: true, cancelable: true }));
  }));
  assert.equal(left, false, "the page takes the keys and does nothing with them");
});

/** The questions stand there, and the planner has started. @param {import("puppeteer-core").Page} page */
async function atStart(page) {
  await page.waitForFunction(() => document.documentElement.dataset.at === "start" && /** @type {HTMLElement} */ (document.querySelector("[data-wait]")).hidden);
}
