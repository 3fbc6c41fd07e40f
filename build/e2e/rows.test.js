// Rows and other records come, go and change places with all that they hold.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, choose, fields, figure, inJob, open, press, see, text, told, type } from "./form.js";

/** @param {Record<string, string>} held @param {string} name */
const column = (held, name) => Object.keys(held).filter((k) => new RegExp(`^rows\\.\\d+\\.${name}$`).test(k)).sort((a, b) => Number(a.split(".")[1]) - Number(b.split(".")[1])).map((k) => held[k]);

behaviour("rows are added, copied, moved and removed", async ({ page, address }) => {
  await open(page, address);
  for (const [i, n] of ["11", "12", "13", "14"].entries()) await type(page, `rows.${i + 1}.plants`, n);
  const plants = async () => column(await fields(page), "plants").join(" ");
  const focus = () => page.evaluate(() => document.activeElement?.id);
  assert.equal(await plants(), "11 12 13 14");
  await press(page, "row-up.3");
  assert.equal(await plants(), "11 13 12 14");
  assert.equal(await focus(), "s-rows.2");
  assert.equal(await text(page, '[id="s-rows.2"]'), "Row 2: tomato, 13 plants");
  await press(page, "row-down.1");
  assert.equal(await plants(), "13 11 12 14");
  await press(page, "copy-row.2");
  assert.equal(await plants(), "13 11 11 12 14");
  assert.equal(await focus(), "s-rows.3");
  await press(page, "remove-row.1");
  assert.equal(await plants(), "11 11 12 14");
  await press(page, "add-row");
  assert.equal(await plants(), "11 11 12 14 14");
  assert.equal(await focus(), "s-rows.5");
  assert.match(await text(page, "#answer .answer__plan"), /5 rows, 62 plants/);
  for (let i = 5; i > 1; i--) await press(page, `remove-row.${i}`);
  assert.equal(await page.$('button[value="remove-row.1"]'), null, "the last row can be removed");
  assert.equal(await plants(), "11");
});

behaviour("runs, points and emitters come and go", async ({ page, address }) => {
  await open(page, address);
  await press(page, "add-run");
  await press(page, "add-emitter");
  await press(page, "remove-point.4");
  await press(page, "copy-run.1");
  const held = await fields(page);
  assert.equal(held["runs.3.length"], "8");
  assert.equal(held["emitters.2.flow"], "2");
  assert.equal(held["points.4.flow"], undefined);
  await inJob(page, "why");
  assert.match(await text(page, "#budget"), /run 3/);
  // A new point has to be filled in before there is an answer.
  await press(page, "add-point");
  assert.equal((await fields(page))["points.4.flow"], "");
  assert.match(await text(page, "#errors h2"), /2 things to put right/);
  await type(page, "points.4.flow", "60");
  await type(page, "points.4.head", "5");
  assert.equal(await text(page, "#errors"), "");
});

behaviour("rows of two zones are worked out one after another", async ({ page, address }) => {
  await open(page, address);
  await type(page, "rows.3.zone", "2");
  await type(page, "rows.4.zone", "2");
  assert.match(await figure(page, "Flow"), /^2\.00 L\/min/);
  await inJob(page, "build");
  assert.match(await text(page, "#speeds"), /zone 1.*zone 2/s);
});

behaviour("US units and back keep every value", async ({ page, address }) => {
  await open(page, address);
  await type(page, "runs.1.rise", "1.23");
  const metric = await fields(page);
  const before = await told(page);
  await see(page, "f-units");
  await page.click('[id="f-units-us"]');
  await page.waitForFunction(() => document.querySelector('[id="f-place.length"]')?.value !== "12");
  await atRest(page);
  const us = await fields(page);
  // The boxes show what a tape or a gauge can tell: within five parts in 10⁵.
  for (const [path, exact] of [["place.length", 12 / 0.3048], ["emitters.1.opens", 10.15264], ["emitters.1.flow", 0.5283441]]) {
    assert.ok(Math.abs(Number(us[path]) - exact) < 5e-5 * exact, `${path} ${us[path]}`);
    assert.ok(us[path].length <= 7, us[path]);
  }
  assert.match(await figure(page, "Weakest emitter"), / psi$/);
  await see(page, "f-place.length");
  assert.match(await text(page, '[id="f-place.length"] + .field__unit'), /^ft$/);
  assert.equal(await text(page, "#errors"), "");
  await see(page, "f-units");
  await page.click('[id="f-units-metric"]');
  await page.waitForFunction(() => document.querySelector('[id="f-place.length"]')?.value === "12");
  await atRest(page);
  assert.deepEqual(await fields(page), metric);
  assert.deepEqual(await told(page), before);
});

behaviour("one line through all rows has no header to ask for", async ({ page, address }) => {
  await open(page, address);
  await choose(page, "header.layout", "line");
  assert.equal(await page.$('[id="f-header.tube"]'), null);
  await inJob(page, "why");
  assert.match(await text(page, "#budget"), /Friction in the line/);
});
