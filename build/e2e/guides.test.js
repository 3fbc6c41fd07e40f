// The guides on a phone, a tablet and a desk.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { guides } from "./guides.js";
import { faults, kept, pictures, sizes } from "./screens.js";

behaviour("every guide fits every screen", async ({ page, address }) => {
  const found = [];
  for (const guide of guides) {
    await page.goto(address + guide);
    for (const size of sizes) {
      await page.setViewport(size);
      found.push(...(await faults(page, `${guide} at ${size.width}`)));
      if (kept.includes(size.width)) await pictures(page, `${guide.replace(".html", "")}-${size.width}`, size.width === 360 ? ["light"] : ["dark"]);
    }
  }
  assert.deepEqual(found, []);
});

behaviour("every link within the site leads somewhere", async ({ page, address }) => {
  const seen = new Map();
  for (const from of ["", ...guides]) {
    await page.goto(address + from);
    for (const href of await page.$$eval("a[href]", (all) => all.map((a) => new URL(a.getAttribute("href"), document.baseURI).href))) {
      const url = new URL(href);
      if (url.origin === new URL(address).origin && !url.hash.startsWith("#1")) seen.set(url.href, from);
    }
  }
  const places = new Map();
  for (const [href, from] of seen) {
    const url = new URL(href);
    const hash = decodeURIComponent(url.hash.slice(1));
    url.hash = "";
    if (!places.has(url.href)) {
      await page.goto(url.href); // a missing page fails the test
      places.set(url.href, new Set(await page.$$eval("[id]", (all) => all.map((e) => e.id))));
    }
    assert.ok(!hash || places.get(url.href).has(hash), `${from || "the tool"} links to ${href}, where there is no such place`);
  }
  assert.ok(places.size > guides.length, `only ${places.size} pages are linked to`);
});
