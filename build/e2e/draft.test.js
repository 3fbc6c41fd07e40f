// Nothing that is typed is lost: not by a mistake, a reload, another plan, a file,
// a second tab, a text that is too long, or a page that dies.
import assert from "node:assert/strict";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before } from "node:test";
import { behaviour } from "./browser.js";
import { crash } from "./crash.js";
import { atRest, box, choose, example, explored, fields, link, open, paste, press, text, type, verdict } from "./form.js";
import { alike } from "./plans.js";
import { command } from "./site.js";

/** @typedef {import("puppeteer-core").Page} Page */

/** @type {string} */
let folder;
before(async () => { folder = await mkdtemp(join(tmpdir(), "evenrow-")); });
after(() => rm(folder, { recursive: true, force: true }));

/** What is typed in a field. @param {Page} page @param {string} path */
const held = (page, path) => page.$eval(box(path), (e) => e.value);

/** Waits until a plan of that name stands on the page. @param {Page} page @param {string} name */
async function stands(page, name) {
  await page.waitForFunction((name) => document.querySelector('[id="f-name"]')?.value === name && document.documentElement.dataset.opening === undefined, {}, name);
  await atRest(page);
}

/** Goes back in the history. @param {Page} page */
const back = (page) => page.evaluate(() => history.back());

/** A key, or a paste, as the page hears it, whatever the test is doing. @param {Page} page @param {string} path @param {string} typed */
const typedNow = (page, path, typed) =>
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
const noted = (page, rows) => page.waitForFunction((rows) => Object.entries(rows).every(([row, out]) => document.getElementById(`f-log.${row}.out`)?.value === out), { polling: 100 }, rows);

/** Has every reply of the planner come late, by as long as the page is told. @param {Page} page not yet at the site */
const slowly = (page) =>
  page.evaluateOnNewDocument(() => {
    window.lateBy = 0;
    const Real = window.Worker;
    window.Worker = class extends Real {
      addEventListener(kind, hear) {
        super.addEventListener(kind, kind === "message" ? (event) => (window.lateBy && event.data.reply ? setTimeout(hear, window.lateBy, event) : hear(event)) : hear);
      }
    };
  });

/** 73 kB of daily weather. */
const days = Array.from({ length: 3180 }, (_, i) => `${2019 + Math.floor(i / 365)}-${String((i % 12) + 1).padStart(2, "0")}-${String((i % 28) + 1).padStart(2, "0")}\t${(i % 30).toFixed(1).padStart(4)}\t${(-i % 15).toFixed(2).padStart(6)}\n`).join("");

behaviour("a text that is too long is refused where it stands, and all else stays", async ({ page, address }) => {
  assert.ok(days.length > 70_000 && days.length < 76_000, `${days.length}`);
  await open(page, address);
  await choose(page, "sky.climate", "own");
  await type(page, "runs.1.rise", "1,5");
  const before = await fields(page);
  await paste(page, "name", "Mine");
  await link(page);
  const answer = await text(page, "#answer");
  await typedNow(page, "months-table", days);
  await atRest(page);
  const errors = await page.$$eval("#errors a", (all) => all.map((a) => [a.getAttribute("href"), a.textContent]));
  assert.equal(errors.length, 1, JSON.stringify(errors));
  assert.equal(errors[0][0], "#f-months-table");
  assert.match(errors[0][1], /must be at most 4 kB, not 7[0-9] kB: paste the means of twelve months/);
  assert.match(await text(page, "#e-months-table"), /at most 4 kB/);
  assert.deepEqual(await fields(page), { ...before, name: "Mine", "months-table": days });
  assert.equal(await text(page, "#answer"), answer);
  // Also where the form is drawn anew.
  await press(page, "add-row");
  const after = await fields(page);
  assert.equal(after["months-table"], days);
  assert.equal(after["rows.5.plants"], "30");
  for (const path of Object.keys(before)) if (path !== "name" && path !== "months-table") assert.equal(after[path], before[path], path);
  await page.reload();
  await atRest(page);
  assert.deepEqual(await fields(page), after);
  // Taken away again, there is an answer.
  await page.$eval("#f-months-table", (field) => {
    field.focus();
    field.select();
  });
  await page.keyboard.press("Backspace");
  await atRest(page);
  assert.equal(await text(page, "#errors"), "");
}, { both: true });

behaviour("a mistake is kept over a reload, an example and Back, a guide and Back", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  await type(page, "runs.1.rise", "1.5");
  const good = await link(page);
  await type(page, "place.width", "wide");
  await type(page, "runs.1.length", "12");
  await type(page, "rows.2.spacing", "");
  const typed = await fields(page);
  const same = async (/** @type {string} */ when) => {
    await atRest(page);
    assert.deepEqual(await fields(page), typed, when);
    assert.match(await text(page, "#errors h2"), /^2 things to put right/, when);
    assert.match(await text(page, "#stale"), /last good plan/, when);
    assert.match(await text(page, "#answer .answer__plan"), /^Mine/, when);
    assert.equal(await verdict(page), "Yes", when);
    assert.equal(await page.evaluate(() => location.hash), good, when);
  };
  await page.reload();
  await same("after a reload");
  await example(page, "Balcony");
  assert.equal(await text(page, "#errors"), "");
  await back(page);
  await stands(page, "Mine");
  await same("after an example and Back");
  await page.goto(address + "guides.html");
  await back(page);
  await page.waitForSelector("#plan");
  await stands(page, "Mine");
  await same("after a guide and Back");
  await page.evaluate(() => { location.href = location.href; }); // as by Enter in the line of the address
  await same("after its own address");
  await type(page, "place.width", "5");
  await type(page, "rows.2.spacing", "0.33");
  assert.equal(await text(page, "#errors"), "");
}, { both: true, expected: /favicon\.ico/ }); // which Firefox looks for by itself when it goes back

behaviour("a plain address brings the plan that was worked on last, and says so", async ({ page, address }) => {
  await open(page, address);
  assert.equal(await held(page, "name"), "Millrace tunnel");
  assert.ok(await page.$eval("[data-back]", (e) => e.hidden));
  assert.ok(await page.$eval("[data-plans]", (e) => e.hidden));
  await type(page, "name", "Mine");
  await type(page, "runs.1.rise", "much");
  await page.goto(address + "guides.html");
  await page.click(".top__nav a"); // the planner
  await stands(page, "Mine");
  assert.equal(await held(page, "runs.1.rise"), "much");
  assert.ok(await page.$eval("[data-back]", (e) => e.checkVisibility()));
  assert.match(await text(page, "[data-back]"), /plan that you last worked on/);
  await type(page, "runs.1.rise", "1.25");
  const mine = await link(page);
  const start = await page.evaluate(async () => new URL((await (await fetch(document.querySelector('link[rel="manifest"]').href)).json()).start_url, document.querySelector('link[rel="manifest"]').href).href);
  await page.goto(start);
  await stands(page, "Mine");
  await page.waitForFunction((mine) => location.hash === mine, {}, mine);
  // An example is looked at; nobody has worked on it.
  await example(page, "Balcony");
  assert.ok(await page.$eval("[data-back]", (e) => e.hidden));
  await page.goto("about:blank");
  await open(page, address);
  await stands(page, "Mine");
  // The reader comes back to the example, and from there to the plan.
  await page.click('[data-back] a[href="#h-examples"]');
  assert.equal(await page.evaluate(() => document.activeElement?.id), "h-examples");
  await example(page, "Millrace tunnel");
  assert.equal(await held(page, "runs.1.rise"), "0.4");
  assert.deepEqual(await page.$$eval("[data-plans] a", (all) => all.map((a) => a.textContent)), ["Mine"]);
  await page.$eval("[data-plans] a", (a) => a.click());
  await stands(page, "Mine");
  assert.equal(await held(page, "runs.1.rise"), "1.25");
}, { both: true });

behaviour("a link opens its plan, whatever was worked on before, and comes back with its log", async ({ page, address, beside }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  const mine = await link(page);
  await page.focus('[id="f-log.1.out"]');
  await page.keyboard.type("40");
  await atRest(page);
  const sent = "#" + (await command(["link"], await command(["example", "balcony"]))).trim().replace(/^#/, "");
  const other = await beside();
  await open(other, address + sent);
  assert.equal(await held(other, "name"), "Balcony");
  assert.equal(await held(other, "log.1.out"), "");
  await other.goto(address + "guides.html");
  await open(other, address + mine);
  assert.equal(await held(other, "name"), "Mine");
  await noted(other, { 1: "40" });
}, { both: true });

behaviour("the link of a kept plan brings that plan as it was typed last; an example's link an example", async ({ page, address, beside }) => {
  await open(page, address);
  const example = await page.$eval("[data-link]", (e) => new URL(e.value).hash);
  // Begun from the example, with nothing but a mistake yet.
  await type(page, "place.width", "wide");
  await page.focus('[id="f-log.1.out"]');
  await page.keyboard.type("40");
  await atRest(page);
  const other = await beside();
  await open(other, address + example);
  assert.equal(await held(other, "place.width"), "5");
  await noted(other, { 1: "" });
  await page.bringToFront();
  await type(page, "place.width", "6");
  await type(page, "name", "Mine");
  const mine = await link(page);
  await type(page, "runs.1.rise", "high");
  await page.close(); // and with it what this tab alone has
  await other.goto("about:blank");
  await open(other, address + mine);
  await stands(other, "Mine");
  assert.equal(await held(other, "runs.1.rise"), "high");
  assert.match(await text(other, "#stale"), /last good plan/);
  await noted(other, { 1: "40" });
  await type(other, "runs.1.length", "long");
  const third = await beside();
  await open(third, address);
  await stands(third, "Mine");
  assert.deepEqual([await held(third, "runs.1.rise"), await held(third, "runs.1.length")], ["high", "long"]);
}, { both: true });

behaviour("a file over an unsaved plan: Back brings it, with its mistakes and its log", async ({ page, address }) => {
  const file = join(folder, "other.json");
  await writeFile(file, (await command(["example", "balcony"])).replace('"Balcony"', '"From a file"'));
  await open(page, address);
  await type(page, "name", "Mine");
  await type(page, "runs.1.rise", "much");
  await page.focus('[id="f-log.1.out"]');
  await page.keyboard.type("40");
  await atRest(page);
  const typed = await fields(page);
  await (await page.$("input[data-open]")).uploadFile(file);
  await stands(page, "From a file");
  await noted(page, { 1: "" });
  await page.focus('[id="f-log.2.out"]');
  await page.keyboard.type("22");
  await back(page);
  await stands(page, "Mine");
  assert.deepEqual(await fields(page), typed);
  assert.match(await text(page, "#errors"), /Run 1: rise/);
  await noted(page, { 1: "40" });
  assert.equal(await held(page, "log.2.out"), "");
  await page.evaluate(() => history.forward());
  await stands(page, "From a file");
  await noted(page, { 2: "22" });
  // It is on the device, too, not only in the history of this tab.
  await page.goto("about:blank");
  await open(page, address);
  await stands(page, "From a file");
  await page.$eval("[data-plans] a", (a) => a.click());
  await stands(page, "Mine");
  assert.equal(await held(page, "runs.1.rise"), "much");
  // What is said of the plan that was worked on last is not said of a file.
  await page.goto("about:blank");
  await open(page, address);
  await stands(page, "Mine");
  assert.ok(await page.$eval("[data-back]", (e) => e.checkVisibility()));
  await (await page.$("input[data-open]")).uploadFile(file);
  await stands(page, "From a file");
  assert.equal(await page.$eval("[data-back]", (e) => e.checkVisibility()), false);
});

behaviour("what is typed right after a row's button is kept, and the button does what it says", async ({ page, address }) => {
  await slowly(page);
  await open(page, address);
  await explored(page);
  await page.evaluate(() => { window.lateBy = 150; });
  /** @param {string} button @param {Record<string, string>} typed in the same moment, by path */
  const pressed = (button, typed) =>
    page.evaluate((button, typed) => {
      document.querySelector(button).click();
      for (const [path, text] of Object.entries(typed)) {
        const box = document.getElementById("f-" + path);
        box.value = text;
        box.dispatchEvent(new InputEvent("input", { bubbles: true }));
      }
    }, button, typed);
  await pressed('button[value="remove-row.1"]', { "rows.3.plants": "11", "rows.4.plants": "12", "place.width": "5,5" });
  await page.waitForFunction(() => !document.querySelector('[id="f-rows.4.plants"]'));
  await atRest(page);
  const now = await fields(page);
  assert.deepEqual([now["rows.1.plants"], now["rows.2.plants"], now["rows.3.plants"], now["rows.4.plants"], now["place.width"]], ["30", "11", "12", undefined, "5,5"]);
  // And so of the log.
  await pressed('button[value="log-add"]', { "log.1.out": "33" });
  await page.waitForFunction(() => document.querySelector('[id="f-log.4.out"]'));
  await atRest(page);
  assert.equal(await held(page, "log.1.out"), "33");
  // A number that is typed while the units change is of the units that it was typed in.
  await pressed('[id="f-units-us"]', { "place.length": "10" });
  await page.waitForFunction(() => Math.abs(Number(document.querySelector('[id="f-place.length"]')?.value) - 10 / 0.3048) < 0.01);
}, { both: true });

behaviour("a kept plan is forgotten by its own button, and put back by the same, with the keyboard alone", async ({ page, address, beside }) => {
  await open(page, address);
  for (const [name, out] of [["First <b>", "40"], ["Second", "41"]]) {
    await example(page, "Balcony");
    await type(page, "name", name);
    await typedNow(page, "log.1.out", out);
    await atRest(page);
  }
  await example(page, "Millrace tunnel");
  await noted(page, { 1: "" });
  const names = () => page.$$eval("[data-plans] a", (all) => all.map((a) => a.textContent));
  /** What is in the list, and what of it has the focus. */
  const buttons = () => page.$$eval("[data-plans] button", (all) => all.map((b) => (b === document.activeElement ? "*" : "") + b.textContent.replace(/\s/g, " ")));
  const onDevice = () => page.evaluate(() => [localStorage, sessionStorage].flatMap((store) => Object.keys(store).map((key) => store.getItem(key))).join());
  assert.deepEqual(await names(), ["Second", "First <b>"]);
  assert.deepEqual(await buttons(), ["Forget Second", "Forget First <b>"]);
  assert.match(await onDevice(), /First.*log\.1\.out=40|log\.1\.out=40.*First/s);

  await page.$$eval("[data-plans] button", (all) => all[1].focus());
  await page.keyboard.press("Enter");
  assert.deepEqual(await names(), ["Second"]);
  assert.deepEqual(await buttons(), ["Forget Second", "*Put back First <b>"]);
  const words = /First <b> and its log are forgotten on this device\. The history of the browser may still hold its link\./;
  assert.match(await text(page, "[data-plans]"), words);
  assert.match(await text(page, "[data-announce]"), words);
  assert.doesNotMatch(await onDevice(), /First|log\.1\.out=40/);
  assert.match(await onDevice(), /Second/);
  // What another tab does draws the list anew.
  const other = await beside();
  await open(other, address);
  await stands(other, "Second");
  await type(other, "runs.1.rise", "-1.5");
  assert.deepEqual(await other.$$eval("[data-plans] button", (all) => all.map((b) => b.textContent)), []);
  await page.bringToFront();
  assert.deepEqual(await buttons(), ["Forget Second", "*Put back First <b>"]);

  await page.keyboard.press("Enter");
  assert.deepEqual(await names(), ["Second", "First <b>"]);
  assert.equal(await text(page, "[data-announce]"), "First <b> and its log are back.");
  assert.deepEqual(await buttons(), ["Forget Second", "*Forget First <b>"]);
  await page.$$eval("[data-plans] a", (all) => all[1].click());
  await stands(page, "First <b>");
  await noted(page, { 1: "40" });
  assert.deepEqual(await names(), ["Second"]);

  // Forgotten, and the page left, it is gone; the list goes with the last.
  await page.$eval("[data-plans] button", (b) => b.click());
  assert.deepEqual(await names(), []);
  await page.reload();
  await stands(page, "First <b>");
  assert.ok(await page.$eval("[data-plans]", (e) => e.hidden));
  assert.doesNotMatch(await onDevice(), /Second|log\.1\.out=41/);
}, { both: true });

behaviour("a kept plan whose name is one long word makes a narrow page no wider", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "Plan-averyveryverylongwordinitthatnobodybreaks");
  await example(page, "Balcony");
  assert.ok(await page.$eval("[data-plans] a", (a) => a.checkVisibility()));
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
}, { width: 360 });

behaviour("what is drawn as before is drawn over what was typed since", async ({ page, address }) => {
  await open(page, address);
  await example(page, "Balcony");
  const drawn = await fields(page);
  await type(page, "place.width", "wide");
  await type(page, "runs.1.rise", "1");
  await example(page, "Balcony"); // anew: the plan that was typed in is another
  await atRest(page);
  assert.deepEqual(await fields(page), drawn);
  assert.equal(await text(page, "#errors"), "");
  await back(page);
  await page.waitForFunction(() => document.querySelector('[id="f-place.width"]')?.value === "wide");
  // And so the log: that of one plan is not that of the next.
  for (const out of ["40", "41"]) {
    await example(page, "Balcony");
    await noted(page, { 1: "" });
    await typedNow(page, "log.1.out", out);
    await atRest(page);
  }
}, { both: true });

behaviour("a reload right after a key keeps the key", async ({ page, address }) => {
  await open(page, address);
  for (const typed of ["1", "2.", "3,5", "wide"]) {
    await page.evaluate((field, typed) => {
      document.querySelector(field).value = typed;
      document.querySelector(field).dispatchEvent(new InputEvent("input", { bubbles: true }));
      location.reload();
    }, box("runs.1.rise"), typed);
    await page.waitForNavigation();
    await atRest(page);
    assert.equal(await held(page, "runs.1.rise"), typed);
  }
}, { both: true });

behaviour("what is typed before the script arrives is answered and kept", async ({ page, address }) => {
  await page.evaluateOnNewDocument(() => {
    // As soon as there are boxes, and before any module runs.
    new MutationObserver((_, watch) => {
      const boxes = ["f-runs.1.rise", "f-header.feed", "f-log.1.out"].map((id) => document.getElementById(id));
      if (window.typed || boxes.some((box) => !box)) return;
      window.typed = true;
      watch.disconnect();
      boxes[0].value = "28";
      boxes[1].value = "middle";
      boxes[2].value = "44";
    }).observe(document, { childList: true, subtree: true });
  });
  await open(page, address);
  assert.ok(await page.evaluate(() => window.typed));
  await page.waitForFunction(() => document.querySelector("#answer .answer__line .word")?.textContent?.startsWith("No"));
  assert.equal(await held(page, "runs.1.rise"), "28");
  assert.equal(await held(page, "header.feed"), "middle");
  await page.evaluateOnNewDocument(() => { window.typed = true; });
  await page.goto("about:blank");
  await open(page, address);
  assert.equal(await held(page, "runs.1.rise"), "28");
  await noted(page, { 1: "44" });
}, { both: true });

behaviour("a page that dies has kept what was typed", async ({ page, address, beside }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  await type(page, "place.width", "wide");
  await page.focus('[id="f-log.1.out"]');
  await page.keyboard.type("40");
  await typedNow(page, "runs.1.rise", "2,");
  await crash(page);
  const after = await beside();
  await open(after, address);
  await stands(after, "Mine");
  assert.equal(await held(after, "place.width"), "wide");
  assert.equal(await held(after, "runs.1.rise"), "2,");
  await noted(after, { 1: "40" });
  assert.match(await text(after, "[data-back]"), /plan that you last worked on, as this device has kept it/);
  assert.ok(await after.$eval("[data-back]", (e) => e.checkVisibility()));
  assert.match(await text(after, "#stale"), /not to what the form holds now/);
}, { both: true, expected: /^page crash: Page crashed!$/ });

behaviour("two tabs of one plan have a form each, and one log", async ({ page, address, beside }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  const other = await beside();
  await open(other, address);
  await stands(other, "Mine");
  await page.bringToFront();
  await type(page, "runs.1.rise", "first");
  await other.bringToFront();
  await type(other, "runs.1.length", "second");
  assert.equal(await held(page, "runs.1.length"), "8");
  for (const [tab, rise, length] of /** @type {[Page, string, string][]} */ ([[page, "first", "8"], [other, "0.4", "second"]])) {
    await tab.bringToFront();
    await tab.reload();
    await atRest(tab);
    assert.deepEqual([await held(tab, "runs.1.rise"), await held(tab, "runs.1.length")], [rise, length]);
  }
  const third = await beside();
  await open(third, address);
  await stands(third, "Mine");
  assert.equal(await held(third, "runs.1.length"), "second", "the plain address does not bring what was typed last");

  // The log: each sees what the other notes.
  await page.bringToFront();
  await page.focus('[id="f-log.1.out"]');
  await page.keyboard.type("40");
  await noted(other, { 1: "40" });
  await other.bringToFront();
  await other.focus('[id="f-log.2.out"]');
  await other.keyboard.type("25");
  await noted(page, { 2: "25" });
  await page.bringToFront();
  await page.focus('[id="f-log.1.out"]');
  await page.keyboard.press("End");
  await page.keyboard.type(",5");
  await noted(other, { 1: "40,5" });
  for (const tab of [page, other]) {
    await tab.reload();
    await noted(tab, { 2: "25", 1: "40,5" });
  }
  // A row that both begin before they have heard of each other.
  await page.evaluate(() => {
    const there = { text: "log.1.out=40%2C5&log.2.out=25&log.3.out=11" };
    const key = Object.keys(localStorage).find((key) => key.startsWith("evenrow-1-log-"));
    localStorage.setItem(key, JSON.stringify(there));
  });
  await typedNow(page, "log.3.out", "12");
  for (const tab of [page, other]) {
    await noted(tab, { 3: "12", 4: "11" });
  }
}, { both: true });

behaviour("what another tab has typed of a plan is not undone by a tab that only shows it, and is what its list brings", async ({ page, address, beside }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  await type(page, "runs.1.rise", "1");
  await link(page);
  const other = await beside();
  await open(other, address);
  await stands(other, "Mine");
  await type(other, "runs.1.rise", "2");
  await link(other);
  await other.close();

  // The first tab leaves the plan, without a key.
  await page.bringToFront();
  await example(page, "Balcony");
  const third = await beside();
  await open(third, address);
  await stands(third, "Mine");
  assert.equal(await held(third, "runs.1.rise"), "2", "on the device");
  await third.close();
  await page.bringToFront();
  await page.$eval("[data-plans] a", (a) => a.click());
  await stands(page, "Mine");
  assert.equal(await held(page, "runs.1.rise"), "2", "in the first tab");
}, { both: true });

behaviour("a plan that is forgotten in another tab stands here, is told not to be kept, and is kept anew with the next key", async ({ page, address, beside }) => {
  const keptIs = () => page.$$eval("#log .if-kept, #log .if-lost", (all) => all.filter((e) => e.checkVisibility({ visibilityProperty: true })).map((e) => e.className).join());
  const device = (tab) => tab.evaluate(() => Object.entries(localStorage).join());
  await open(page, address);
  await type(page, "name", "Mine");
  await typedNow(page, "log.1.out", "40");
  await atRest(page);
  const other = await beside();
  await open(other, address);
  await stands(other, "Mine");
  await example(other, "Balcony");
  await noted(other, { 1: "" });
  const turn = () => other.$eval("[data-plans] button", (b) => b.click());
  await turn();
  assert.doesNotMatch(await device(other), /Mine|log\.1\.out=40/);

  await page.bringToFront();
  await page.waitForFunction(() => document.documentElement.dataset.keeps === "no");
  assert.equal(await keptIs(), "if-lost");
  await atRest(page);
  assert.equal(await held(page, "log.1.out"), "40", "the log went from under the reader");
  // A glance at another plan keeps nothing.
  await example(page, "Balcony");
  assert.doesNotMatch(await device(page), /Mine|log\.1\.out=40/);
  await back(page);
  await stands(page, "Mine");
  await other.bringToFront();
  await turn();
  await page.bringToFront();
  await noted(page, { 1: "40" });
  assert.equal(await keptIs(), "if-kept");

  await other.bringToFront();
  await turn();
  await page.bringToFront();
  await page.waitForFunction(() => document.documentElement.dataset.keeps === "no");
  await type(page, "runs.1.rise", "1");
  assert.match(await device(page), /log\.1\.out=40/);
  assert.equal(await keptIs(), "if-kept");
  await page.reload();
  await stands(page, "Mine");
  await noted(page, { 1: "40" });
}, { both: true });

behaviour("the one log from before is taken over by the plan that it is written for", async ({ page, address }) => {
  await page.goto(address + "guides.html");
  await page.evaluate(() => localStorage.setItem("evenrow-log", "log.1.day=2027-07-12&log.1.out=40"));
  await open(page, address);
  await noted(page, { 1: "40" });
  await page.focus('[id="f-log.2.out"]');
  await page.keyboard.type("30");
  await atRest(page);
  await example(page, "Balcony");
  await noted(page, { 1: "" });
  await back(page);
  await noted(page, { 1: "40", 2: "30" });
  assert.equal(await page.evaluate(() => localStorage.getItem("evenrow-log")), null);
});

for (const [name, how, said] of /** @type {[string, () => void, string][]} */ ([
  ["denied", () => {
    for (const kind of ["localStorage", "sessionStorage"]) Object.defineProperty(window, kind, { get: () => { throw new DOMException("denied", "SecurityError"); } });
  }, "denied"],
  ["missing", () => {
    for (const kind of ["localStorage", "sessionStorage"]) Object.defineProperty(window, kind, { value: null });
  }, "denied"],
  ["full", () => {
    Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
  }, "full"],
])) {
  behaviour(`where the device's store is ${name}, the page says so and works on`, async ({ page, address }) => {
    await page.evaluateOnNewDocument(how);
    await open(page, address);
    assert.ok(await page.$eval(`[data-${said}]`, (e) => e.checkVisibility()));
    assert.match(await text(page, `[data-${said}]`), /save the plan as a file/);
    assert.equal(await page.$$eval("#log .if-kept, #log .if-lost", (all) => all.filter((e) => e.checkVisibility()).map((e) => e.className).join()), "if-lost");
    await type(page, "name", "Mine");
    await type(page, "place.width", "wide");
    await page.focus('[id="f-log.1.out"]');
    await page.keyboard.type("40");
    await atRest(page);
    const typed = await fields(page);
    await example(page, "Balcony");
    await noted(page, { 1: "" });
    await back(page);
    await stands(page, "Mine");
    assert.deepEqual(await fields(page), typed, "the page itself has forgotten it");
    await noted(page, { 1: "40" });
  }, { both: true });
}

behaviour("where the store is full of a sudden, the page says so from then on, until there is room", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  const said = () => page.$eval("[data-full]", (e) => e.checkVisibility());
  const ofLog = () => page.$$eval("#log .if-kept, #log .if-lost", (all) => all.filter((e) => e.checkVisibility()).map((e) => e.className).join());
  assert.equal(await said(), false);
  assert.equal(await ofLog(), "if-kept");
  // Really full: by a neighbour on the same host.
  await page.evaluate(() => {
    let more = "x".repeat(1 << 20);
    for (let i = 0; more.length > 2; i++) {
      try {
        localStorage.setItem(`neighbour-${i}`, more);
      } catch {
        more = more.slice(more.length / 2);
      }
    }
  });
  await type(page, "name", "Mine, with a name that takes more room than before");
  assert.equal(await said(), true);
  assert.equal(await ofLog(), "if-lost");
  await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("neighbour-")).forEach((key) => localStorage.removeItem(key)));
  await type(page, "place.width", "5.5");
  assert.equal(await said(), false);
  assert.equal(await ofLog(), "if-kept");
}, { both: true });

behaviour("what the device has kept and nobody can read is told, and left as it is", async ({ page, address }) => {
  const spoilt = { "evenrow-1-plan-abc": "garbage", "evenrow-1-plan-abd": "null", "evenrow-1-log-abc": '{"te', "evenrow-2-plan-x": '{"text":"of a later day"}' };
  await page.goto(address + "guides.html");
  await page.evaluate((spoilt) => Object.entries(spoilt).forEach(([key, text]) => localStorage.setItem(key, text)), spoilt);
  await open(page, address);
  assert.equal(await verdict(page), "Yes");
  assert.ok(await page.$eval("[data-unread]", (e) => e.checkVisibility()));
  assert.ok(await page.$eval("[data-newer]", (e) => e.checkVisibility()));
  await type(page, "name", "Mine");
  await page.goto("about:blank");
  await open(page, address);
  await stands(page, "Mine");
  assert.deepEqual(await page.evaluate((keys) => keys.map((key) => localStorage.getItem(key)), Object.keys(spoilt)), Object.values(spoilt));
}, { both: true });

behaviour("the largest plan is kept at every key, and back after a reload", async ({ page, address }) => {
  const plan = (await command(["link"], JSON.stringify(alike(60, 66)))).trim();
  await open(page, address + plan);
  await typedNow(page, "rows.60.spacing", "wide");
  await atRest(page);
  await page.reload();
  await page.waitForFunction(() => document.documentElement.dataset.opening === undefined);
  await atRest(page);
  assert.equal(await held(page, "rows.60.spacing"), "wide");
  assert.match(await text(page, "#errors"), /Row 60: spacing/);
});

behaviour("a reload that finds nothing of what the history was told a moment ago brings what was typed", async ({ page, address }) => {
  await page.evaluateOnNewDocument(() => {
    if (sessionStorage.getItem("lost")) history.replaceState(null, "");
    const real = window.setTimeout;
    window.setTimeout = (what, ms, ...more) => real(what, ms === 400 ? 1e9 : ms, ...more); // nor has the address caught up
  });
  await open(page, address);
  await paste(page, "runs.1.rise", "2");
  await paste(page, "runs.1.rise", "3");
  await page.evaluate(() => sessionStorage.setItem("lost", "yes"));
  await paste(page, "rows.1.plants", "17");
  await page.reload();
  await atRest(page);
  const { "runs.1.rise": rise, "rows.1.plants": plants } = await fields(page);
  assert.deepEqual([rise, plants], ["3", "17"]);
});
