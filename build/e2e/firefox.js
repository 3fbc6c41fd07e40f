// The other browser in which the tests look at what one browser does not do
// like the next: storage, workers, service workers, forms. It is driven over
// WebDriver BiDi, which has fewer calls than Chromium's own protocol.
import puppeteer from "puppeteer-core";

const executablePath = "/usr/bin/firefox-esr";

/**
 * Starts the browser: without it no test for both browsers can pass.
 * @param {boolean} [script] whether pages' scripts run, which this browser knows for all pages alone
 */
export function launch(script = true) {
  return puppeteer.launch({
    browser: "firefox",
    executablePath,
    extraPrefsFirefox: {
      "javascript.enabled": script,
      // Nobody else can be found, whatever the page or the browser itself asks for: only
      // this machine is asked without a proxy, and there is none.
      "network.proxy.type": 1,
      "network.proxy.http": "127.0.0.1",
      "network.proxy.http_port": 9,
      "network.proxy.ssl": "127.0.0.1",
      "network.proxy.ssl_port": 9,
      "network.proxy.allow_hijacking_localhost": false,
      "intl.accept_languages": "en-GB",
    },
  });
}
