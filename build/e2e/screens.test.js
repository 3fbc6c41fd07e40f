// The tool on a phone, a tablet and a desk, by day and by night.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { guides } from "./guides.js";
import { atRest, example, open, paste } from "./form.js";
import { faults, kept, pictures, sizes } from "./screens.js";
import { overflow } from "./sight.js";

/** The tool in the states that look different. */
const states = {
  plan: async () => {},
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
    for (const size of sizes) {
      await page.setViewport(size);
      const where = `${state} at ${size.width}`;
      found.push(...(await faults(page, where)));
      if (kept.includes(size.width)) await pictures(page, `${state}-${size.width}`);
      const folded = await page.$$("details:not([open])");
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
    const line = () => page.$eval("#always", (e) => {
      const r = e.getBoundingClientRect();
      return { top: r.top, bottom: r.bottom, screen: innerHeight };
    });
    await page.$$eval("details.record", (all) => all.forEach((d) => { d.open = true; }));
    const count = await page.$$eval("#plan input:not([type=hidden]), #plan select, #plan button:not(.out)", (all) => all.length);
    assert.ok(count > 60);
    await page.focus('[id="f-name"]');
    for (let i = 0; i < 40; i++) {
      await page.keyboard.press("Tab");
      const at = await line();
      assert.ok(at.bottom <= at.screen + 0.5 && at.top < at.screen - 20, `the answer is out of sight: ${JSON.stringify(at)}`);
      const focus = await page.evaluate(() => {
        const r = document.activeElement.getBoundingClientRect();
        return { id: document.activeElement.id || document.activeElement.textContent, top: r.top, bottom: r.bottom };
      });
      assert.ok(focus.bottom <= at.top + 1 && focus.top >= -1, `${focus.id} is under the answer: ${JSON.stringify({ focus, at })}`);
    }
  },
  { width: 360, height: 740 },
);

behaviour(
  "text twice as large still fits",
  async ({ page, address }) => {
    for (const path of ["", ...guides.slice(0, 3)]) {
      await page.goto(address + path);
      if (!path) await atRest(page);
      await page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
      assert.deepEqual(await overflow(page), [], path);
    }
  },
  { width: 640, height: 900 },
);
