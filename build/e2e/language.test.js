// The page with the texts of another language, which it fetches as it starts.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, explored } from "./form.js";
import { faults } from "./screens.js";
import { command } from "./site.js";

/**
 * Gives a page that names a list of texts, and the list.
 * @param {import("puppeteer-core").Page} page
 * @param {string | undefined} list none for one that is missing
 */
async function speaks(page, list) {
  await page.setRequestInterception(true);
  page.on("request", async (request) => {
    const path = new URL(request.url()).pathname;
    if (request.isNavigationRequest()) {
      const response = await fetch(request.url());
      const headers = Object.fromEntries([...response.headers].filter(([name]) => !/^(content-(length|encoding)|transfer-encoding|connection)$/.test(name)));
      await request.respond({ status: response.status, headers, body: (await response.text()).replace("<html ", '<html data-list="texts.txt" ') });
    } else if (path === "/texts.txt") {
      await request.respond(list === undefined ? { status: 404, body: "" } : { body: list, contentType: "text/plain; charset=utf-8" });
    } else {
      await request.continue();
    }
  });
}

behaviour("texts a third longer, of a language that nobody speaks, fit a phone and a desk", async ({ page, address }) => {
  await speaks(page, await command(["texts", "-pseudo"]));
  await page.goto(`${address}index.html`);
  await atRest(page);
  await explored(page);
  assert.match(await page.$eval("#parts", (e) => e.textContent ?? ""), /⟦/);
  const found = [];
  for (const size of [{ width: 360, height: 800 }, { width: 1280, height: 900 }]) {
    await page.setViewport(size);
    await page.evaluate(() => { for (const d of document.querySelectorAll("details")) d.open = true; });
    found.push(...(await faults(page, `at ${size.width}`)));
  }
  assert.deepEqual(found, []);
});

behaviour("where the list of another language is missing the page is English", async ({ page, address }) => {
  await speaks(page, undefined);
  await page.goto(`${address}index.html`);
  await atRest(page);
  assert.match(await page.$eval("#answer", (e) => e.textContent ?? ""), /^.*Yes\./s);
}, { expected: /404|texts\.txt/ });
