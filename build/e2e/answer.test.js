// The default plan, before the planner has started and after.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, head, link, open, text, told, type, verdict } from "./form.js";

/** @type {Record<string, string>} */
let before;

behaviour(
  "the example plan is worked out without scripts",
  async ({ page, address }) => {
    await page.goto(address);
    assert.equal(await verdict(page), "Yes");
    assert.match(await text(page, ".notice"), /scripts are off/);
    assert.ok((await head(page, "To spare")) > 1);
    before = await told(page);
    for (const [id, shown] of Object.entries(before)) assert.ok(shown.trim().length > 10, `${id} is empty: ${shown}`);
  },
  { script: false },
);

behaviour("the planner gives the same figures as the page came with", async ({ page, address }) => {
  await open(page, address);
  const came = await told(page);
  await type(page, "runs.1.rise", "0.5");
  assert.notDeepEqual(await told(page), came, "an edit changes nothing");
  await type(page, "runs.1.rise", "0.4");
  assert.deepEqual(await told(page), before);
  assert.equal(await verdict(page), "Yes");
});

behaviour("an empty address shows the example plan, also after another", async ({ page, address }) => {
  await open(page, address);
  await type(page, "runs.1.rise", "3");
  await open(page, address + (await link(page)));
  const risen = await told(page);
  assert.notDeepEqual(risen, before);
  await page.evaluate(() => { location.hash = ""; });
  await page.waitForFunction((was) => document.getElementById("answer")?.textContent !== was, {}, risen.answer);
  await atRest(page);
  assert.deepEqual(await told(page), before);
});

behaviour("nothing jumps while the planner starts", async ({ page, address }) => {
  for (const width of [360, 1280]) {
    await page.setViewport({ width, height: 800 });
    await open(page, address);
    const jumps = await page.evaluate(() => new Promise((resolve) => setTimeout(() => resolve(window.e2e.jumps), 300)));
    assert.ok(jumps < 0.002, `the content jumps by ${jumps} at ${width} px`);
  }
});
