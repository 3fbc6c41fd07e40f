// The season on the page: a change of date, weather or crop is followed by
// everything that hangs on it, and two cards are made to be printed.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { behaviour } from "./browser.js";
import { atRest, choose, example, explored, inJob, open, see, press, text, told, type } from "./form.js";

/** Which of these say something else than before. @param {Record<string, string>} before @param {Record<string, string>} after */
const changed = (before, after) => Object.keys(before).filter((id) => before[id] !== after[id]);


behaviour("a date, the weather or a crop that changes is followed at once", async ({ page, address }) => {
  await open(page, address);
  let before = await told(page);
  for (const [what, change, followed] of [
    ["the last frost", () => type(page, "season.last-frost", "2027-04-20"), ["season", "weather", "tasks", "timer", "tank"]],
    ["the climate", () => choose(page, "sky.climate", "plain"), ["weather", "timer", "tank", "outage"]],
    ["a crop", () => choose(page, "rows.1.crop", "melon, trained up"), ["season", "crops", "weather", "tasks", "timer"]],
  ]) {
    await change();
    const after = await told(page);
    for (const id of followed) assert.ok(changed(before, after).includes(id), `${what} has changed, ${id} has not`);
    assert.equal(after.pressure, before.pressure, `${what} changes no pressure`);
    before = after;
  }
  assert.match(before.season, /melon, trained up/);
  assert.ok(changed(before, await (await type(page, "supply.tank", "40"), told(page))).includes("tank"), "the tank has changed");
});

behaviour("a date that is none keeps the season that stands there", async ({ page, address }) => {
  await open(page, address);
  const before = await told(page);
  for (const wrong of ["2027-02-30", "12 May", "2027-13-01", ""]) {
    await type(page, "season.last-frost", wrong);
    assert.equal(await page.$eval('[id="f-season.last-frost"]', (e) => e.value), wrong, "what was typed stays");
    assert.match(await text(page, '[id="e-season.last-frost"]'), /must be|is missing/);
    const after = await told(page);
    assert.match(after.always, /^1 thing to put right: .*last frost/i, "the foot says what is wrong");
    assert.deepEqual(changed(before, after), ["always"], "all else stays");
  }
});

behaviour("the clock of the device becomes that of the place", async ({ page, address }) => {
  await page.emulateTimezone("America/Los_Angeles");
  await open(page, address);
  const before = await told(page);
  await see(page, "f-sky");
  await page.$eval('[data-do="set-clock"]', (button) => button.click());
  await atRest(page);
  assert.equal(await page.$eval('[id="f-sky.offset"]', (e) => e.value), "-8");
  assert.equal(await page.$eval('[id="f-sky.summer"]', (e) => e.value), "march-november");
  assert.ok(changed(before, await told(page)).includes("timer"));
});

behaviour("months are pasted as a table", async ({ page, address }) => {
  await open(page, address);
  await choose(page, "sky.climate", "own");
  const table = Array.from({ length: 12 }, (_, i) => `${10 + i},5\t${i}`).join("\n");
  await page.$eval("#f-months-table", (box, table) => { box.value = table; }, table);
  await press(page, "fill-months");
  assert.equal(await page.$eval('[id="f-months.3.high"]', (e) => e.value), "12,5", "what was pasted stays as it was");
  assert.equal(await page.$eval('[id="f-months.12.low"]', (e) => e.value), "11");
});

for (const title of ["Millrace tunnel", "Long field"]) {
  behaviour(`${title}: the card for the timer and the calendar are a page each`, async ({ page, address }) => {
    await open(page, address);
    if (title !== "Millrace tunnel") await example(page, title);
    for (const [heading, id, job] of [["Card for the timer", "timer", "water"], ["What to do, week by week", "tasks", "grow"]]) {
      await inJob(page, job);
      await explored(page);
      const pages = execFileSync("pdftotext", ["-layout", "-", "-"], { input: Buffer.from(await page.pdf({ format: "A4" })), encoding: "utf8" }).split("\f");
      const at = pages.filter((text) => text.includes(heading));
      assert.equal(at.length, 1, `${heading} stands on ${at.length} pages`);
      // Nothing but the name of the job, where it is the first there, stands above it.
      assert.ok(at[0].slice(0, at[0].indexOf(heading)).replace(/Evenrow|Water|Millrace tunnel|Long field/g, "").trim() === "", `${heading} begins no page`);
      // Its last line stands on the same page.
      const last = await page.$$eval(`#${id} table`, (tables) => [...tables[0].rows].at(-1)?.textContent?.replace(/\s+/g, "") ?? "none");
      assert.ok(at[0].replace(/\s+/g, "").includes(last.slice(-12)), `${last} stands on another page`);
    }
  });
}

/** Lets a page believe that it is another day. @param {import("puppeteer-core").Page} page @param {string} day */
const onDay = (page, day) => page.evaluateOnNewDocument((day) => {
  const real = Date;
  // @ts-ignore: only what the page asks for
  globalThis.Date = class extends real {
    constructor(...given) {
      // @ts-ignore
      super(...(given.length ? given : [day]));
    }
  };
}, day);

/** The ways to the jobs that a phone shows at its foot. @param {import("puppeteer-core").Page} page */
const foot = (page) => page.$$eval(".jobs__foot a", (links) => links.map((link) => link.getAttribute("data-job")));

behaviour("while something is watered the timer's job comes first, and what is grave comes first in a job", async ({ page, address }) => {
  await onDay(page, "2027-07-15T10:00");
  await open(page, address);
  await explored(page);
  assert.deepEqual(await foot(page), ["water", "answer", "buy", "all"]);
  await inJob(page, "mend");
  await explored(page);
  const parts = () => page.$$eval("#job > section > div", (places) => places.map(({ id }) => id).filter((id) => id !== "cautions"));
  const opens = () => page.$eval("#d-faults", (fold) => fold.open);
  assert.deepEqual([await parts(), await opens()], [["stopped", "outage", "flush", "faults"], false]);
  await type(page, "supply.regulator", "0.9");
  await inJob(page, "mend");
  await explored(page);
  assert.deepEqual([await parts(), await opens()], [["stopped", "outage", "faults", "flush"], true], "what faults do is to be looked at");
  await type(page, "supply.regulator", "2");
  await inJob(page, "mend");
  await explored(page);
  assert.deepEqual([await parts(), await opens()], [["stopped", "outage", "flush", "faults"], false], "and is folded when it is mended");
}, { both: true });

behaviour("in winter the answer comes first", async ({ page, address }) => {
  await onDay(page, "2027-12-24T10:00");
  await open(page, address);
  await explored(page);
  assert.deepEqual(await foot(page), ["answer", "buy", "water", "all"]);
});
