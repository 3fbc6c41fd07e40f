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
  await open(page, address + "#/water");
  await type(page, "f-log.1.day", "2027-07-12");
  await page.keyboard.press("Tab"); // the weather
  await page.keyboard.press("Tab");
  await page.keyboard.type("40");
  await page.click('#log button[value="log-add"]');
  await page.waitForFunction(() => document.activeElement?.id === "f-log.2.day");
  await type(page, "f-log.2.day", "13.7.");
  await type(page, "f-log.2.out", "40");
  await advised(page, /Give \d+\s% less on a typical day: \d+ shots of \d\smin/);
  assert.equal(await page.evaluate(() => document.activeElement?.id), "f-log.2.out", "the focus has moved");

  // It is in no link, and stands there again after a reload.
  assert.doesNotMatch(await page.evaluate(() => location.href), /2027-07-12|log\./);
  await page.reload();
  await advised(page, /Give \d+\s% less/);
  const held = () => page.$$eval("#log :is(input, select)", (all) => all.map((e) => e.value).filter((text) => text));
  assert.deepEqual(await held(), ["2027-07-12", "40", "13.7.", "40"]);

  // Used, the reading is part of the plan: the card says so, and it can be taken back.
  const card = (/** @type {boolean} */ used) => page.waitForFunction((used) => /is corrected by your drain reading/.test(document.getElementById("timer")?.textContent ?? "") === used, { timeout: 30_000 }, used);
  const link = await page.evaluate(() => location.hash);
  await page.click('#advice button[value^="correct-to."]');
  await card(true);
  await advised(page, /The plan goes by this reading/);
  await page.waitForFunction((link) => location.hash !== link, {}, link);
  await page.click('#timer button[value="correct-back"]');
  await card(false);
  await advised(page, /Use this reading from 14 July on/);
  await page.waitForFunction((link) => location.hash === link, {}, link);

  // The card's setting is proposed, and follows the weather that is chosen.
  const proposed = (/** @type {RegExp} */ words) => page.waitForFunction((source) => new RegExp(source).test(document.getElementById("log-set-2")?.textContent ?? ""), { timeout: 30_000 }, words.source);
  await proposed(/Assumed from the card for a typical day: \d+ shots/);
  await page.select('[id="f-log.2.sky"]', "hot");
  await proposed(/Assumed from the card for a hot day: \d+ shots/);
  await advised(page, /on a hot day/);
  await type(page, "f-log.2.shots", "12");
  await type(page, "f-log.2.minutes", "7");
  await proposed(/^$/);
  await advised(page, /instead of 84\smin in all/);

  await page.click('#log button[value="log-add"]');
  await page.waitForSelector('[id="f-log.3.day"]');

  // A date that does not exist is marked at its box and read aloud.
  await type(page, "f-log.3.day", "31 June");
  await page.waitForFunction(() => document.getElementById("f-log.3.day")?.getAttribute("aria-invalid") === "true");
  assert.match(await page.$eval('[id="e-log.3.day"]', (e) => (e.hidden ? "" : e.textContent ?? "")), /Day 3: date must be a date that exists/);
  await page.waitForFunction(() => /Day 3: date must be/.test(document.querySelector("[data-announce]")?.textContent ?? ""));
  await page.evaluate(() => /** @type {HTMLInputElement} */ (document.getElementById("f-log.3.day")).select());
  await page.keyboard.press("Backspace");
  await page.waitForFunction(() => !document.getElementById("f-log.3.day")?.hasAttribute("aria-invalid"));

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
  await page.waitForFunction(() => document.querySelector('[id="f-log.1.day"]')?.value === "13.7.");
  assert.deepEqual(await held(), ["13.7.", "hot", "40", "12", "7"]);

  // Changing the plan changes what is advised.
  await retype(page, "timer.drain-hot", "35");
  await advised(page, /drained, and 35\s% should/);

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
  assert.equal(text, "Date,Drain (%),EC of the drain (mS/cm),pH of the drain,EC of the feed (mS/cm),Shots,Length of a shot (min),Weather\r\n13.7.,40,,,,12,7,hot\r\n");
});
