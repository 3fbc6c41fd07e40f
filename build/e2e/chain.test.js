// What joins what: a thread that does not fit is told, and what is said to help does.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, choose, fields, inJob, link, open, press, text, type } from "./form.js";

behaviour(
  "a pump with another thread has nothing to be joined by, until a fitting of one's own does",
  async ({ page, address }) => {
    await open(page, address);
    await inJob(page, "buy");
    const line = () => page.$eval('[id="h-chain"]', (e) => (e.closest("summary")?.textContent ?? "").replace(/\s+/g, " ").trim());
    assert.match(await line(), /3 parts, and every joint holds/);
    const yes = await text(page, "#line");
    await choose(page, "ends.outlet-out", "npt-3/4-male");
    assert.match(await line(), /nothing joins the pump to the tee of the first gauge/);
    const said = await text(page, "#chain");
    assert.match(said, /No parts lead from the pump \(3\/4 in pipe thread \(NPT\), male\)/);
    assert.match(said, /60° against 55°/);
    assert.match(said, /A fitting with 3\/4 in pipe thread \(NPT\), female at one end and G 3\/4 parallel thread, male at the other would/);
    assert.equal(await text(page, "#line"), yes, "the water's answer is what it was");
    assert.doesNotMatch(await text(page, "#parts"), /Reducer, G 1/);
    // What is said to help.
    await press(page, "add-fitting");
    await type(page, "fittings.1.name", "From my neighbour");
    await choose(page, "fittings.1.a", "npt-3/4-female");
    await choose(page, "fittings.1.b", "g-3/4-male");
    assert.match(await line(), /3 parts, and every joint holds/);
    assert.match(await text(page, "#parts"), /From my neighbour, 3\/4 in pipe thread \(NPT\), female, to G 3\/4 parallel thread, male/);
    // The link carries it.
    const typed = await fields(page);
    const there = await link(page);
    await page.goto("about:blank");
    await page.goto(address + there);
    await atRest(page);
    assert.deepEqual(await fields(page), typed);
  },
  { width: 360 },
);
