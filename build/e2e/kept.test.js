// Of the plans that the device keeps the right one stands on the page, with its log:
// after a plain address, a link, another tab, and where one is forgotten.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { again, back, held, noted, stands, typedNow } from "./drafts.js";
import { atRest, example, inJob, job, link, open, press, text, type } from "./form.js";
import { command } from "./site.js";

behaviour("a plain address brings the plan that was worked on last, and says so", async ({ page, address }) => {
  await again(page, address);
  assert.equal(await job(page), "start", "with nothing kept, it begins with the questions");
  await page.goto("about:blank");
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
  await page.waitForFunction((mine) => location.hash.split("/")[0] === mine, {}, mine);
  // An example is looked at; nobody has worked on it.
  await example(page, "Balcony");
  assert.ok(await page.$eval("[data-back]", (e) => e.hidden));
  await page.goto("about:blank");
  await again(page, address);
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
  await type(page, "log.1.out", "40");
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
  await type(page, "log.1.out", "40");
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
  await again(third, address);
  await stands(third, "Mine");
  assert.deepEqual([await held(third, "runs.1.rise"), await held(third, "runs.1.length")], ["high", "long"]);
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
  await inJob(page, "all"); // where the list is
  const names = () => page.$$eval("[data-plans] a", (all) => all.map((a) => a.textContent));
  /** What is in the list, and what of it has the focus. */
  const buttons = () => page.$$eval("[data-plans] [data-do=forget]", (all) => all.map((b) => (b === document.activeElement ? "*" : "") + b.textContent.replace(/\s/g, " ")));
  const onDevice = () => page.evaluate(() => [localStorage, sessionStorage].flatMap((store) => Object.keys(store).map((key) => store.getItem(key))).join());
  assert.deepEqual(await names(), ["Second", "First <b>"]);
  assert.deepEqual(await buttons(), ["Forget Second", "Forget First <b>"]);
  const ids = await page.$$eval("[data-plans] button", (all) => all.map((b) => b.id));
  assert.equal(new Set(ids).size, ids.length, `buttons share an id: ${ids}`);
  assert.match(await onDevice(), /First.*log\.1\.out=40|log\.1\.out=40.*First/s);

  await page.$$eval("[data-plans] [data-do=forget]", (all) => all[1].focus());
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
  await again(other, address);
  await stands(other, "Second");
  await type(other, "runs.1.rise", "-1.5");
  assert.deepEqual(await other.$$eval("[data-plans] [data-do=forget]", (all) => all.map((b) => b.textContent)), []);
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
  await inJob(page, "all");
  await page.click("[data-plans] [data-do=forget]");
  assert.deepEqual(await names(), []);
  await page.reload();
  await stands(page, "First <b>");
  await inJob(page, "all");
  assert.ok(await page.$eval("[data-plans]", (e) => e.hidden));
  assert.doesNotMatch(await onDevice(), /Second|log\.1\.out=41/);
}, { both: true });

behaviour("a kept plan whose name is one long word makes a narrow page no wider", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "Plan-averyveryverylongwordinitthatnobodybreaks");
  await example(page, "Balcony");
  await inJob(page, "all");
  assert.ok(await page.$eval("[data-plans] a", (a) => a.checkVisibility()));
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
}, { width: 360 });

behaviour("two tabs of one plan have a form each, and one log", async ({ page, address, beside }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  const other = await beside();
  await again(other, address);
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
  await again(third, address);
  await stands(third, "Mine");
  assert.equal(await held(third, "runs.1.length"), "second", "the plain address does not bring what was typed last");

  // The log: each sees what the other notes.
  await page.bringToFront();
  await type(page, "log.1.out", "40");
  await noted(other, { 1: "40" });
  await other.bringToFront();
  await press(other, "log-add");
  await type(other, "log.2.out", "25");
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
  await press(page, "log-add");
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
  await again(other, address);
  await stands(other, "Mine");
  await type(other, "runs.1.rise", "2");
  await link(other);
  await other.close();

  // The first tab leaves the plan, without a key.
  await page.bringToFront();
  await example(page, "Balcony");
  const third = await beside();
  await again(third, address);
  await stands(third, "Mine");
  assert.equal(await held(third, "runs.1.rise"), "2", "on the device");
  await third.close();
  await page.bringToFront();
  await page.$eval("[data-plans] a", (a) => a.click());
  await stands(page, "Mine");
  assert.equal(await held(page, "runs.1.rise"), "2", "in the first tab");
}, { both: true });

behaviour("a plan that is forgotten in another tab stands here, is told not to be kept, and is kept anew with the next key", async ({ page, address, beside }) => {
  // The log's own line about it stands in another job than most of what is typed here.
  const keptIs = async () => {
    await inJob(page, "water");
    return page.$$eval("#log .if-kept, #log .if-lost", (all) => all.filter((e) => e.checkVisibility({ visibilityProperty: true })).map((e) => e.className).join());
  };
  const device = (tab) => tab.evaluate(() => Object.entries(localStorage).join());
  await open(page, address);
  await type(page, "name", "Mine");
  await typedNow(page, "log.1.out", "40");
  await atRest(page);
  const other = await beside();
  await again(other, address);
  await stands(other, "Mine");
  await example(other, "Balcony");
  await noted(other, { 1: "" });
  await inJob(other, "all");
  const turn = () => other.$eval("[data-plans] [data-do=forget]", (b) => b.click());
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
  await press(page, "log-add");
  await type(page, "log.2.out", "30");
  await example(page, "Balcony");
  await noted(page, { 1: "" });
  await back(page);
  await noted(page, { 1: "40", 2: "30" });
  assert.equal(await page.evaluate(() => localStorage.getItem("evenrow-log")), null);
});
