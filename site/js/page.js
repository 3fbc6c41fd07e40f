// @ts-check
// The page's script. It carries text between the form and the planner, which
// runs in a worker (planner.js), and puts what comes back in its place. It computes nothing
// and knows no field, unit or message of the job; without it the page still
// shows the worked-out example.

import { formText, sentData, typedEarly } from "./boxes.js";
import { clock, save } from "./device.js";
import { draw, mark, say, undraw, unsay } from "./fragments.js";
import { listed } from "./list.js";
import { logbook } from "./log.js";
import { find, reveal, scripted } from "./places.js";
import { planner } from "./planner.js";
import { site } from "./site.js";
import { standing } from "./standing.js";
import { listen, troubles, watch } from "./store.js";
import { offline } from "./update.js";

const updating = offline();
const form = document.querySelector("form#plan");
if (form instanceof HTMLFormElement) tool(form);

/**
 * The tool.
 * @param {HTMLFormElement} form
 */
function tool(form) {
  /**
   * @typedef {{fragments: {id: string, html: string}[], errors: {path: string, text: string}[], link: string,
   *   title: string, announce: string, focus: string, more: number, fileName: string, fileKind: string, file: string}} Reply
   * @typedef {{ask: string, text?: string, action?: string, clock?: string, step?: number, submitted?: boolean, quiet?: boolean, good?: string, plan?: string, link?: string}} Question
   */

  /** Questions that wait. Only one is with the worker at a time. @type {Question[]} */
  const queue = [];
  /** @type {Question | undefined} the question that the worker has */
  let asked;
  /** What the two forms held when it was asked, to see what was typed since. */
  let sent = "";
  let noted = "";
  let settling = 0;
  let pausing = 0;
  /** Holds what is told; says whether more of it is to come. */
  const desk = find("#told");
  /** The plan that is kept: in the address, in links, and what an error falls back to. */
  let link = "";
  /** The plan whose answer stands on the page, be it of a number that is still being typed. */
  let shown = "";
  /** The example that the page comes with. */
  const first = find("[data-link]").getAttribute("value") ?? "";
  /** How that plan is shared, while it is not kept yet. */
  let share = "";
  /** Whether what was typed was left, or has rested: only then is the plan kept. */
  let left = true;
  let resting = 0;
  /** What there is still to tell of the plan whose answer stands on the page. */
  let due = 0;
  /** Whether a link to another plan was followed, far from the answer perhaps. */
  let leading = false;
  let opens = 0;
  let announcing = "";
  let written = 0;
  /** What the explorations have still to tell of, by id. @type {Set<string>} */
  let owed = new Set();
  let skipped = false;

  const waiting = find("[data-wait]");
  waiting.hidden = false;
  const worker = planner({
    ready() {
      waiting.hidden = true;
      next();
    },
    reply(reply) {
      take(reply);
      next();
    },
    again() {
      waiting.hidden = false;
      if (asked && changes(asked)) excuse("again");
    },
    lost,
    down: fail,
  });
  scripted(form);
  const now = standing(form, first);

  form.addEventListener("input", (event) => {
    if (event.target instanceof HTMLInputElement && event.target.type === "file") return;
    keep(true);
    left = !(event.target instanceof HTMLInputElement && event.target.type === "text");
    clearTimeout(settling); // the answer to what is typed now comes first
    rest();
    ask({ ask: "answer" });
  });
  form.addEventListener("change", leave);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    leave();
    const button = event.submitter;
    const action = button instanceof HTMLButtonElement && button.name === "action" ? button.value : undefined;
    if (action) keep(true);
    ask({ ask: "answer", action, submitted: true });
  });

  const log = find("form#log");
  if (!(log instanceof HTMLFormElement)) throw new Error("the log is no form");
  const book = logbook(log);
  log.addEventListener("input", () => {
    keep(true);
    if (!agree(true)) ask({ ask: "feedback" });
  });
  log.addEventListener("submit", (event) => {
    event.preventDefault();
    if (event.submitter instanceof HTMLButtonElement) ask({ ask: "feedback", action: event.submitter.value });
  });

  document.addEventListener("click", (event) => {
    if (!(event.target instanceof Element)) return;
    const inside = event.target.closest('a[href^="#"]');
    const place = inside && document.getElementById((inside.getAttribute("href") ?? "").slice(1));
    if (place) {
      event.preventDefault(); // the address holds the plan, not the place
      reveal(place);
    } else if (inside instanceof HTMLAnchorElement && !event.ctrlKey && !event.metaKey && !event.shiftKey && !event.altKey) {
      event.preventDefault();
      leave();
      leading = true; // a plan: its answer is what the reader wants to see
      now.write(link);
      now.enter(inside);
      open();
    }
    const button = event.target.closest("[data-do]");
    if (button instanceof HTMLElement) press(button);
  });
  document.addEventListener("change", async ({ target }) => {
    if (!(target instanceof HTMLInputElement) || !("open" in target.dataset)) return;
    const file = target.files?.[0];
    if (file) ask({ ask: "openFile", text: await file.text() });
    target.value = "";
  });
  addEventListener("popstate", () => open());
  addEventListener("pageshow", ({ persisted }) => {
    if (!persisted) return;
    agree(); // it has heard nothing of what other pages did
    listed(now.id());
    keeping();
  });
  listen((name) => {
    if (name === "log-" + book.id()) agree();
    if (!name || name.startsWith("plan-")) listed(now.id());
    keeping();
  });
  watch(keeping);
  addEventListener("beforeprint", leave);
  addEventListener("pagehide", () => {
    leave();
    settle();
  });
  book.open(now.id(), "");
  address(); // of the example, also where nothing else comes
  if (!open(true)) {
    opened();
    listed(now.id());
    agree(true);
    if (typedEarly(form)) {
      keep(true);
      ask({ ask: "answer" });
    }
  }
  keeping(); // what cannot be read is known now

  /** Opens the plan that the address and the history want. @param {boolean} [first] whether the page is new */
  function open(first) {
    const opening = now.asks(link, first);
    if (!opening) {
      now.write(link);
      return false;
    }
    // What stands on the page is of another plan, and must not pass for this one.
    clearTimeout(opens);
    opens = setTimeout(() => { site.opening = ""; }, waiting.hidden ? 200 : 0);
    ask(opening);
    return true;
  }

  /** Keeps what is typed, at once: the page may be gone a moment later. @param {boolean} [work] */
  function keep(work) {
    now.keep(link || first, work);
    if (work && book.lost()) agree(true); // a plan is kept with its log
  }

  /** Says whether the device keeps what is typed, and what it cannot read. */
  function keeping() {
    const found = troubles();
    site.keeps = found.denied || found.full || book.lost() ? "no" : "yes";
    for (const [name, so] of Object.entries(found)) find(`[data-${name}]`).hidden = !so;
  }

  /** Brings the log together with what is kept of it; says whether it is drawn again. @param {boolean} [work] whether something was typed just now */
  function agree(work) {
    const differs = book.keep(work);
    if (differs) openLog(book.id());
    return differs;
  }

  /** The log's form is of a plan. @param {string} plan @param {string} text of its log */
  function openBook(plan, text) {
    book.open(plan, text);
    log.hidden = false;
    keeping();
  }

  /** Shows the log of a plan. @param {string} plan */
  function openLog(plan) {
    const text = book.kept(plan);
    if (!log.hidden && text === book.typed()) return openBook(plan, text);
    drop((q) => q.action === "log-open");
    ask({ ask: "feedback", text, action: "log-open", quiet: true, plan });
  }

  /** Waits until a number that is being typed, and its answer, have stood for a while. */
  function rest() {
    clearTimeout(resting);
    if (!left) resting = setTimeout(() => (busy() ? rest() : leave()), 2000);
  }

  /** What is typed is to stay: its plan is kept, now or when its answer has come. */
  function leave() {
    clearTimeout(resting);
    left = true;
    if (!busy()) keepPlan();
  }

  /** The question, if there is one on its way, whose answer may be to another plan. */
  function busy() {
    return [asked, ...queue].find((question) => question && changes(question));
  }

  /** Keeps the plan whose answer stands on the page. */
  function keepPlan() {
    link = shown;
    keep();
    offer();
    // Browsers allow some three changes of the address a second; a reload right
    // after a change must not lose it.
    if (performance.now() - written > 400) write();
    else setTimeout(write, 400);
  }

  /** Offers the link of the plan that is kept. */
  function offer() {
    if (share) show("share", share);
    share = "";
  }

  /**
   * Asks, now or when the worker is free. What the form holds is read when it
   * is sent, so a second change in the form needs no second question.
   * @param {Question} question
   */
  function ask(question) {
    const plain = queue.findIndex((q) => q.ask === "answer" && !q.action);
    if (plain >= 0 && question.ask === "answer" && !question.action) {
      question.submitted ||= queue[plain].submitted;
      queue.splice(plain, 1);
    }
    // A changed plan asks for the rest anew; a log only for its own answer.
    if (question.ask === "feedback") drop((q) => q.ask === "feedback" && !q.action);
    if (changes(question)) {
      drop((q) => q.ask === "rest");
      clearTimeout(pausing);
      if (question.ask !== "answer") left = true;
    }
    queue.push(question);
    worker.wake();
    if (asked && overtakes(question, asked)) {
      question.submitted ||= asked.submitted;
      worker.overtake();
    }
    next();
  }

  /**
   * Whether the reply to a question is of no use once a newer one has been
   * asked. What a button does, and what is opened, is done first.
   * @param {Question} newer
   * @param {Question} older
   */
  function overtakes(newer, older) {
    if (!changes(newer)) return false;
    if (moves(older)) return newer.ask !== "answer";
    return older.action ? older.action === "log-open" : !saves(older);
  }

  function next() {
    if (asked || !worker.free()) return;
    asked = queue.shift();
    if (!asked) return;
    sent = formText(form);
    noted = formText(log);
    let text = asked.text;
    if (text === undefined || asked.ask === "feedback") {
      const data = new URLSearchParams(sentData(form));
      if (asked.ask === "feedback") {
        for (const [name, typed] of new URLSearchParams(text ?? sentData(log))) data.set(name, typed);
      }
      if (asked.action) data.set("action", asked.action);
      if (asked.clock) data.set("clock", asked.clock);
      if (asked.step) data.set("step", String(asked.step));
      if (asked.step || (asked.ask === "answer" && shown && shown !== (link || first))) data.set("good", (asked.good = link));
      text = data.toString();
    }
    const name = asked.ask === "restore" ? "answer" : asked.ask === "open" && !shown ? "openFirst" : asked.ask;
    worker.ask({ ask: name, text }, asked.ask !== "rest");
  }

  /** @param {Reply} reply */
  function take(reply) {
    const question = asked;
    asked = undefined;
    if (question?.ask === "rest") {
      for (const { id, html } of reply.fragments) {
        owed.delete(id);
        show(id, html);
      }
      if (!reply.more && !log.hidden && book.typed()) queue.push({ ask: "feedback", quiet: true });
      if (!reply.more && skipped) leaveOut();
      return later(reply.more);
    }
    if (question && late(question, reply)) return;
    const moved = question && moves(question);
    const wrong = reply.errors.length;
    if (moved) {
      opened();
      if (reply.link || question.ask === "restore") become(question, reply);
      else {
        now.stay();
        now.write(""); // a reload shows what stands here
      }
    }
    if (reply.link) {
      shown = reply.link;
      left ||= question?.ask !== "answer";
    }
    if (wrong && question?.good !== undefined) {
      shown = link; // an error falls back to it
      share = "";
    }
    if (question && changes(question) && (reply.link || wrong)) unsay();
    if (reply.more) {
      owed = new Set(others(reply));
      skipped = false;
      // What is still of the plan before is marked, until it is told of this one.
      if (question?.ask !== "answer") for (const id of owed) outdate(id, "");
    }
    for (const { id, html } of reply.fragments) {
      if (id === "share") share = html;
      else show(id, html);
    }
    if (shown === link) offer();
    const feedback = question?.ask === "feedback";
    const saving = feedback || (question && saves(question));
    if (question?.action === "log-open") openBook(question.plan ?? "", question.text ?? "");
    else if (feedback && question.action) book.keep(true);
    if (feedback) mark(reply.errors, log);
    else if (reply.link || wrong) mark(reply.errors, form); // what cannot be opened leaves what is wrong in the form
    if (reply.title) {
      document.title = reply.title + " – Evenrow";
      now.call(reply.title);
    }
    if (!saving && (question?.action || moved)) keep();
    if (reply.link && !busy()) {
      if (left) keepPlan();
      else rest();
    }
    if (reply.file) save(reply.fileName, reply.fileKind, reply.file);
    if (!question?.quiet) announcing = reply.announce;
    clearTimeout(settling);
    if (!busy()) settling = setTimeout(settle, 700);
    const led = moved && leading;
    if (led) leading = false;
    const place = document.getElementById(reply.focus) ?? (led ? find("#question") : null);
    if (place) reveal(place);
    else if (wrong && !feedback && (question?.submitted || saving)) reveal(find("#errors"));
    if (!asked && book.id() !== now.id()) openLog(now.id()); // which was not to be had
    // With an error, or when nothing could be opened, the rest is of the plan whose answer stands, wherever that was.
    if (!saving) later(reply.more || due);
  }

  /**
   * Whether a reply would undo what was typed since it was asked for, or is of a
   * log that has changed. What a button does is asked for once more then, for what
   * the form holds now; until the typing rests.
   * @param {Question} question
   * @param {Reply} reply
   */
  function late(question, reply) {
    /** @param {string} id */
    const draws = (id) => reply.fragments.some((fragment) => fragment.id === id);
    if (question.action === "log-open") {
      if (question.plan === now.id() && question.text === book.kept(now.id())) return false;
      openLog(now.id());
      return true;
    }
    const stays = question.ask === "answer" ? !draws("ask") || sent === formText(form) : question.ask !== "feedback" || !draws("log") || noted === formText(log);
    if (stays) return false;
    if (question.action || !queue.some((q) => q.ask === "answer")) queue.unshift(question);
    return true;
  }

  /** Another plan stands on the page. @param {any} opening @param {Reply} reply */
  function become(opening, reply) {
    now.stand({ ...opening, worked: opening.worked || opening.ask === "openFile" }, reply.link);
    shown = link = opening.link ?? reply.link;
    find("[data-back]").hidden = !opening.last;
    listed(now.id());
    openLog(now.id());
  }

  /** The places of what is told that a reply leaves as they are. @param {Reply} reply */
  function others(reply) {
    const filled = ["examples", "advice", ...reply.fragments.map((f) => f.id)];
    return Array.from(desk.querySelectorAll(".part > div[id]"), (place) => place.id).filter((id) => !filled.includes(id));
  }

  /** Marks what is not of the plan whose answer stands. @param {string} id @param {"" | "left"} how still on its way, or left out */
  function outdate(id, how) {
    find("#" + id).setAttribute("data-before", how);
    undraw(id);
  }

  /** Marks what is still not told of the plan whose answer stands, and will not be. */
  function leaveOut() {
    later(0);
    for (const id of owed) outdate(id, "left");
  }

  /**
   * Asks for what can wait until the answer is seen: the first part at once, the
   * others when the typing rests, so that a change does not wait for them.
   * @param {number} step of which there are more to come; 0 for none
   */
  function later(step) {
    due = step;
    if (step) desk.dataset.more = String(step);
    else delete desk.dataset.more;
    const ask = () => {
      if (queue.some(changes)) return; // another plan, and its rest, come next
      queue.push({ ask: "rest", step });
      next();
    };
    if (step === 2) pausing = setTimeout(ask, 400);
    else if (step) ask();
  }

  /** Whether the answer may be to another plan. @param {Question} question */
  function changes(question) {
    return question.ask === "answer" || moves(question);
  }

  /** Whether its reply is a file. @param {Question} question */
  function saves(question) {
    return ["save", "calendar"].includes(question.ask);
  }

  /** Whether it is for another plan to stand on the page. @param {Question} question */
  function moves(question) {
    return ["open", "openFile", "restore"].includes(question.ask);
  }

  /** @param {(question: Question) => boolean} which */
  function drop(which) {
    const i = queue.findIndex(which);
    if (i >= 0) queue.splice(i, 1);
  }

  /** Puts the plan into the address. */
  function write() {
    if (!link || location.hash === link) return;
    now.write(link);
    written = performance.now();
  }

  /** Says the answer aloud and puts the plan into the address, once the typing rests. */
  function settle() {
    clearTimeout(settling);
    write();
    const region = find("[data-announce]");
    if (announcing && region.textContent !== announcing) region.textContent = announcing;
    announcing = "";
  }

  /** Puts a fragment in its place. @param {string} id @param {string} html */
  function show(id, html) {
    if (draw(id, html) && id === "share") address();
  }

  /** @param {HTMLElement} button */
  async function press(button) {
    switch (button.dataset.do) {
      case "save":
      case "calendar":
        return ask({ ask: button.dataset.do });
      case "set-clock":
        keep(true);
        return ask({ ask: "answer", action: "set-clock", clock: clock() });
      case "print":
        settle();
        return print();
      case "forget":
        announcing = listed(now.id(), button.dataset.plan);
        return settle();
      case "update":
        return updating.load();
      case "copy": {
        const box = find("[data-link]");
        if (!(box instanceof HTMLInputElement)) return;
        box.select();
        try {
          await navigator.clipboard.writeText(box.value);
          button.textContent = button.dataset.done ?? button.textContent;
        } catch {
          box.focus(); // selected, and ready to be copied by hand
        }
      }
    }
  }

  /** Writes the whole address of the plan where the page shows it. */
  function address() {
    const box = find("[data-link]");
    if (!(box instanceof HTMLInputElement)) return;
    const whole = new URL(box.getAttribute("value") ?? "", location.href).href;
    box.value = whole;
    for (const line of document.querySelectorAll("[data-link-text]")) line.textContent = whole;
    // On hosts that have it: the same plan as a page without scripts.
    const plain = document.querySelector("[data-plain]");
    if (plain instanceof HTMLAnchorElement) plain.search = new URL(whole).hash.slice(1);
  }

  /**
   * There will be no reply to the question that was asked.
   * @param {boolean} overtaken by a newer one, which is asked next
   */
  function lost(overtaken) {
    const question = asked;
    if (question?.ask === "rest" && !overtaken) {
      skipped = true;
      later((question.step ?? 0) + 1);
    } else if (question && !overtaken) {
      excuse(changes(question) ? "slow-plan" : "slow");
      opened();
      if (moves(question)) {
        now.stay();
        later(due); // of the plan that stands
      } else if (changes(question)) leaveOut();
    }
    asked = undefined;
    next();
  }

  /** @param {string} why */
  function fail(why) {
    waiting.hidden = true;
    excuse("down", why);
    opened();
    asked = undefined;
    if (!shown) return; // what the page was to open at first comes when it can
    leaveOut();
    queue.length = 0;
    now.stay();
  }

  /** What was on its way to be opened no longer is. */
  function opened() {
    clearTimeout(opens);
    delete site.opening;
  }

  /**
   * Says why there is no answer, and that the one which stands is to something else.
   * @param {string} why by the name of the words
   * @param {string} [fault] that they name
   */
  function excuse(why, fault = "") {
    announcing = words(why).replace("…", fault);
    say("message", announcing);
    if (book.id() !== now.id()) {
      log.hidden = true; // what is of another plan's log does not stand for this one's
      outdate("advice", "left");
    }
    clearTimeout(settling);
    settling = setTimeout(settle, 700);
    const question = busy();
    // Another plan that is on its way still hides this one.
    if (!question || (why === "again" && moves(question))) return;
    const stands = words(question.ask === "answer" ? "not-the-form" : shown ? "not-opened" : question.ask === "restore" ? "not-yours" : "not-the-link");
    say("stale", stands);
    say("always", stands);
  }

  /** What the page has to say, which stands in its template. @param {string} name */
  function words(name) {
    return find(`[data-words="${name}"]`).textContent ?? "";
  }
}
