// The plan page in a browser that runs no scripts.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
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
  await unfold(page, button);
  const [answer] = await Promise.all([page.waitForNavigation(), page.click(button)]);
  return answer?.status();
}

/** @param {import("puppeteer-core").Page} page @param {string} selector */
const text = (page, selector) => page.$eval(selector, (e) => e.textContent ?? "");

/** Unfolds what an element is folded into. @param {import("puppeteer-core").Page} page @param {string} selector */
const unfold = (page, selector) =>
  page.$eval(selector, (e) => {
    for (let up = e.parentElement; up; up = up.parentElement) if (up instanceof HTMLDetailsElement) up.open = true;
  });

/** @param {import("puppeteer-core").Page} page @param {string} id @param {string} value */
async function type(page, id, value) {
  await unfold(page, `[id="${id}"]`);
  await page.$eval(`[id="${id}"]`, (e) => { if (e instanceof HTMLInputElement) e.value = ""; });
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
  // Of several rows one is open at a time: the button of another sends what was typed by now.
  assert.equal(await press(page, '[id="s-rows.1"]'), 200);
  assert.equal(await page.evaluate(() => document.activeElement?.id), "s-rows.1", "the row has the focus");
  await type(page, "f-rows.1.plants", "31");
  assert.equal(await press(page, send), 200);
  assert.match(await text(page, "#answer"), /4 rows, 121 plants/);
  assert.equal(await text(page, "#head"), "Aunt Ann's tunnel");
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
  assert.equal(await text(page, "#head"), "Plot <2>");
  assert.deepEqual(faults, []);
});

test("without scripts, rows come and go by the same buttons", limit, async () => {
  const { page, faults } = await visit();
  await page.goto(site.address + "plan");
  const rows = async () => (await page.$$("[id^='s-rows.']")).length;
  assert.equal(await rows(), 4);
  assert.equal(await press(page, "button[value='add-row']"), 200);
  assert.equal(await rows(), 5);
  assert.equal(await page.evaluate(() => document.activeElement?.id), "s-rows.5", "the new row has the focus");
  assert.match(await text(page, "#answer"), /5 rows/);
  assert.equal(await press(page, "button[value='remove-row.5']"), 200);
  assert.match(await text(page, "#answer"), /4 rows/);
  assert.deepEqual(faults, []);
});

/** What stands on the page of each job, as far as it takes no longer than the answer. */
const jobs = { answer: "#answer .answer__line", buy: "#parts table", build: "#pieces", grow: "#season svg", water: "#timer table", mend: "#outage", why: "#budget table" };

test("without scripts, each job has an address of its own, with the plan in it", limit, async () => {
  const { page, faults } = await visit(390);
  await page.goto(site.address + "plan");
  await type(page, "f-name", "Plot 7");
  await type(page, "f-all.plants", "20");
  assert.equal(await press(page, send), 200);
  for (const [job, place] of Object.entries(jobs)) {
    const link = `.jobs a[href$="/${job}"]`;
    const title = await text(page, link);
    assert.equal(await press(page, link), 200);
    assert.match(page.url(), new RegExp(`/plan\\?1[\\w-]+/${job}$`));
    assert.equal(await text(page, "#h-job"), title);
    assert.equal(await text(page, '.jobs [aria-current="page"]'), title);
    assert.match(await text(page, "#head"), /Plot 7/);
    assert.match(await text(page, "#line"), /All 80 emitters open/, job);
    assert.ok((await text(page, place)).length > 20, `${job} has no ${place}`);
    for (const [other, of] of Object.entries(jobs)) if (other !== job && of !== "#pieces") assert.equal(await page.$(of), null, `${of} stands in ${job}`);
  }
  // What is typed in one job leaves what stands in the others.
  await Promise.all([page.waitForNavigation(), page.click('.jobs a[href$="/water"]')]);
  await type(page, "f-timer.programmes", "10");
  assert.equal(await press(page, send), 200);
  assert.equal(await text(page, "#h-job"), "Water");
  assert.match(await text(page, "#line"), /All 80 emitters open/);
  assert.match(await text(page, "#head"), /Plot 7/);
  assert.deepEqual(faults, []);
});

test("on paper, each sheet of a plain page has the plan's name and its address", limit, async () => {
  const { page } = await visit();
  await page.goto(site.address + "plan?/buy");
  const link = await page.$eval('[name="good"]', (e) => e.getAttribute("value"));
  const pdf = Buffer.from(await page.pdf({ format: "A4" }));
  const sheets = execFileSync("pdftotext", ["-", "-"], { input: pdf, encoding: "utf8" }).split("\f").slice(0, -1);
  assert.ok(sheets.length > 0 && sheets.length <= 2, `${sheets.length} sheets`);
  for (const [i, sheet] of sheets.entries()) {
    assert.ok(sheet.replace(/\s/g, "").includes(`Millracetunnel${site.address}plan?${link}`), `sheet ${i + 1} has no address: ${sheet.slice(-300)}`);
    assert.match(sheet, new RegExp(`\\b${i + 1} ?/ ?${sheets.length}\\s*$`));
    assert.doesNotMatch(sheet, /Work it out|Keep it, share it/);
  }
});

test("no plain page breaks a rule of accessibility, as an answer or with mistakes", limit, async () => {
  const axe = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
  const page = await browser.newPage();
  for (const path of ["plan", ...Object.keys(jobs).slice(1).map((job) => "plan?/" + job), "plan?place.length=far&supply.kind=gravity", "plan?1zz"]) {
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
