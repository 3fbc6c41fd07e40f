// The worker that the planner runs in may hang or die: nothing typed is lost,
// the old answer does not pass for the new one, and the page goes on.
import assert from "node:assert/strict";
import { after, before } from "node:test";
import { behaviour } from "./browser.js";
import { back, noted, stands } from "./drafts.js";
import { answered, atRest, example, explored, fields, inJob, open, paste, press, see, text, told, verdict } from "./form.js";
import { change, copied, host, named } from "./host.js";
import { hurry, pausing, tarry } from "./hurry.js";
import { shared } from "./site.js";

/** @type {{address: string, stop: () => Promise<void>}} */
let site;
/** @type {Awaited<ReturnType<typeof host>>} */
let faulty;
before(async () => {
  site = await shared();
  const files = await copied(site.address);
  // The planner does what is typed, in sight or not, and nothing is kept of it.
  change(files, named(files, "worker.js"), (script) => `
    Object.defineProperty(globalThis, "evenrow", { set(all) {
      const wrapped = {};
      for (const name of Object.keys(all)) wrapped[name] = (text) => {
        const said = decodeURIComponent(text);
        if (said.includes("=hang") && name === "answer" || text.endsWith("-hang")) for (;;);
        if (said.includes("log.1.out=77") && said.includes("action=log-open")) for (;;);
        if (said.includes("name=die") && name === "answer") throw new RangeError("Maximum call stack size exceeded");
        const reply = all[name](text);
        const finds = (id) => name === "rest" && reply.fragments.some((fragment) => fragment.id === id);
        if (said.includes("rows.1.plants=13") && finds("headroom") || said.includes("rows.1.plants=14") && finds("designs")) for (;;);
        return reply;
      };
      Object.defineProperty(globalThis, "evenrow", { value: wrapped });
    }, configurable: true });
    ${script}`);
  change(files, "/offline.js", () => "");
  faulty = await host(files);
});
after(async () => {
  await faulty?.stop();
  await site?.stop();
});

const faultyHost = { address: () => faulty.address, both: true };

behaviour(
  "a plan that takes too long is given up, in words, and typing goes on",
  async ({ page, address }) => {
    await hurry(page);
    await open(page, address);
    await inJob(page, "water");
    await explored(page);
    const yes = await text(page, "#line");
    const timer = await text(page, "#timer");
    await paste(page, "timer.drain", "hang");
    await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("takes too long"));
    await atRest(page);
    assert.match(await text(page, "#message"), /takes too long on this device.*What you typed stays/);
    assert.match(await text(page, "#stale"), /not to what the form holds now/);
    assert.match(await text(page, "#always"), /not to what the form holds now/);
    assert.equal(await text(page, "#line"), yes, "the last answer stands, and is called one");
    assert.equal((await fields(page))["timer.drain"], "hang");
    // An answer about the log does not make the other one right.
    await page.$eval('[id="f-log.1.day"]', (e) => {
      e.value = "31 June";
      e.dispatchEvent(new InputEvent("input", { bubbles: true }));
    });
    await page.waitForFunction(() => document.getElementById("e-log.1.day")?.textContent);
    assert.match(await text(page, "#stale"), /not to what the form holds now/);
    await paste(page, "timer.drain", "30");
    for (const id of ["#message", "#stale"]) assert.equal(await text(page, id), "");
    assert.match(await text(page, "#always"), /^Yes\./);
    await explored(page);
    assert.notEqual(await text(page, "#timer"), timer);
    assert.equal(await page.$("[data-before]"), null);
  },
  faultyHost,
);

behaviour(
  "a link that takes too long leaves the plan that stands, and a reload what was typed there",
  async ({ page, address }) => {
    await hurry(page);
    await open(page, address);
    await paste(page, "name", "Mine");
    await see(page, "f-runs.1.rise");
    await page.evaluate(() => { location.hash = "#1-hang"; });
    await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("takes too long"));
    assert.match(await text(page, "#stale"), /the plan that stood here before, not the one that was opened/);
    await Promise.all([
      page.waitForNavigation(),
      page.$eval('[id="f-runs.1.rise"]', (e) => {
        e.value = "high";
        e.dispatchEvent(new InputEvent("input", { bubbles: true }));
        location.reload();
      }),
    ]);
    await atRest(page);
    const { name, "runs.1.rise": rise } = await fields(page);
    assert.deepEqual([name, rise], ["Mine", "high"]);
  },
  faultyHost,
);

behaviour(
  "where the first plan takes too long, the link of the example that stands is a whole one",
  async ({ page, address }) => {
    await hurry(page);
    await page.goto(address + "#1-hang");
    await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("takes too long"));
    assert.match(await text(page, "#stale"), /an example, not the plan in the link/);
    const link = await page.$eval("[data-link]", (box) => box.value);
    assert.ok(link.startsWith(address) && link.includes("#1"), link);
  },
  faultyHost,
);

behaviour(
  "where the log of another plan takes too long, none stands for it, and no key goes into that of the plan before",
  async ({ page, address }) => {
    await hurry(page);
    await open(page, address);
    await paste(page, "name", "First");
    await paste(page, "log.1.out", "77");
    await example(page, "Balcony");
    await noted(page, { 1: "" });
    await paste(page, "name", "Second");
    await paste(page, "log.1.out", "12");
    const shows = () => page.$eval("#log", (log) => log.checkVisibility());
    const left = () => page.$eval("#advice", (place) => place.getAttribute("data-before"));
    assert.ok(await shows());
    const before = async () => {
      await back(page); // to the job before
      await page.waitForSelector("#answer");
      await back(page);
    };
    const after = async () => {
      await page.evaluate(() => history.forward());
      await page.waitForSelector("#answer");
      await stands(page, "Second");
      await page.evaluate(() => history.forward());
      await page.waitForSelector("#timer");
    };
    await before();
    await stands(page, "First");
    await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("takes too long"));
    await atRest(page);
    assert.equal(await shows(), false, "the log of another plan stands there");
    assert.equal(await left(), "left", "what was said of another plan's log stands there");
    // It comes as soon as it can; here, with the plan that it belongs to.
    await after();
    await noted(page, { 1: "12" });
    assert.ok(await shows());
    assert.equal(await left(), null);
    assert.equal(await text(page, "#message"), "");
    // Also the log that was in the form before.
    await before();
    await page.waitForFunction(() => document.getElementById("log")?.hidden);
    await after();
    await page.waitForFunction(() => !document.getElementById("log")?.hidden);
    assert.equal(await left(), null);
    await noted(page, { 1: "12" });
  },
  faultyHost,
);

behaviour(
  "a link that takes too long leaves nothing untold of the plan that stands",
  async ({ page, address, another }) => {
    await hurry(page);
    // The link comes while what is to be explored waits for the typing to rest.
    await tarry(page);
    await open(page, address);
    const example = await told(page);
    await paste(page, "rows.1.plants", "17");
    await pausing(page);
    await page.evaluate(() => { location.hash = "#1-hang"; });
    await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("takes too long"));
    for (const words of [await text(page, "#always"), await text(page, "#stale")]) assert.match(words, /not the one that was opened/);
    await explored(page);
    const headroom = await text(page, "#headroom");
    const anew = await another();
    await open(anew, address);
    await paste(anew, "rows.1.plants", "17");
    const right = await told(anew);
    assert.notEqual(right.headroom, example.headroom);
    await explored(anew);
    assert.equal(headroom, await text(anew, "#headroom"));
    await page.bringToFront(); // one that is behind draws no frames, and waits for them
    const now = await told(page); // from here through all jobs
    assert.match(now.always, /not the one that was opened/);
    assert.deepEqual({ ...now, always: (await answered(page)).always }, right);
  },
  faultyHost,
);

behaviour(
  "what was to be explored of the last answer is left out when the next one takes too long, and nothing older passes for it",
  async ({ page, address }) => {
    await hurry(page);
    await tarry(page);
    await open(page, address);
    await paste(page, "rows.1.plants", "17");
    await pausing(page);
    await paste(page, "name", "hang");
    await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("takes too long"));
    await explored(page);
    const left = await page.$$eval('[data-before="left"]', (all) => all.map((e) => e.id));
    for (const id of ["designs", "headroom"]) assert.ok(left.includes(id), `left out: ${left}`);
    assert.ok(!left.includes("answer") && !left.includes("rows") && !left.includes("crops"), `left out: ${left}`);
    await paste(page, "name", "well");
    await explored(page);
    assert.equal(await page.$("[data-before]"), null);
  },
  faultyHost,
);

behaviour(
  "where a job has nothing to be explored, nothing is left out of it",
  async ({ page, address }) => {
    await hurry(page);
    await tarry(page);
    await open(page, address);
    await pausing(page);
    await inJob(page, "build");
    await paste(page, "runs.1.rise", "hang");
    await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("takes too long"));
    assert.equal(await page.$("[data-before]"), null);
    await paste(page, "runs.1.rise", "1");
    assert.equal(await text(page, "#message"), "");
  },
  faultyHost,
);

behaviour(
  "what was to be explored when the planner goes down is left out, and nothing older passes for it",
  async ({ page, address }) => {
    await hurry(page);
    await tarry(page);
    await open(page, address);
    assert.equal(await page.$("[data-before]"), null);
    await paste(page, "rows.1.plants", "17");
    await pausing(page);
    await page.evaluate(() => {
      window.e2eDoomed = 4;
      window.e2eKill("error");
    });
    await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("cannot start"));
    const left = await page.$$eval('[data-before="left"]', (all) => all.map((e) => e.id));
    assert.ok(left.includes("headroom") && left.includes("designs") && !left.includes("answer") && !left.includes("crops"), `left out: ${left}`);
  },
  { both: true },
);

behaviour(
  "a question that a newer one has overtaken is given up for it",
  async ({ page, address }) => {
    await open(page, address); // with its own clock: the newer answer comes long before a worker is called dead
    await page.$eval('[id="f-name"]', (e) => {
      e.value = "hang";
      e.dispatchEvent(new InputEvent("input", { bubbles: true }));
    });
    await page.waitForFunction(() => window.e2e.asked > window.e2e.answered);
    await paste(page, "name", "well");
    assert.match(await text(page, "#head"), /^well/);
    assert.equal(await text(page, "#message"), "");
    // What a button does is not given up.
    assert.equal(await page.$('[id="d-rows.5"]'), null);
    await press(page, "add-row");
    assert.ok(await page.$('[id="d-rows.5"]'));
  },
  faultyHost,
);

behaviour(
  "an exploration that takes too long is left out, and the others come",
  async ({ page, address }) => {
    await hurry(page);
    await open(page, address);
    // One that others follow, and the last.
    for (const [plants, id] of [["13", "headroom"], ["14", "designs"]]) {
      await paste(page, "rows.1.plants", plants);
      await explored(page);
      assert.match(await text(page, ".answer__plan"), new RegExp(`${90 + Number(plants)} plants`));
      assert.deepEqual(await page.$$eval('[data-before="left"]', (all) => all.map((e) => e.id)), [id]);
    }
    await paste(page, "rows.1.plants", "15");
    await explored(page);
    assert.equal(await page.$("[data-before]"), null);
  },
  faultyHost,
);

behaviour(
  "a planner that dies of a question again and again is given up, in words",
  async ({ page, address }) => {
    await hurry(page);
    await open(page, address);
    await paste(page, "name", "die");
    await page.waitForFunction(() => /given up|cannot start/.test(document.querySelector("#message")?.textContent ?? ""));
    assert.match(await text(page, "#stale"), /not to what the form holds now/);
    assert.equal((await fields(page)).name, "die");
    await paste(page, "name", "well");
    assert.match(await text(page, "#head"), /^well/);
    assert.equal(await text(page, "#message") + (await text(page, "#stale")), "");
  },
  faultyHost,
);

behaviour(
  "a worker that is killed is replaced, and what was typed is answered",
  async ({ page, address }) => {
    await hurry(page, 1); // on a slow machine one that was just started would pass for dead, too
    await open(page, address);
    for (const [i, end] of ["gone", "error", "stopped", "fault"].entries()) {
      await page.evaluate((end) => window.e2eKill(end), end);
      await paste(page, "name", `after ${end}`);
      await page.waitForFunction((name) => document.querySelector("#head b")?.textContent === name, {}, `after ${end}`);
      await atRest(page);
      assert.equal(await text(page, "#message") + (await text(page, "#stale")), "");
      assert.equal(await verdict(page), "Yes");
      assert.equal(await page.evaluate(() => window.e2eStarted), i + 2);
    }
    const killNext = () => page.evaluate(() => window.e2eWorker.addEventListener("message", () => window.e2eKill("error"), { once: true })); // as soon as it has begun
    // A link that cannot be opened then is told of as ever.
    await explored(page);
    await killNext();
    await page.evaluate(() => { location.hash = "#1AAAA"; });
    await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("cannot be opened"));
    assert.equal(await text(page, "#stale"), "");
    assert.match(await text(page, "#always"), /^Yes/);
    await paste(page, "name", "after a link");
    // What is asked of the log is asked once more as well.
    await inJob(page, "water");
    await explored(page);
    await killNext();
    await page.evaluate(() => {
      const box = document.getElementById("f-log.1.day");
      box.value = "31 June";
      box.dispatchEvent(new InputEvent("input", { bubbles: true }));
    });
    await atRest(page);
    assert.match(await text(page, '[id="e-log.1.day"]'), /must be a date that exists/);
    assert.equal(await text(page, "#message"), "");
  },
  { both: true },
);

behaviour(
  "while the planner cannot start, whatever is asked is told so, and nothing is opened later over what was typed",
  async ({ page, address }) => {
    await hurry(page);
    await open(page, address);
    await paste(page, "name", "Mine");
    const answer = await text(page, "#answer");
    await page.evaluate(() => {
      window.e2eDoomed = 4;
      window.e2eKill("error");
    });
    await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("cannot start"));
    await page.$eval("#examples a", (a) => a.click());
    await page.waitForFunction(() => document.querySelector("#stale")?.textContent?.includes("not the one that was opened"));
    await page.evaluate(() => new Promise((later) => setTimeout(later, 400))); // by which time a plan is said to be on its way
    assert.equal(await page.evaluate(() => document.documentElement.dataset.opening), undefined);
    assert.equal(await text(page, "#answer"), answer);
    await paste(page, "name", "Still mine");
    assert.match(await text(page, "#stale"), /not to what the form holds now/);
    assert.match(await text(page, "#message"), /cannot start/);
    // Later it can.
    await page.evaluate(() => {
      const now = performance.now.bind(performance);
      performance.now = () => now() + 60_000;
    });
    await paste(page, "place.width", "6");
    await page.waitForFunction(() => document.querySelector("#head b")?.textContent === "Still mine");
    await atRest(page);
    const { name, "place.width": width } = await fields(page);
    assert.deepEqual([name, width], ["Still mine", "6"]);
    assert.equal(await text(page, "#message") + (await text(page, "#stale")), "");
  },
  { both: true },
);
