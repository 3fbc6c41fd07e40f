// No answer passes for one to a plan that it does not belong to: with a mistake
// in the form, while a number is half typed, without scripts, and before the
// planner has opened a link.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { answered, atRest, box, choose, explored, fields, figure, link, open, paste, text, told, verdict } from "./form.js";
import { command } from "./site.js";

/** Whether an element is seen by anybody. @param {import("puppeteer-core").Page} page @param {string} selector */
const seen = (page, selector) => page.$eval(selector, (e) => e.checkVisibility({ visibilityProperty: true }) && e.getClientRects().length > 0);

/**
 * Stops the clock by which typing rests, for machines on which a letter takes longer.
 * @param {import("puppeteer-core").Page} page not yet at the site
 */
const neverRests = (page) =>
  page.evaluateOnNewDocument(() => {
    const real = window.setTimeout;
    window.setTimeout = (what, ms, ...more) => real(what, ms === 2000 ? 1e9 : ms, ...more);
  });

/** The link that the page offers. @param {import("puppeteer-core").Page} page */
const offered = (page) => page.$eval("[data-link]", (e) => new URL(e.value).hash);

/** Goes to a field, all its text selected. @param {import("puppeteer-core").Page} page @param {string} path */
const go = (page, path) =>
  page.$eval(box(path), (field) => {
    for (let e = field; e; e = e.parentElement) if (e instanceof HTMLDetailsElement) e.open = true;
    field.focus();
    field.select();
  });

/** Types letters and waits for what comes of them. @param {import("puppeteer-core").Page} page @param {string} letters */
async function letters(page, letters) {
  await page.keyboard.type(letters);
  await atRest(page);
}

const wrongPump = async () => {
  const plan = await command(["example", "wrong-pump"]);
  return (await command(["link"], plan)).trim();
};

behaviour(
  "with a mistake the foot of the page says what is to be put right",
  async ({ page, address }) => {
    await open(page, address);
    assert.match(await text(page, "#always"), /^Yes\. .* to spare/);
    const before = await text(page, "#always");
    await paste(page, "place.width", "wide");
    assert.ok(await seen(page, "#always"));
    assert.match(await text(page, "#always"), /^1 thing to put right: Place: width across the rows must be a number/);
    assert.ok(await seen(page, "#stale"));
    assert.match(await text(page, "#stale"), /answer to the last good plan, not to what the form holds now/);
    const colour = () => page.$eval("#answer .answer__line .word", (e) => getComputedStyle(e).color);
    const marked = await colour();
    await paste(page, "runs.1.length", "");
    assert.match(await text(page, "#always"), /^2 things to put right:/);
    await paste(page, "place.width", "5");
    await paste(page, "runs.1.length", "8");
    assert.equal(await text(page, "#always"), before);
    assert.equal(await text(page, "#stale"), "");
    assert.notEqual(await colour(), marked, "the word of the last good answer looks like that of a current one");
  },
  { width: 390 },
);

behaviour("a number that is half typed is answered, but is no plan to keep", async ({ page, address }) => {
  await neverRests(page);
  await open(page, address);
  await paste(page, "runs.1.rise", "2");
  const kept = await link(page);
  await explored(page);
  const stood = await told(page);

  await go(page, "runs.1.length");
  await letters(page, "1");
  assert.notDeepEqual((await answered(page)).budget, stood.budget, "the answer does not follow the typing");
  await new Promise((later) => setTimeout(later, 1000)); // what can wait has come too
  assert.equal(await page.evaluate(() => location.hash), kept);
  assert.equal(await offered(page), kept);

  await letters(page, "/");
  assert.match(await text(page, "#errors"), /Run 1: length/);
  const now = await told(page);
  delete now.always;
  delete stood.always;
  assert.deepEqual(now, stood, "the error falls back to a plan that nobody left standing");
  assert.equal(await page.evaluate(() => location.hash), kept);

  await letters(page, "2");
  assert.equal(await text(page, "#errors"), "");
  assert.equal(await page.evaluate(() => location.hash), kept);
  await page.keyboard.press("Tab"); // the field is left
  await page.waitForFunction((kept) => location.hash !== kept, {}, kept);
  const half = await link(page);
  assert.equal(await offered(page), half);
  const plan = JSON.parse(await command(["link"], half));
  assert.equal(plan.runs[0].length, 0.5);
});

behaviour("a number that is typed and taken back leaves the link of the plan that stands", async ({ page, address }) => {
  await neverRests(page);
  await open(page, address);
  await paste(page, "runs.1.rise", "2");
  const kept = await link(page);
  await go(page, "runs.1.rise");
  await letters(page, "1");
  await page.$eval(box("runs.1.rise"), (e) => e.select());
  await letters(page, "2");
  await page.evaluate(() => dispatchEvent(new Event("beforeprint"))); // the plan is to stay
  await atRest(page);
  assert.equal(await offered(page), kept);
}, { both: true });

behaviour("a link that cannot be opened while a number is typed leaves what stands, and calls it no example", async ({ page, address }) => {
  await neverRests(page);
  await open(page, address);
  await go(page, "runs.1.rise");
  await letters(page, "2");
  await page.evaluate(() => { location.hash = "#1AAAA"; });
  await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("cannot be opened"));
  assert.match(await text(page, "#message"), /The plan that stood here is still here/);
  assert.equal(await text(page, "#stale"), "");
  assert.equal((await fields(page))["runs.1.rise"], "2");
}, { both: true });

behaviour("a number that rests is kept, and so is what is chosen", async ({ page, address }) => {
  await open(page, address);
  await go(page, "runs.1.rise");
  await letters(page, "3");
  await page.waitForFunction(() => location.hash.length > 1, { timeout: 20_000 });
  assert.equal(await page.evaluate(() => document.activeElement?.id), "f-runs.1.rise");
  assert.equal(await offered(page), await page.evaluate(() => location.hash));
  await page.reload();
  await atRest(page);
  assert.equal((await fields(page))["runs.1.rise"], "3");
  // A choice is whole as soon as it is made.
  const before = await page.evaluate(() => location.hash);
  await choose(page, "header.feed", "middle");
  await page.waitForFunction((before) => location.hash !== before, {}, before);
});

for (const width of [1280, 390]) {
  behaviour(
    `without scripts, the example is called one, whatever the link (${width} px)`,
    async ({ page, address }) => {
      await page.goto(address + (await wrongPump()));
      assert.match(await text(page, "#answer"), /Yes\./);
      assert.ok(await seen(page, "noscript .notice"));
      const notice = await text(page, ".desk__answer .notice");
      assert.match(notice, /^This page shows an example\. It is not your plan, and not the plan of a link that you were sent/);
      assert.match(notice, /To see that plan without scripts, .*plan\?/);
      assert.equal(await page.$eval(".desk__answer .notice", (e, a) => !!(e.compareDocumentPosition(document.querySelector("#answer")) & 4)), true, "it stands after the answer");
      assert.match(await text(page, "#told .notice"), /belongs to the example/);
      if (width < 1000) {
        assert.ok(await seen(page, ".always"));
        assert.match(await text(page, ".always"), /^An example:\sYes\./);
      }
      await page.emulateMediaType("print");
      assert.ok(await seen(page, ".desk__answer .notice"), "on paper the example is not called one");
    },
    { script: false, width },
  );
}

/**
 * Keeps the planner from starting until window.e2eGo, or makes it fail.
 * @param {import("puppeteer-core").Page} page not yet at the site
 * @param {string} [fault]
 */
const holdPlanner = (page, fault = "") =>
  page.evaluateOnNewDocument((fault) => {
    const Real = window.Worker;
    window.Worker = class extends Real {
      postMessage(...args) {
        if (!args[0].program) super.postMessage(...args);
        else if (fault) setTimeout(() => this.dispatchEvent(new MessageEvent("message", { data: { failed: fault } })), 50);
        else window.e2eGo = () => super.postMessage(...args);
      }
    };
  }, fault);

for (const late of ["the page's script", "the planner"]) {
  behaviour(`until ${late} has loaded and answered, the example does not pass for the plan of a link`, async ({ page, address }) => {
    const bad = await wrongPump();
    /** @type {(() => unknown) | undefined} */
    let go;
    if (late === "the planner") {
      await holdPlanner(page);
      go = () => page.evaluate(() => window.e2eGo());
    } else {
      const held = new Promise((resolve) => { go = () => resolve(undefined); });
      await page.setRequestInterception(true);
      page.on("request", async (request) => {
        if (request.url().includes("/assets/page-")) await held;
        request.continue();
      });
    }
    const there = page.goto(address + bad);
    await page.waitForFunction(() => document.querySelector("#answer .answer__line") && document.querySelector("#examples a"));
    await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
    for (const place of ["#answer .answer__line", "#pressure", "#parts", "#timer", "[data-link]", ".always"]) {
      if (place === ".always") await page.setViewport({ width: 390, height: 800 });
      assert.equal(await seen(page, place), false, `${place} of the example stands as if it were the link's`);
    }
    assert.ok(await seen(page, ".opening"));
    assert.match(await text(page, ".opening"), /being worked out/);
    assert.equal(await page.$("noscript .notice"), null, "what is for pages without scripts is drawn");
    if (late === "the planner") await page.waitForFunction(() => window.e2eGo);
    await go?.();
    await there;
    await atRest(page);
    assert.equal(await verdict(page), "No");
    assert.ok(await seen(page, "#answer .answer__line"));
    assert.equal(await seen(page, ".opening"), false);
    assert.match(await text(page, "#always"), /^No\./);
    await explored(page);
    assert.equal(await page.$("[data-before]"), null);
    assert.ok(await seen(page, "#timer"));
  });
}

behaviour("what is still of the example is hidden until it is of the link's plan", async ({ page, address }) => {
  await page.evaluateOnNewDocument(() => {
    window.e2eTimers = [];
    addEventListener("DOMContentLoaded", () => {
      // What stands under a heading as soon as the answer is there.
      new MutationObserver(() => {
        const name = document.querySelector("#answer .answer__plan b")?.textContent;
        const timer = document.querySelector("#tank");
        if (name === "The wrong pump" && timer?.textContent?.includes("400") && timer.checkVisibility({ visibilityProperty: true })) window.e2eTimers.push(timer.textContent);
      }).observe(document, { subtree: true, childList: true, attributes: true });
    });
  });
  const stale = await command(["example", "wrong-pump"]);
  const plan = JSON.parse(stale);
  plan.supply = { ...plan.supply, tank: 77 };
  await open(page, address + (await command(["link"], JSON.stringify(plan))).trim());
  await explored(page);
  assert.deepEqual(await page.evaluate(() => window.e2eTimers), []);
});

behaviour("without the planner, the example is called one", async ({ page, address }) => {
  await holdPlanner(page, "its file is missing (404)");
  await page.goto(address + (await wrongPump()));
  await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("cannot start"));
  assert.match(await text(page, "#stale"), /an example, not the plan in the link/);
  assert.match(await text(page, "#always"), /an example, not the plan in the link/);
  assert.equal(await seen(page, ".opening"), false);
});

behaviour("without the planner, the example is not called the plan that was worked on last", async ({ page, address, beside }) => {
  await open(page, address);
  await paste(page, "name", "Mine");
  const after = await beside();
  await holdPlanner(after, "its file is missing (404)");
  await after.goto(address);
  await after.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("cannot start"));
  assert.match(await text(after, "#stale"), /an example, not your plan\. That is still kept on this device/);
  assert.equal(await seen(after, "[data-back]"), false);
});

behaviour("without the page's script, nothing stands as the plan of a link", async ({ page, address, leave }) => {
  await leave(async () => {});
  await page.setRequestInterception(true);
  page.on("request", (request) => (request.url().includes("/assets/page-") ? request.abort("connectionrefused") : request.continue()));
  await page.goto(address + (await wrongPump()));
  await page.waitForFunction(() => document.documentElement.dataset.opening === "failed");
  assert.equal(await seen(page, "#answer .answer__line"), false);
  assert.ok(await seen(page, ".opening--failed"));
});

behaviour("an emitter that is turned to another kind has an exponent of that kind", async ({ page, address }) => {
  await open(page, address);
  await choose(page, "emitters.1.kind", "plain");
  assert.equal(await text(page, "#errors"), "");
  assert.equal((await fields(page))["emitters.1.exponent"], "0.5");
  await figure(page, "Flow");
});
