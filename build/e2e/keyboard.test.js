// Everything can be reached and done with Tab, Enter, Space and the arrows.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, explored, open, see, text, verdict } from "./form.js";
import { guides } from "./guides.js";

/** @param {import("puppeteer-core").Page} page */
const at = (page) =>
  page.evaluate(() => {
    const e = document.activeElement;
    const style = getComputedStyle(e);
    const label = e.closest("label");
    // What is out of sight lends its outline to what is seen in its place.
    const shown = label && label.classList.contains("button") ? getComputedStyle(label) : style;
    const strip = e.querySelector(".strip");
    return {
      key: `${e.tagName.toUpperCase()} ${e.id || e.getAttribute("href") || e.value || e.textContent?.trim().slice(0, 40)}`,
      id: e.id,
      body: e === document.body,
      width: strip ? Number.parseFloat(getComputedStyle(strip).strokeWidth) : Number.parseFloat(shown.outlineWidth),
      style: strip ? "solid" : shown.outlineStyle,
      shown: e.getClientRects().length > 0,
    };
  });

/**
 * Presses Tab until something has the focus.
 * @param {import("puppeteer-core").Page} page
 * @param {string} key as [at] names it
 */
async function tabTo(page, key) {
  for (let i = 0; i < 400; i++) {
    await page.keyboard.press("Tab");
    if ((await at(page)).key === key) return;
  }
  assert.fail(`Tab does not lead to ${key}`);
}

/** @param {import("puppeteer-core").Page} page */
async function everyStop(page) {
  const want = await page.evaluate(() => {
    const all = document.querySelectorAll("a[href], button, input:not([type=hidden]), select, summary, [tabindex='0']");
    const radios = new Set();
    return [...all].filter((e) => {
      if (e.tabIndex < 0 || !e.checkVisibility() || e.disabled) return false;
      if (e.type !== "radio") return true;
      if (radios.has(e.name) || !e.checked) return false;
      return radios.add(e.name);
    }).length;
  });
  const stops = [await at(page)];
  for (let i = 0; i < want + 40; i++) {
    await page.keyboard.press("Tab");
    const stop = await at(page);
    if (stop.body) break;
    stops.push(stop);
  }
  return { want, stops };
}

for (const where of ["start", "answer", "answer/rows/rows.2", "buy", "build/emitters", "grow/season", "water/timer", "mend", "why", "all"]) {
  behaviour(`Tab stops at every control, in sight and outlined: ${where}`, async ({ page, address }) => {
    await open(page, `${address}#/answer`);
    await see(page, "/" + where);
    await explored(page);
    await page.focus(".skip"); // Tab goes on from where one was led to: from the first stop on
    const { want, stops } = await everyStop(page);
    for (const stop of stops) {
      assert.ok(stop.shown, `${stop.key} has the focus and is not shown`);
      assert.ok(stop.width >= 2 && stop.style !== "none", `${stop.key} has no outline: ${JSON.stringify(stop)}`);
    }
    // Regions that scroll may be stops of their own.
    assert.ok(want > 10 && stops.length >= want, `${stops.length} stops for ${want} controls`);
  });
}

behaviour("the first stop skips to the content", async ({ page, address }) => {
  for (const path of ["", "#/answer", guides[1]]) {
    await page.goto("about:blank");
    await page.goto(address + path);
    if (path.startsWith("#")) await atRest(page);
    await page.keyboard.press("Tab");
    assert.equal((await at(page)).key, "A #main");
    const top = await page.evaluate(() => document.activeElement.getBoundingClientRect().top);
    assert.ok(top >= 0, "the skip link is out of sight");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Tab");
    assert.ok(await page.evaluate(() => Boolean(document.activeElement?.closest("main"))), `${path}: the next stop is not in the content`);
  }
});

behaviour("a plan is changed without a mouse", async ({ page, address }) => {
  await open(page, address);
  // A group is opened with Enter. The units, by arrow.
  await tabTo(page, "SUMMARY t-place");
  await page.keyboard.press("Enter");
  await tabTo(page, "INPUT f-units-metric");
  await page.keyboard.press("ArrowDown");
  await page.waitForFunction(() => document.querySelector('[id="f-place.length"]')?.value !== "12");
  await atRest(page);
  assert.equal((await at(page)).id, "f-units-us");
  await page.keyboard.press("ArrowUp");
  await page.waitForFunction(() => document.querySelector('[id="f-place.length"]')?.value === "12");
  await atRest(page);
  // A number: Tab selects it, typing replaces it.
  await tabTo(page, "INPUT f-place.water");
  await page.keyboard.type("15");
  await atRest(page);
  assert.equal(await page.$eval('[id="f-place.water"]', (e) => e.value), "15");
  // A choice, by arrows; the form changes on the way, the focus stays.
  await tabTo(page, "SUMMARY t-supply");
  await page.keyboard.press("Enter");
  await tabTo(page, "SELECT f-supply.kind");
  for (let i = 0; i < 4; i++) {
    await page.keyboard.press("ArrowDown");
    await atRest(page);
  }
  assert.ok(await page.$('[id="f-supply.static"]'));
  assert.equal((await at(page)).id, "f-supply.kind");
  // A folded row is opened with Enter, and copied with Space.
  await tabTo(page, "SUMMARY t-rows");
  await page.keyboard.press("Enter");
  await tabTo(page, "SUMMARY One row by itself (4)");
  await page.keyboard.press("Enter");
  await tabTo(page, "BUTTON s-rows.2");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement?.id === "s-rows.2" && document.querySelector('[id="d-rows.2"]'));
  await tabTo(page, "BUTTON copy-row.2");
  await page.keyboard.press("Space");
  await page.waitForFunction(() => document.activeElement?.id === "s-rows.3");
  assert.match(await text(page, ".answer__plan"), /5 rows/);
  // It is taken back, and made again.
  for (const [keys, rows] of [["z", 4], ["y", 5]]) {
    await page.keyboard.down("Control");
    await page.keyboard.press(keys);
    await page.keyboard.up("Control");
    await page.waitForFunction((rows) => document.querySelector(".answer__plan")?.textContent.includes(`${rows} rows`), {}, rows);
  }
  // Another job, by its link.
  await tabTo(page, "A #/water");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement?.id === "h-job" && document.activeElement.textContent === "Water");
  await atRest(page);
  await tabTo(page, "A #/answer");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement?.textContent === "Answer");
  await atRest(page);
  // Enter in a field works the plan out.
  await tabTo(page, "SUMMARY t-limits");
  await page.keyboard.press("Enter");
  await tabTo(page, "INPUT f-limits.reserve");
  await page.keyboard.press("Enter");
  await atRest(page);
  assert.ok(["Yes", "Nearly", "No"].includes(await verdict(page)));
});

behaviour("a row of the picture opens its plants, and a picture's table opens", async ({ page, address }) => {
  await open(page, address);
  await tabTo(page, "A #plants-2");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.querySelector("#plants-2")?.open);
  assert.ok(await page.evaluate(() => Boolean(document.activeElement?.closest("#plants-2"))));
});
