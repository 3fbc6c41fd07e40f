// How long the finished site takes: from its opening to the planner being
// ready, and from a key to the changed answer on the screen.
//
// Prints the median of many; a measurement for people, not a test.
import { instrument, launch } from "./chromium.js";
import { atRest, example, open, openPlan } from "./form.js";
import { alike } from "./plans.js";
import { serve } from "./site.js";

const times = 20;
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const line = (what, list) =>
  console.log(`${what.padEnd(44)} ${median(list).toFixed(0).padStart(6)} ms  (${Math.min(...list).toFixed(0)} to ${Math.max(...list).toFixed(0)}, of ${list.length})`);

const site = await serve();
const browser = await launch();
try {
  await starts("start, first visit", async (visit) => {
    for (let i = 0; i < 5; i++) {
      const profile = await browser.createBrowserContext();
      await visit(await profile.newPage());
      await profile.close();
    }
  });
  const profile = await browser.createBrowserContext();
  const page = await profile.newPage();
  await instrument(page);
  await page.goto(site.address + "#/answer");
  await page.evaluate(() => navigator.serviceWorker.ready);
  await starts("start, from the device", async (visit) => {
    for (let i = 0; i < 10; i++) await visit(await profile.newPage());
  });
  await open(page, site.address);
  line("edit to screen, example plan (120 plants)", await edits(page));
  await page.goto("about:blank");
  await openPlan(page, site.address, alike(10, 40));
  line("edit to screen, 400 plants in 10 rows", await edits(page));
  await page.goto("about:blank");
  await openPlan(page, site.address, alike(20, 100));
  line("edit to screen, 2,000 plants in 20 rows", await edits(page, 5));
  for (const [what, show] of [
    ["long field", (page) => example(page, "Long field")],
    ["400 plants", (page) => openPlan(page, site.address, alike(10, 40))],
  ]) {
    const fresh = await profile.newPage();
    await fresh.setBypassCSP(true); // a worker of the measurement's own
    await instrument(fresh);
    await open(fresh, site.address);
    await show(fresh);
    line(`edit to the last exploration, ${what}`, await wholes(fresh));
    for (const [name, list] of Object.entries(await explorations(fresh))) line(`${name}, ${what}`, list);
    await fresh.close();
  }
} finally {
  await browser.close();
  await site.stop();
}

/**
 * Times from the start of the navigation to the planner being ready.
 * @param {string} what
 * @param {(visit: (page: import("puppeteer-core").Page) => Promise<void>) => Promise<void>} all
 */
async function starts(what, all) {
  const list = [];
  await all(async (page) => {
    await instrument(page);
    await open(page, site.address);
    list.push(await page.evaluate(() => window.e2e.last));
    await page.close();
  });
  line(what, list);
}

/**
 * Times from an input event to the end of the frame that shows its answer.
 * @param {import("puppeteer-core").Page} page
 * @param {number} [n]
 * @returns {Promise<number[]>}
 */
function edits(page, n = times) {
  return page.evaluate(async (n) => {
    const list = [];
    for (let i = -2; i < n; i++) { // the first two warm up
      // What comes after the last answer must not pass for this one.
      while (window.e2e.asked > window.e2e.answered) await new Promise((resolve) => setTimeout(resolve, 5));
      const box = document.getElementById("f-supply.regulator");
      const answered = window.e2e.answered;
      const before = document.getElementById("answer").textContent;
      const start = performance.now();
      box.value = String(2 + (i + 3) / 100);
      box.dispatchEvent(new InputEvent("input", { bubbles: true }));
      await new Promise((resolve) => {
        const look = () => (window.e2e.answered > answered ? requestAnimationFrame(() => setTimeout(resolve)) : setTimeout(look, 0));
        look();
      });
      if (i >= 0) list.push(performance.now() - start);
      if (document.getElementById("answer").textContent === before) throw new Error("the answer did not change");
    }
    return list;
  }, n);
}

/**
 * Times from an input event to the last exploration, with the 400 ms that the page
 * lets the typing rest in between.
 * @param {import("puppeteer-core").Page} page
 * @param {number} [n]
 * @returns {Promise<number[]>}
 */
function wholes(page, n = 10) {
  return page.evaluate(async (n) => {
    const { dataset } = document.getElementById("job");
    const later = () => new Promise((resolve) => setTimeout(resolve, 1));
    const rests = () => dataset.more === undefined && window.e2e.asked === window.e2e.answered;
    const list = [];
    for (let i = -1; i < n; i++) { // the first warms up
      while (!rests()) await later();
      const box = document.getElementById("f-name");
      const { answered } = window.e2e;
      const start = performance.now();
      box.value = `change ${i}`;
      box.dispatchEvent(new InputEvent("input", { bubbles: true }));
      while (window.e2e.answered === answered || !rests()) await later();
      if (i >= 0) list.push(performance.now() - start);
    }
    return list;
  }, n);
}

/**
 * Times of the planner alone for each exploration, from question to reply.
 * @param {import("puppeteer-core").Page} page
 * @returns {Promise<Record<string, number[]>>}
 */
function explorations(page) {
  return page.evaluate(async () => {
    const names = ["season", "flushing", "zones and ring", "starting and stopping", "faults", "headroom", "design search", "10,000 draws"];
    const site = document.documentElement.dataset;
    const worker = new Worker(site.worker);
    const reply = () => new Promise((resolve) => worker.addEventListener("message", ({ data }) => data.begun || resolve(data)));
    const started = reply();
    worker.postMessage({ program: new URL(site.program, document.baseURI).href });
    await started;
    const form = new URLSearchParams(new FormData(document.querySelector("#plan")));
    const times = Object.fromEntries(names.map((name) => [name, []]));
    for (let round = 0; round < 6; round++) { // the first warms up
      for (const [i, name] of names.entries()) {
        form.set("step", String(i + 1));
        form.set("at", ["grow", "mend", "why", "why", "mend", "answer", "answer", "why"][i]);
        const start = performance.now();
        const said = reply();
        worker.postMessage({ ask: "rest", text: form.toString() });
        await said;
        if (round) times[name].push(performance.now() - start);
      }
    }
    worker.terminate();
    return times;
  });
}
