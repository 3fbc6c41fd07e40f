// The plan on paper.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { behaviour } from "./browser.js";
import { atRest, choose, example, open } from "./form.js";

/** What is shown of some elements on paper. @param {import("puppeteer-core").Page} page @param {string} selector */
const seen = (page, selector) => page.$$eval(selector, (all) => all.filter((e) => e.checkVisibility() && e.getClientRects().length).length);

for (const title of ["Millrace tunnel", "The wrong pump"]) {
  behaviour(`${title} is printed without the form, with its answer, parts and link`, async ({ page, address }) => {
    await open(page, address);
    if (title !== "Millrace tunnel") await example(page, title);
    const whole = await page.$eval("#link", (e) => e.value);
    assert.ok(whole.startsWith(`${address}#1`), whole);
    await page.emulateMediaType("print");
    assert.equal(await seen(page, "form, button, input:not(#link), select, .top__nav, .always, #examples"), 0);
    for (const wanted of [".answer__line", "#pressure svg", "#budget table", "#rows svg", "#parts table", "[data-link-text]"]) {
      assert.ok((await seen(page, wanted)) > 0, `${wanted} is not printed`);
    }
    const pdf = Buffer.from(await page.pdf({ format: "A4" }));
    assert.equal(pdf.subarray(0, 5).toString(), "%PDF-");
    const words = execFileSync("pdftotext", ["-", "-"], { input: pdf, encoding: "utf8" });
    const flat = words.replace(/\s+/g, "");
    assert.ok(flat.includes(whole), "the link is not on paper");
    assert.match(words, title === "Millrace tunnel" ? /Yes\. All 120 emitters open/ : /No\. No emitter opens/);
    assert.match(words, /Punch|Emitters|Tubing/);
    assert.doesNotMatch(words, /Add a row|Water temperature/);
    // The reader of pages ends each, the last one too, with a form feed.
    for (const [i, text] of words.split("\f").slice(0, -1).entries()) assert.ok(text.trim().split(/\s+/).length > 20, `page ${i + 1} is blank`);
  });
}

behaviour("the cautions that are printed are those of the supply", async ({ page, address }) => {
  const titles = () => page.$$eval(".caution__title", (all) => all.filter((e) => e.checkVisibility()).map((e) => e.textContent));
  await open(page, address);
  const beside = await titles();
  assert.ok(beside.includes("Electricity and water"), beside.join());
  await page.emulateMediaType("print");
  assert.ok((await titles()).includes("Electricity and water"));
  await page.emulateMediaType("screen");
  await choose(page, "supply.kind", "mains");
  await atRest(page);
  for (const media of ["screen", "print"]) {
    await page.emulateMediaType(media);
    const shown = await titles();
    assert.ok(shown.length > 8 && !shown.includes("Electricity and water"), `${media}: ${shown.join()}`);
    assert.ok(shown.includes("Feed running back into drinking water"), `${media}: ${shown.join()}`);
    assert.ok((await page.$$eval(".caution", (all) => all.filter((e) => e.checkVisibility()).every((e) => e.textContent))), `${media}: a box is empty`);
  }
});
