// From nothing to a first answer on a phone.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, explored, figure, number, text } from "./form.js";
import { lean, phone, short, solved, Walk } from "./journeys.js";

/** @typedef {import("puppeteer-core").Page} Page */

/**
 * @typedef {object} Journey
 * @property {string} name
 * @property {Record<string, string>} chosen lists, and the option of each
 * @property {string[]} ticked radio buttons, in the order in which they are touched
 * @property {Record<string, string>} typed
 * @property {number} most values that may be typed
 * @property {(said: string, plan: any) => void} answer
 */

const feet = 0.3048; // m
const gallon = 3.785411784e-3 / 60; // m³/s, a minute

/** @type {Journey[]} */
const journeys = [
  {
    name: "a tap, and 20 plants in buckets",
    chosen: { "ask.crop.1": "tomato" },
    ticked: ["ask.medium-bucket", "ask.supply-mains"],
    typed: { "ask.plants.1": "20", "ask.length": "6", "ask.width": "3", "ask.distance": "8", "ask.rise": "0,4" },
    most: 6,
    answer(said, { plan, verdict }) {
      assert.match(said, /^Yes/);
      assert.match(said, /All 20 emitters open/);
      assert.equal(verdict, "yes");
      assert.deepEqual([plan.runs[0].length, plan.runs[0].rise, plan.supply.kind], [8, 0.4, "mains"]);
    },
  },
  {
    name: "a balcony, and a 12 V pump labelled 800 L/h and 3 m",
    chosen: { "ask.crop.1": "tomato" },
    ticked: ["ask.medium-pot", "ask.supply-pump"],
    typed: { "ask.plants.1": "8", "ask.length": "4", "ask.width": "1.2", "ask.shut-off": "3 m", "ask.max-flow": "800 L/h", "ask.distance": "2", "ask.rise": "0.3" },
    most: 8,
    answer(said, { plan }) {
      assert.match(said, /^Yes/);
      assert.equal(plan.supply["shut-off"], 3);
      assert.ok(Math.abs(plan.supply["max-flow"] - 800 / 60) < 1e-9, "L/min of 800 L/h");
      assert.equal(plan.emitters[0].kind, "plain");
    },
  },
  {
    name: "a label that says 1/2 HP",
    chosen: { "ask.crop.1": "cucumber" },
    ticked: ["ask.medium-coco-slab", "ask.supply-pump"],
    typed: { "ask.plants.1": "60", "ask.length": "12", "ask.width": "5", "ask.power": "1/2 HP", "ask.distance": "10" },
    most: 8,
    answer(said, { pump_wanted: wanted }) {
      const [, head, flow] = /^Yes, with a pump of at least ([\d.]+) m at ([\d.]+) L\/min/.exec(said) ?? [];
      assert.ok(Math.abs(Number(head) - wanted.least_m) <= 0.05 + 1e-9, `${head} m, ${JSON.stringify(wanted)}`);
      assert.ok(Math.abs(Number(flow) - wanted.flow_m3_s * 60_000) <= 0.05 + 1e-9, `${flow} L/min, ${JSON.stringify(wanted)}`);
    },
  },
  {
    name: "1,000 plants on a slope, in US units",
    chosen: { "ask.crop.1": "tomato" },
    ticked: ["ask.medium-coco-slab", "ask.supply-pump-wanted", "units-us"],
    typed: { "ask.plants.1": "1000", "ask.length": "130", "ask.width": "90", "ask.distance": "50", "ask.rise": "6" },
    most: 6,
    answer(said, { pump_wanted: wanted, rows_of_plants: rows }) {
      const [, head, flow] = /^Yes, with a pump of at least ([\d.]+) ft at ([\d.]+) gal\/min/.exec(said) ?? [];
      assert.ok(Math.abs(Number(head) - wanted.least_m / feet) <= 0.05 + 1e-9, `${head} ft, ${JSON.stringify(wanted)}`);
      assert.ok(Math.abs(Number(flow) - wanted.flow_m3_s / gallon) <= 0.005 + 1e-9, `${flow} gal/min, ${JSON.stringify(wanted)}`);
      assert.equal(rows.reduce((/** @type {number} */ n, /** @type {any} */ row) => n + row.plants, 0), 1000);
    },
  },
];

/** Answers the five questions. @param {Walk} walk @param {Journey} journey */
async function answerAll(walk, { chosen, ticked, typed }) {
  for (const [id, option] of Object.entries(chosen)) await walk.pick(id, option);
  for (const id of ticked) await walk.tap(`label:has([id="f-${id}"])`);
  for (const [id, value] of Object.entries(typed)) await walk.type(id, value);
}

for (const journey of journeys) {
  behaviour(
    `a first answer on a phone: ${journey.name}`,
    async ({ page, address, firefox }) => {
      const walk = new Walk(page, journey.name);
      await page.goto(address);
      await page.waitForFunction(() => /** @type {HTMLElement} */ (document.querySelector("[data-wait]")).hidden);
      assert.equal(await text(page, "#always"), "Answer five questions");
      await lean(page);
      await answerAll(walk, journey);
      assert.equal(await text(page, "#errors"), "");
      await walk.seek(".ask__do .button--main");
      await walk.tap(".ask__do .button--main");
      assert.equal(await page.evaluate(() => document.documentElement.dataset.at), "answer");
      const said = await walk.seek("#answer .answer__line");
      walk.first(journey.most);
      journey.answer(said, await solved(page));
      // Nothing is lost by a reload.
      await page.reload();
      await atRest(page);
      await explored(page);
      assert.equal((await text(page, "#line")).replace(/\s+/g, " "), said.replace(/\s+/g, " "));
      await short(page);
      if (!firefox) walk.tell();
    },
    phone,
  );
}
