// What a part costs, in what packs it comes, and what one has of it, from the list of parts.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, box, inJob, job, open, see, text, type } from "./form.js";
import { phone, solved, Walk } from "./journeys.js";

/** @param {import("puppeteer-core").Page} page */
const wide = (page) => page.evaluate(() => Math.max(document.documentElement.scrollWidth - innerWidth, ...[...document.querySelectorAll("#parts .scroll")].map((e) => e.scrollWidth - e.clientWidth)));

/** The row of the list that a part's name begins. @param {import("puppeteer-core").Page} page @param {string} name */
const row = (page, name) =>
  page.$$eval("#parts tbody tr:not(.group)", (all, name) => all.map((tr) => [...tr.children].map((cell, i) => (cell.textContent ?? "").replace(/\s+/g, " ").trim().replace(i ? /^$/ : /^\d+ /, ""))).find(([first]) => first.startsWith(name)) ?? [], name);

/** The sum of all. @param {import("puppeteer-core").Page} page */
const total = async (page) => Number(/All together ([\d.]+)/.exec(await text(page, "#parts"))?.[1]);

/** Presses the price of a part. @param {import("puppeteer-core").Page} page @param {string} key @param {boolean} [keys] with the keyboard */
async function price(page, key, keys) {
  const button = await page.$(`#parts [value="price-of.${key}"]`);
  assert.ok(button, `${key} has no price to press`);
  await button.evaluate((b) => { const counter = b.closest("details"); if (counter) counter.open = true; b.scrollIntoView({ block: "center" }); });
  if (keys) {
    await button.focus();
    await page.keyboard.press("Enter");
  } else await button.click();
  await atRest(page);
}

behaviour(
  "on a phone a price is pressed, typed and summed up, with the packs and what one has",
  async ({ page, address }) => {
    await open(page, address);
    await inJob(page, "buy");
    assert.ok((await wide(page)) <= 0, "the list scrolls sideways");
    const before = await total(page);
    assert.match(await text(page, "#parts"), /Of all that, 100 % is by invented prices/);
    const { parts } = await solved(page);
    const emitter = parts.find((/** @type {any} */ part) => part.key === "emitter 0");
    await price(page, "emitter 0");
    // The reader stands at what is said of that part, by its name, and nothing is said yet.
    assert.equal(await page.evaluate(() => document.activeElement?.id), "s-bought.1");
    assert.equal(await text(page, '[id="s-bought.1"]'), emitter.name);
    assert.equal(await total(page), before);
    await type(page, "bought.1.price", "7.5");
    await type(page, "bought.1.pack", "25");
    await type(page, "bought.1.have", "20");
    const packs = Math.ceil((emitter.count - 20) / 25);
    const [name, bought, cost] = await row(page, "Emitter");
    assert.equal(bought, `${packs} packs of 25`);
    assert.match(name, new RegExp(`${emitter.count} needed.*you have 20.*${packs * 25 - (emitter.count - 20)} over.*7\\.50 a pack`));
    assert.match(cost, new RegExp(`^${(packs * 7.5).toFixed(2)}( |$)`)); // without a star
    assert.ok(Math.abs((await total(page)) - (before - emitter.cost + packs * 7.5)) < 0.005);
    const share = Math.round((100 * (before - emitter.cost)) / (before - emitter.cost + packs * 7.5));
    assert.match(await text(page, "#parts"), new RegExp(`Of all that, ${share} % is`));
    // A second press comes back to it; another part is another record.
    await price(page, "emitter 0", true);
    assert.equal(await page.evaluate(() => document.activeElement?.id), "s-bought.1");
    await price(page, "tube 1");
    assert.equal(await page.evaluate(() => document.activeElement?.id), "s-bought.2");
    assert.equal(await page.$(box("bought.2.price")), null, "tubing has its price in two places");
    await page.$eval('[id="d-bought.2"] a[href="#f-prices.tube-1"]', (a) => /** @type {HTMLElement} */ (a).click());
    await atRest(page);
    assert.equal(await page.evaluate(() => document.activeElement?.id), "f-prices.tube-1");
    await type(page, "prices.tube-1", "1.5");
    assert.match((await row(page, "16 mm"))[2], /^75\.00( |$)/);
    await type(page, "prices.currency", "kr");
    assert.equal(await text(page, "#parts thead th:last-child"), "Price, kr");
    assert.ok((await wide(page)) <= 0, "the list scrolls sideways");
    // It is all in the link, and a reload brings it back.
    const sum = await total(page);
    await page.reload();
    await atRest(page);
    assert.equal(await job(page), "buy");
    assert.equal(await total(page), sum);
    assert.equal((await row(page, "Emitter"))[1], `${packs} packs of 25`);
  },
  phone,
);

behaviour("what was said of a part that is needed no more is kept, and said to be", async ({ page, address }) => {
  await open(page, address);
  await inJob(page, "buy");
  await price(page, "filter");
  await type(page, "bought.1.price", "31");
  assert.doesNotMatch(await text(page, "#parts"), /does not count/);
  await see(page, "f-filter.present");
  await page.select(box("filter.present"), "no");
  await atRest(page);
  await inJob(page, "buy");
  assert.match(await text(page, "#parts"), /What you said of 1 part does not count here/);
  await see(page, "/buy/bought");
  assert.match(await text(page, '[id="s-bought.1"]'), /on the list no more: filter/);
  assert.equal(await page.$eval(box("bought.1.price"), (e) => /** @type {HTMLInputElement} */ (e).value), "31");
  await see(page, "f-filter.present");
  await page.select(box("filter.present"), "yes");
  await atRest(page);
  await inJob(page, "buy");
  assert.match((await row(page, "Filter"))[2], /^31\.00( |$)/);
});

behaviour("a first plan has the currency of where the reader is", async ({ page, address }) => {
  await page.evaluateOnNewDocument(() => Object.defineProperty(navigator, "languages", { get: () => ["de", "de-CH", "en-US"] }));
  const walk = new Walk(page, "a first plan");
  await page.goto(address);
  await page.waitForFunction(() => /** @type {HTMLElement} */ (document.querySelector("[data-wait]")).hidden);
  await walk.pick("ask.crop.1", "tomato");
  for (const id of ["ask.medium-bucket", "ask.supply-mains"]) await walk.tap(`label:has([id="f-${id}"])`);
  for (const [id, typed] of Object.entries({ "ask.plants.1": "6", "ask.length": "5", "ask.width": "2", "ask.distance": "3", "ask.rise": "0" })) await walk.type(id, typed);
  await walk.tap(".ask__do .button--main");
  await inJob(page, "buy");
  assert.equal(await text(page, "#parts thead th:last-child"), "Price, CHF");
  assert.match(await text(page, "#parts"), /Amounts are in CHF as they were typed: nothing is converted/);
});
