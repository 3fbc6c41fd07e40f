// @ts-check
// Runs before anything is drawn. A link brings a plan: until that is worked
// out, the example in the page must not be taken for it.
if (/^#\d/.test(location.hash)) {
  const site = document.documentElement.dataset;
  site.opening = "";
  // A script that does not load, or not run, opens nothing.
  addEventListener("error", () => {
    if (site.opening !== undefined) site.opening = "failed";
  }, true);
}
