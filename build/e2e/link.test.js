// A plan is a link: opened elsewhere it is the same plan with the same figures.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, choose, example, fields, figure, inJob, link, number, open, press, text, told, type, verdict } from "./form.js";
import { command } from "./site.js";

behaviour("a link opened by somebody else gives the same form and the same figures", async ({ page, address, another }) => {
  await open(page, address);
  await type(page, "name", "Größe & Co. #1?");
  await type(page, "runs.1.rise", "2,75");
  await type(page, "rows.2.spacing", "0.4");
  await choose(page, "rows.3.crop", "melon, trained up");
  await press(page, "copy-row.1");
  await type(page, "points.3.head", "21");
  await choose(page, "header.feed", "middle");
  const typed = { ...(await fields(page)), "runs.1.rise": "2.75" };
  const elsewhere = await another();
  await open(elsewhere, address + (await link(page)));
  assert.deepEqual(await fields(elsewhere), typed);
  assert.deepEqual(await told(elsewhere), await told(page));
  assert.equal(await elsewhere.title(), "Größe & Co. #1? – Evenrow");
});

behaviour("the page and the command line work out the same figures from a link", async ({ page, address }) => {
  await open(page, address);
  await type(page, "runs.1.rise", "4.2");
  await type(page, "rows.4.plants", "60");
  await type(page, "rows.4.slope", "-3");
  for (const plan of [await link(page), await planOf(page, "Long field"), await planOf(page, "Balcony")]) {
    await page.goto("about:blank");
    await open(page, address + plan);
    const metric = (await page.$eval('input[name="units"]:checked', (e) => e.value)) === "metric";
    const native = JSON.parse(await command(["solve"], await command(["link", plan])));
    assert.match(await text(page, "#answer .answer__line"), new RegExp(`^${escaped(native.answer.split(". ")[0])}`));
    const zone = native.zones.find((z) => z.zone === native.weakest_zone) ?? native.zones[0];
    const foot = metric ? 1 : 0.3048;
    const flow = metric ? 60_000 : 15_850.3231;
    const [, margin] = /\((.*)\)/.exec(await figure(page, zone.margin_m < 0 ? "It lacks" : "To spare", "lastChild")) ?? [];
    same(margin, Math.abs(zone.margin_m) / foot);
    same(await figure(page, "Plants alike (EU)"), zone.plants_evenness.eu * 100);
    same(await figure(page, "Flow"), zone.flow_m3_s * flow);
    assert.match(await text(page, "#answer .figures"), new RegExp(`row ${zone.worst.row}, plant ${zone.worst.plant}`));
    assert.equal(native.verdict.toLowerCase(), (await verdict(page)).toLowerCase().split(",")[0]); // what it rests on stands behind a comma
  }
});

/**
 * Holds a printed figure against a number: to half its last digit.
 * @param {string} shown
 * @param {number} want
 */
function same(shown, want) {
  const digits = shown.match(/\d+\.(\d+)/)?.[1].length ?? 0;
  const half = 0.5 * 10 ** -digits;
  assert.ok(Math.abs(number(shown) - want) <= half * 1.0001, `the page shows ${shown}, the command line ${want}`);
}

const escaped = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

const planOf = (page, title) =>
  page.$$eval("#examples a", (all, title) => all.find((a) => a.textContent === title)?.getAttribute("href"), title);

behaviour("the whole address is shown, copied and printed", async ({ page, address }) => {
  await open(page, address);
  await type(page, "runs.1.rise", "1.5");
  const whole = address + (await link(page));
  assert.equal(await page.$eval("#link", (e) => e.value), whole);
  for (const job of ["buy", "grow", "water"]) {
    await inJob(page, job);
    assert.deepEqual(await page.$$eval("[data-link-text]", (all) => all.map((e) => e.textContent)), [whole], `the card of ${job}`);
  }
  await inJob(page, "all");
  await page.browserContext().overridePermissions(new URL(address).origin, ["clipboard-read", "clipboard-sanitized-write"]);
  await page.click('[data-do="copy"]');
  await page.waitForFunction(() => document.querySelector('[data-do="copy"]')?.textContent === "Copied");
  assert.equal(await page.evaluate(() => navigator.clipboard.readText()), whole);
});

behaviour("going back and forth between links opens their plans", async ({ page, address }) => {
  await open(page, address);
  await example(page, "Balcony");
  await example(page, "The wrong pump");
  await page.goBack();
  await page.waitForFunction(() => document.querySelector("#head b")?.textContent === "Balcony");
  await atRest(page);
  assert.match(await verdict(page), /^Yes/);
  assert.equal((await fields(page)).name, "Balcony");
});

behaviour("a damaged link says so and keeps the plan", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  await type(page, "runs.1.rise", "1.5");
  const good = await link(page);
  const kept = await told(page);
  const form = await fields(page);
  const middle = Math.floor(good.length / 2);
  const damaged = ["#1", "#1!!!!", "#9abcdef", good.slice(0, -5), good.slice(0, middle) + "____" + good.slice(middle + 4), "#" + "1".repeat(40_000)];
  for (const bad of damaged) {
    await page.evaluate((bad) => {
      document.activeElement?.blur();
      location.hash = bad;
    }, bad);
    await page.waitForFunction(() => document.activeElement?.id === "message");
    await atRest(page);
    const message = await text(page, "#message");
    assert.match(message, /^This link cannot be opened\. .{10,}\. The plan that stood here is still here\.$/, bad.slice(0, 40));
    assert.deepEqual(await told(page), kept);
    assert.deepEqual(await fields(page), form);
  }
  // The message goes as soon as the plan goes on.
  await type(page, "runs.1.rise", "1.6");
  assert.equal(await text(page, "#message"), "");
});

behaviour("a damaged link in a new tab leaves the example", async ({ page, address }) => {
  await open(page, address + "#1zzzz");
  assert.match(await text(page, "#message"), /cannot be opened/);
  assert.equal(await verdict(page), "Yes");
  assert.equal((await fields(page)).name, "Millrace tunnel");
});
