// The page with the texts of another language, which it fetches as it starts.
import assert from "node:assert/strict";
import { after, before } from "node:test";
import { behaviour } from "./browser.js";
import { atRest, explored, inJob, jobs, paste } from "./form.js";
import { change, copied, host } from "./host.js";
import { faults } from "./screens.js";
import { command, shared } from "./site.js";

/** @type {{address: string, stop: () => Promise<void>}} */
let site;
/** @type {import("./host.js").Files} */
let good;
/** @type {string} */
let pseudo;
before(async () => {
  site = await shared();
  good = await copied(site.address);
  pseudo = await command(["texts", "-pseudo"]);
});
after(() => site?.stop());

/**
 * A behaviour at a host whose page names a list of texts.
 * @param {string} name
 * @param {(list: string) => string | undefined} list what it gives for the list, given that of the pseudo-language; none for one that is missing
 * @param {(page: import("puppeteer-core").Page) => Promise<void>} body the plan has been changed, and all is said anew
 */
function speaking(name, list, body) {
  behaviour(
    name,
    async ({ page }) => {
      const own = await host(new Map(good));
      try {
        change(own.files, "/index.html", (text) => text.replace("<html ", '<html data-list="../texts.txt" '));
        const given = list(pseudo);
        if (given !== undefined) own.files.set("/texts.txt", { body: Buffer.from(given), type: "text/plain; charset=utf-8" });
        await page.goto(`${own.address}index.html#/answer`);
        await atRest(page);
        await paste(page, "rows.1.plants", "24");
        await atRest(page);
        await body(page);
      } finally {
        await own.stop();
      }
    },
    { expected: /request to another origin: http:\/\/127\.0\.0\.1|404/ },
  );
}

/** @param {import("puppeteer-core").Page} page */
async function parts(page) {
  await inJob(page, "buy");
  return page.$eval("#parts caption", (e) => e.textContent ?? "");
}

speaking("texts a third longer, of a language that nobody speaks, fit a phone and a desk", (list) => list, async (page) => {
  assert.match(await parts(page), /^⟦/);
  const found = [];
  for (const size of [{ width: 360, height: 800 }, { width: 1280, height: 900 }]) {
    await page.setViewport(size);
    for (const job of ["start", ...jobs, "all"]) {
      await inJob(page, job);
      await explored(page);
      await page.evaluate(() => {
        for (const d of document.querySelectorAll("details")) {
          d.removeAttribute("name"); // else only one of the groups is open
          d.open = true;
        }
      });
      found.push(...(await faults(page, `${job} at ${size.width}`)));
    }
  }
  assert.deepEqual(found, []);
});

const english = async (/** @type {import("puppeteer-core").Page} */ page) => assert.equal(await parts(page), "Parts to buy: Tubing");
speaking("where the list of another language is missing the page is English", () => undefined, english);
speaking("where it is no list the page is English", () => "<!doctype html><title>Sign in</title>", english);
