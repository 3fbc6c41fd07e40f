// What a person does with the tool, and what a person sees.
import assert from "node:assert/strict";
import { command } from "./site.js";

/** The elements that hold the answer. */
const answers = ["answer", "helps", "always", "pressure", "budget", "map", "fares", "rows", "along", "pump", "evenness", "pieces", "steps", "cuts", "marks", "speeds", "surge", "findings", "spots", "parts", "chain", "asks", "counts"];

/** Those that hang on the day, which a page without a clock does not know. */
export const daily = ["week", "today", "stopped"];

/** The elements that hold what was worked out. */
export const results = [...answers, "rests", "season", "crops", "weather", "cannot", "shots", "tank", "outage", "tasks", "timer", "flush", "zones", "ring", "starting", "stopping", "faults", "headroom", "designs", "chance"];

/**
 * Waits until the planner has started and has answered everything.
 * @param {import("puppeteer-core").Page} page
 */
export async function atRest(page) {
  await page.waitForFunction(() => {
    const w = document.querySelector("[data-wait]");
    return w instanceof HTMLElement && w.hidden && window.e2e.asked > 0 && window.e2e.asked === window.e2e.answered;
  });
}

/**
 * Waits until everything about the plan has been explored.
 * @param {import("puppeteer-core").Page} page
 */
export async function explored(page) {
  await page.waitForFunction(() => !document.querySelector("#job")?.hasAttribute("data-more") && (window.e2e?.asked ?? 0) === (window.e2e?.answered ?? 0));
}

/**
 * Opens an address of the tool and waits for it.
 * @param {import("puppeteer-core").Page} page
 * @param {string} address
 */
export async function open(page, address) {
  // Without a plan the page begins with five questions; the example is one address away.
  await page.goto(address.includes("#") ? address : address + "#/answer");
  await atRest(page);
}

/**
 * Leads to a place of the page, as a link within it does: a job, "/water/timer", or what a
 * field or a section stands at, "f-rows.2.spacing".
 * @param {import("puppeteer-core").Page} page
 * @param {string} to
 */
export async function see(page, to) {
  await page.evaluate((to) => {
    const a = document.createElement("a");
    a.href = "#" + to;
    document.body.append(a);
    a.click();
    a.remove();
  }, to);
  await atRest(page);
}

/** Which job is in sight. @param {import("puppeteer-core").Page} page */
export const job = (page) => page.evaluate(() => document.documentElement.dataset.at ?? "answer"); // which is all that there is without scripts

/** Brings a job into sight, unless it is. @param {import("puppeteer-core").Page} page @param {string} id */
export async function inJob(page, id) {
  if ((await job(page)) !== id) await see(page, "/" + id);
}

/** All jobs. */
export const jobs = ["answer", "buy", "build", "grow", "water", "mend", "why"];

/** @param {string} path */
export const box = (path) => `[id="f-${path}"]`;

/**
 * Unfolds what a field is folded into and goes to it, all its text selected.
 * @param {import("puppeteer-core").Page} page
 * @param {string} path
 */
async function go(page, path) {
  if (!(await page.$(box(path) + ":not([hidden] *)"))) await see(page, "f-" + path);
  await page.$eval(box(path), (field) => {
    for (let e = field; e; e = e.parentElement) if (e instanceof HTMLDetailsElement) e.open = true;
    field.focus();
    if (field instanceof HTMLInputElement) field.select();
  });
}

/**
 * Types into a field in place of what stood there.
 * @param {import("puppeteer-core").Page} page
 * @param {string} path
 * @param {string} text
 */
export async function type(page, path, text) {
  await go(page, path);
  if (text) await page.keyboard.type(text);
  else await page.keyboard.press("Backspace");
  await atRest(page);
}

/**
 * The same for long texts and many fields: pasted, not typed letter by letter.
 * @param {import("puppeteer-core").Page} page
 * @param {string} path
 * @param {string} text
 */
export async function paste(page, path, text) {
  await go(page, path);
  if (text) await insert(page, text);
  else await page.keyboard.press("Backspace");
  await atRest(page);
}

/** Puts a text where the cursor is, in one piece. @param {import("puppeteer-core").Page} page @param {string} text */
function insert(page, text) {
  if (page.browser().protocol === "cdp") return page.keyboard.sendCharacter(text);
  return page.evaluate((text) => document.execCommand("insertText", false, text), text); // Firefox is given letters only
}

/**
 * Chooses one of a field's options.
 * @param {import("puppeteer-core").Page} page
 * @param {string} path
 * @param {string} code
 */
export async function choose(page, path, code) {
  await go(page, path);
  await page.select(box(path), code);
  await atRest(page);
}

/**
 * Presses the button of an action, such as "add-row" or "remove-row.2".
 * @param {import("puppeteer-core").Page} page
 * @param {string} action
 */
export async function press(page, action) {
  const button = `button[name="action"][value="${action}"]`;
  if (!(await page.$(button))) {
    // One that is for a record stands in it, and one that adds a record in its section.
    const [, one, number] = /([a-z]+)(?:-up|-down)?(?:\.(\d+))?$/.exec(action.replace(/^(add|copy|remove)-/, "")) ?? [];
    const list = one === "months" ? "months" : one + "s";
    await see(page, "f-" + list + (number ? "." + number : ""));
  }
  await page.$eval(`button[name="action"][value="${action}"]`, (button) => {
    for (let e = button; e; e = e.parentElement) if (e instanceof HTMLDetailsElement) e.open = true;
    button.click();
  });
  await atRest(page);
}

/**
 * What is typed in every field of the plan, by path, whether its box is in sight or not.
 * @param {import("puppeteer-core").Page} page
 * @returns {Promise<Record<string, string>>}
 */
export function fields(page) {
  return page.$eval("#plan", (form) => {
    const held = Object.fromEntries(new URLSearchParams(form.elements.namedItem("rest")?.value));
    for (const name of Object.keys(held)) if (/^how\b/.test(name)) delete held[name]; // how it came to be
    for (const e of form.elements) {
      if (!e.name || /^how\b/.test(e.name) || e.type === "hidden" || e.type === "submit" || (e.type === "radio" && !e.checked)) continue;
      const [, all] = /^all\.(.+)/.exec(e.name) ?? [];
      if (!all) held[e.name] = e.value;
      else if (e.value !== form.elements.namedItem("all-was." + all)?.value) {
        for (const name of Object.keys(held)) if (/^rows\.\d+\.(.+)/.exec(name)?.[1] === all) held[name] = e.value;
      }
    }
    return held;
  });
}

/**
 * The text of everything that was worked out, by element.
 * @param {import("puppeteer-core").Page} page
 * @returns {Promise<Record<string, string>>}
 */
export async function told(page) {
  /** @type {Record<string, string>} */
  const all = {};
  const was = await job(page);
  for (const id of jobs) {
    await inJob(page, id);
    await explored(page);
    for (const [name, text] of Object.entries(await texts(page, results))) if (text !== "missing") all[name] ??= text;
  }
  await inJob(page, was);
  return Object.fromEntries(results.map((id) => [id, all[id] ?? "missing"]));
}

/**
 * The text of what was worked out of the job in sight, by element.
 * @param {import("puppeteer-core").Page} page
 */
export const inSight = async (page) => Object.fromEntries(Object.entries(await texts(page, ["line", ...results])).filter(([id, text]) => text !== "missing" && id !== "always"));

/**
 * The text of the answer alone, by element: what is explored afterwards is not waited for.
 * @param {import("puppeteer-core").Page} page
 */
export const answered = (page) => texts(page, ["line", "always"]);

/** @param {import("puppeteer-core").Page} page @param {string[]} ids @returns {Promise<Record<string, string>>} */
function texts(page, ids) {
  return page.evaluate((ids) => Object.fromEntries(ids.map((id) => [id, document.getElementById(id)?.textContent ?? "missing"])), ids);
}

/**
 * @param {import("puppeteer-core").Page} page
 * @param {string} selector
 */
export const text = (page, selector) => page.$eval(selector, (e) => (e.textContent ?? "").replace(/\s+/g, " ").trim());

/**
 * The first word of the answer: "Yes", "Nearly", "No" or "Cannot say yet".
 * @param {import("puppeteer-core").Page} page
 */
export async function verdict(page) {
  const word = await text(page, "#line .word");
  return word.replace(/\.$/, "");
}

/**
 * One figure of the answer by its label, such as "2.2 bar".
 * @param {import("puppeteer-core").Page} page
 * @param {string} label
 * @param {"firstChild" | "lastChild"} [part] the figure, or the small words behind it
 * @returns {Promise<string>}
 */
export async function figure(page, label, part = "firstChild") {
  await inJob(page, "answer");
  const value = await page.$$eval(
    "#answer .figures > div",
    (all, label, part) => {
      const one = all.find((e) => e.querySelector("dt")?.textContent === label);
      return one?.querySelector("dd")?.[part]?.textContent?.replace(/\s/g, " ").trim();
    },
    label,
    part,
  );
  assert.ok(value, `no figure ${label}`);
  return value;
}

/**
 * The number at the start of a figure.
 * @param {string} shown
 */
export const number = (shown) => Number.parseFloat(shown.replace("−", "-"));

/**
 * The head that stands in brackets behind a pressure under the answer.
 * @param {import("puppeteer-core").Page} page
 * @param {string} label
 */
export const head = async (page, label) => number(/\((.*)\)/.exec(await figure(page, label, "lastChild"))?.[1] ?? "");

/**
 * The link of the plan as the page's address holds it, once the field that was typed in is left.
 * @param {import("puppeteer-core").Page} page
 * @returns {Promise<string>} with its "#"
 */
export async function link(page) {
  await page.evaluate(() => {
    const field = document.activeElement;
    if (!(field instanceof HTMLInputElement)) return;
    field.blur();
    field.focus();
  });
  await atRest(page);
  const want = await page.$eval("[data-link]", (e) => new URL(e.value).hash);
  await page.waitForFunction((want) => location.hash.split("/")[0] === want, {}, want);
  return want;
}

/**
 * Opens a plan that is given as a plan file.
 * @param {import("puppeteer-core").Page} page
 * @param {string} address
 * @param {object} plan
 */
export async function openPlan(page, address, plan) {
  await open(page, address + (await command(["link"], JSON.stringify(plan))).trim());
}

/**
 * Opens one of the plans to start from by its link.
 * @param {import("puppeteer-core").Page} page
 * @param {string} title
 */
export async function example(page, title) {
  const found = await page.$$eval(
    "#examples a",
    (all, title) => {
      const a = all.find((e) => e.textContent === title);
      a?.click();
      return Boolean(a);
    },
    title,
  );
  assert.ok(found, `no example ${title}`);
  await page.waitForFunction((title) => document.querySelector("#head b")?.textContent === title, {}, title);
  await atRest(page);
}
