// What somebody restless asks of a page, and how: see endure-page.js. It judges nothing.
/** @typedef {import("puppeteer-core").Page} Page */
/**
 * @typedef {object} Stands what stands on a page
 * @property {string} form its boxes, as form data
 * @property {string} link that it offers
 * @property {string} id of the plan, in the history
 * @property {Record<string, string>} texts the answer, by element
 * @property {string[]} errors
 * @property {Record<string, string>} beside what is said beside the boxes, by path; empty where nothing is wrong
 * @property {string} stale
 * @property {string} always
 * @property {string} message
 * @property {string | undefined} log of the drain, as form data; none where that of the plan was not to be had
 * @property {string} [kept] the form, as the device has it
 * @property {{path: string, kind: string, held: string, options: string[]}[]} boxes
 * @property {string[]} buttons of rows and the like
 * @property {number} started workers, since the page was loaded
 */

/**
 * @typedef {object} Asked what is asked at once, and what befalls the worker meanwhile
 * @property {string} kind
 * @property {{path: string, typed: string, left: boolean}[]} typing
 * @property {string} action the button that is pressed; empty for none
 * @property {string} link that is opened; empty for none
 * @property {string} [file] that is opened
 * @property {boolean} back and not forward
 * @property {string} drained what is typed into the log
 * @property {boolean} explores whether all is told that can wait
 * @property {{how: string, after: number}[]} kills how the worker is killed, and after how many ms
 * @property {number} doomed how many workers after it die at once
 * @property {boolean} early whether the worker is killed before it is asked, and not after
 */

/** The elements that the answer fills, whatever job is in sight. "always" and "stale" also say what is wrong, and are looked at by themselves. */
export const answers = ["line", "answer", "helps", "findings", "map", "fares", "parts", "counts", "speeds", "pressure", "budget", "pump", "along", "evenness", "surge"];

/** What leads to another job. */
const elsewhere = ["answer", "buy", "build", "grow", "water", "why"].map((job) => "show." + job);

/** What is typed that is no number, or none that a field takes. */
const bad = ["", " ", "wide", "-1", "0", "1e9", "1e300", "1/2", "1,2,3", "1.000,5", "0x10", "٣", "½", "NaN", "=1+1", "2027-02-31", "31.12.2027", "9".repeat(400), "x".repeat(5000), "\t\n", "🌶️", "\u202eabc", "<img src=x onerror=alert(1)>\"'&amp;", "a&b=c;d#e%20"];

/** What is asked, as often as it stands here. */
const kinds = Object.entries({
  "a box": 40, "a box, as it was": 8, "many boxes at once": 12, "a button": 12, "a button, and a box at once": 5,
  "an example": 4, "a link": 3, "a broken link": 2, "a file": 2, "a kept plan": 2, "back or forward": 4,
  "a reload after a key": 2, "the log": 4, "another job": 6,
}).flatMap(([kind, often]) => Array.from({ length: often }, () => kind));

/** Numbers that look like chance and are the same again for a seed. @param {number} seed */
function dice(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    /** Whether something of that chance happens. @param {number} chance */
    once: (chance) => next() < chance,
    /** @param {number} n */
    below: (n) => Math.floor(next() * n),
    /** @template T @param {T[]} all @returns {T} */
    one: (all) => all[Math.floor(next() * all.length)],
  };
}

/** Helps in the page itself: a way through the browser's protocol for every look would take longer than the answer. @param {Page} page */
export const helped = (page) =>
  page.evaluateOnNewDocument((answers) => {
    /** @param {HTMLFormElement} form */
    const data = (form) => new URLSearchParams([...new FormData(form)].map(([name, text]) => [name, String(text)])).toString();
    const text = (id) => document.getElementById(id)?.textContent ?? "missing";
    // Most of a page's work is to explore a plan once its answer stands. For
    // most questions that is told to be done at once.
    const Real = window.Worker;
    window.Worker = class extends Real {
      postMessage(...args) {
        const { ask, text } = args[0];
        if (ask !== "rest" || window.e2eExplores || /\bstep=[12]\b/.test(text)) return super.postMessage(...args);
        const reply = { fragments: [], errors: [], link: "", title: "", announce: "", focus: "", more: 0, file: "" };
        window.e2e.asked++;
        setTimeout(() => {
          window.e2e.answered++;
          this.dispatchEvent(new MessageEvent("message", { data: { reply } }));
        });
      }
    };
    const restful = () => {
      const { asked, answered } = window.e2e;
      // What is asked of a worker that is still to be ready has not been posted.
      if (window.e2eReady !== window.e2eWorker && !/cannot start/.test(text("message"))) return false;
      return asked > 0 && asked === answered && document.querySelector("[data-wait]")?.hidden && document.documentElement.dataset.opening === undefined;
    };
    window.e2eHelp = {
      data,
      /** Waits until the page has come to rest. */
      async rest() {
        for (const end = performance.now() + 120_000; !restful(); ) {
          if (performance.now() > end) throw new Error(`it does not come to rest: ${JSON.stringify({ ...window.e2e, waits: !document.querySelector("[data-wait]").hidden, opening: document.documentElement.dataset.opening })}`);
          await new Promise((later) => setTimeout(later, 5));
        }
      },
      stands() {
        const id = history.state?.plan ?? "";
        const kept = localStorage.getItem("evenrow-1-plan-" + id);
        return {
          form: data(document.querySelector("#plan")),
          link: new URL(document.querySelector("[data-link]").value).hash,
          id,
          texts: Object.fromEntries(answers.filter((id) => document.getElementById(id)).map((id) => {
            const place = document.getElementById(id).cloneNode(true);
            for (const caution of place.querySelectorAll("[data-caution]")) caution.replaceChildren();
            return [id, place.textContent];
          })),
          errors: [...document.querySelectorAll("#errors li a")].map((line) => line.textContent),
          beside: Object.fromEntries([...document.querySelectorAll("#plan .field__error[id]")].map((line) => [line.id.slice(2), line.hidden ? "" : line.textContent])),
          stale: text("stale"),
          always: text("always"),
          message: text("message"),
          log: document.querySelector("#log").hidden ? undefined : data(document.querySelector("#log")),
          kept: kept === null ? undefined : JSON.parse(kept).text,
          boxes: [...document.querySelectorAll("#plan :is(input, select, textarea)")].filter((e) => e.type !== "hidden" && e.id.startsWith("f-")).map((e) => ({
            path: e.id.slice(2),
            kind: e.tagName === "SELECT" ? "select" : e.type,
            held: e.value,
            options: [...(e.options ?? [])].map((o) => o.value),
          })),
          buttons: [...document.querySelectorAll('#plan button[name="action"]')].map((e) => e.value).filter((action) => !action.startsWith("season-to")),
          started: window.e2eStarted,
        };
      },
      /** Types into a box in place of what stands there. @param {string} path @param {string} typed @param {boolean} left whether the box is left after that */
      type(path, typed, left) {
        const box = document.getElementById("f-" + path);
        if (box.type === "radio" || box.type === "checkbox") box.checked = typed !== "";
        else box.value = typed;
        box.dispatchEvent(new InputEvent("input", { bubbles: true }));
        if (left) box.dispatchEvent(new Event("change", { bubbles: true }));
      },
      /** Goes elsewhere, and waits until the page has heard of it. @param {() => void} how */
      async move(how) {
        const moved = new Promise((resolve) => addEventListener("popstate", resolve, { once: true }));
        how();
        await Promise.race([moved, new Promise((later) => setTimeout(later, 500))]); // there may be no way back
      },
    };
  }, answers);

/**
 * Somebody restless. What is asked depends on what stands there, and on chance.
 * @param {number} seed of that chance
 * @param {string[]} examples the links of the examples
 * @param {(form: string) => Promise<string>} save a form as a file; empty when it has mistakes
 * @returns what is asked next, where something stands
 */
export function restless(seed, examples, save) {
  const { once, below, one } = dice(seed);
  /** What stood in boxes before something else was typed there. @type {[string, string][]} */
  const before = [];
  const links = [...examples];
  /** The plan that was asked about last, and how often. */
  let about = "";
  let since = 0;
  let asked = 0;

  return async (/** @type {Stands} */ now) => {
    if (asked && !now.stale && !now.message) links.push(now.link);
    if (links.length > 40) links.splice(examples.length, 1);
    since = now.id === about ? since + 1 : 1;
    about = now.id;
    const { boxes } = now;
    const written = boxes.filter(({ kind }) => kind !== "select" && kind !== "radio" && kind !== "checkbox");
    const chosen = boxes.filter(({ kind }) => !written.some((box) => box.kind === kind));
    /** @param {{held: string}} box */
    const words = ({ held }) => {
      const value = Number.parseFloat(held);
      if (once(0.2)) return one(bad);
      if (Number.isNaN(value)) return once(0.5) ? held : `name ${below(1000)}`;
      const typed = String(Number((value * one([0.5, 0.8, 0.9, 1.1, 1.25, 2])).toPrecision(3)));
      return once(0.2) ? typed.replace(".", ",") : once(0.1) ? String(Math.ceil(Number(typed))) : typed;
    };
    const edit = () => {
      const box = (once(0.85) && written.length) || !chosen.length ? one(written) : one(chosen);
      const old = /** @type {[string, string]} */ ([box.path, box.held]);
      before.push(old);
      if (before.length > 30) before.shift();
      return { path: box.path, typed: box.kind === "radio" || box.kind === "checkbox" ? "on" : box.kind === "select" ? one(box.options) : words(box), left: once(0.6) };
    };
    const rows = now.form.match(/rows\.\d+\.plants(?:=|%3D)/g)?.length ?? 0;
    const buttons = now.buttons.filter((action) => rows < 10 || !/^(add|copy)/.test(action));

    // Once in a while another plan: of one with many mistakes or changes little is new to learn.
    const kind = now.errors.length > 4 || since > 40 ? "an example" : one(kinds);
    /** @type {{path: string, typed: string, left: boolean}[]} */
    let typing = [];
    /** @type {string} */
    let action = "";
    /** @type {string} */
    let link = "";
    const idle = !boxes.length; // a job without inputs
    /** @type {string | undefined} */
    let file;
    const back = once(0.7);
    const drained = `${below(60)}`;
    const explores = ++asked % 10 === 0;
    if (idle && (kind.includes("box") || kind === "a reload after a key")) return /** @type {Asked} */ ({ kind: "another job", typing, action: "show.answer", link, file, back, drained: "", explores: false, kills: [], doomed: 0, early: false });
    if (kind.includes("box")) typing = Array.from({ length: kind.startsWith("many") ? 2 + below(6) : 1 }, edit);
    if (kind === "a reload after a key") typing = [edit()];
    if (kind === "a box, as it was" && before.length > 1) {
      const there = before.slice(0, -1).filter(([path]) => boxes.some((box) => box.path === path && box.kind !== "radio"));
      if (there.length) {
        const [path, typed] = one(there);
        typing = [{ path, typed, left: true }];
      }
    }
    if (kind.includes("a button")) action = buttons.length ? one(buttons) : one(elsewhere);
    if (kind === "another job") action = one(elsewhere);
    if (kind === "an example") link = one(examples);
    if (kind === "a link") link = one(links);
    if (kind === "a broken link") link = one([one(links).slice(0, 20), one(links).replace(/.$/, "!"), "#1", "#9abc", "#1" + "A".repeat(below(3000))]);
    if (kind === "a file") {
      const saved = await save(now.form);
      file = saved && once(0.8) ? saved : one(["", "{", '{"format":"evenrow plan 1","rows":[{"plants":"many"}]}', "x".repeat(100_000)]);
    }

    // When its worker is killed, and how.
    const kills = [];
    if (once(0.15)) kills.push({ how: one(["gone", "error", "error", "stopped", "fault"]), after: one([0, 1, below(30), below(200), 400 + below(400)]) });
    if (kills.length && once(0.2)) kills.push({ how: "error", after: below(400) });
    const doomed = once(0.001) ? 5 : 0;
    if (doomed) kills[0] = { how: "error", after: 0 };
    const early = kills.length > 0 && once(0.4); // before it is asked, and not after
    return /** @type {Asked} */ ({ kind, typing, action, link, file, back, drained, explores, kills, doomed, early });
  };
}

/**
 * Asks a page, and waits until it has come to rest.
 * @param {Page} page
 * @param {Asked} asked
 * @returns {Promise<{typed: string, stands: Stands}>} what was typed, as form data, and what stands there
 */
export async function put(page, asked) {
  const did = page.evaluate(
    async ({ kind, typing, action, link, file, back, drained, explores, kills, doomed, early }) => {
      const { data, type, move, rest, stands } = window.e2eHelp;
      window.e2eDoomed = doomed;
      window.e2eExplores = explores;
      for (const { how, after } of kills) {
        if (early) window.e2eKill(how);
        else setTimeout(() => window.e2eKill(how), after);
      }
      const form = document.querySelector("#plan");
      const log = document.getElementById("f-log.1.out");
      const button = form.querySelector(`button[value="${action}"]`);
      if (button) button.click();
      else if (action) document.querySelector(`.jobs [data-job="${action.slice("show.".length)}"]`).click();
      for (const { path, typed, left } of typing) type(path, typed, left);
      const typed = data(form);
      if (kind === "a reload after a key") {
        sessionStorage.setItem("e2e", typed);
        window.e2eLeft = true;
        return location.reload();
      }
      if (kind === "an example") [...document.querySelectorAll("#examples a")].find((a) => a.hash === link).click();
      if (kind.endsWith("link")) await move(() => { location.hash = link; });
      if (kind === "back or forward") await move(() => (back && navigation.canGoBack ? history.back() : history.forward()));
      if (kind === "a kept plan") document.querySelector("[data-plans] a")?.click();
      if (kind === "a file") {
        const box = document.querySelector("input[data-open]");
        const list = new DataTransfer();
        list.items.add(new File([file], "plan.json"));
        box.files = list.files;
        box.dispatchEvent(new Event("change", { bubbles: true }));
        while (box.files.length) await new Promise((later) => setTimeout(later, 5)); // it is read first
      }
      if (kind === "the log" && !log.form.hidden) {
        log.value = drained;
        log.dispatchEvent(new InputEvent("input", { bubbles: true }));
      }
      await rest();
      return { typed, stands: stands() };
    },
    asked,
  );
  if (asked.kind !== "a reload after a key") return /** @type {any} */ (did);
  await did.catch(() => {}); // its world ends with it
  await page.waitForFunction(() => window.e2eHelp && !window.e2eLeft);
  await page.evaluate(() => window.e2eHelp.rest());
  return { typed: await page.evaluate(() => sessionStorage.getItem("e2e") ?? ""), stands: await look(page) };
}

/** @param {Page} page */
export const look = (page) => /** @type {Promise<Stands>} */ (page.evaluate(() => window.e2eHelp.stands()));
