// @ts-check
// Runs before anything is drawn. Where the files are on the device, the planner
// starts while the page is still read; else what the page is drawn with comes first.
const site = document.documentElement.dataset;
if (navigator.serviceWorker?.controller) {
  // A policy of its own, which leads to the worker and nowhere else.
  // @ts-ignore: not in every library of types
  const worker = new Worker(window.trustedTypes?.createPolicy("evenrow-worker", { createScriptURL: () => site.worker }).createScriptURL("") ?? site.worker);
  worker.postMessage({ program: new URL(site.program ?? "", document.baseURI).href, sum: site.sum, list: site.list });
  // planner.js goes on with it, unless it is dead by then.
  // @ts-ignore: this script's own
  window.early = worker;
  worker.onerror = () => {
    // @ts-ignore
    window.early = worker.terminate();
  };
}

// A link brings a plan, and so may this device:
// until that is worked out, the example in the page must not be taken for it.
const wanted = /^#[\d/]/.test(location.hash) || keeps();
site.at = wanted ? "answer" : "start";
if (wanted) {
  site.opening = "";
  // A script that does not load, or not run, opens nothing.
  addEventListener("error", () => {
    if (site.opening !== undefined) site.opening = "failed";
  }, true);
}

/** Whether the device keeps a plan; where that is not to be told, it keeps none. */
function keeps() {
  try {
    return Object.keys(localStorage).some((key) => key.startsWith("evenrow-1-plan-"));
  } catch {
    return false;
  }
}
