// What no page of the site may ever do: complain in the console, throw, break its
// own security policy, or ask anybody else for anything. This is the one place
// that watches it.
import { instrument } from "./chromium.js";

/**
 * Watches a page from its first request on.
 * @param {import("puppeteer-core").Page} page
 * @param {string} address of the site
 * @param {string[]} faults gets a line for each fault
 * @param {() => boolean} [away] says whether the server was stopped on purpose
 */
export async function watch(page, address, faults, away = () => false) {
  page.on("console", (message) => {
    const lost = away() && message.text().includes("ERR_CONNECTION_REFUSED");
    if (["error", "warn", "assert"].includes(message.type()) && !lost) {
      faults.push(`console ${message.type()}: ${message.text()} (${message.location().url ?? ""})`);
    }
  });
  page.on("pageerror", (error) => faults.push(`page error: ${error.message}`));
  page.on("error", (error) => faults.push(`page crash: ${error.message}`));
  page.on("dialog", (dialog) => {
    faults.push(`dialog: ${dialog.message()}`);
    dialog.dismiss();
  });
  page.on("request", (request) => {
    const url = new URL(request.url());
    if (url.origin !== new URL(address).origin && !["blob:", "data:", "about:"].includes(url.protocol)) {
      faults.push(`request to another origin: ${url.href}`);
    }
  });
  page.on("response", (response) => {
    if (response.status() >= 400) faults.push(`${response.status()} for ${response.url()}`);
  });
  await instrument(page);
  await page.exposeFunction("e2eFault", (text) => void faults.push(text));
  await page.evaluateOnNewDocument(() => {
    addEventListener("securitypolicyviolation", (e) => {
      window.e2eFault(`policy violation: ${e.violatedDirective} by ${e.blockedURI} ${e.sample}`);
    });
  });
}
