// "What you type is not sent anywhere": neither with scripts, nor without them,
// nor while they are on their way, nor when they fail.
import assert from "node:assert/strict";
import { after, before, beforeEach } from "node:test";
import { behaviour } from "./browser.js";
import { atRest, box } from "./form.js";
import { copied, host, named } from "./host.js";
import { shared } from "./site.js";

/** @type {{address: string, stop: () => Promise<void>}} */
let site;
/** A static host, which sends no headers of its own. @type {Awaited<ReturnType<typeof host>>} */
let plain;
/** @type {import("./host.js").Files} */
let files;
before(async () => {
  site = await shared();
  files = await copied(site.address);
  plain = await host(files);
});
beforeEach(() => {
  plain.asked.length = 0;
  plain.files = new Map(files);
  plain.before = () => {};
});
after(async () => {
  await plain?.stop();
  await site?.stop();
});

/** What the host was told that is no plain question for a file. */
const sent = () => plain.asked.filter((line) => /secret|\?|POST/.test(line)).map((line) => line.slice(0, 80));

/**
 * Shows every form, also one that is hidden until a script or another job shows
 * it: the style of the page may not have come.
 * @param {import("puppeteer-core").Page} page
 */
const bare = (page) =>
  page.$eval("html", (html) => {
    for (const form of html.querySelectorAll("form")) {
      for (let e = form; e; e = e.parentElement) {
        e.hidden = false;
        if (!e.checkVisibility()) e.style.setProperty("display", "block", "important");
      }
    }
  });

/**
 * Types into a box of each form, presses Enter there, and presses a button:
 * nothing may be sent, and what was typed stays.
 * @param {import("puppeteer-core").Page} page
 */
async function sendsNothing(page) {
  const address = page.url();
  /** @type {string[]} */
  const went = [];
  page.on("framenavigated", (frame) => void went.push(frame.url()));
  await bare(page);
  const typed = [box("ask.length"), box("ask.width"), "#log input:not([type=hidden])"];
  for (const path of typed) {
    await page.focus(path);
    await page.keyboard.type("secret");
    await page.keyboard.press("Enter");
    assert.ok(await page.$eval(path, (e) => e === document.activeElement && e.value.includes("secret")), `nothing is typed in ${path}`);
  }
  for (const action of ["ask-more", "propose"]) {
    await page.focus(`button.button[name="action"][value="${action}"]`);
    await page.keyboard.press("Enter"); // a click waits for promises, which a browser without scripts does not keep
  }
  // What a button had started would be under way by the time that the next key is answered.
  await page.focus(typed[0]);
  await page.keyboard.type("!");
  assert.match(await page.$eval(typed[0], (e) => e.value), /secret.*!|!.*secret/s, "what was typed is gone");
  assert.equal(page.url(), address);
  await page.goto(plain.address + "guides.html");
  assert.deepEqual(sent(), []);
  assert.ok(went.every((url) => !url.includes("?")), went.join(" "));
}

const how = { address: () => plain.address, both: true };

behaviour("with scripts off, nothing is sent", async ({ page, address }) => {
  await page.goto(address);
  assert.deepEqual(await page.$eval("html", (html) => [...html.querySelectorAll("form :is(input, select, button)")].filter((e) => e.checkVisibility()).map((e) => e.name)), [], "what nobody answers can be typed in");
  await sendsNothing(page);
}, { ...how, script: false });

behaviour("without the page's script, nothing is sent", async ({ page, address }) => {
  plain.files.delete(named(files, "page.js"));
  await page.goto(address);
  await sendsNothing(page);
}, { ...how, expected: /404|page-\w+\.js/ });

behaviour("while the page's script is on its way, nothing is sent, and what is typed stays", async ({ page, address }) => {
  /** @type {() => void} */
  let go = () => {};
  const late = new Promise((resolve) => { go = () => resolve(undefined); });
  const script = named(files, "page.js");
  plain.before = (path) => path === script && late;
  page.goto(address).catch(() => {});
  await page.waitForSelector(box("ask.length"));
  await page.focus(box("ask.length"));
  await page.keyboard.type("secret");
  await page.keyboard.press("Enter");
  await page.keyboard.type("!");
  go();
  await atRest(page);
  assert.equal(await page.$eval(box("ask.length"), (e) => e.value), "secret!");
  assert.deepEqual(sent(), []);
}, how);

behaviour("without the planner, nothing is sent", async ({ page, address }) => {
  plain.files.delete(named(files, "planner.wasm"));
  await page.goto(address);
  await page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("cannot start"));
  await sendsNothing(page);
}, { ...how, expected: /404|planner-\w+\.wasm/ });
