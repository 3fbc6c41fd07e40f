// What must be so of a page after each question of somebody restless, by a planner
// that nobody kills and by a page that is opened anew: see endure-page.js.
import { answers } from "./endure-ask.js";
import { explored, results } from "./form.js";

/** @typedef {import("puppeteer-core").Page} Page */
/** @typedef {import("./endure-ask.js").Stands} Stands */
/** @typedef {import("./endure-ask.js").Asked} Asked */
/** @typedef {{ask: string, text: string}} Question of the planner */

/**
 * A planner that nobody kills, in a page of its own that does nothing else.
 * @param {Page} page
 * @param {string} address of the site
 */
export async function oracle(page, address) {
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
      const form = told.ask === undefined ? undefined : new URLSearchParams([...new FormData(draw(told.ask, "form"))]).toString();
      // What helps, and what the answer rests on, is said with it.
      for (const step of reply.link ? [1, 2] : []) {
        const { reply: rest } = await window.e2eAsk({ ask: "rest", text: `${form ?? question.text}&step=${step}` });
        for (const { id, html } of rest.fragments) told[id] = html;
      }
      const whole = draw(told.job ?? "");
      const place = (id) => (id in told ? draw(told[id]) : whole.querySelector(`[id="${id}"]`));
      return {
        form,
        link: reply.link,
        texts: Object.fromEntries(answers.filter((id) => place(id)).map((id) => [id, place(id).textContent])),
        errors: reply.errors,
        message: draw(told.message ?? "").textContent,
      };
    }, question, answers);
  }
}

/**
 * @typedef {object} Before what has been on the page by now
 * @property {boolean} without whether what stands in the form has no answer, as the page has said
 * @property {boolean} answered whether anything was answered before this question, since the page was loaded
 * @property {boolean} rests whether what was typed last was left, so that the plan is kept
 * @property {string} barred the question that filled in the months last, of whose pasted table something may be wrong; empty for none
 * @property {string} [known] the form, as it was left when the plan stood there last
 * @property {string} log that the plan should have, as form data
 */

/**
 * A judge of one page, who is told of every question.
 * @param {Awaited<ReturnType<typeof oracle>>} ask
 * @param {Stands} first what stands on the page before the first
 */
export function judge(ask, first) {
  /** How every plan was left, by id. */
  const left = new Map([[first.id, first.form]]);
  /** And its log. @type {Map<string, string>} */
  const logs = new Map();
  let rests = true;
  let barred = "";
  let without = false;
  let answered = false;

  return {
    after,
    compare,
    /** The page has been loaded again. */
    loaded() {
      answered = false;
    },
  };

  /**
   * What came of a question.
   * @param {Asked} asked
   * @param {string} typed the form as it was typed, as form data
   * @param {Stands} was
   * @param {Stands} now
   * @returns whether there is no answer, and the page says so, and what is wrong
   */
  function after(asked, typed, was, now) {
    const { kind, typing, action, drained } = asked;
    const changed = typing.length > 0 || Boolean(action);
    // What cannot be opened has the last word, and leaves a form without an answer as it is.
    without = /plan takes too long|cannot start/.test(now.message) || (without && !changed && now.id === was.id && now.stale === was.stale);
    if (kind === "a reload after a key") answered = false;
    const known = left.get(now.id);
    left.set(now.id, now.form);
    const log = new URLSearchParams((kind === "the log" && was.log) || logs.get(now.id));
    if (kind === "the log" && was.log !== undefined) log.set("log.1.out", drained);
    if (now.log !== undefined) logs.set(now.id, now.log);
    if (typing.length) rests = typing[typing.length - 1].left;
    else if (now.id !== was.id || action) rests = true;
    if (action === "fill-months" && !typing.length) barred = `${typed}&action=${action}`;
    else if (changed || now.id !== was.id) barred = "";
    const faults = check(asked, { typed, was, now, known, log: log.toString(), without, rests, barred, answered });
    answered ||= now.id !== was.id || (changed && !now.stale) || (kind === "a reload after a key" && !without); // which brings a plan that is kept
    return { without, faults };
  }

  /**
   * What is wrong with what stands there, by the planner that nobody kills.
   * @param {Asked} asked
   * @param {Before & {typed: string, was: Stands, now: Stands}} all
   * @returns {Promise<string[]>}
   */
  async function check({ kind, typing, action, link, file, kills }, { typed, was, now, known, log, without, rests, barred, answered }) {
    /** @type {string[]} */
    const faults = [];
    // What should stand there.
    const plain = (/** @type {string} */ form) => {
      const pairs = new URLSearchParams(form);
      // What is not in sight is typed as well; how a value came to be is folded into it when the form is drawn.
      for (const [name, text] of new URLSearchParams(pairs.get("rest") ?? "")) if (!pairs.has(name)) pairs.set(name, text);
      // What was typed for all rows at once is typed into each; the gap of row 1 is another thing.
      const rows = new Set([...pairs.keys()].map((name) => /^rows\.(\d+)\./.exec(name)?.[1]).filter(Boolean));
      for (const [name, text] of [...pairs]) {
        const field = /^all\.(.*)/.exec(name)?.[1];
        if (field && text !== pairs.get("all-was." + field)) for (const row of rows) if (field !== "gap" || row !== "1" || rows.size === 1) pairs.set(`rows.${row}.${field}`, text);
      }
      for (const name of [...pairs.keys()]) if (/^(shape|rest|at|open|touched|how|units-was|seen|today|languages|all-was\..*|all\..*|.*\.kind-was|how\..*)$/.test(name)) pairs.delete(name);
      pairs.sort();
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
      if (!without && kills.length < 2) forms.splice(0, 1);
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
      const kept = new URLSearchParams(now.kept ?? "");
      kept.delete("shape");
      const back = (await ask({ ask: "answer", text: kept.toString() })).form ?? ""; // as a reload brings it
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
      // Before anything has been answered here, a link that cannot be opened has the last word.
      if (wrong && !(answered ? /to put right/ : /to put right|an example, not the plan/).test(now.always)) faults.push(`the foot says ${now.always}`);
    }
    if (!wrong && !without && rests && now.link !== right.link) faults.push(`the link ${now.link} is not that of the form, ${right.link}`);
    const due = wrong ? await ask({ ask: "open", text: `${now.link}/${new URLSearchParams(now.form).get("at")}` }) : right;
    // What it rests on may have been given up with its worker: then the sentence hangs on all that is assumed.
    const assumed = now.texts.line.startsWith("Yes, if what is assumed is so.") && due.texts.line?.startsWith("Yes");
    for (const id of answers) {
      if (assumed && (id === "line" || id === "answer")) continue;
      if (without || !(id in now.texts) || !(id in due.texts) || now.texts[id] === due.texts[id]) continue;
      faults.push(`#${id}: ${difference(due.texts[id], now.texts[id])}`);
      break;
    }
    return faults;
  }

  /**
   * What is otherwise than in a page that is opened anew.
   * @param {Page} page
   * @param {Page} anew
   * @param {string} address of the site
   * @param {Stands} now
   * @param {boolean} deep whether all that is worked out is compared as well
   * @returns {Promise<string[]>}
   */
  async function compare(page, anew, address, now, deep) {
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
    // They may show two jobs.
    const wrong = Object.keys(there).find((id) => here[id] !== there[id] && here[id] !== "left out" && here[id] !== "missing" && there[id] !== "missing");
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
