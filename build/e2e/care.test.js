// What is said against what can hurt: in the steps, in the tasks of the season, and in their calendar file.
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { behaviour } from "./browser.js";
import { choose, explored, inJob, open } from "./form.js";
import { root } from "./site.js";

const relieve = "Pressure: stop the water and let it out before you open a joint or an end, and keep your face away from it.";
const unplug = "Current: pull the plug with dry hands";

/** What stands in sight, without what is folded away. @param {import("puppeteer-core").Page} page @param {string} selector */
const inSight = (page, selector) => page.$$eval(selector, (all) => all.filter((e) => e.checkVisibility()).map((e) => e.textContent ?? ""));

behaviour("a step and a task say what can hurt, in sight and on a phone, and a tap has no pump", async ({ page, address }) => {
  await page.setViewport({ width: 360, height: 740 });
  await open(page, address);
  for (const pumped of [true, false]) {
    if (!pumped) await choose(page, "supply.kind", "mains");
    await inJob(page, "build");
    await page.$eval("#d-steps", (d) => { d.open = true; });
    const steps = await inSight(page, ".step");
    const flush = steps.find((text) => text.includes("Flush, then close the ends")) ?? "";
    assert.ok(flush.includes(relieve), flush);
    assert.equal(steps.some((text) => text.includes(unplug)), pumped);
    await inJob(page, "grow");
    await explored(page);
    await page.$eval("#d-tasks", (d) => { d.open = true; });
    const rows = (await inSight(page, "#tasks td")).join("\n");
    assert.match(rows, pumped ? /Flush all ends Beware: current, pressure, wet floor, drain\./ : /Flush all ends Beware: pressure, wet floor, drain\./);
    const said = await inSight(page, "#tasks .hazard");
    assert.ok(said.includes(relieve), said.join());
    assert.equal(said.some((text) => text.startsWith(unplug)), pumped);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 360);
  }
});

behaviour("the calendar file says it with each task", async () => {
  const file = await new Promise((resolve, reject) => {
    const build = execFile("go", ["run", "./build", "calendar"], { cwd: root, maxBuffer: 64 << 20 }, (fault, out) => (fault ? reject(fault) : resolve(out)));
    build.stdin?.end('{"format": "evenrow plan 1"}');
  });
  const events = file.replaceAll("\r\n ", "").replaceAll("\\,", ",").split("BEGIN:VEVENT").slice(1);
  const flush = events.filter((event) => event.includes("SUMMARY:Flush all ends"));
  assert.ok(flush.length > 1);
  for (const event of flush) assert.ok(event.includes(relieve) && event.includes(unplug), event);
  assert.ok(events.filter((event) => event.includes("SUMMARY:Set the timer")).every((event) => !event.includes(unplug)));
});
