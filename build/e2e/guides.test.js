// The guides on a phone, a tablet and a desk.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { explored, inJob, job, jobs, open, see } from "./form.js";
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
  /** What leads to a job of the tool, or to what stands in another one. @type {Map<string, string>} */
  const within = new Map();
  for (const [href, from] of seen) {
    const url = new URL(href);
    const hash = decodeURIComponent(url.hash.slice(1));
    url.hash = "";
    if (!places.has(url.href)) {
      await page.goto(url.href); // a missing page fails the test
      places.set(url.href, new Set(await page.$$eval("[id]", (all) => all.map((e) => e.id))));
    }
    if (!hash || places.get(url.href).has(hash)) continue;
    assert.equal(url.href, address, `${from || "the tool"} links to ${href}, where there is no such place`);
    within.set(hash, from || "the tool");
  }
  await open(page, address);
  for (const id of jobs) {
    await inJob(page, id);
    await explored(page);
    for (const href of await page.$$eval("#job a[href^='#'], #plan a[href^='#']", (all) => all.map((a) => a.getAttribute("href")))) {
      if (!href.startsWith("#1")) within.set(href.slice(1), id);
    }
  }
  for (const [hash, from] of within) {
    await see(page, hash);
    const [, to, group] = /^\/(\w+)(?:\/(\w+))?$/.exec(hash) ?? [];
    const [focused, opened] = await page.evaluate((hash, group) => [document.getElementById(hash)?.contains(document.activeElement), !group || document.getElementById("g-" + group)?.open], hash, group);
    if (to) assert.deepEqual([await job(page), opened], [to, true], `${from} links to #${hash}`);
    else assert.ok(focused, `${from} links to #${hash}`);
  }
  assert.ok(within.size > 10, `only ${within.size} links lead to jobs`);
  assert.ok(places.size > guides.length, `only ${places.size} pages are linked to`);
});
