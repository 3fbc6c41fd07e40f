// After one visit the site works without a connection.
import assert from "node:assert/strict";
import { after, before } from "node:test";
import { behaviour } from "./browser.js";
import { held } from "./drafts.js";
import { atRest, head, link, open, text, type, verdict } from "./form.js";
import { serve } from "./site.js";

/** A server of its own, that can be stopped. @type {{address: string, stop: () => Promise<void>}} */
let site;
before(async () => { site = await serve(); });
after(() => site?.stop());

behaviour(
  "the tool and the guides work when the server is gone",
  async ({ page, address, leave }) => {
    await open(page, address);
    await page.evaluate(() => navigator.serviceWorker.ready);
    const kept = await page.evaluate(async () => {
      const urls = [];
      for (const name of await caches.keys()) for (const r of await (await caches.open(name)).keys()) urls.push(r.url);
      return urls;
    });
    assert.ok(kept.length > 10, `only ${kept.length} files are kept`);
    for (const url of kept) assert.ok(url.startsWith(address), `${url} is from elsewhere`);

    await leave(() => site.stop());
    await page.reload();
    await atRest(page);
    const spare = await head(page, "To spare");
    await type(page, "runs.1.rise", "2.4");
    assert.ok(Math.abs(spare - 2 - (await head(page, "To spare"))) < 0.11);
    const said = await verdict(page);
    assert.match(said, /^Yes/);
    await link(page);
    await page.reload();
    await atRest(page);
    assert.equal(await verdict(page), said);
    assert.equal(await held(page, "runs.1.rise"), "2.4");

    const guides = kept.filter((url) => url.endsWith(".html") && !url.endsWith("index.html"));
    assert.ok(guides.length > 5, "the guides are not kept");
    for (const url of guides) {
      const answer = await page.goto(url);
      assert.ok(answer?.fromServiceWorker(), `${url} does not come from the device`);
      assert.notEqual(await text(page, "h1"), "");
    }
    await page.goto(address);
    await atRest(page);
    assert.equal(await verdict(page), said);
  },
  { address: () => site.address },
);
