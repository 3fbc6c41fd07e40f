// Thousands of questions to one page, as somebody restless asks them, while the
// worker of its planner is killed at any moment. After each one, what was typed
// stands in the boxes, and the answer is the one that a planner gives which
// nobody kills, or the page says that it has none.
//
// node endure-page.js [QUESTIONS] [SEED] [PAGES]: 10000 by default, 1, and 2 at
// the same time. The seed chooses what is asked and when a worker is killed; what
// the worker was doing then is up to the machine. Broken off, it tells of what was
// asked so far.
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { launch } from "./chromium.js";
import { explored, results } from "./form.js";
import { hurry } from "./hurry.js";
import { serve } from "./site.js";
import { watch } from "./watch.js";

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
/** @typedef {{ask: string, text: string}} Question of the planner */

/** The elements that every answer fills. "always" and "stale" also say what is wrong, and are looked at by themselves. */
const answers = ["answer", "pressure", "budget", "rows", "along", "pump", "evenness", "speeds", "surge", "findings", "parts"];

/** What is typed that is no number, or none that a field takes. */
const bad = ["", " ", "wide", "-1", "0", "1e9", "1e300", "1/2", "1,2,3", "1.000,5", "0x10", "٣", "½", "NaN", "=1+1", "2027-02-31", "31.12.2027", "9".repeat(400), "x".repeat(5000), "\t\n", "🌶️", "\u202eabc", "<img src=x onerror=alert(1)>\"'&amp;", "a&b=c;d#e%20"];

/** What is asked, as often as it stands here. */
const kinds = Object.entries({
  "a box": 40, "a box, as it was": 8, "many boxes at once": 12, "a button": 12, "a button, and a box at once": 5,
  "an example": 4, "a link": 3, "a broken link": 2, "a file": 2, "a kept plan": 2, "back or forward": 4,
  "a reload after a key": 2, "the log": 4,
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

/**
 * A planner that nobody kills, in a page of its own that does nothing else.
 * @param {Page} page
 * @param {string} address of the site
 */
async function oracle(page, address) {
  await page.setBypassCSP(true); // to read markup outside of the site's own way
  const [, worker, program, sum] = /data-worker="?([^"\s>]+)"? data-program="?([^"\s>]+)"? data-sum="?([^"\s>]+)/.exec(await (await fetch(address)).text()) ?? [];
  await page.goto(address + "method.html");
  await page.evaluate(async (worker, program, sum) => {
    const own = new Worker(worker);
    const heard = () => new Promise((resolve, reject) => {
      own.onmessage = ({ data }) => data.failed ? reject(new Error(data.failed)) : data.begun || resolve(data);
    });
    own.postMessage({ program, sum });
    await heard();
    let turn = Promise.resolve();
    window.e2eAsk = (question) =>
      (turn = turn.then(() => {
        own.postMessage(question);
        return heard();
      }));
  }, address + worker, address + program, sum);
  /** @typedef {{form?: string, link: string, texts: Record<string, string>, errors: {path: string, text: string}[], message: string}} Right */
  /** The last replies: the same is often asked again. @type {Map<string, Promise<Right>>} */
  const replies = new Map();
  /** @param {Question} question */
  return (question) => {
    const key = question.ask + question.text;
    const reply = replies.get(key) ?? answer(question);
    replies.set(key, reply);
    if (replies.size > 30) replies.delete(replies.keys().next().value ?? "");
    return reply;
  };

  /** @param {Question} question @returns {Promise<Right>} */
  function answer(question) {
    return page.evaluate(async (question, answers) => {
      const { reply } = await window.e2eAsk(question);
      const told = Object.fromEntries(reply.fragments.map(({ id, html }) => [id, html]));
      const draw = (html, kind = "div") => {
        const place = document.implementation.createHTMLDocument().createElement(kind);
        place.innerHTML = html;
        for (const caution of place.querySelectorAll("[data-caution]")) caution.replaceChildren();
        return place;
      };
      return {
        form: told.ask === undefined ? undefined : new URLSearchParams([...new FormData(draw(told.ask, "form"))]).toString(),
        link: reply.link,
        texts: Object.fromEntries(answers.filter((id) => id in told).map((id) => [id, draw(told[id]).textContent])),
        errors: reply.errors,
        message: draw(told.message ?? "").textContent,
      };
    }, question, answers);
  }
}

/** Helps in the page itself: a way through the browser's protocol for every look would take longer than the answer. @param {Page} page */
const helped = (page) =>
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
        if (ask !== "rest" || window.e2eExplores || /\bstep=1\b/.test(text)) return super.postMessage(...args);
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
          texts: Object.fromEntries(answers.map((id) => {
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
          buttons: [...document.querySelectorAll('#plan button[name="action"]')].map((e) => e.value),
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
 * @typedef {object} Tally
 * @property {Map<string, {tried: number, said: number, failed: number, seconds: number, most: number}>} kinds of questions; said: without an answer, and the page said so
 * @property {number} tried
 * @property {Record<string, number>} killed by how
 * @property {number} replaced
 * @property {number} fresh compared with a page that was opened anew
 * @property {string[]} failures
 */

/**
 * Asks one page.
 * @param {object} how
 * @param {Page[]} how.pages three that are watched, each in a profile of its own: one to ask, the others to compare with
 * @param {string} how.address of the site
 * @param {number} how.questions
 * @param {number} how.seed
 * @param {(done: number) => Promise<void>} [how.weigh] runs after every tenth of them
 * @param {() => boolean} [how.enough] whether it is to end before that
 * @returns {Promise<Tally>}
 */
export async function endure({ pages: [page, quiet, anew], address, questions, seed, weigh, enough }) {
  const { once, below, one } = dice(seed);
  /** @type {Tally} */
  const tally = { kinds: new Map(), tried: 0, killed: {}, replaced: 0, fresh: 0, failures: [] };
  await hurry(page, 10);
  await helped(page);
  await helped(anew);
  await anew.evaluateOnNewDocument(() => { window.e2eExplores = true; });
  const ask = await oracle(quiet, address);
  await page.goto(address);
  await page.evaluate(() => window.e2eHelp.rest());
  const look = () => /** @type {Promise<Stands>} */ (page.evaluate(() => window.e2eHelp.stands()));
  const examples = await page.$$eval("#examples a", (all) => all.map((a) => a.hash));

  /** How every plan was left, by id. @type {Map<string, string>} */
  const left = new Map();
  /** And its log. @type {Map<string, string>} */
  const logs = new Map();
  /** What stood in boxes before something else was typed there. @type {[string, string][]} */
  const before = [];
  const links = [...examples];
  let now = await look();
  left.set(now.id, now.form);
  let since = 0;
  /** Whether what was typed last was left, so that the plan is kept. */
  let rests = true;
  /** The question that filled in the months last, of whose pasted table something may be wrong. */
  let barred = "";
  /** Whether what stands in the form has no answer, as the page has said. */
  let without = false;
  /** Checks under way. @type {Promise<void>[]} */
  const waits = [];

  for (let n = 0; n < questions && !enough?.(); n++) {
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
      const box = once(0.85) ? one(written) : one(chosen);
      const old = /** @type {[string, string]} */ ([box.path, box.held]);
      before.push(old);
      if (before.length > 30) before.shift();
      return { path: box.path, typed: box.kind === "radio" || box.kind === "checkbox" ? "on" : box.kind === "select" ? one(box.options) : words(box), left: once(0.6) };
    };
    const rows = now.form.match(/rows\.\d+\.plants=/g)?.length ?? 0;
    const buttons = now.buttons.filter((action) => rows < 10 || !/^(add|copy)/.test(action));

    // What is asked.
    since++;
    // Once in a while another plan: of one with many mistakes or changes little is new to learn.
    const kind = now.errors.length > 4 || since > 40 ? "an example" : one(kinds);
    /** @type {{path: string, typed: string, left: boolean}[]} */
    let typing = [];
    /** @type {string} */
    let action = "";
    /** @type {string} */
    let link = "";
    /** @type {string | undefined} */
    let file;
    const back = once(0.7);
    const drained = `${below(60)}`;
    const explores = n % 10 === 9;
    if (kind.includes("box")) typing = Array.from({ length: kind.startsWith("many") ? 2 + below(6) : 1 }, edit);
    if (kind === "a reload after a key") typing = [edit()];
    if (kind === "a box, as it was" && before.length > 1) {
      const there = before.slice(0, -1).filter(([path]) => boxes.some((box) => box.path === path && box.kind !== "radio"));
      if (there.length) {
        const [path, typed] = one(there);
        typing = [{ path, typed, left: true }];
      }
    }
    if (kind.includes("a button")) action = one(buttons);
    if (kind === "an example") link = one(examples);
    if (kind === "a link") link = one(links);
    if (kind === "a broken link") link = one([one(links).slice(0, 20), one(links).replace(/.$/, "!"), "#1", "#9abc", "#1" + "A".repeat(below(3000))]);
    if (kind === "a file") {
      const reply = await quiet.evaluate((text) => window.e2eAsk({ ask: "save", text }), now.form);
      file = reply.reply.file && once(0.8) ? reply.reply.file : one(["", "{", '{"format":"evenrow plan 1","rows":[{"plants":"many"}]}', "x".repeat(100_000)]);
    }

    // When its worker is killed, and how.
    const kills = [];
    if (once(0.15)) kills.push({ how: one(["gone", "error", "error", "stopped", "fault"]), after: one([0, 1, below(30), below(200), 400 + below(400)]) });
    if (kills.length && once(0.2)) kills.push({ how: "error", after: below(400) });
    const doomed = once(0.001) ? 5 : 0;
    if (doomed) kills[0] = { how: "error", after: 0 };
    const early = kills.length > 0 && once(0.4); // before it is asked, and not after
    for (const { how } of kills) tally.killed[how] = (tally.killed[how] ?? 0) + 1;

    const row = tally.kinds.get(kind) ?? { tried: 0, said: 0, failed: 0, seconds: 0, most: 0 };
    tally.kinds.set(kind, row);
    row.tried++;
    tally.tried++;
    const began = performance.now();
    const was = now;
    /** @param {string[]} faults */
    const tell = (faults) => {
      if (!faults.length) return;
      row.failed++;
      tally.failures.push(`question ${n} of seed ${seed}, ${kind}${action && " " + action}, ${JSON.stringify(typing).slice(0, 300)}, killed ${JSON.stringify(kills)}${early ? " before it" : ""}, plan ${was.id}, then ${now.id}${without ? ", without an answer" : ""}: ${faults.join("; ")}`);
    };
    try {
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
          if (action) form.querySelector(`button[value="${action}"]`)?.click();
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
        { kind, typing, action, link, file, back, drained, explores, kills, doomed, early },
      );
      let typed = "";
      if (kind === "a reload after a key") {
        await did.catch(() => {}); // its world ends with it
        await page.waitForFunction(() => window.e2eHelp && !window.e2eLeft);
        await page.evaluate(() => window.e2eHelp.rest());
        typed = await page.evaluate(() => sessionStorage.getItem("e2e") ?? "");
        now = await look();
        tally.replaced += now.started - 1;
      } else {
        ({ typed, stands: now } = await did);
        tally.replaced += now.started - was.started;
      }
      const seconds = (performance.now() - began) / 1000;
      row.seconds += seconds;
      row.most = Math.max(row.most, seconds);
      // What cannot be opened has the last word, and leaves a form without an answer as it is.
      without = /plan takes too long|cannot start/.test(now.message) || (without && !typing.length && !action && now.id === was.id && now.stale === was.stale);
      if (without) row.said++;
      const known = left.get(now.id);
      left.set(now.id, now.form);
      const log = new URLSearchParams((kind === "the log" && was.log) || logs.get(now.id));
      if (kind === "the log" && was.log !== undefined) log.set("log.1.out", drained);
      if (now.log !== undefined) logs.set(now.id, now.log);
      if (!now.stale && !now.message) links.push(now.link);
      if (links.length > 40) links.splice(examples.length, 1);
      if (now.id !== was.id) since = 0;
      if (typing.length) rests = typing[typing.length - 1].left;
      else if (now.id !== was.id || action) rests = true;
      if (action === "fill-months" && !typing.length) barred = `${typed}&action=${action}`;
      else if (typing.length || action || now.id !== was.id) barred = "";
      if (waits.length > 20) await waits.shift();
      waits.push(check({ kind, typing, action, link, file, typed, was, now, known, log: log.toString(), without, rests, barred, twice: kills.length > 1 }).then(tell));
      // The same as in a page that is opened anew, and all that takes longer.
      if (n % 40 === 39) tell(await compare(now, n % 120 === 79 && !now.errors.length)); // what is told of the last good plan was perhaps not explored
    } catch (fault) {
      tell([`${fault instanceof Error ? fault.message : fault}, at ${page.url().slice(0, 60)}`]);
      await page.goto(address);
      await page.evaluate(() => window.e2eHelp.rest());
      now = await look();
    }
    if ((n + 1) % Math.ceil(questions / 10) === 0) await weigh?.(n + 1);
  }
  await Promise.all(waits);
  return tally;

  /**
   * What is wrong with what stands there, by the planner that nobody kills.
   * @param {{kind: string, typing: {path: string, typed: string, left: boolean}[], action: string, link: string, file?: string, typed: string, was: Stands, now: Stands, known?: string, log: string, without: boolean, rests: boolean, barred: string, twice: boolean}} all
   */
  async function check({ kind, typing, action, link, file, typed, was, now, known, log, without, rests, barred, twice }) {
    /** @type {string[]} */
    const faults = [];
    // What should stand there.
    const plain = (/** @type {string} */ form) => {
      const pairs = new URLSearchParams(form);
      pairs.delete("shape");
      return pairs.toString();
    };
    const moved = ["an example", "a link", "a broken link", "back or forward", "a kept plan", "a file"].includes(kind);
    /** @type {string[]} */
    let forms = [typed];
    let reply = await ask({ ask: "answer", text: typed });
    forms = [reply.form ?? typed];
    if (without) forms.push(typed);
    if (without && (moved || action)) forms.push(was.form);
    if (action) {
      reply = await ask({ ask: "answer", text: `${typed}&action=${action}` });
      forms.push(reply.form ?? typed);
      // One whose worker dies twice is not done.
      if (!without && !twice) forms.splice(0, 1);
    }
    if (moved && !without) {
      const opened = kind === "a file" ? await ask({ ask: "openFile", text: file ?? "" }) : link ? await ask({ ask: "open", text: link }) : undefined;
      if (opened?.form) forms = [opened.form];
      else if (opened && !now.message) faults.push("what cannot be opened is refused without a word");
      if (kind === "a link" && known) forms.push(known); // one that this tab had already, as it was left
      if (!opened && known) forms = [known];
      if (!opened && !known) forms.push((await ask({ ask: "open", text: now.link })).form ?? "");
    }
    if (!forms.some((form) => plain(form) === plain(now.form))) faults.push(`the form: ${difference(plain(forms[0]), plain(now.form))}`);
    if (typing.length && !moved && plain(now.kept ?? "") !== plain(now.form)) {
      const back = (await ask({ ask: "answer", text: plain(now.kept ?? "") })).form ?? ""; // as a reload brings it
      if (plain(back) !== plain(now.form)) faults.push(`what is kept: ${difference(plain(now.form), plain(back))}`);
    }

    const noted = (/** @type {string} */ log) => [...new URLSearchParams(log)].filter(([, typed]) => typed).join("&");
    if (now.log === undefined) {
      if (!/given up|cannot start/.test(now.message)) faults.push("there is no log, without a word");
    } else if (noted(log) !== noted(now.log) && !(without && moved)) faults.push(`the log: ${difference(noted(log), noted(now.log))}`);

    // The answer to it.
    // What a button cannot do is told until something else is asked.
    const right = await ask({ ask: "answer", text: barred || now.form });
    const wrong = right.errors.length > 0;
    if (without) {
      if (!now.stale && kind !== "the log") faults.push("an answer that is given up leaves the old one without a word");
    } else {
      // Beside its box an error also says that what was typed is kept.
      if (now.errors.length !== right.errors.length || now.errors.some((error, i) => !right.errors[i].text.startsWith(error))) faults.push(`the errors: ${difference(String(right.errors.map(({ text }) => text)), String(now.errors))}`);
      const texts = new Map(right.errors.map(({ path, text }) => [path, text]));
      for (const [path, text] of Object.entries(now.beside)) {
        if (text !== (texts.get(path) ?? "")) faults.push(`beside ${path}: ${difference(texts.get(path) ?? "", text)}`);
      }
      if (wrong !== (now.stale !== "")) faults.push(wrong ? "an answer to the last good plan passes for one to the form" : `a right answer is called stale: ${now.stale}`);
      // Before anything else has stood here, a link that cannot be opened has the last word.
      if (wrong && !/to put right|an example, not the plan/.test(now.always)) faults.push(`the foot says ${now.always}`);
    }
    if (!wrong && !without && rests && now.link !== right.link) faults.push(`the link ${now.link} is not that of the form, ${right.link}`);
    const due = wrong ? await ask({ ask: "open", text: now.link }) : right;
    for (const id of answers) {
      if (without || now.texts[id] === due.texts[id]) continue;
      faults.push(`#${id}: ${difference(due.texts[id], now.texts[id])}`);
      break;
    }
    return faults;
  }

  /** @param {Stands} now @param {boolean} deep whether all that is worked out is compared as well */
  async function compare(now, deep) {
    tally.fresh++;
    const link = now.link;
    await anew.goto("about:blank");
    await anew.goto(address + link);
    await anew.evaluate(() => window.e2eHelp.rest());
    const other = /** @type {Stands} */ (await anew.evaluate(() => window.e2eHelp.stands()));
    if (deep) await Promise.all([explored(page), explored(anew)]);
    const texts = (/** @type {Page} */ page) =>
      page.evaluate((ids) => Object.fromEntries(ids.map((id) => {
        const place = document.getElementById(id);
        return [id, place?.closest("[data-before]") ? "left out" : place?.textContent ?? "missing"];
      })), deep ? results.filter((id) => id !== "always") : answers);
    const [here, there] = [await texts(page), await texts(anew)];
    await anew.evaluate(() => {
      localStorage.clear();
      sessionStorage.clear();
    });
    // A number that nobody has left is answered, and is not in the link.
    if ((await ask({ ask: "answer", text: now.form })).link !== link && !now.errors.length) return [];
    if (/given up|cannot start/.test(now.message)) return [];
    const wrong = Object.keys(there).find((id) => here[id] !== there[id] && here[id] !== "left out");
    if (other.link !== link) return [`a fresh page makes ${other.link} of ${link}`];
    return wrong ? [`a fresh page has in #${wrong}: ${difference(there[wrong], here[wrong])}`] : [];
  }
}

/** Where two texts part. @param {string} want @param {string} got */
function difference(want, got) {
  let i = 0;
  while (i < want.length && want[i] === got[i]) i++;
  return `${JSON.stringify(got.slice(Math.max(0, i - 30), i + 60))} and not ${JSON.stringify(want.slice(Math.max(0, i - 30), i + 60))}`;
}

/** The tallies of several pages as one table. @param {Tally[]} all */
export function table(all) {
  const kinds = [...new Set(all.flatMap(({ kinds }) => [...kinds.keys()]))].sort();
  const sum = (/** @type {number[]} */ numbers) => numbers.reduce((a, b) => a + b, 0);
  const line = (/** @type {(string | number)[]} */ [name, ...figures]) => String(name).padEnd(30) + figures.map((figure) => String(figure).padStart(10)).join("");
  const lines = [line(["questions", "tried", "no answer", "failed", "mean s", "most s"])];
  for (const kind of [...kinds, "together"]) {
    const rows = all.flatMap(({ kinds }) => [...kinds].filter(([name]) => name === kind || kind === "together").map(([, row]) => row));
    const tried = sum(rows.map((row) => row.tried));
    lines.push(line([kind, tried, sum(rows.map((row) => row.said)), sum(rows.map((row) => row.failed)), (sum(rows.map((row) => row.seconds)) / tried).toFixed(2), Math.max(...rows.map((row) => row.most)).toFixed(2)]));
  }
  for (const how of ["gone", "error", "stopped", "fault"]) lines.push(line([`workers killed: ${how}`, sum(all.map(({ killed }) => killed[how] ?? 0))]));
  lines.push(line(["workers replaced", sum(all.map(({ replaced }) => replaced))]));
  lines.push(line(["compared with a fresh page", sum(all.map(({ fresh }) => fresh))]));
  return lines.join("\n");
}

/** What a page holds once it has been tidied up, and its browser for it. @param {Page} page */
async function held(page) {
  const session = await page.createCDPSession();
  await session.send("HeapProfiler.collectGarbage");
  await session.detach();
  const { JSHeapUsedSize = 0, Nodes, JSEventListeners } = await page.metrics();
  const whole = await page.browser().target().createCDPSession();
  const { processInfo } = await whole.send("SystemInfo.getProcessInfo");
  await whole.detach();
  const renderers = processInfo.filter(({ type }) => type === "renderer").map(({ id }) => id);
  const each = await Promise.all(renderers.map(async (id) => Number(/VmRSS:\s+(\d+)/.exec(await readFile(`/proc/${id}/status`, "utf8").catch(() => ""))?.[1] ?? 0) / 1024));
  return `${Nodes} nodes, ${JSEventListeners} listeners, ${(JSHeapUsedSize / 1e6).toFixed(1)} MB of objects, largest renderer ${Math.max(...each).toFixed(0)} MB`;
}

async function main() {
  const [questions = 10_000, seed = 1, pages = 2] = process.argv.slice(2).map(Number);
  let broken = false;
  for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => { broken = true; }); // and what it has found by then is told
  const site = await serve();
  const open = () => launch({ handleSIGINT: false, handleSIGTERM: false }); // what it is asked is brought to an end first
  const aside = await open();
  /** @type {string[]} */
  const faults = [];
  /** @param {import("puppeteer-core").Browser} browser */
  const another = async (browser) => {
    const page = await (await browser.createBrowserContext()).newPage();
    await page.setViewport({ width: 1280, height: 900 });
    await watch(page, site.address, faults);
    return page;
  };
  console.log(`${questions} questions to ${pages} pages, seed ${seed}`);
  const tallies = await Promise.all(Array.from({ length: pages }, async (_, i) => {
    const browser = await open(); // of its own, so that it is plain what it holds
    const page = await another(browser);
    const tally = await endure({
      pages: [page, await another(aside), await another(aside)],
      address: site.address,
      questions: Math.ceil(questions / pages),
      seed: seed * 1000 + i,
      enough: () => broken,
      weigh: async (done) => console.log(`page ${i + 1}, after ${done} questions: ${await held(page)}`),
    });
    await browser.close();
    return tally;
  }));
  await aside.close();
  await site.stop();
  console.log(table(tallies));
  const failures = tallies.flatMap((tally) => tally.failures);
  for (const failure of failures.slice(0, 50)) console.log(failure);
  for (const fault of faults.slice(0, 20)) console.log(`what no page may do: ${fault}`);
  process.exitCode = failures.length + faults.length ? 1 : 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
