// @ts-check
// Runs before anything is drawn. A link brings a plan, and so may this device:
// until that is worked out, the example in the page must not be taken for it.
const site = document.documentElement.dataset;
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
