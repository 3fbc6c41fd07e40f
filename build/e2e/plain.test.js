// The plan page in a browser that runs no scripts.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { launch } from "./chromium.js";
import { shared } from "./site.js";

const limit = { timeout: 240_000 };

/** @type {import("puppeteer-core").Browser} */
let browser;
/** @type {{address: string, stop: () => Promise<void>}} */
let site;
before(async () => {
  [browser, site] = await Promise.all([launch(), shared()]);
}, limit);
after(async () => {
  await browser?.close();
  await site?.stop();
}, limit);

/** A page of a browser with scripts off. @param {number} [width] */
async function visit(width = 1280) {
  const page = await browser.newPage();
  await page.setJavaScriptEnabled(false);
  await page.setViewport({ width, height: 900 });
  /** @type {string[]} */
  const faults = [];
  page.on("console", (message) => {
    // That the form had a mistake is told as a status too.
    if (!message.text().includes("status of 422")) faults.push(message.text());
  });
  page.on("request", (request) => {
    if (!request.url().startsWith(site.address)) faults.push(`request to ${request.url()}`);
  });
  return { page, faults };
}

/**
 * Presses a button and waits for the page that follows.
 * @param {import("puppeteer-core").Page} page
 * @param {string} button
 */
async function press(page, button) {
  await page.$eval(button, (e) => {
    for (let up = e.parentElement; up; up = up.parentElement) if (up instanceof HTMLDetailsElement) up.open = true;
  });
  const [answer] = await Promise.all([page.waitForNavigation(), page.click(button)]);
  return answer?.status();
}

/** @param {import("puppeteer-core").Page} page @param {string} selector */
const text = (page, selector) => page.$eval(selector, (e) => e.textContent ?? "");

/** @param {import("puppeteer-core").Page} page @param {string} id @param {string} value */
async function type(page, id, value) {
  await page.$eval(`[id="${id}"]`, (e) => {
    for (let up = e.parentElement; up; up = up.parentElement) if (up instanceof HTMLDetailsElement) up.open = true;
    if (e instanceof HTMLInputElement) e.value = "";
  });
  await page.type(`[id="${id}"]`, value);
}

const send = "#plan > p > button";

test("without scripts, a form is filled in, sent and answered", limit, async () => {
  const { page, faults } = await visit();
  await page.goto(site.address);
  await Promise.all([page.waitForNavigation(), page.click("noscript a")]);
  assert.match(page.url(), /\/plan$/);
  assert.match(await text(page, "#answer"), /Yes\.\s+All 120 emitters open/);
  await type(page, "f-name", "Aunt Ann's tunnel");
  // One row is opened by itself, with what was typed before.
  assert.equal(await press(page, "button[value='show.answer/rows/rows.1']"), 200);
  assert.match(await text(page, "#head"), /Aunt Ann's tunnel/);
  await type(page, "f-rows.1.plants", "31");
  assert.equal(await press(page, send), 200);
  assert.match(await text(page, "#answer"), /Aunt Ann's tunnel\s+4 rows, 121 plants/);
  assert.equal(await page.$eval('[id="f-rows.1.plants"]', (e) => e.getAttribute("value")), "31");
  assert.match(await page.title(), /Aunt Ann's tunnel/);

  // The address of the page holds the same plan.
  const said = await text(page, "#answer");
  await Promise.all([page.waitForNavigation(), page.click("[aria-labelledby=h-share] a[href^='plan?1']")]);
  assert.equal(await text(page, "#answer"), said);

  // And so do the addresses of the other jobs.
  await Promise.all([page.waitForNavigation(), page.click("nav.jobs a[href$='/water']")]);
  assert.equal(await text(page, "#h-job"), "Water");
  assert.match(await text(page, "#head"), /Aunt Ann's tunnel/);
  assert.match(await text(page, "#line"), /All 121 emitters open/);
  assert.match(await text(page, "#timer"), /Card for the timer/);
  await Promise.all([page.waitForNavigation(), page.click("nav.jobs a[href$='/answer']")]);
  assert.equal(await text(page, "#answer"), said);
  assert.deepEqual(faults, []);
});

test("without scripts, a mistake stands beside its field and all that was typed is kept", limit, async () => {
  const { page, faults } = await visit(390);
  await page.goto(site.address + "plan");
  const good = await text(page, "#answer");
  await type(page, "f-place.length", "twelve");
  await type(page, "f-name", "Plot <2>");
  assert.equal(await press(page, send), 422);
  assert.match(await text(page, "#errors"), /1 thing to put right/);
  assert.match(await text(page, '[id="e-place.length"]'), /must be a number.*"twelve" is kept/);
  for (const [id, value] of [["f-place.length", "twelve"], ["f-name", "Plot <2>"]]) {
    assert.equal(await page.$eval(`[id="${id}"]`, (e) => e.getAttribute("value")), value);
  }
  assert.equal(await text(page, "#answer"), good, "the last good answer stays");
  await type(page, "f-place.length", "12.5");
  assert.equal(await press(page, send), 200);
  assert.match(await text(page, "#answer"), /Plot <2>/);
  assert.deepEqual(faults, []);
});

test("without scripts, rows come and go by the same buttons", limit, async () => {
  const { page, faults } = await visit();
  await page.goto(site.address + "plan");
  assert.equal((await page.$$("[id^='s-rows.']")).length, 4);
  assert.equal(await press(page, "button[value='add-row']"), 200);
  assert.equal((await page.$$("[id^='s-rows.']")).length, 5);
  assert.equal(await page.evaluate(() => document.activeElement?.id), "s-rows.5", "the new row has the focus");
  assert.match(await text(page, "#answer"), /5 rows/);
  assert.equal(await press(page, "button[value='remove-row.5']"), 200);
  assert.match(await text(page, "#answer"), /4 rows/);
  assert.deepEqual(faults, []);
});

test("no plain page breaks a rule of accessibility, as an answer or with mistakes", limit, async () => {
  const axe = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
  const page = await browser.newPage();
  await page.goto(site.address + "plan");
  const jobs = await page.$$eval("nav.jobs a:not([aria-current])", (all) => all.map((a) => a.getAttribute("href")));
  assert.ok(jobs.length > 4, `${jobs}`);
  for (const path of ["plan", "plan?place.length=far&supply.kind=gravity", "plan?1zz", ...jobs]) {
    for (const [width, scheme] of /** @type {[number, string][]} */ ([[1280, "dark"], [360, "light"]])) {
      await page.setViewport({ width, height: 740 });
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
      await page.goto(site.address + path);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(wide <= 0, `${path} at ${width} px scrolls sideways by ${wide} px`);
      await page.evaluate(axe);
      const found = await page.evaluate(async () =>
        // @ts-ignore: axe is there by now
        (await window.axe.run({ resultTypes: ["violations"] })).violations.map((v) => `${v.id}: ${v.help}: ${v.nodes[0].target.join(" ")}`),
      );
      assert.deepEqual(found, [], `${path} at ${width} px, ${scheme}`);
    }
  }
});

test("the planner leads to the plain page of the plan that it shows", limit, async () => {
  const page = await browser.newPage();
  await page.goto(site.address);
  const link = await page.waitForFunction(() => /** @type {HTMLAnchorElement} */ (document.querySelector("[data-plain]")).search.slice(1));
  assert.ok((await page.$eval("[data-link]", (e) => /** @type {HTMLInputElement} */ (e).value)).endsWith("#" + (await link.jsonValue())));
});
