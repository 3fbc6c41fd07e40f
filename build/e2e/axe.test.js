// Rules of accessibility that a machine can check, on every page and state, light and dark.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { behaviour } from "./browser.js";
import { example, explored, inJob, jobs, open, paste, see } from "./form.js";
import { guides } from "./guides.js";

const axe = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/**
 * What is wrong with the page as it stands.
 * @param {import("puppeteer-core").Page} page
 * @returns {Promise<string[]>}
 */
async function violations(page) {
  await page.evaluate(axe); // a script element would break the page's policy
  return page.evaluate(async () => {
    const found = [];
    for (const v of (await window.axe.run({ resultTypes: ["violations"] })).violations) {
      for (const node of v.nodes.slice(0, 4)) found.push(`${v.id}: ${v.help}: ${node.target.join(" ")}: ${node.failureSummary?.replace(/\s+/g, " ").slice(0, 200)}`);
    }
    return found;
  });
}

const unfold = (page) => page.$$eval("details", (all) => all.forEach((d) => { d.open = true; }));

/** What the tool shows: every job of the default plan, unfolded and with all that is explored, and what else looks different. */
const states = {
  questions: (page) => see(page, "/start"),
  ...Object.fromEntries(jobs.map((job) => [job, async (page) => {
    await inJob(page, job);
    await explored(page);
    await unfold(page);
  }])),
  "one of several rows": (page) => see(page, "f-rows.2.spacing"),
  all: (page) => see(page, "/all"),
  errors: async (page) => {
    await paste(page, "place.width", "0");
    await paste(page, "rows.2.spacing", "a hand");
    await unfold(page);
  },
  "wrong pump": (page) => example(page, "The wrong pump"),
  balcony: (page) => example(page, "Balcony"),
  "long field": (page) => example(page, "Long field"),
  ring: (page) => example(page, "Loop"),
};

/** @param {import("puppeteer-core").Page} page @param {string} where */
async function inBoth(page, where) {
  const found = [];
  for (const scheme of ["light", "dark"]) {
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
    found.push(...(await violations(page)).map((v) => `${where}, ${scheme}: ${v}`));
  }
  return found;
}

for (const [state, make] of Object.entries(states)) {
  behaviour(`the tool breaks no rule: ${state}`, async ({ page, address }) => {
    await open(page, address);
    await make(page);
    assert.deepEqual(await inBoth(page, state), []);
  });
}

behaviour(
  "the tool breaks no rule on a phone",
  async ({ page, address }) => {
    await open(page, address + "#/start");
    const found = (await violations(page)).map((v) => `start: ${v}`);
    for (const job of jobs) {
      await inJob(page, job);
      await explored(page);
      found.push(...(await violations(page)).map((v) => `${job}: ${v}`));
    }
    assert.deepEqual(found, []);
  },
  { width: 360, height: 740 },
);

behaviour("no guide breaks a rule", async ({ page, address }) => {
  const found = [];
  for (const guide of guides) {
    await page.goto(address + guide);
    found.push(...(await inBoth(page, guide)));
  }
  assert.deepEqual(found, []);
});

/** The levels of the headings that are shown. @param {import("puppeteer-core").Page} page */
const headings = (page) => page.$$eval("h1, h2, h3, h4, h5, h6", (all) => all.filter((e) => e.checkVisibility()).map((e) => Number(e.tagName[1])));

/** @param {number[]} levels @param {string} where */
function inOrder(levels, where) {
  assert.equal(levels.filter((l) => l === 1).length, 1, where);
  levels.forEach((l, i) => assert.ok(i === 0 || l <= levels[i - 1] + 1, `${where}: h${levels[i - 1]} is followed by h${l}`));
}

behaviour("headings go down one level at a time, and every page has one title", async ({ page, address }) => {
  for (const path of ["", ...guides]) {
    await page.goto(address + path);
    inOrder(await headings(page), path);
  }
});

behaviour("so do those of every job, with all of it unfolded", async ({ page, address }) => {
  await open(page, address);
  for (const job of [...jobs, "all", "start"]) {
    await see(page, "/" + job);
    await explored(page);
    await unfold(page);
    assert.equal(await page.$eval("html", (e) => e.dataset.at), job);
    inOrder(await headings(page), job);
  }
});
