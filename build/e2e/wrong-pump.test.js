// The tool says no, says why, and what would help.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, choose, example, fields, head, open, text, type, verdict } from "./form.js";

behaviour("a fountain pump gets a no, the reason and the pump that would do", async ({ page, address }) => {
  await open(page, address);
  await example(page, "The wrong pump");
  assert.equal(await verdict(page), "No");
  assert.match(await text(page, "#answer .answer__line"), /No emitter opens/);

  // 0.7 bar is 7.15 m of water at 20 degrees; the pump's 6.5 m less the rise of 0.4 m and nearly no friction.
  const why = await text(page, "#answer .answer__why");
  const heads = why.match(/open at \S+ bar \((\d+\.\d) m\).* get at most \S+ bar \((\d+\.\d) m\)/);
  assert.ok(heads, `no heads in the reason: ${why}`);
  const [opens, sees] = heads.slice(1).map(Number);
  assert.ok(Math.abs(opens - 7.15) < 0.06, why);
  assert.ok(sees > 5.9 && sees < 6.11, why);
  assert.equal(await head(page, "Weakest emitter"), sees);

  // The least pump: 10.5 m needed, 1 m in reserve, 0.4 m of rise and some friction, at 120 times 2 L/h.
  const fixes = await text(page, "#helps .fixes");
  const pump = fixes.match(/pump that gives at least \d\.\d+ bar \((\d+\.\d) m\) at (\d+\.\d+) L\/min, and at most/);
  assert.ok(pump, `no pump among what helps: ${fixes}`);
  assert.ok(Math.abs(Number(pump[1]) - 12.1) < 0.15, fixes);
  assert.ok(Math.abs(Number(pump[2]) - 4) < 0.05, fixes);
});

behaviour("what helps does what it promises", async ({ page, address }) => {
  for (const title of ["The wrong pump", "Balcony", "Long field", "Loop"]) {
    await open(page, address);
    await example(page, title);
    const before = await fields(page);
    const offers = await page.$$eval("#helps .fixes li", (all) =>
      all.map((e) => ({ said: e.textContent ?? "", href: e.querySelector("a")?.getAttribute("href") ?? "" })),
    );
    const good = await verdict(page);
    if (!/^Yes/.test(good)) assert.ok(offers.length, `${title} is ${good} and nothing helps`);
    for (const { said, href } of offers.filter((o) => o.href)) {
      await page.goto(address + href);
      await atRest(page);
      await page.waitForFunction((href) => location.hash === href, {}, href);
      const after = await verdict(page);
      if (said.includes("the answer is Yes")) assert.match(after, /^Yes/, `${title}: ${said}`);
      else assert.doesNotMatch(after, /^Yes/, `${title}: ${said}`);
      assert.notDeepEqual(await fields(page), before, `${title}: nothing is changed by: ${said}`);
      await page.goto("about:blank");
    }
  }
});

behaviour("a change that helps is a click away", async ({ page, address }) => {
  await open(page, address);
  await example(page, "Long field");
  assert.doesNotMatch(await verdict(page), /^Yes/);
  const [offer] = await page.$$("#helps .fixes a");
  assert.ok(offer, "no change can be opened");
  await offer.click();
  await page.waitForFunction(() => /^Yes\b/.test(document.querySelector("#answer .word")?.textContent ?? ""));
});

behaviour("the pump that would do is the least that does", async ({ page, address }) => {
  await open(page, address);
  await example(page, "The wrong pump");
  const said = await text(page, "#helps .fixes");
  const least = Number(said.match(/pump that gives at least \d\.\d+ bar \((\d+\.\d) m\)/)?.[1]);
  await choose(page, "supply.kind", "pump-points");
  for (const [i, [flow, head]] of [[0, 15], [4, least + 0.1], [8, 8], [12, 2]].entries()) {
    await type(page, `points.${i + 1}.flow`, String(flow));
    await type(page, `points.${i + 1}.head`, head.toFixed(1));
  }
  assert.match(await verdict(page), /^Yes/);
  await type(page, "points.2.head", (least - 0.1).toFixed(1));
  assert.equal(await verdict(page), "Nearly");
});
