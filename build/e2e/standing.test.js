// No answer passes for one to a plan that it does not belong to: with a mistake
// in the form, while a number is half typed, without scripts, and before the
// planner has opened a link.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { answered, atRest, box, choose, explored, fields, figure, inJob, link, open, paste, see, text, told, verdict } from "./form.js";
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

/** The link in the address, without what is in sight. @param {import("puppeteer-core").Page} page */
const addressed = (page) => page.evaluate(() => location.hash.split("/")[0]);

/** Goes to a field, all its text selected. @param {import("puppeteer-core").Page} page @param {string} path */
async function go(page, path) {
  await see(page, "f-" + path);
  await page.$eval(box(path), (field) => {
    field.focus();
    field.select();
  });
}

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
    const colour = () => page.$eval("#answer .answer__line .word", (e) => getComputedStyle(e).color);
    const good = await colour();
    await paste(page, "place.width", "wide");
    assert.ok(await seen(page, "#always"));
    assert.match(await text(page, "#always"), /^1 thing to put right: Place: width across the rows must be a number/);
    assert.ok(await seen(page, "#stale"));
    assert.match(await text(page, "#stale"), /answer to the last good plan, not to what the form holds now/);
    assert.notEqual(await colour(), good, "the word of the last good answer looks like that of a current one");
    // It says so in every job, and counts what is wrong in others.
    await paste(page, "runs.1.length", "");
    assert.match(await text(page, "#always"), /^2 things to put right:/);
    assert.ok(await seen(page, "#stale"));
    await paste(page, "place.width", "5");
    await paste(page, "runs.1.length", "8");
    assert.equal(await text(page, "#always"), before);
    assert.equal(await text(page, "#stale"), "");
    await inJob(page, "answer");
    assert.equal(await colour(), good);
  },
  { width: 390 },
);

behaviour("a number that is half typed is answered, but is no plan to keep", async ({ page, address }) => {
  await neverRests(page);
  await open(page, address);
  await paste(page, "runs.1.length", "12");
  const kept = await link(page);
  await explored(page);
  const stood = await told(page);

  await go(page, "runs.1.rise");
  await letters(page, "1");
  assert.notEqual((await answered(page)).always, stood.always, "the answer does not follow the typing");
  await new Promise((later) => setTimeout(later, 1000)); // what can wait has come too
  assert.equal(await addressed(page), kept);
  assert.equal(await offered(page), kept);

  await letters(page, "/");
  assert.match(await text(page, "#errors"), /Run 1: rise/);
  const now = await told(page);
  delete now.always;
  delete stood.always;
  assert.deepEqual(now, stood, "the error falls back to a plan that nobody left standing");
  assert.equal(await addressed(page), kept);

  await go(page, "runs.1.rise"); // what stands there was not lost on the way through the jobs
  await page.keyboard.press("End");
  await letters(page, "2");
  assert.equal(await text(page, "#errors"), "");
  assert.equal(await addressed(page), kept);
  await page.keyboard.press("Tab"); // the field is left
  await page.waitForFunction((kept) => location.hash.split("/")[0] !== kept, {}, kept);
  const half = await link(page);
  assert.equal(await offered(page), half);
  const plan = JSON.parse(await command(["link"], half));
  assert.equal(plan.runs[0].rise, 0.5);
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
  await page.waitForFunction(() => /^#\d/.test(location.hash), { timeout: 20_000 });
  assert.equal(await page.evaluate(() => document.activeElement?.id), "f-runs.1.rise");
  assert.equal(await offered(page), await addressed(page));
  await page.reload();
  await atRest(page);
  assert.equal((await fields(page))["runs.1.rise"], "3");
  // A choice is whole as soon as it is made.
  const before = await addressed(page);
  await choose(page, "header.feed", "middle");
  await page.waitForFunction((before) => location.hash.split("/")[0] !== before, {}, before);
});

for (const width of [1280, 390]) {
  behaviour(
    `without scripts, the example is called one, whatever the link (${width} px)`,
    async ({ page, address }) => {
      await page.goto(address + (await wrongPump()));
      assert.match(await text(page, "#answer"), /Yes\./);
      assert.ok(await seen(page, "noscript .notice"));
      const notice = await text(page, ".desk__said .notice");
      assert.match(notice, /^This page shows an example\. It is not your plan, and not the plan of a link that you were sent/);
      assert.match(notice, /To see that plan without scripts, .*plan\?/);
      assert.equal(await page.$eval(".desk__said .notice", (e, a) => !!(e.compareDocumentPosition(document.querySelector("#answer")) & 4)), true, "it stands after the answer");
      assert.equal(await seen(page, "#plan"), false, "a form that nobody answers is drawn");
      if (width < 1000) {
        assert.ok(await seen(page, ".always"));
        assert.match(await text(page, ".always"), /^An example:\sYes\./);
      }
      await page.emulateMediaType("print");
      assert.ok(await seen(page, ".desk__said .notice"), "on paper the example is not called one");
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
    for (const place of ["#answer .answer__line", "#line", "#head", "#map", "#headroom", "#ask", ".always"]) {
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
    assert.ok(await seen(page, "#headroom"));
  });
}

behaviour("what is still of the example is hidden until it is of the link's plan", async ({ page, address }) => {
  await page.evaluateOnNewDocument(() => {
    window.e2eStale = [];
    addEventListener("DOMContentLoaded", () => {
      const told = () => document.querySelector("#headroom")?.textContent;
      const example = (window.e2eExample = told());
      // What stands under a heading as soon as the answer is there.
      new MutationObserver(() => {
        const name = document.querySelector("#head b")?.textContent;
        if (name === "The wrong pump" && told() === example && document.querySelector("#headroom")?.checkVisibility({ visibilityProperty: true })) window.e2eStale.push(example);
      }).observe(document, { subtree: true, childList: true, attributes: true });
    });
  });
  await open(page, address + (await wrongPump()));
  await explored(page);
  assert.match(await page.evaluate(() => window.e2eExample), /more plants/);
  assert.match(await text(page, "#headroom"), /the answer is not Yes/);
  assert.deepEqual(await page.evaluate(() => window.e2eStale), []);
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

behaviour("a box whose form is drawn anew while it is typed in keeps its plan as it is left", async ({ page, address }) => {
  await neverRests(page);
  await open(page, address);
  await go(page, "sky.humidity");
  const before = await addressed(page);
  await page.keyboard.type("7"); // which also asks for the height of the place
  await page.waitForSelector('[id="f-sky.height"]');
  await atRest(page);
  assert.equal(await page.evaluate(() => document.activeElement?.id), "f-sky.humidity");
  await page.keyboard.press("Tab");
  await page.waitForFunction((before) => location.hash.split("/")[0] !== before, {}, before);
  assert.equal(await addressed(page), await offered(page));
  assert.equal((await fields(page))["sky.humidity"], "7");
}, { both: true });

behaviour("a job's address without a link is of the plan that was worked on last", async ({ page, address }) => {
  await open(page, address);
  await paste(page, "name", "Mine");
  await link(page);
  await inJob(page, "answer");
  const name = () => text(page, "#head b");
  const to = async (/** @type {string} */ hash) => {
    await page.evaluate((hash) => { location.hash = hash; }, hash);
    await page.waitForFunction((at) => document.documentElement.dataset.at === at, {}, hash.split("/")[1]);
    await atRest(page);
  };
  await to("#/water");
  assert.equal(await name(), "Mine");
  assert.equal(await addressed(page), await offered(page));
  // From an example as well, of which nothing was changed.
  await page.evaluate(() => /** @type {HTMLElement} */ (document.querySelector("#examples a")).click());
  await page.waitForFunction(() => document.querySelector("#head b")?.textContent === "Millrace tunnel");
  await atRest(page);
  await to("#/buy");
  await page.waitForFunction(() => document.querySelector("#head b")?.textContent === "Mine");
  await atRest(page);
  assert.equal((await fields(page)).name, "Mine");
});

behaviour("a long part that was closed is drawn no more", async ({ page, address }) => {
  await open(page, address);
  await see(page, "d-rows");
  await page.waitForSelector("#rows tbody tr");
  const open_ = () => page.$eval('form#plan input[name="open"]', (e) => /** @type {HTMLInputElement} */ (e).value.trim());
  assert.equal(await open_(), "rows");
  await page.$eval("#d-rows > summary", (e) => /** @type {HTMLElement} */ (e).click());
  await page.waitForFunction(() => document.querySelector('form#plan input[name="open"]')?.value.trim() === "");
  await paste(page, "runs.1.length", "9");
  await inJob(page, "answer");
  assert.equal(await page.$("#rows tbody tr"), null, "it is drawn although nobody sees it");
});
