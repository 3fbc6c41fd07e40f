// The default plan, before the planner has started and after.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, explored, head, inJob, inSight, job, link, open, see, text, told, type, verdict } from "./form.js";

/** What the page came with. @type {Record<string, string>} */
let came;
/** All that is told of the default plan. @type {Record<string, string>} */
let before;

behaviour(
  "the example plan is worked out without scripts",
  async ({ page, address }) => {
    await page.goto(address);
    assert.equal(await verdict(page), "Yes");
    assert.match(await text(page, ".notice"), /This page shows an example.*scripts are off/);
    assert.match(await page.$eval(".always", (e) => e.innerText), /^An example:\sYes\. .* to spare at row 4, plant 30\s*$/);
    assert.ok((await head(page, "To spare")) > 1);
    came = await inSight(page);
    for (const id of ["line", "answer", "findings", "map", "rows", "headroom", "designs", "crops"]) assert.ok((came[id] ?? "").trim().length > 10, `${id} is empty: ${came[id]}`);
    // It asks nothing that nobody can answer.
    assert.deepEqual(await page.$$eval("#plan, .jobs ul", (all) => all.filter((e) => e.checkVisibility()).map((e) => e.className)), []);
  },
  { script: false, width: 360, height: 740 },
);

behaviour("the planner gives the same figures as the page came with", async ({ page, address, another }) => {
  await open(page, address);
  before = await told(page);
  for (const [id, shown] of Object.entries(before)) assert.equal(shown.trim().length > 10, id !== "helps", `${id}: ${shown}`); // a Yes needs no help
  const bare = (/** @type {Record<string, string>} */ texts) => Object.entries(texts).map(([id, text]) => `${id}: ${text.replace(/\s/g, "")}`); // the builder leaves out spaces between blocks
  const opened = await another();
  await open(opened, address);
  await see(opened, "d-rows"); // what is as long as there are plants comes when it is opened
  await opened.waitForSelector("#rows table");
  await explored(opened);
  assert.deepEqual(bare(await inSight(opened)), bare(came));
  await type(page, "runs.1.rise", "0.5");
  const risen = await told(page);
  for (const id of ["answer", "always", "budget", "pressure"]) assert.notEqual(risen[id], before[id], `an edit changes nothing in ${id}`);
  await type(page, "runs.1.rise", "0.4");
  assert.deepEqual(await told(page), before);
  assert.equal(await verdict(page), "Yes");
});

behaviour("an address without a plan begins with the questions, and shows the example where one asks for it", async ({ page, address }) => {
  await page.goto(address);
  await page.waitForFunction(() => document.querySelector("[data-wait]")?.hidden);
  assert.equal(await job(page), "start");
  assert.equal(await text(page, "#h-job"), "Five questions");
  assert.equal(await text(page, "#always"), "Answer five questions");
  assert.deepEqual(await page.$$eval("#job, #line, #head", (all) => all.filter((e) => e.checkVisibility()).map((e) => e.id)), [], "an example passes for the answer");
  await page.click("#always");
  await atRest(page);
  assert.equal(await job(page), "answer");
  assert.match(await text(page, "#stale"), /example/);
  assert.deepEqual(await told(page), before);
  // After another plan, too.
  await type(page, "runs.1.rise", "3");
  await open(page, address + (await link(page)));
  const risen = await told(page);
  assert.notEqual(risen.answer, before.answer);
  await page.evaluate(() => { location.hash = ""; });
  await page.waitForFunction((was) => document.getElementById("answer")?.textContent !== was, {}, risen.answer);
  await atRest(page);
  assert.deepEqual(await told(page), before);
}, { width: 360, height: 740 });

for (const width of [360, 1280]) {
  behaviour(
    `only the job in sight is on the page, its heading first, at ${width} px`,
    async ({ page, address }) => {
      const seen = () =>
        page.$$eval("main h1, main h2", (all) => all.filter((e) => e.checkVisibility()).sort((a, b) => a.getBoundingClientRect().top - b.getBoundingClientRect().top).map((e) => ({ text: e.textContent, tag: e.tagName, told: Boolean(e.closest("#job")) })));
      // What stands beside what the planner tells.
      const of = {
        start: ["Five questions", "Other plans to start from"],
        buy: ["Buy"],
        water: ["Water", "What the drain says"],
        all: ["All", "Other plans to start from", "Jobs", "Back and forth", "Print", "Keep it, share it", "Kept on this device", "Guides"],
      };
      await open(page, address);
      for (const [id, headings] of Object.entries(of)) {
        await inJob(page, id);
        if (id === "water") await explored(page);
        const now = await seen();
        assert.ok(await page.$eval("#h-job", (h) => { const r = h.getBoundingClientRect(); return h.contains(document.elementFromPoint(r.left + 5, r.top + r.height / 2)); }), `${id}: what one is led to lies under something`);
        assert.deepEqual(now.filter((h) => h.tag === "H1"), [{ ...now[0], text: headings[0], told: false }], id);
        assert.deepEqual(now.filter((h) => !h.told).map((h) => h.text).sort(), [...headings].sort(), id);
        assert.equal(now.some((h) => h.told), ["buy", "water"].includes(id), id);
      }
    },
    { width, height: 800 },
  );
}

behaviour("nothing jumps while the planner starts", async ({ page, address }) => {
  for (const width of [360, 1280]) {
    await page.setViewport({ width, height: 800 });
    for (const at of ["", "#/answer"]) {
      await page.goto("about:blank");
      await page.goto(address + at);
      await page.waitForFunction(() => document.querySelector("[data-wait]")?.hidden);
      if (at) await atRest(page);
      const jumps = await page.evaluate(() => new Promise((resolve) => setTimeout(() => resolve(window.e2e.jumps), 300)));
      assert.ok(jumps < 0.002, `the content jumps by ${jumps} at ${width} px, /${at}`);
    }
  }
});
