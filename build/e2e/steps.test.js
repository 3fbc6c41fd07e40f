// The steps of building, the boxes that are ticked, and the places of parts on the plan view.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, choose, inJob, open, paste } from "./form.js";

/** @param {import("puppeteer-core").Page} page */
const ticked = (page) => page.$$eval("[data-tick]", (all) => all.filter((box) => box.checked).map((box) => box.dataset.tick));

/** Which lines are lit on the picture in sight. @param {import("puppeteer-core").Page} page */
const lit = (page) => page.$$eval("[data-spot].lit", (all) => all.filter((place) => place.getClientRects().length).map((place) => place.getAttribute("data-spot")));

/** The list, with every counter of it unfolded. @param {import("puppeteer-core").Page} page */
async function list(page) {
  await inJob(page, "buy");
  await page.$$eval("#parts details", (all) => all.forEach((d) => { d.open = true; }));
}

behaviour("the steps are read and ticked on a phone", async ({ page, address }) => {
  await page.setViewport({ width: 360, height: 740 });
  await open(page, address);
  await inJob(page, "build");
  await page.$eval("#d-steps", (d) => { d.open = true; });
  const titles = await page.$$eval(".step h3", (all) => all.map((h) => h.textContent.trim()));
  assert.match(titles[0], /^1\. /);
  const order = ["filter", "header", "rows", "outlet", "first water", "Flush", "Emitters", "leaks", "gauges", "cup test"].map((what) => titles.findIndex((t) => t.includes(what)));
  assert.ok(order.every((at, i) => at > (order[i - 1] ?? -1)), `${titles}`);
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 360);
  // Each caution stands in sight, above what is done.
  assert.ok(await page.$$eval(".step", (all) => all.every((step) => {
    const says = step.querySelector("p:not(.hazard)");
    return [...step.querySelectorAll(".hazard")].every((h) => h.checkVisibility() && h.getBoundingClientRect().bottom <= says.getBoundingClientRect().top);
  })));
  await page.click('[data-tick="step filter"]');
  assert.deepEqual(await ticked(page), ["step filter"]);
});

behaviour("a tick stays over an edit, a reload and another job, and goes with its plan", async ({ page, address }) => {
  await open(page, address);
  await list(page);
  const box = await page.waitForSelector('#parts [data-tick="filter"]');
  await box.click();
  await inJob(page, "build");
  await page.$eval("#d-steps", (d) => { d.open = true; });
  await page.click('[data-tick="step place"]');
  await paste(page, "rows.1.spacing", "0.4"); // draws the list anew
  await list(page);
  assert.deepEqual(await ticked(page), ["filter"]);
  await page.reload();
  await atRest(page);
  assert.deepEqual(await ticked(page), ["filter"]);
  await inJob(page, "build");
  assert.deepEqual(await ticked(page), ["step place"]);
  // A part that comes back is ticked as it was.
  await choose(page, "filter.present", "no");
  await list(page);
  assert.deepEqual(await ticked(page), []);
  await choose(page, "filter.present", "yes");
  await list(page);
  assert.deepEqual(await ticked(page), ["filter"]);
  await page.click('#parts [data-tick="filter"]');
  await page.reload();
  await atRest(page);
  assert.deepEqual(await ticked(page), []);
});

behaviour("a line of the list lights up its places, and a place leads to its line", async ({ page, address }) => {
  await open(page, address);
  await list(page);
  const caps = await page.$$eval('#parts [data-do="where"]', (all) => ({ ...all.find((b) => b.dataset.said.startsWith("Barbed end cap")).dataset }));
  assert.match(caps.said, /: 4 places$/);
  await page.click(`#line-${caps.line}`);
  assert.equal((await lit(page)).length, 4);
  assert.ok((await lit(page)).every((lines) => lines.includes(` ${caps.line} `)));
  assert.equal(await page.$eval("[data-announce]", (e) => e.textContent), caps.said);
  // More than a colour tells them: the ring is thicker, and broken.
  assert.ok(await page.$$eval("[data-spot] circle", (all) => all.every((circle) => {
    const { strokeWidth, strokeDasharray } = getComputedStyle(circle);
    return circle.parentElement.matches(".lit") === (parseFloat(strokeWidth) >= 3 && strokeDasharray !== "none");
  })));
  // They stay lit over an edit, and the other job has them too.
  await paste(page, "name", "Another name");
  await inJob(page, "build");
  assert.equal((await lit(page)).length, 4);
  await list(page);
  assert.equal(await page.$eval(`#line-${caps.line}`, (b) => b.getAttribute("aria-pressed")), "true");
  await page.click(`#line-${caps.line}`);
  assert.deepEqual(await lit(page), []);
  assert.equal(await page.$eval(`#line-${caps.line}`, (b) => b.getAttribute("aria-pressed")), "false");

  // The reverse: every number that can be picked leads to its line.
  const spots = [];
  for (const spot of await page.$$("#spots a.spot")) if (await spot.isVisible()) spots.push(spot);
  assert.ok(spots.length > 4);
  for (const spot of spots) {
    const to = await spot.evaluate((a) => a.getAttribute("href").slice(1));
    await spot.evaluate((a) => a.dispatchEvent(new MouseEvent("click", { bubbles: true, cancelable: true })));
    assert.equal(await page.evaluate(() => document.activeElement?.id), to);
  }
});

behaviour("places are found by the keyboard alone", async ({ page, address }) => {
  await open(page, address);
  await list(page);
  await page.$eval("#parts [data-do='where']", (b) => b.focus());
  await page.keyboard.press("Space");
  assert.equal(await page.evaluate(() => document.activeElement?.getAttribute("aria-pressed")), "true");
  assert.match(await page.evaluate(() => document.activeElement?.getAttribute("aria-label")), /^1: show where, /);
  assert.ok((await lit(page)).length > 0);
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement?.matches("[data-tick]")), true);
  await page.keyboard.press("Space");
  assert.equal((await ticked(page)).length, 1);
  await page.$eval("#spots a.spot:not(.narrow *)", (a) => a.focus());
  await page.keyboard.press("Enter");
  assert.match(await page.evaluate(() => document.activeElement?.id), /^line-\d+$/);
});

behaviour("on paper the numbers are those of the list, and boxes are as they stand", async ({ page, address }) => {
  await open(page, address);
  await inJob(page, "build");
  await page.emulateMediaType("print");
  const seen = await page.$$eval(".step .number", (all) => all.filter((n) => n.checkVisibility()).length);
  assert.ok(seen > 20, `${seen} numbers`);
  assert.ok(await page.$$eval("#pieces .wide .spot text", (all) => all.length >= 4));
  await page.emulateMediaType("screen");
  const pdf = Buffer.from(await page.pdf({ format: "A4" })).toString("latin1");
  const sheets = pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
  assert.ok(sheets > 0 && sheets <= 5, `${sheets} sheets`);
});
