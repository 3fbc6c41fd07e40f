// Designs that the tool finds, taken over by one press.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, example, explored, inJob, open, text, verdict } from "./form.js";

behaviour("the long field becomes a design that serves, in one press", async ({ page, address }) => {
  await open(page, address);
  await example(page, "Long field");
  assert.doesNotMatch(await verdict(page), /^Yes/);
  await explored(page);
  assert.match(await text(page, "#designs"), /designs were compared/);
  const asked = await page.evaluate(() => window.e2e.asked);
  await page.$eval('#designs a[href^="#"]', (a) => a.click());
  await page.waitForFunction((asked) => window.e2e.asked > asked, {}, asked);
  await atRest(page);
  assert.match(await verdict(page), /^Yes/);
  await inJob(page, "why");
  await explored(page);
  assert.match(await text(page, "#zones"), /zone/);
});

behaviour("the ring says what it gains", async ({ page, address }) => {
  await open(page, address);
  await example(page, "Loop");
  await inJob(page, "why");
  await explored(page);
  assert.match(await text(page, "#ring"), /far header gives the weakest emitter [\d.]+\sbar \([\d.]+\sm\) more/);
});
