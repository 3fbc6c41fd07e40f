// The log of the drain: kept on the device, answered by the planner, saved as a
// table, all with the keyboard.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { open, type as retype } from "./form.js";

/** @param {import("puppeteer-core").Page} page @param {string} id @param {string} text */
async function type(page, id, text) {
  await page.focus(`[id="${id}"]`);
  await page.keyboard.type(text);
}

/** @param {import("puppeteer-core").Page} page @param {RegExp} words */
const advised = (page, words) => page.waitForFunction((source) => new RegExp(source).test(document.querySelector("#advice")?.textContent ?? ""), { timeout: 30_000 }, words.source);

behaviour("what the drain says is answered, kept on the device and saved as a table", async ({ page, address }) => {
  await open(page, address);
  await type(page, "f-log.1.day", "2027-07-12");
  await page.keyboard.press("Tab");
  await page.keyboard.type("40");
  await type(page, "f-log.2.day", "2027-07-13");
  await type(page, "f-log.2.out", "40");
  await advised(page, /Give 15\s% less: \d+ shots of \d\smin instead of \d+/);
  assert.equal(await page.evaluate(() => document.activeElement?.id), "f-log.2.out", "the focus has moved");

  // It is in no link, and stands there again after a reload.
  assert.doesNotMatch(await page.evaluate(() => location.href), /2027-07-12|log\./);
  await page.reload();
  await advised(page, /Give 15\s% less/);
  const held = () => page.$$eval("#log input", (all) => all.map((e) => e.value).filter((text) => text));
  assert.deepEqual(await held(), ["2027-07-12", "40", "2027-07-13", "40"]);

  // A slip is named, and leads to its box.
  await type(page, "f-log.1.ph", "77");
  await advised(page, /Day 1: pH of the drain must be from 2 to 11/);
  await page.click('#advice a[href="#f-log.1.ph"]');
  assert.equal(await page.evaluate(() => document.activeElement?.id), "f-log.1.ph");
  await page.keyboard.press("Backspace");
  await page.keyboard.press("Backspace");

  // A day is added and taken away by the keyboard.
  await page.focus('#log button[value="log-add"]');
  await page.keyboard.press("Enter");
  await page.waitForSelector('[id="f-log.4.day"]');
  await page.waitForFunction(() => document.activeElement?.id === "f-log.4.day");
  await page.focus('#log button[value="log-remove.1"]');
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.querySelector('[id="f-log.1.day"]')?.value === "2027-07-13");
  assert.deepEqual(await held(), ["2027-07-13", "40"]);

  // Changing the plan changes what is advised.
  await retype(page, "timer.drain", "30");
  await advised(page, /drained, and 30\s% should/);

  const table = page.evaluate(() => new Promise((resolve) => {
    const make = URL.createObjectURL;
    URL.createObjectURL = (blob) => {
      blob.text().then((text) => resolve({ text, type: blob.type }));
      return make.call(URL, blob);
    };
  }));
  await page.click('#log button[value="log-csv"]');
  const { text, type: kind } = await table;
  assert.equal(kind, "text/csv");
  assert.equal(text, "Date,Drain (%),EC of the drain (mS/cm),pH of the drain,EC of the feed (mS/cm)\r\n2027-07-13,40,,,\r\n");
});
