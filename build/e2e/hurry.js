// A page that is soon tired of waiting for its planner, and whose planner can be killed,
// or that takes its time before it asks for what can wait.

/**
 * Makes the page count its half seconds faster, and keeps the worker of its
 * planner in view.
 * @param {import("puppeteer-core").Page} page not yet at the site
 * @param {number} [times] how much faster
 */
export const hurry = (page, times = 3) =>
  page.evaluateOnNewDocument((times) => {
    const real = window.setInterval;
    window.setInterval = (run, ms, ...more) => real(run, ms === 500 ? 500 / times : ms, ...more);
    const Real = window.Worker;
    window.e2eStarted = 0;
    /** How many that are still to be started die at once. */
    window.e2eDoomed = 0;
    window.Worker = class extends Real {
      constructor(...args) {
        super(...args);
        window.e2eWorker = this;
        window.e2eStarted++;
        this.addEventListener("message", ({ data }) => { if (data.ready) window.e2eReady = this; });
        if (window.e2eDoomed-- > 0) setTimeout(() => window.e2eKill("error", this), 5);
        else window.e2eDoomed = 0;
      }
    };
    /** @param {"gone" | "error" | "stopped" | "fault"} how @param {Worker} [worker] */
    window.e2eKill = (how, worker = window.e2eWorker) => {
      // Ended without the page being told, as a browser short of memory does it.
      if (how === "gone") Object.getPrototypeOf(Real.prototype).terminate.call(worker);
      if (how === "error") worker.dispatchEvent(new ErrorEvent("error", { message: "out of memory" }));
      if (how === "stopped") worker.dispatchEvent(new MessageEvent("message", { data: { failed: "it has stopped" } }));
      // What it cannot but fail at, asked past the page.
      if (how === "fault") Object.getPrototypeOf(Real.prototype).postMessage.call(worker, { ask: "nothing", text: "" });
    };
  }, times);

/**
 * Has the page wait so long, in ms, instead of 400, before it asks for what is to be
 * explored when the typing rests: something else can come before that.
 * @param {import("puppeteer-core").Page} page not yet at the site
 * @param {number} [ms]
 */
export const tarry = (page, ms = 5000) =>
  page.evaluateOnNewDocument((longer) => {
    const real = window.setTimeout;
    window.setTimeout = (what, ms, ...more) => real(what, ms === 400 ? longer : ms, ...more);
  }, ms);

/** Waits until only what waits for the typing to rest is still to be explored. @param {import("puppeteer-core").Page} page */
export const pausing = (page) => page.waitForFunction(() => document.getElementById("job")?.dataset.more && window.e2e.asked === window.e2e.answered);
