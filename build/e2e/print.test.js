// The plan on paper: each job by itself, or a set of them.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { behaviour } from "./browser.js";
import { choose, example, explored, inJob, jobs, open, see } from "./form.js";

/** What is shown of some elements on paper. @param {import("puppeteer-core").Page} page @param {string} selector */
const seen = (page, selector) => page.$$eval(selector, (all) => all.filter((e) => e.checkVisibility() && e.getClientRects().length).length);

/** @typedef {{text: string, top: number, bottom: number}} Word where it stands, in points from the top of its sheet */

/**
 * The sheets that a printer would be given.
 * @param {import("puppeteer-core").Page} page
 * @param {"A4" | "Letter"} format
 * @returns {Promise<{words: Word[], rows: Uint8Array[]}[]>} rows of gray, a point each
 */
async function sheets(page, format) {
  await page.emulateMediaType();
  const pdf = Buffer.from(await page.pdf({ format }));
  assert.equal(pdf.subarray(0, 5).toString(), "%PDF-");
  const boxes = execFileSync("pdftotext", ["-bbox", "-", "-"], { input: pdf, encoding: "utf8" });
  const all = boxes.split("<page ").slice(1).map((sheet) => [...sheet.matchAll(/<word xMin="[\d.]+" yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">(.*)<\/word>/g)].map(([, top, bottom, text]) => ({ text, top: Number(top), bottom: Number(bottom) })));
  let left = execFileSync("pdftoppm", ["-r", "72", "-gray", "-"], { input: pdf, maxBuffer: 1 << 28 });
  return all.map((words) => {
    const [head, width, height] = /^P5\s(\d+)\s(\d+)\s255\s/.exec(left.subarray(0, 40).toString("latin1")) ?? [];
    const begin = String(head).length;
    const rows = Array.from({ length: Number(height) }, (_, y) => left.subarray(begin + y * Number(width), begin + (y + 1) * Number(width)));
    left = left.subarray(begin + Number(width) * Number(height));
    return { words, rows };
  });
}

/**
 * What is wrong with sheets: each must hold something, and at its foot the plan's
 * name, the date, its link and the page number, over nothing else.
 * @param {Awaited<ReturnType<typeof sheets>>} all
 * @param {{name: string, date: string, link: string}} foot
 */
function wrong(all, { name, date, link }) {
  const close = (/** @type {Word[]} */ words) => words.map(({ text }) => text).join("").replace(/\s/g, "").replaceAll("&amp;", "&");
  return all.flatMap(({ words, rows }, i) => {
    const sheet = `sheet ${i + 1} of ${all.length}`;
    const number = words.slice(-3);
    const faults = close(number) === `${i + 1}/${all.length}` ? [] : [`${sheet} has the number ${close(number)}`];
    // The line stands behind all else in the text, and begins with the name, where its smaller letters do.
    const wanted = (name + date + link).replace(/\s/g, "");
    const body = [];
    let from = 0;
    while (from < words.length && !close(words.slice(from, -3)).startsWith(wanted)) from++;
    for (let n = 0; n < words.length - 3; n++) if (n < from || !wanted.includes(close([words[n]]))) body.push(words[n]);
    if (from === words.length) return [...faults, `${sheet} has no line with ${name}, ${date} and ${link}: it ends with ${close(words).slice(-60)}`];
    const top = Math.min(...words.slice(from, -3).map((word) => word.top));
    if (body.length < 20) faults.push(`${sheet} holds ${body.length} words`);
    for (const word of body) if (word.bottom > top) faults.push(`${sheet}: ${word.text} reaches into its foot`);
    if (rows.slice(Math.floor(top) - 4, Math.floor(top) - 1).some((row) => row.some((gray) => gray < 250))) faults.push(`${sheet}: something reaches into its foot`);
    return faults;
  });
}

/** What stands at the foot of its sheets, by the page itself. @param {import("puppeteer-core").Page} page */
const footOf = (page) =>
  page.evaluate(() => ({
    name: document.querySelector("#head b")?.textContent ?? "",
    date: new Date().toLocaleDateString(),
    link: document.querySelector("[data-link]")?.value ?? "",
  }));

/** How many sheets a job of the default plan may take; any where none is named. One of those to build by is a strip at full scale. */
const most = { answer: 1, buy: 2, build: 5, grow: 2, water: 2, mend: 1 };

/** What hangs on the wall has one sheet for itself. */
const wall = { grow: "What to do, week by week", water: "Card for the timer" };

for (const job of jobs) {
  behaviour(`on paper, ${job} has its name, date, link and number on each sheet, and no sheet too many`, async ({ page, address }) => {
    await open(page, address + "#/" + job);
    await explored(page);
    assert.equal(await page.$eval("html", (e) => e.dataset.at), job);
    const foot = await footOf(page);
    assert.ok(foot.link.startsWith(`${address}#1`), foot.link);
    assert.equal(foot.name, "Millrace tunnel");
    for (const format of /** @type {const} */ (["A4", "Letter"])) {
      await page.evaluate(() => scrollTo(0, 99999)); // wherever the reader is
      const all = await sheets(page, format);
      assert.deepEqual(wrong(all, foot), [], format);
      assert.ok(all.length <= (most[job] ?? 9), `${all.length} sheets of ${format}`);
      if (!(job in wall)) continue;
      const texts = all.map(({ words }) => words.map(({ text }) => text).join(" "));
      const card = texts.findIndex((text) => text.includes(wall[job]));
      assert.ok(card >= 0, `${wall[job]} is not printed on ${format}`);
      // What it comes to stands in the same line, and may be told before it.
      assert.ok(new RegExp(`^(Evenrow \\w+ ${foot.name} )?(\\d+ tasks, [^:]{9,40} )?${wall[job]} `).test(texts[card]), `something stands above ${wall[job]} on ${format}: ${texts[card].slice(0, 80)}`);
      assert.ok(texts.some((text) => text.includes("Cautions ")) && !texts[card].includes("Cautions "), `${wall[job]} is not alone on ${format}`);
    }
  });
}

behaviour("a set of jobs is printed one behind another, each on a sheet of its own", async ({ page, address }) => {
  await page.evaluateOnNewDocument(() => { window.print = () => { window.e2ePrinted = true; }; });
  await open(page, address + "#/all");
  const set = ["buy", "build", "water"];
  assert.equal(await page.$eval("html", (e) => e.dataset.at), "all");
  for (const job of set) await page.click(`.prints input[value="${job}"]`);
  await page.click('[data-do="print-set"]');
  await page.waitForFunction(() => window.e2ePrinted);
  const all = await sheets(page, "A4");
  assert.deepEqual(wrong(all, await footOf(page)), []);
  const heads = all.map(({ words }) => words.slice(0, 12).map(({ text }) => text).join(" "));
  const begins = ["Buy", "Build", "Water"].map((title) => heads.findIndex((head) => new RegExp(`^(Evenrow )?${title}\\b`).test(head)));
  assert.ok(begins.every((n, i) => n >= 0 && (i === 0 || n > begins[i - 1])), heads.join("\n"));
  assert.ok(all.length <= most.buy + most.build + most.water, `${all.length} sheets: ${heads.join("\n")}`);
});

/** What stands on the sheets of each job. */
const printed = { answer: [".answer__line", "#map svg"], buy: ["#parts table"], why: ["#pressure svg", "#budget table"] };

for (const title of ["Millrace tunnel", "The wrong pump"]) {
  behaviour(`${title} is printed without the form, with its answer, its parts and where the pressure goes`, async ({ page, address }) => {
    await open(page, address);
    if (title !== "Millrace tunnel") await example(page, title);
    let words = "";
    for (const [job, wanted] of Object.entries(printed)) {
      await page.emulateMediaType("screen");
      await inJob(page, job);
      await explored(page);
      const foot = await footOf(page);
      assert.equal(foot.name, title);
      const all = await sheets(page, "A4");
      assert.deepEqual(wrong(all, foot), [], job);
      words += all.flatMap((sheet) => sheet.words).map(({ text }) => text).join(" ");
      await page.emulateMediaType("print");
      assert.equal(await seen(page, "form, button:not(.number, .figure), input:not([data-tick]), select, .top__nav, .always, .jobs, #examples, #errors"), 0, job);
      for (const one of wanted) assert.ok((await seen(page, one)) > 0, `${one} is not printed`);
    }
    assert.match(words, title === "Millrace tunnel" ? /Yes\. All 120 emitters open/ : /No\. No emitter opens/);
    assert.match(words, /Tubing.*Emitters.*Punch/);
    assert.doesNotMatch(words, /Add a row|Water temperature/);
  });
}

behaviour("the cautions that are printed are those of the supply", async ({ page, address }) => {
  const shown = () => page.$$eval(".caution__title", (all) => all.filter((e) => e.checkVisibility()).map((e) => e.textContent));
  const electric = "Electricity and water";
  const drinking = "Feed running back into drinking water";
  await open(page, address);
  await see(page, "/answer/supply");
  const titles = async (/** @type {"screen" | "print"} */ media) => {
    await page.emulateMediaType(media);
    const all = await shown();
    assert.ok(await page.$$eval(".caution", (all) => all.filter((e) => e.checkVisibility()).every((e) => e.textContent)), `${media}: a box is empty`);
    return all;
  };
  for (const media of /** @type {const} */ (["screen", "print"])) assert.ok((await titles(media)).includes(electric), media);
  await page.emulateMediaType("screen");
  await choose(page, "supply.kind", "mains");
  for (const media of /** @type {const} */ (["screen", "print"])) {
    const all = await titles(media);
    assert.ok(!all.includes(electric), `${media}: ${all.join()}`);
    assert.ok(all.includes(drinking), `${media}: ${all.join()}`);
  }
  // And those of all jobs together are many; a job that has none has no heading for them.
  const all = new Set();
  for (const job of jobs) {
    await page.emulateMediaType("screen");
    await inJob(page, job);
    const here = await titles("print");
    for (const title of here) all.add(title);
    assert.equal(await seen(page, "#h-cautions"), here.length ? 1 : 0, job);
  }
  assert.ok(all.size > 8 && !all.has(electric), [...all].join());
});
