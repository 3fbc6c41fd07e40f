// A plan is also a file.
import assert from "node:assert/strict";
import { mkdtemp, readFile, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before } from "node:test";
import { behaviour } from "./browser.js";
import { atRest, box, choose, explored, fields, inJob, link, open, press, see, text, told, type } from "./form.js";
import { pausing, tarry } from "./hurry.js";

/** @type {string} */
let folder;
before(async () => { folder = await mkdtemp(join(tmpdir(), "evenrow-")); });
after(() => rm(folder, { recursive: true, force: true }));

/**
 * Presses a button that saves something, and returns the name of the file.
 * @param {import("puppeteer-core").Page} page
 * @param {string} what
 * @param {string} job where it stands
 */
async function save(page, what = "save", job = "all") {
  const client = await page.createCDPSession();
  await client.send("Browser.setDownloadBehavior", {
    behavior: "allow",
    downloadPath: folder,
    browserContextId: page.browserContext().id,
    eventsEnabled: true,
  });
  const done = new Promise((resolve) => client.on("Browser.downloadProgress", (e) => e.state === "completed" && resolve(undefined)));
  const before = await readdir(folder);
  await inJob(page, job);
  await page.$eval(`[data-do="${what}"]`, (button) => {
    const fold = button.closest("details");
    if (fold) fold.open = true;
  });
  await page.click(`[data-do="${what}"]`);
  await done;
  const name = (await readdir(folder)).find((name) => !before.includes(name));
  return join(folder, name ?? "");
}

/**
 * Opens a file with the page's own control.
 * @param {import("puppeteer-core").Page} page
 * @param {string} name
 */
async function openFile(page, name) {
  const was = await page.evaluate(() => window.e2e.asked);
  const control = await page.$("input[data-open]");
  await control.uploadFile(name);
  await page.waitForFunction((was) => window.e2e.asked > was, {}, was);
  await atRest(page);
}

behaviour("a saved file opens as the same plan", async ({ page, address, another }) => {
  await open(page, address);
  await type(page, "name", "Tunnel <2> & café");
  await choose(page, "rows.2.crop", "basil");
  await type(page, "runs.1.rise", "-0,5");
  await press(page, "copy-row.3");
  const name = await save(page);
  assert.match(name, /\/tunnel-2-caf[a-z-]*\.json$/);
  const held = { ...(await fields(page)), "runs.1.rise": "-0.5" };
  JSON.parse(await readFile(name, "utf8"));
  const elsewhere = await another();
  await open(elsewhere, address);
  await openFile(elsewhere, name);
  assert.deepEqual(await fields(elsewhere), held);
  assert.deepEqual(await told(elsewhere), await told(page));
});

behaviour("parts, pieces and marks are saved as the tables that a host gives", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "Tables");
  const held = (await link(page)).replace(/.*#/, "");
  for (const [what, job, path, lines] of [["parts", "buy", "plan.csv", 25], ["cuts", "build", "plan-cuts.csv", 9], ["marks", "build", "plan-marks.csv", 120]]) {
    const name = await save(page, what, job);
    assert.match(name, new RegExp(`/tables-${what}\\.csv$`));
    const text = await readFile(name, "utf8");
    assert.equal(text, await (await fetch(`${address}${path}?${held}`)).text());
    assert.ok(text.split("\r\n").length > Number(lines), text);
  }
});

behaviour("a plan with mistakes is not saved, and they are told", async ({ page, address }) => {
  await open(page, address);
  await type(page, "place.length", "none");
  await inJob(page, "all");
  await page.click('[data-do="save"]');
  await page.waitForFunction(() => document.activeElement?.id === "errors");
  assert.match(await text(page, "#errors"), /Place: length along the rows/);
});

behaviour("a damaged file says so and keeps the plan", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "Mine");
  const held = await fields(page);
  const before = await told(page);
  const damaged = {
    "empty.json": "",
    "text.json": "not a plan",
    "cut.json": '{"plan": {"name": "Half',
    "list.json": "[1, 2, 3]",
    "number.json": '{"place": {"length": 1e9}}',
    "picture.json": Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 255, 254, 10]),
    "deep.json": "[".repeat(100_000),
  };
  for (const [name, content] of Object.entries(damaged)) {
    const path = join(folder, name);
    await writeFile(path, content);
    await openFile(page, path);
    assert.match(await text(page, "#message"), /^This file cannot be opened\. .{10,}The plan that stood here is still here\.$/, name);
    assert.equal(await page.evaluate(() => document.activeElement?.id), "message");
    assert.deepEqual(await fields(page), held, name);
    assert.deepEqual(await told(page), before, name);
  }
});

behaviour("a file that cannot be opened leaves what is wrong in the form beside its box", async ({ page, address }) => {
  await open(page, address);
  await type(page, "rows.1.plants", "0");
  await explored(page); // nothing else is asked while the file is read
  const wrong = () => page.$eval(box("rows.1.plants"), (e) => [e.getAttribute("aria-invalid"), document.getElementById("e-rows.1.plants")?.textContent]);
  const before = await wrong();
  assert.equal(before[0], "true");
  const path = join(folder, "none.json");
  await writeFile(path, "{");
  await openFile(page, path);
  assert.match(await text(page, "#message"), /cannot be opened/);
  assert.deepEqual(await wrong(), before);
}, { both: true });

behaviour("a file that cannot be opened leaves nothing untold of the plan that stands", async ({ page, address, another }) => {
  // The file comes while what is to be explored waits for the typing to rest.
  await tarry(page);
  await open(page, address);
  const example = await told(page);
  const begun = await page.$eval("[data-link]", (e) => e.value);
  await type(page, "rows.1.plants", "17");
  await page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur());
  await pausing(page);
  await page.waitForFunction((begun) => document.querySelector("[data-link]").value !== begun, {}, begun); // it is kept
  const plan = await page.$eval("[data-link]", (e) => new URL(e.value).hash);
  const path = join(folder, "none.json");
  await writeFile(path, "{");
  await openFile(page, path);
  assert.match(await text(page, "#message"), /cannot be opened/);
  const anew = await another();
  await open(anew, address + plan);
  const right = await told(anew);
  assert.notEqual(right.headroom, example.headroom);
  await page.bringToFront(); // one that is behind draws no frames, and waits for them
  assert.deepEqual(await told(page), right);
}, { both: true });
