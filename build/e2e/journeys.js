// A way through the tool, as somebody with a phone goes it: how often the screen is touched,
// how much is typed, and how far below the top of its job lies what is sought. To focus a box
// is no touch.
import assert from "node:assert/strict";
import { atRest, explored, inJob, jobs } from "./form.js";
import { command } from "./site.js";

/** A phone. */
export const phone = { width: 360, height: 740, both: true };

/** What one screen of a phone is high, px. */
const screen = phone.height;

/** The goals that every way keeps to. */
const most = { taps: 8, screens: 3, high: 6, inputs: 20, stops: 40, first: 350, words: 900 };

/**
 * Sets the clock of the device; it stands still.
 * @param {import("puppeteer-core").Page} page not yet at the site
 * @param {string} at "2027-07-15T14:10", where the device is
 */
export const setClock = (page, at) =>
  page.evaluateOnNewDocument((at) => {
    const now = new Date(at).getTime();
    window.Date = class extends Date {
      /** @param {any[]} all */
      constructor(...all) {
        // @ts-ignore: as many as the real one takes
        super(...(all.length ? all : [now]));
      }
      static now() {
        return now;
      }
    };
  }, at);

/** A way that somebody goes. */
export class Walk {
  taps = 0;
  typed = 0;
  at = "";
  /** How far down each job was gone through, one after the other. @type {number[]} */
  down = [];

  /** @param {import("puppeteer-core").Page} page @param {string} name */
  constructor(page, name) {
    this.page = page;
    this.name = name;
  }

  /** Touches what is there, and must be what lies on top. @param {string} selector */
  async tap(selector) {
    const what = await this.page.waitForSelector(selector, { visible: true });
    assert.ok(what, selector);
    await what.evaluate((e) => e.scrollIntoView({ block: "center" }));
    const covered = await what.evaluate((e) => {
      const { left, top, width, height } = e.getBoundingClientRect();
      const there = document.elementFromPoint(left + width / 2, top + height / 2);
      return there && (e.contains(there) || there.contains(e)) ? "" : `${e.textContent}: ${there?.outerHTML.slice(0, 80)} lies above it`;
    });
    assert.equal(covered, "");
    await what.click();
    this.taps++;
    await this.rest();
  }

  /** Chooses from a list. @param {string} id @param {string} option */
  async pick(id, option) {
    await this.page.select(`[id="f-${id}"]`, option);
    this.taps++;
    await this.rest();
  }

  /** Types into a box in place of what stood there. @param {string} id @param {string} value */
  async type(id, value) {
    await this.page.$eval(`[id="f-${id}"]`, (box) => {
      /** @type {HTMLInputElement} */ (box).focus();
      /** @type {HTMLInputElement} */ (box).select();
    });
    await this.page.keyboard.type(value);
    this.typed++;
    await this.rest();
  }

  /**
   * Looks for something: it must be in sight without another touch, and not far down.
   * @param {string} selector
   * @returns {Promise<string>} what it says
   */
  async seek(selector) {
    await this.page.waitForSelector(selector, { visible: true });
    const { at, down, said } = await this.page.$eval(selector, (e) => {
      const top = /** @type {HTMLElement} */ (document.querySelector("#main")).getBoundingClientRect().top;
      return { at: document.documentElement.dataset.at ?? "", down: e.getBoundingClientRect().top - top, said: /** @type {HTMLElement} */ (e).innerText };
    });
    if (this.at !== at) this.down.push(0);
    this.at = at;
    this.down.push(Math.max(this.down.pop() ?? 0, down));
    assert.ok(down <= most.screens * screen, `${this.name}: ${selector} lies ${Math.round(down)} px below the top of its job`);
    return said.replace(/[^\S\n]+/g, " ").trim();
  }

  /** Waits until everything was answered. */
  async rest() {
    await atRest(this.page);
    await explored(this.page);
  }

  /** A first answer has no more taps and values than it may. @param {number} values */
  first(values) {
    assert.ok(this.taps <= most.taps, `${this.name}: ${this.taps} taps before the first answer`);
    assert.ok(this.typed <= values, `${this.name}: ${this.typed} values typed before the first answer`);
    this.tell("to the first answer");
  }

  /** Prints how far it was. @param {string} [how] */
  tell(how = "in all") {
    console.log(`${this.name}, ${how}: ${this.taps} taps, ${this.typed} values, ${(this.down.reduce((sum, one) => sum + one, 0) / screen).toFixed(1)} screens`);
  }
}

/**
 * The plan in sight worked out by the command line, which knows nothing of pages.
 * @param {import("puppeteer-core").Page} page
 */
export async function solved(page) {
  const link = await page.$eval("[data-link]", (e) => new URL(/** @type {HTMLInputElement} */ (e).value).hash);
  return JSON.parse(await command(["solve"], await command(["link", link])));
}

/** Words of what is in sight somewhere. @param {import("puppeteer-core").Page} page @param {string} selector */
export const wordsIn = (page, selector) =>
  page.$eval(selector, (root) => {
    let words = 0;
    const walk = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const e = node.parentElement;
      if (e?.checkVisibility() && !e.closest(".out, noscript, option, template") && !e.closest("details:not([open]) > :not(summary)")) words += (node.textContent ?? "").split(/\s+/).filter(Boolean).length;
    }
    return words;
  });

/** No job is longer or wordier than it may be, with its groups closed. @param {import("puppeteer-core").Page} page */
export async function short(page) {
  const long = [];
  for (const job of jobs) {
    await inJob(page, job);
    await explored(page);
    const high = await page.$eval("#main", (main) => /** @type {HTMLElement} */ (main).offsetHeight);
    const words = await wordsIn(page, "#main");
    if (high > most.high * screen) long.push(`${job} is ${high} px high`);
    if (words > most.words) long.push(`${job} has ${words} words in sight`);
  }
  assert.deepEqual(long, []);
}

/** The first screen asks little: boxes, places to stop at and words before what leads to an answer. @param {import("puppeteer-core").Page} page */
export async function lean(page) {
  const inputs = await page.$$eval("#ask input:not([type=hidden]), #ask select", (all) => all.length);
  assert.ok(inputs <= most.inputs, `${inputs} boxes before the first answer`);
  const words = await wordsIn(page, "body");
  assert.ok(words <= most.first, `${words} words on the first screen`);
  await page.evaluate(() => /** @type {HTMLElement} */ (document.activeElement)?.blur());
  let stops = 0;
  while (!(await page.evaluate(() => document.activeElement?.matches(".ask__do .button--main")))) {
    await page.keyboard.press("Tab");
    stops++;
    assert.ok(stops <= most.stops, `more than ${most.stops} places to stop at before the first answer`);
  }
}
