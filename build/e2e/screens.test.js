// The tool on a phone, a tablet and a desk, by day and by night.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { guides } from "./guides.js";
import { example, explored, inJob, job, jobs, open, paste, see } from "./form.js";
import { faults, kept, pictures, sizes } from "./screens.js";
import { overflow } from "./sight.js";

/** The tool in the states that look different: every job of the default plan, and the answer of other plans. */
const states = {
  questions: (page) => see(page, "/start"),
  ...Object.fromEntries(jobs.map((id) => [id, async (page) => {
    await inJob(page, id);
    await explored(page);
  }])),
  "one-row": (page) => see(page, "f-rows.2.spacing"),
  all: (page) => see(page, "/all"),
  errors: async (page) => {
    await paste(page, "place.width", "0");
    await paste(page, "rows.2.spacing", "a hand");
  },
  "wrong-pump": (page) => example(page, "The wrong pump"),
  balcony: (page) => example(page, "Balcony"),
  "long-field": (page) => example(page, "Long field"),
  ring: (page) => example(page, "Loop"),
};

for (const [state, make] of Object.entries(states)) {
  behaviour(`the tool fits every screen: ${state}`, async ({ page, address }) => {
    await open(page, address);
    await make(page);
    const found = [];
    const shown = await job(page);
    for (const size of sizes) {
      await page.setViewport(size);
      const where = `${state} at ${size.width}`;
      assert.equal(await job(page), shown, `${where}: another job has come into sight`);
      found.push(...(await faults(page, where)));
      if (kept.includes(size.width)) await pictures(page, `${state}-${size.width}`);
      const folded = [];
      for (const one of await page.$$("details:not([open])")) if (await one.evaluate((d) => d.checkVisibility())) folded.push(one);
      for (const one of folded) await one.evaluate((d) => { d.open = true; });
      found.push(...(await faults(page, `${where}, unfolded`)));
      for (const one of folded) await one.evaluate((d) => { d.open = false; });
    }
    assert.deepEqual(found, []);
  });
}

behaviour(
  "the answer stays in sight on a phone, and covers nothing that has the focus",
  async ({ page, address }) => {
    await open(page, address);
    for (const to of ["/answer/rows/rows.2", "/answer/supply", "/water/timer"]) {
      await see(page, to);
      await explored(page);
      const first = await page.$$eval("#plan :is(summary, input:not([type=hidden]), select, button:not(.out))", (all) => {
        const shown = all.filter((e) => e.checkVisibility());
        shown[0].focus();
        return shown.length;
      });
      assert.ok(first > 8, `${to} has ${first} places to stop at`);
      for (let i = 0; i < first; i++) {
        const { answer, bar, focus } = await page.evaluate(() => {
          const of = (e) => {
            const { top, bottom } = e.getBoundingClientRect();
            return { top, bottom, id: e.id || e.textContent, in: Boolean(e.closest("#plan")), screen: innerHeight };
          };
          return { answer: of(document.querySelector("#always")), bar: of(document.querySelector(".bar")), focus: of(document.activeElement) };
        });
        assert.ok(focus.in, `${i} of ${first}: ${focus.id} is no place of the form`);
        assert.ok(answer.bottom <= answer.screen + 0.5 && answer.top < answer.screen - 20, `the answer is out of sight: ${JSON.stringify(answer)}`);
        assert.ok(focus.bottom <= bar.top + 1 && focus.top >= -1, `${focus.id} is under the answer: ${JSON.stringify({ focus, bar })}`);
        await page.keyboard.press("Tab");
      }
    }
  },
  { width: 360, height: 740 },
);

behaviour(
  "text twice as large still fits",
  async ({ page, address }) => {
    const doubled = async (where) => {
      await page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
      assert.deepEqual(await overflow(page), [], where);
    };
    for (const place of [...jobs, "answer/rows", "all", "start"]) {
      await open(page, address + "#/" + place);
      await explored(page);
      assert.equal(await page.$eval("html", (e) => e.dataset.at), place.split("/")[0]);
      await doubled(place);
    }
    for (const path of guides.slice(0, 3)) {
      await page.goto(address + path);
      await doubled(path);
    }
  },
  { width: 640, height: 900 },
);
