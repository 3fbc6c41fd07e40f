// From nothing to a first answer, as somebody with a phone goes there: how often the screen is
// touched, how much is typed, and how far the answer and the list lie. To focus a box is no touch.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, explored, inJob, jobs, text } from "./form.js";

/** @typedef {import("puppeteer-core").Page} Page */

/**
 * @typedef {object} Journey
 * @property {string} name
 * @property {Record<string, string>} chosen lists, and the option of each
 * @property {string[]} ticked radio buttons, in the order in which they are touched
 * @property {Record<string, string>} typed
 * @property {number} most values that may be typed
 * @property {RegExp} answer
 */

/** @type {Journey[]} */
const journeys = [
  {
    name: "a tap, and 20 plants in buckets",
    chosen: { "ask.crop.1": "tomato" },
    ticked: ["ask.medium-bucket", "ask.supply-mains"],
    typed: { "ask.plants.1": "20", "ask.length": "6", "ask.width": "3", "ask.distance": "8", "ask.rise": "0,4" },
    most: 6,
    answer: /^Yes/,
  },
  {
    name: "a balcony, and a 12 V pump labelled 800 L/h and 3 m",
    chosen: { "ask.crop.1": "tomato" },
    ticked: ["ask.medium-pot", "ask.supply-pump"],
    typed: { "ask.plants.1": "8", "ask.length": "4", "ask.width": "1.2", "ask.shut-off": "3 m", "ask.max-flow": "800 L/h", "ask.distance": "2", "ask.rise": "0.3" },
    most: 8,
    answer: /^Yes/,
  },
  {
    name: "a label that says 1/2 HP",
    chosen: { "ask.crop.1": "cucumber" },
    ticked: ["ask.medium-coco-slab", "ask.supply-pump"],
    typed: { "ask.plants.1": "60", "ask.length": "12", "ask.width": "5", "ask.power": "1/2 HP", "ask.distance": "10" },
    most: 8,
    answer: /^Yes, with a pump of at least [\d.]+ m at [\d.]+ L\/min/,
  },
];

for (const { name, chosen, ticked, typed, most, answer } of journeys) {
  behaviour(
    `a first answer on a phone: ${name}`,
    async ({ page, address }) => {
      let taps = 0;
      await page.goto(address);
      await page.waitForFunction(() => /** @type {HTMLElement} */ (document.querySelector("[data-wait]")).hidden);
      assert.equal(await text(page, "#always"), "Answer five questions");
      const asked = await page.$$eval("#ask input:not([type=hidden]), #ask select", (all) => all.length);
      assert.ok(asked <= 20, `${asked} boxes before the first answer`);
      for (const [id, option] of Object.entries(chosen)) {
        await page.select(`[id="f-${id}"]`, option);
        taps++;
      }
      for (const id of ticked) {
        await page.$eval(`[id="f-${id}"]`, (box) => /** @type {HTMLElement} */ (box).click());
        await atRest(page);
        taps++;
      }
      for (const [id, value] of Object.entries(typed)) {
        await page.focus(`[id="f-${id}"]`);
        await page.keyboard.type(value);
      }
      await atRest(page);
      assert.equal(await text(page, "#errors"), "");
      await page.$eval(".button--main", (button) => /** @type {HTMLElement} */ (button).click());
      taps++;
      await atRest(page);
      await explored(page);
      assert.match(await text(page, "#line"), answer);
      assert.equal(await page.evaluate(() => document.documentElement.dataset.at), "answer");
      assert.ok(taps <= 8, `${taps} taps`);
      assert.ok(Object.keys(typed).length <= most, `${Object.keys(typed).length} values typed`);
      // Nothing is lost by a reload, and no job is longer than six screens with its groups closed.
      const said = await text(page, "#line");
      await page.reload();
      await atRest(page);
      await explored(page);
      assert.equal(await text(page, "#line"), said);
      for (const job of jobs) {
        await inJob(page, job);
        await explored(page);
        const { high, words } = await page.evaluate(() => {
          const main = /** @type {HTMLElement} */ (document.querySelector("#main"));
          let words = 0;
          const walk = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
          for (let node = walk.nextNode(); node; node = walk.nextNode()) {
            const e = node.parentElement;
            if (e?.checkVisibility() && !e.closest(".out, noscript, option, template") && !e.closest("details:not([open]) > :not(summary)")) words += (node.textContent ?? "").split(/\s+/).filter(Boolean).length;
          }
          return { high: main.offsetHeight, words };
        });
        assert.ok(high <= 6 * 740, `${job} is ${high} px high`);
        assert.ok(words <= 900, `${job} has ${words} words in sight`);
      }
    },
    { width: 360, height: 740, both: true },
  );
}
