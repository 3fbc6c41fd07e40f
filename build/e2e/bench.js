// How long the finished site takes: from its opening to the first answer that was
// worked out, and from a key to the changed answer on the screen.
//
// Prints the median of many; a measurement for people, not a test.
import { instrument, launch } from "./chromium.js";
import { atRest, example, open, openPlan } from "./form.js";
import { alike } from "./plans.js";
import { serve } from "./site.js";

const times = 20;
const slower = 4; // what a phone is to this machine
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const line = (what, list) =>
  console.log(`${what.padEnd(52)} ${median(list).toFixed(0).padStart(6)} ms  (${Math.min(...list).toFixed(0)} to ${Math.max(...list).toFixed(0)}, of ${list.length})`);

const site = await serve();
const browser = await launch();
try {
  await starts("start, first visit", 5, async () => {
    const profile = await browser.createBrowserContext();
    return { page: await profile.newPage(), over: () => profile.close() };
  });
  const profile = await browser.createBrowserContext();
  const page = await profile.newPage();
  await watched(page);
  await page.goto(site.address + "#/answer");
  await page.evaluate(() => navigator.serviceWorker.ready);
  await starts("start, from the device", 10, async () => {
    const page = await profile.newPage();
    return { page, over: () => page.close() };
  });
  for (const [what, show] of [
    ["example plan (120 plants)", () => open(page, site.address)],
    ["400 plants in 10 rows", () => openPlan(page, site.address, alike(10, 40))],
    ["2,000 plants in 20 rows", () => openPlan(page, site.address, alike(20, 100))],
  ]) {
    await page.goto("about:blank");
    await show();
    line("edit to screen, " + what, await edits(page));
    // The browser slows down the page's own thread; the planner's runs as it is.
    await page.emulateCPUThrottling(slower);
    line(`  the same, the page ${slower} times slower`, await edits(page));
    await page.emulateCPUThrottling(null);
  }
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
 * Has a page note when the frame with each reply of the planner was painted.
 * @param {import("puppeteer-core").Page} page not yet at the site
 */
async function watched(page) {
  await page.evaluateOnNewDocument(() => {
    window.replies = 0;
    window.painted = []; // when, for each of them
    const Real = window.Worker;
    window.Worker = class extends Real {
      constructor(...args) {
        super(...args);
        // The page's own listener comes after this one, and the frame after both.
        this.addEventListener("message", ({ data }) => {
          if (!data.reply) return;
          const n = window.replies++;
          requestAnimationFrame(() => {
            const { port1, port2 } = new MessageChannel();
            port1.onmessage = () => { window.painted[n] = performance.now(); };
            port2.postMessage("");
          });
        });
      }
    };
  });
  await instrument(page);
}

/**
 * Times from the start of the navigation to the frame that shows the first answer
 * which the planner has worked out.
 * @param {string} what
 * @param {number} n
 * @param {() => Promise<{page: import("puppeteer-core").Page, over: () => Promise<void>}>} begin
 */
async function starts(what, n, begin) {
  const list = [];
  for (let i = 0; i < n; i++) {
    const { page, over } = await begin();
    await watched(page);
    // What the browser itself does for a new tab is no part of the start.
    await new Promise((resolve) => setTimeout(resolve, 1500));
    await open(page, site.address);
    list.push(await page.evaluate(() => window.painted[0]));
    await over();
  }
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
    const later = (ms) => new Promise((resolve) => setTimeout(resolve, ms));
    const list = [];
    for (let i = -2; i < n; i++) { // the first two warm up
      // What comes after the last answer must not pass for this one.
      do await later(50 + Math.random() * 17); // at any moment between two frames
      while (window.e2e.asked > window.e2e.answered);
      const box = document.getElementById("f-supply.regulator");
      const { replies } = window;
      const before = document.getElementById("job").textContent;
      const start = performance.now();
      box.value = String(2 + (i + 3) / 100);
      box.dispatchEvent(new InputEvent("input", { bubbles: true }));
      while (!window.painted[replies]) await later(1);
      if (i >= 0) list.push(window.painted[replies] - start);
      if (document.getElementById("job").textContent === before) throw new Error("the answer did not change");
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
    // In the planner's order, each in a job that shows it.
    const all = { "what helps": "answer", "what it rests on": "answer", season: "grow", flushing: "mend", "zones and ring": "why", "starting and stopping": "why", faults: "mend", headroom: "answer", "design search": "answer", "10,000 draws": "why" };
    const site = document.documentElement.dataset;
    const worker = new Worker(site.worker);
    const heard = () =>
      new Promise((resolve, reject) => {
        worker.onmessage = ({ data }) => (data.failed ? reject(new Error(data.failed)) : data.begun || resolve(data.reply));
      });
    const ask = (question) => {
      worker.postMessage(question);
      return heard();
    };
    await ask({ program: new URL(site.program, document.baseURI).href, sum: site.sum });
    const form = new URLSearchParams(new FormData(document.querySelector("#plan")));
    const times = Object.fromEntries(Object.keys(all).map((name) => [name, []]));
    for (let round = 0; round < 6; round++) { // the first warms up
      // Of a plan that was worked out before, the planner has them still.
      form.set("name", `change ${round}`);
      form.delete("step");
      form.set("at", "answer");
      await ask({ ask: "answer", text: form.toString() });
      for (const [i, [name, job]] of Object.entries(all).entries()) {
        form.set("step", String(i + 1));
        form.set("at", job);
        const start = performance.now();
        const reply = await ask({ ask: "rest", text: form.toString() });
        if (!reply.number) throw new Error(`nothing is said of ${name}`);
        if (round) times[name].push(performance.now() - start);
      }
    }
    worker.terminate();
    return times;
  });
}
