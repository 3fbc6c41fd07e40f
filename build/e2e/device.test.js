// Where the device keeps nothing, or is full, or has what nobody can read, the page
// says so and works on.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { again, back, held, noted, stands, typedNow } from "./drafts.js";
import { atRest, example, fields, inJob, link, open, text, type, verdict } from "./form.js";
import { alike } from "./plans.js";
import { command } from "./site.js";

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
    await type(page, "name", "Mine");
    await type(page, "place.width", "wide");
    await type(page, "log.1.out", "40");
    assert.equal(await page.$$eval("#log .if-kept, #log .if-lost", (all) => all.filter((e) => e.checkVisibility()).map((e) => e.className).join()), "if-lost");
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
  // The log's own line stands in another job.
  const ofLog = async () => {
    await inJob(page, "water");
    return page.$$eval("#log .if-kept, #log .if-lost", (all) => all.filter((e) => e.checkVisibility()).map((e) => e.className).join());
  };
  assert.equal(await said(), false);
  assert.equal(await ofLog(), "if-kept");
  // What is kept gets shorter once more when the plan has its link; the room that
  // leaves would be enough for the name below.
  await link(page);
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
  await again(page, address);
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
