// The list to buy, on paper, from a phone.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { behaviour } from "./browser.js";
import { atRest, explored, inJob } from "./form.js";
import { phone, short, solved, Walk } from "./journeys.js";

/**
 * What a printer would be given: the parts, on two sheets at most, and nothing that cannot be
 * used on paper.
 * @param {import("puppeteer-core").Page} page
 * @param {any[]} parts
 */
async function usable(page, parts) {
  // Only one of the browsers can be asked what it shows on paper before it prints.
  if (page.browser().protocol === "cdp") {
    await page.emulateMediaType("print");
    const shown = await page.$$eval("a:not(.top__name), button:not(.number, .figure), input:not([data-tick]), select, textarea, summary:not(:has(h2, h3)), form, nav", (all) => all.filter((e) => e.checkVisibility()).map((e) => `${e.tagName} ${e.textContent?.trim().slice(0, 40)}`));
    assert.deepEqual(shown, []);
    await page.emulateMediaType();
  }
  for (const format of /** @type {const} */ (["A4", "Letter"])) {
    const pdf = Buffer.from(await page.pdf({ format }));
    const sheets = execFileSync("pdftotext", ["-layout", "-", "-"], { input: pdf, encoding: "utf8" }).split("\f").filter((text) => text.trim());
    assert.ok(sheets.length <= 2, `${sheets.length} sheets of ${format}`);
    const words = sheets.join(" ").replace(/\s+/g, "").replaceAll("ﬁ", "fi").replaceAll("ﬂ", "fl"); // which one of the browsers writes in one piece
    for (const { name, length_m: length, count, packs, pack, pack_m: roll, cost, price_invented: invented } of parts) {
      const [need, bought] = length === undefined
        ? [pack > 1 ? `${count} needed` : "", pack > 1 ? `${packs} ${packs === 1 ? "pack" : "packs"} of ${pack}` : packs]
        : [`${length.toFixed(1)} m needed`, `${packs} ${packs === 1 ? "roll" : "rolls"} of ${roll} m`];
      const plain = (/** @type {string} */ text) => text.replace(/\s+/g, "").replace(/[.*+()]/g, "\\$&");
      const line = new RegExp(`${plain(name.slice(0, 60))}(?=.{0,140}?${plain(need)}).{0,120}?${plain(`${bought} ${cost.toFixed(2)}${invented ? "*" : ""}`)}`);
      assert.match(words, line, format);
    }
    assert.doesNotMatch(words, /Thesameasatable|Showtheworking|Printtheset|Workitout|\btap\b/i);
  }
}

behaviour(
  "the list on paper, from a phone",
  async ({ page, address, firefox }) => {
    const walk = new Walk(page, "the list on paper");
    await page.evaluateOnNewDocument(() => { window.print = () => { window.e2ePrinted = true; }; });
    await page.goto(address + "#/answer");
    await atRest(page);
    await explored(page);
    await walk.tap('[data-job="buy"]');
    await walk.tap("#counter-1 > summary");
    await walk.seek("#parts table");
    const list = await page.$eval("#parts", (e) => e.textContent ?? "");
    const { parts } = await solved(page);
    const names = parts.map((/** @type {any} */ part) => part.name);
    assert.ok(names.length > 20, names.join());
    for (const name of names) assert.ok(list.includes(name), `${name} is not on the list`);
    // The page's own way to paper; the browser's own command is one more.
    await walk.tap('[data-job="all"]');
    await walk.seek('[data-do="print-set"]');
    await walk.tap('label:has(input[value="buy"])');
    await walk.tap('[data-do="print-set"]');
    if (!firefox) walk.tell();
    await page.waitForFunction(() => window.e2ePrinted);
    await usable(page, parts);
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    await inJob(page, "buy");
    await usable(page, parts);
    await short(page);
  },
  phone,
);
