// What somebody may type, or put into a link, to break the page.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { fields, link, open, openPlan, paste, press, see, text, type, verdict } from "./form.js";
import { alike } from "./plans.js";
import { overflow } from "./sight.js";

const hostile = "<img src=x onerror=alert(1)>\"'&amp;</title><b>x";

/** @param {import("puppeteer-core").Page} page */
async function staysText(page) {
  assert.equal(await text(page, "#head b"), hostile);
  assert.equal(await page.title(), `${hostile} – Evenrow`);
  assert.equal(await page.$eval('[id="f-name"]', (e) => e.value), hostile);
  assert.deepEqual(await page.$$eval("img, b b, [onerror]", (all) => all.map((e) => e.outerHTML)), []);
}

behaviour("a name with markup stays text, typed and by link", async ({ page, address, another }) => {
  await open(page, address);
  await paste(page, "name", hostile);
  await staysText(page);
  const elsewhere = await another();
  await open(elsewhere, address + (await link(page)));
  await staysText(elsewhere);
});

behaviour("markup in a number or a link is told as text", async ({ page, address }) => {
  await open(page, address);
  await paste(page, "place.length", hostile);
  assert.ok((await text(page, '[id="e-place.length"]')).includes("<img src=x onerror=alert(1)>"));
  await page.evaluate((bad) => { location.hash = bad; }, hostile);
  await page.waitForFunction(() => document.activeElement?.id === "message");
  assert.deepEqual(await page.$$eval("img, [onerror]", (all) => all.map((e) => e.outerHTML)), []);
});

behaviour(
  "a name of sixty letters without a gap fits a phone",
  async ({ page, address }) => {
    await open(page, address);
    await paste(page, "name", "W".repeat(60));
    assert.equal(await text(page, "#errors"), "");
    assert.deepEqual(await overflow(page), []);
  },
  { width: 320, height: 740 },
);

behaviour("odd letters are kept", async ({ page, address, another }) => {
  const odd = "🌶️ żółw \u202eabc\u200b 中文 e\u0301";
  await open(page, address);
  await paste(page, "name", odd);
  const elsewhere = await another();
  await open(elsewhere, address + (await link(page)));
  assert.equal((await fields(elsewhere)).name, odd);
});

for (const width of [360, 1280]) {
  behaviour(
    `forty rows fit and can be edited at ${width} px`,
    async ({ page, address }) => {
      await openPlan(page, address, alike(40, 10, "Forty rows"));
      assert.match(await text(page, ".answer__plan"), /40 rows, 400 plants/);
      assert.deepEqual(await overflow(page), []);
      await type(page, "rows.40.plants", "12");
      assert.match(await text(page, ".answer__plan"), /402 plants/);
      await press(page, "remove-row.39");
      assert.match(await text(page, ".answer__plan"), /39 rows, 392 plants/);
      assert.equal((await fields(page))["rows.39.plants"], "12");
      assert.ok(["Yes", "Nearly"].includes(await verdict(page)));
    },
    { width, height: 740 },
  );
}

behaviour("typing faster than the planner answers loses nothing", async ({ page, address }) => {
  await openPlan(page, address, alike(10, 100));
  await see(page, "f-name");
  await page.$eval('[id="f-name"]', (e) => e.select());
  await page.focus('[id="f-name"]');
  const name = "typed without a pause for any answer";
  await page.keyboard.type(name);
  await page.focus('[id="f-place.length"]');
  await page.keyboard.type("1"); // before or behind the figures there: a mistake would leave the last good answer
  await page.waitForFunction(() => window.e2e.asked === window.e2e.answered);
  assert.equal((await fields(page)).name.endsWith(name), true);
  assert.equal(await text(page, "#head b"), (await fields(page)).name);
});
