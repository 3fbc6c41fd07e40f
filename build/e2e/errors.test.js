// A wrong value is told beside its field and keeps what was typed.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { answered, atRest, box, choose, fields, inJob, jobs, open, openPlan, paste, press, see, text, verdict } from "./form.js";
import { alike } from "./plans.js";

/**
 * What the page shows about one field.
 * @param {import("puppeteer-core").Page} page
 * @param {string} path
 */
function shown(page, path) {
  return page.$eval(box(path), (field) => {
    const line = document.getElementById(field.id.replace(/^f-/, "e-"));
    const style = line && getComputedStyle(line);
    return {
      typed: field.value,
      invalid: field.getAttribute("aria-invalid") === "true",
      described: field.getAttribute("aria-describedby")?.split(" ").includes(line?.id ?? "") ?? false,
      error: line?.textContent ?? "",
      seen: Boolean(line && style && style.display !== "none" && line.getClientRects().length),
      summary: [...document.querySelectorAll("#errors a")].filter((a) => a.getAttribute("href") === `#${field.id}`).map((a) => a.textContent),
      colour: getComputedStyle(field).borderTopColor,
    };
  });
}

/**
 * Types something wrong, checks all that must be told about it, and puts the
 * old value back.
 * @param {import("puppeteer-core").Page} page
 * @param {string} path
 * @param {string} wrong
 * @param {RegExp} said
 */
async function refuses(page, path, wrong, said) {
  if (!(await page.$(box(path)))) await see(page, "f-" + path);
  const good = await page.$eval(box(path), (e) => e.value);
  const before = await answered(page);
  await paste(page, path, wrong); // which opens the group that it stands in
  const is = await shown(page, path);
  const where = `${path} ${JSON.stringify(wrong)}: ${JSON.stringify(is)}`;
  assert.equal(is.typed, wrong, where);
  assert.ok(is.invalid && is.described && is.seen, where);
  assert.match(is.error, said, where);
  assert.ok(wrong === "" || is.error.includes(`"${wrong}" is kept`), where);
  assert.equal(is.summary.length, 1, where);
  assert.ok(is.error.startsWith(is.summary[0]), where);
  assert.match(await text(page, "#errors h2"), /^1 thing to put right$/, where);
  const { always, ...after } = await answered(page);
  assert.match(always, /^1 thing to put right: /, where);
  assert.deepEqual({ ...after, always: before.always }, before, `${where}: the last good answer is gone`);
  await paste(page, path, good);
  const mended = await shown(page, path);
  assert.ok(!mended.invalid && !mended.error && !mended.seen, `${path} mended: ${JSON.stringify(mended)}`);
  assert.equal(await text(page, "#errors"), "", path);
}

behaviour("each kind of mistake is told", async ({ page, address }) => {
  await open(page, address);
  await refuses(page, "runs.1.length", "", /is missing|must be/);
  for (const wrong of ["ten", "1.2.3", "0x10", "NaN", "Infinity", "-", "8 psi", "1e999"]) await refuses(page, "runs.1.length", wrong, /must be|is not|cannot/);
  await refuses(page, "rows.1.plants", "2.5", /must be|whole/);
  await refuses(page, "rows.1.plants", "", /./);
  await refuses(page, "name", "x".repeat(61), /at most 60 characters, not 61/);
  // One value against another.
  await refuses(page, "points.2.head", "35", /less than at the point before/);
  await refuses(page, "points.3.flow", "10", /more than at the point before/);
  await refuses(page, "points.1.flow", "1", /0 at the first point/);
  await refuses(page, "emitters.1.closes", "0.8", /must not exceed the opening pressure, 0.70 bar/);
  await refuses(page, "emitters.1.opens", "2", /must not exceed the lowest pressure, 1.03 bar/);
  await refuses(page, "emitters.1.exponent", "0.5", /for a compensating emitter/);
  await refuses(page, "emitters.1.highest", "1", /more than the lowest pressure, 1.03 bar/);
});

// Every kind of supply, and every choice that shows further fields. A form that
// names parts looks at their numbers only.
const parts = {
  "dates, plantings and crops of one's own": /^(season|plantings|crops)\./,
  "weather, typed in": /^(sky|months)\./,
  "a timer, prices, blocked emitters": /^(timer|prices|chance)\./,
  "emitters that flush themselves": /^(emitters|rows)\./,
};
const water = /^(place|supply|points|runs|filter|header|emitters|rows|all|limits)\./;
const forms = {
  "points of a curve, bores measured": async (page) => {
    for (const path of ["runs.1.tube", "header.tube", "rows.1.tube"]) await choose(page, path, "measured");
  },
  "two figures of a pump": (page) => choose(page, "supply.kind", "pump-two"),
  "the power of a pump": (page) => choose(page, "supply.kind", "pump-power"),
  "a tank above": (page) => choose(page, "supply.kind", "gravity"),
  "a tap, and emitters that do not compensate": async (page) => {
    await choose(page, "supply.kind", "mains");
    await choose(page, "emitters.1.kind", "plain");
    assert.equal((await fields(page))["emitters.1.exponent"], "0.5");
  },
  "dates, plantings and crops of one's own": async (page) => {
    await press(page, "add-planting");
    await press(page, "add-crop");
    await paste(page, "plantings.1.times", "2");
    await paste(page, "plantings.1.from", "1");
    await paste(page, "plantings.1.to", "2");
  },
  "weather, typed in": async (page) => {
    await choose(page, "sky.climate", "own");
    await paste(page, "sky.sunshine", "50");
  },
  "a timer, prices, blocked emitters": (page) => paste(page, "rows.1.zone", "2"),
  "emitters that flush themselves": (page) => choose(page, "emitters.1.flushes", "low"),
};
/** A kind of field: that of every record, and of every size of tubing. @param {string} path */
const kindOf = (path) => path.replace(/\.\d+\./, ".*.").replace(/-\d+$/, "-*");
const met = new Set();

/**
 * The boxes for numbers in all jobs, with their hints; of the rows that of one row by
 * itself and those for all at once.
 * @param {import("puppeteer-core").Page} page
 */
async function everyNumber(page) {
  const found = new Map();
  for (const to of [...jobs.map((job) => "/" + job), "f-rows.1"]) {
    await see(page, to);
    const here = await page.$$eval("#plan input[inputmode]", (all) => all.map((e) => [e.id.slice(2), document.getElementById(`h-${e.id.slice(2)}`)?.textContent ?? ""]));
    for (const [path, hint] of here) found.set(path, hint);
  }
  return [...found].map(([path, hint]) => ({ path, hint }));
}

for (const [name, shape] of Object.entries(forms)) {
  behaviour(`every number is held to its range: ${name}`, async ({ page, address }) => {
    await open(page, address);
    await shape(page);
    assert.equal(await text(page, "#errors"), "");
    const numbers = await everyNumber(page);
    assert.ok(numbers.length > 30, `only ${numbers.length} numbers`);
    for (const { path, hint } of numbers) {
      const kind = kindOf(path);
      if (met.has(kind) || !(parts[name] ?? water).test(path)) continue;
      met.add(kind);
      const range = hint.match(/[Ff]rom (-?[\d.]+) to (-?[\d.]+)(?: (\S+))?\./);
      assert.ok(range, `${path} has no range in its hint: ${hint}`);
      const [, low, high] = range;
      const words = new RegExp(`must be from ${low.replace(".", "\\.")} to ${high.replace(".", "\\.")}`);
      await refuses(page, path, String(Number(high) + 1), words);
      await refuses(page, path, String(Number(low) - 1), words);
    }
  });
}

behaviour("no number was left out", async ({ page, address }) => {
  await open(page, address);
  // The form holds every field, in sight or not.
  const all = Object.entries(await fields(page)).filter(([, value]) => /^[-\d.]*$/.test(value) && !/\d-\d/.test(value)).map(([name]) => name);
  assert.ok(all.length > 130, `only ${all.length} numbers`);
  const text = ["name", "prices.currency"];
  const missed = [...new Set(all.filter((n) => !text.includes(n)).map(kindOf))].filter((kind) => !met.has(kind));
  assert.deepEqual(missed.filter((kind) => !/\.(tube|kind|layout|feed|present|barb|crop|medium|emitter)$/.test(kind) && kind !== "sky.before"), []); // which is asked for once a drain reading is used
  assert.ok(met.size > 40, `${met.size}`);
});

behaviour("several mistakes are listed, and each leads to its field", async ({ page, address }) => {
  await open(page, address);
  await paste(page, "limits.speed", "99");
  await paste(page, "rows.3.spacing", "none");
  await paste(page, "place.width", "");
  await paste(page, "timer.drain-hot", "120"); // of another job
  assert.match(await text(page, "#errors h2"), /^4 things to put right$/);
  const links = await page.$$eval("#errors a", (all) => all.map((a) => a.getAttribute("href")));
  assert.deepEqual(links, ["#f-place.width", "#f-rows.3.spacing", "#f-limits.speed", "#f-timer.drain-hot"]);
  for (const href of links) {
    // From another job, and then within its own with all groups closed: they are opened.
    for (const from of ["why", "answer"]) {
      await see(page, "/" + from);
      await page.$$eval("#plan details", (all) => all.forEach((d) => { d.open = false; }));
      await page.$eval(`#errors a[href="${href}"]`, (a) => a.click());
      await atRest(page);
    }
    const at = await page.evaluate(() => {
      const e = document.activeElement;
      const r = e.getBoundingClientRect();
      return { id: `#${e.id}`, seen: r.height > 0 && r.top >= 0 && r.bottom <= innerHeight };
    });
    assert.deepEqual(at, { id: href, seen: true });
  }
  assert.match(await page.evaluate(() => location.hash), /^#(1[\w-]+)?\/water\/timer$/);
});

behaviour("a value that another one spoils is told where it stands", async ({ page, address }) => {
  await open(page, address);
  await paste(page, "rows.2.plants", "2");
  const is = await shown(page, "rows.2.per-piece");
  assert.match(is.error, /must not exceed the number of plants, 2/);
  assert.ok(is.invalid && is.seen && is.summary.length === 1, JSON.stringify(is));
  await paste(page, "rows.2.plants", "30");
  await choose(page, "rows.2.tube", "32 mm");
  assert.match((await shown(page, "rows.2.tube")).error, /punched into/);
  await choose(page, "rows.2.tube", "16 mm");
  await choose(page, "rows.2.emitter", "2");
  assert.match((await shown(page, "rows.2.emitter")).error, /the only one described/);
  await press(page, "add-emitter");
  assert.equal(await text(page, "#errors"), "");
});

behaviour("too many plants in all are told", async ({ page, address }) => {
  await openPlan(page, address, alike(10, 400));
  await press(page, "copy-row.10");
  assert.match(await text(page, "#errors li"), /Rows must hold at most 4000 plants in all, not 4400/);
  await inJob(page, "water");
  await page.$eval("#errors a", (a) => a.click());
  await page.waitForFunction(() => document.activeElement?.id === "f-rows");
  assert.match(await text(page, '[id="f-rows"] > .field__error'), /at most 4000 plants/);
});

behaviour("Enter with a mistake leads to the list of mistakes", async ({ page, address }) => {
  await open(page, address);
  await paste(page, "place.width", "0");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement?.id === "errors");
});

behaviour("a mistake survives a change of the form's shape", async ({ page, address }) => {
  await open(page, address);
  await paste(page, "place.width", "wide");
  await choose(page, "supply.kind", "mains");
  await press(page, "add-row");
  await press(page, "add-emitter"); // of another job
  await see(page, "f-place.width");
  const is = await shown(page, "place.width");
  assert.equal(is.typed, "wide");
  assert.ok(is.invalid && is.seen && is.summary.length === 1, JSON.stringify(is));
  assert.equal((await fields(page))["rows.5.plants"], "30");
  assert.equal(await verdict(page), "Yes");
  await paste(page, "place.width", "6");
  assert.equal(await text(page, "#errors"), "");
});
