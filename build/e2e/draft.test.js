// Nothing that is typed is lost: not by a mistake, a reload, another plan, a file,
// a text that is too long, or a page that dies.
import assert from "node:assert/strict";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before } from "node:test";
import { behaviour } from "./browser.js";
import { crash } from "./crash.js";
import { again, back, held, noted, slowly, stands, typedNow } from "./drafts.js";
import { atRest, box, choose, example, explored, fields, link, open, paste, press, see, text, type, verdict } from "./form.js";
import { tarry } from "./hurry.js";
import { command } from "./site.js";

/** @type {string} */
let folder;
before(async () => { folder = await mkdtemp(join(tmpdir(), "evenrow-")); });
after(() => rm(folder, { recursive: true, force: true }));

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
  const answer = await text(page, "#line");
  await typedNow(page, "months-table", days);
  await atRest(page);
  const errors = await page.$$eval("#errors a", (all) => all.map((a) => [a.getAttribute("href"), a.textContent]));
  assert.equal(errors.length, 1, JSON.stringify(errors));
  assert.equal(errors[0][0], "#f-months-table");
  assert.match(errors[0][1], /must be at most 4 kB, not 7[0-9] kB: paste the means of twelve months/);
  assert.match(await text(page, "#e-months-table"), /at most 4 kB/);
  assert.deepEqual(await fields(page), { ...before, name: "Mine", "months-table": days });
  assert.equal(await text(page, "#line"), answer);
  // Also where the form is drawn anew.
  await press(page, "add-row");
  const after = await fields(page);
  assert.equal(after["months-table"], days);
  assert.equal(after["rows.5.plants"], "30");
  for (const path of Object.keys(before)) if (path !== "name" && path !== "months-table") assert.equal(after[path], before[path], path);
  await page.reload();
  await atRest(page);
  assert.deepEqual(await fields(page), after);
  // Its line leads there from another job. Taken away again, there is an answer.
  assert.equal(await page.$("#f-months-table"), null);
  await page.click("#errors a");
  await atRest(page);
  assert.equal(await page.evaluate(() => document.activeElement?.id), "f-months-table");
  await page.$eval("#f-months-table", (field) => field.select());
  await page.keyboard.press("Backspace");
  await atRest(page);
  assert.equal(await text(page, "#errors"), "");
}, { both: true });

behaviour("a mistake is kept over a reload, an example and Back, a guide and Back", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  await type(page, "runs.1.rise", "1.5");
  const good = await link(page);
  const said = await verdict(page);
  assert.match(said, /^Yes/);
  await type(page, "place.width", "wide");
  await type(page, "runs.1.length", "12");
  await type(page, "rows.2.spacing", "");
  const typed = await fields(page);
  const same = async (/** @type {string} */ when) => {
    await atRest(page);
    assert.deepEqual(await fields(page), typed, when);
    assert.match(await text(page, "#errors h2"), /^2 things to put right/, when);
    assert.match(await text(page, "#stale"), /last good plan/, when);
    assert.equal(await text(page, "#head"), "Mine", when);
    assert.equal(await verdict(page), said, when);
    assert.equal(await page.evaluate(() => location.hash.split("/")[0]), good, when);
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

behaviour("a file over an unsaved plan: Back brings it, with its mistakes and its log", async ({ page, address }) => {
  const file = join(folder, "other.json");
  await writeFile(file, (await command(["example", "balcony"])).replace('"Balcony"', '"From a file"'));
  await open(page, address);
  await type(page, "name", "Mine");
  await type(page, "runs.1.rise", "much");
  await type(page, "log.1.out", "40");
  const typed = await fields(page);
  await (await page.$("input[data-open]")).uploadFile(file);
  await stands(page, "From a file");
  await noted(page, { 1: "" });
  await type(page, "log.1.out", "22");
  await back(page); // to the job before
  await page.waitForSelector("#answer");
  assert.equal(await held(page, "name"), "From a file");
  await back(page);
  await stands(page, "Mine");
  assert.deepEqual(await fields(page), typed);
  assert.match(await text(page, "#errors"), /Run 1: rise/);
  await noted(page, { 1: "40" });
  await page.evaluate(() => history.forward());
  await stands(page, "From a file");
  await noted(page, { 1: "22" });
  // It is on the device, too, not only in the history of this tab.
  await page.goto("about:blank");
  await again(page, address);
  await stands(page, "From a file");
  await page.$eval("[data-plans] a", (a) => a.click());
  await stands(page, "Mine");
  assert.equal(await held(page, "runs.1.rise"), "much");
  // What is said of the plan that was worked on last is not said of a file.
  await page.goto("about:blank");
  await again(page, address);
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
  await see(page, "f-rows.2.plants");
  await pressed('button[value="row-up.2"]', { "rows.2.plants": "11", "place.width": "5,5" });
  await page.waitForFunction(() => document.querySelector('[id="f-rows.1.plants"]')?.value === "11");
  await atRest(page);
  const moved = await fields(page);
  assert.deepEqual([moved["rows.1.plants"], moved["rows.2.plants"], moved["place.width"]], ["11", "30", "5,5"]);
  // What is typed for all rows is typed for those that stay.
  await pressed('button[value="remove-row.1"]', { "all.spacing": "0,31", "place.width": "5,6" });
  await page.waitForFunction(() => document.querySelectorAll('[id^="s-rows."]').length === 3);
  await atRest(page);
  const now = await fields(page);
  assert.deepEqual([now["rows.1.plants"], now["rows.4.plants"], now["place.width"]], ["30", undefined, "5,6"]);
  assert.deepEqual(["rows.1.spacing", "rows.2.spacing", "rows.3.spacing"].map((path) => now[path]), ["0,31", "0,31", "0,31"]);
  // And so of the log.
  await see(page, "f-log.1.out");
  await pressed('button[value="log-add"]', { "log.1.out": "33" });
  await page.waitForFunction(() => document.querySelector('[id="f-log.2.out"]'));
  await atRest(page);
  assert.equal(await held(page, "log.1.out"), "33");
  await see(page, "f-units");
  // A number that is typed while the units change is of the units that it was typed in.
  await pressed('[id="f-units-us"]', { "place.length": "10" });
  await page.waitForFunction(() => Math.abs(Number(document.querySelector('[id="f-place.length"]')?.value) - 10 / 0.3048) < 0.01);
}, { both: true });

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
  await page.waitForFunction(() => document.querySelector('[id="f-runs.1.rise"]')?.value === "1");
  assert.equal(await held(page, "place.width"), "wide");
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
  await see(page, "f-runs.1.rise");
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
      const boxes = ["f-ask.crop.1", "f-ask.plants.1", "f-ask.length", "f-log.1.out"].map((id) => document.getElementById(id));
      if (window.typed || boxes.some((box) => !box)) return;
      window.typed = true;
      watch.disconnect();
      ["tomato", "10", "long", "44"].forEach((typed, i) => { boxes[i].value = typed; });
    }).observe(document, { childList: true, subtree: true });
  });
  const held = () => page.$$eval("#ask :is(input, select):not([type=hidden])", (all) => Object.fromEntries(all.map((e) => [e.name, e.value])));
  const stands = async () => {
    await page.waitForFunction(() => document.getElementById("e-ask.length")?.textContent);
    assert.match(await text(page, '[id="e-ask.length"]'), /must be a number/);
    assert.match(await text(page, "#always"), /^1 thing to put right: Length of the place/);
    const { "ask.crop.1": crop, "ask.plants.1": plants, "ask.length": length } = await held();
    assert.deepEqual([crop, plants, length], ["tomato", "10", "long"]);
    await noted(page, { 1: "44" });
  };
  await again(page, address);
  assert.ok(await page.evaluate(() => window.typed));
  await stands();
  await page.evaluateOnNewDocument(() => { window.typed = true; });
  await page.goto("about:blank");
  await again(page, address);
  await stands();
}, { both: true });

behaviour("a page that dies has kept what was typed", async ({ page, address, beside }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  await type(page, "place.width", "wide");
  await type(page, "log.1.out", "40");
  await typedNow(page, "runs.1.rise", "2,");
  await crash(page);
  const after = await beside();
  await again(after, address);
  await stands(after, "Mine");
  assert.equal(await held(after, "place.width"), "wide");
  assert.equal(await held(after, "runs.1.rise"), "2,");
  await noted(after, { 1: "40" });
  assert.match(await text(after, "[data-back]"), /plan that you last worked on, as this device has kept it/);
  assert.ok(await after.$eval("[data-back]", (e) => e.checkVisibility()));
  assert.match(await text(after, "#stale"), /not to what the form holds now/);
}, { both: true, expected: /^page crash: Page crashed!$/ });

behaviour("a reload that finds nothing of what the history was told a moment ago brings what was typed", async ({ page, address }) => {
  await page.evaluateOnNewDocument(() => {
    if (sessionStorage.getItem("lost")) history.replaceState(null, "");
  });
  await tarry(page, 1e9); // nor has the address caught up, which waits as long
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
