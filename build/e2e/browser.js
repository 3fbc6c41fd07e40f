// A real browser for the tests, in which every page is watched.
import { after, before, test } from "node:test";
import { launch as chromium } from "./chromium.js";
import { launch as firefox } from "./firefox.js";
import { shared } from "./site.js";
import { watch } from "./watch.js";

const limit = { timeout: 240_000 };

const launches = { Chromium: () => chromium(), Firefox: () => firefox(), "Firefox without scripts": () => firefox(false) };
/** The browsers that run, each started when a test of the file first needs it. @type {Map<string, Promise<import("puppeteer-core").Browser>>} */
const running = new Map();
/** @type {{address: string, stop: () => Promise<void>}} */
let site;
before(async () => {
  site = await shared();
}, limit);

after(async () => {
  for (const browser of running.values()) await (await browser).close();
  await site?.stop();
}, limit);

/** @param {keyof typeof launches} which */
function browserOf(which) {
  const browser = running.get(which) ?? launches[which]();
  running.set(which, browser);
  return browser;
}

/**
 * @typedef {object} Visit
 * @property {import("puppeteer-core").Page} page not yet at the site
 * @property {string} address of the site, ending with "/"
 * @property {() => Promise<import("puppeteer-core").Page>} another a page in a profile of its own, watched too
 * @property {() => Promise<import("puppeteer-core").Page>} beside a page in another tab of the first one's profile
 * @property {boolean} firefox
 * @property {(how: () => Promise<void>) => Promise<void>} leave runs how, during which and after which the server may be missing
 */

/**
 * A test in a browser profile of its own. It fails when any of its pages did
 * what no page may do.
 * @param {string} name the behaviour
 * @param {(visit: Visit) => Promise<void>} body
 * @param {{address?: () => string, script?: boolean, dark?: boolean, width?: number, height?: number, expected?: RegExp, both?: boolean}} [how]
 *   expected is what a fault that the test itself makes has the browser complain of; both is in Firefox as well as in Chromium
 */
export function behaviour(name, body, how = {}) {
  run("Chromium", name, body, how);
  if (how.both) run("Firefox", `${name} (Firefox)`, body, how);
}

/**
 * @param {"Chromium" | "Firefox"} which
 * @param {string} name
 * @param {(visit: Visit) => Promise<void>} body
 * @param {NonNullable<Parameters<typeof behaviour>[2]>} how
 */
function run(which, name, body, how) {
  test(name, limit, async () => {
    const still = how.script === false;
    const browser = await browserOf(still && which === "Firefox" ? "Firefox without scripts" : which);
    const address = how.address?.() ?? site.address;
    /** @type {string[]} */
    const faults = [];
    /** @type {import("puppeteer-core").BrowserContext[]} */
    const profiles = [];
    let away = false;
    const another = async () => {
      profiles.push(await browser.createBrowserContext());
      return tab(profiles[profiles.length - 1]);
    };
    const beside = () => tab(profiles[0]);
    /** @param {import("puppeteer-core").BrowserContext} profile */
    const tab = async (profile) => {
      const page = await profile.newPage();
      await page.setViewport({ width: how.width ?? 1280, height: how.height ?? 900 });
      if (how.dark) await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: "dark" }]);
      if (still && which === "Chromium") await page.setJavaScriptEnabled(false);
      await watch(page, address, faults, () => away);
      return page;
    };
    const leave = async (what) => {
      away = true;
      await what();
    };
    try {
      await body({ page: await another(), address, another, beside, leave, firefox: which === "Firefox" });
    } finally {
      await Promise.all(profiles.map((profile) => profile.close()));
    }
    const unexpected = faults.filter((fault) => !how.expected?.test(fault));
    if (unexpected.length) throw new Error(`what no page may do:\n  ${unexpected.join("\n  ")}`);
  });
}
