// The browser that drives the site, as the tests and the benchmark start it.
import puppeteer from "puppeteer-core";

const executablePath = "/usr/bin/chromium";

/**
 * Starts the browser: without it no test can pass.
 * @param {import("puppeteer-core").LaunchOptions} [how] otherwise than for the tests
 */
export function launch(how = {}) {
  return puppeteer.launch({
    ...how,
    browser: "chrome",
    executablePath,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--lang=en-GB",
      // Nobody else can be found, whatever the page or the browser itself asks for.
      "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
    ],
  });
}

/**
 * Counts a page's questions to the planner and its answers, so that one knows
 * when it is at rest, and adds up how far its content jumps.
 * @param {import("puppeteer-core").Page} page not yet at the site
 */
export async function instrument(page) {
  await page.evaluateOnNewDocument(() => {
    window.e2e = { asked: 0, answered: 0, last: 0, jumps: 0 };
    const Real = window.Worker;
    window.Worker = class extends Real {
      constructor(...args) {
        super(...args);
        this.due = 0;
        this.addEventListener("message", ({ data }) => {
          if (!data.begun) this.settle(1);
        });
      }
      postMessage(...args) {
        this.due++;
        window.e2e.asked++;
        super.postMessage(...args);
      }
      // What a worker that is ended still owes is not waited for.
      terminate() {
        this.settle(this.due);
        super.terminate();
      }
      settle(n) {
        if (n > this.due) n = this.due;
        this.due -= n;
        window.e2e.answered += n;
        if (n) window.e2e.last = performance.now();
      }
    };
    if (!PerformanceObserver.supportedEntryTypes.includes("layout-shift")) return; // Firefox counts none
    new PerformanceObserver((list) => {
      for (const shift of list.getEntries()) if (!shift.hadRecentInput) window.e2e.jumps += shift.value;
    }).observe({ type: "layout-shift", buffered: true });
  });
}
