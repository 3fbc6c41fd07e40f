// @ts-check
// The page's script. It carries text between the form and the planner, which
// runs in a worker, and puts what comes back in its place. It computes nothing
// and knows no field, unit or message of the job; without it the page still
// shows the worked-out example.

const site = document.documentElement.dataset;

/** The one way to markup and script addresses: those of our own worker and site. */
const trusted = policy();

const updating = offline();
const form = document.querySelector("form#plan");
if (form instanceof HTMLFormElement) tool(form);

/** @returns {{createHTML: (html: string) => any, createScriptURL: (url: string) => any}} */
function policy() {
  const rules = {
    createHTML: (/** @type {string} */ html) => html,
    createScriptURL: (/** @type {string} */ url) => {
      if (new URL(url, document.baseURI).origin !== location.origin) throw new TypeError("a script of another site");
      return url;
    },
  };
  // @ts-ignore: not in every library of types
  return window.trustedTypes?.createPolicy("evenrow", rules) ?? rules;
}

/**
 * The tool.
 * @param {HTMLFormElement} form
 */
function tool(form) {
  /**
   * @typedef {{fragments: {id: string, html: string}[], errors: {path: string, text: string}[], link: string,
   *   title: string, announce: string, focus: string, more: number, fileName: string, fileKind: string, file: string}} Reply
   * @typedef {{ask: string, text?: string, action?: string, clock?: string, step?: number, submitted?: boolean, quiet?: boolean, good?: string}} Question
   */

  /** Questions that wait. Only one is with the worker at a time. @type {Question[]} */
  const queue = [];
  /** @type {Question | undefined} the question that the worker has */
  let asked;
  /** What the form held when it was asked, to see what was typed since. @type {Map<string, string>} */
  let sent = new Map();
  let ready = false;
  /** What stands on the page, by id, so that nothing is drawn twice. @type {Map<string, string>} */
  const drawn = new Map();
  let settling = 0;
  let pausing = 0;
  /** Holds what is told; says whether more of it is to come. */
  const desk = find("#told");
  /** The plan that is kept: in the address, in links, and what an error falls back to. */
  let link = "";
  /** The plan whose answer stands on the page, be it of a number that is still being typed. */
  let shown = "";
  /** The example that the page comes with. */
  const first = find("[data-link]").getAttribute("value");
  /** How that plan is shared, while it is not kept yet. */
  let share = "";
  /** Whether what was typed was left, or has rested: only then is the plan kept. */
  let left = true;
  let resting = 0;
  /** What there is still to tell of the plan whose answer stands on the page. */
  let due = 0;
  /** Whether a link to another plan was followed, far from the answer perhaps. */
  let leading = false;
  let opening = 0;

  const worker = new Worker(trusted.createScriptURL(site.worker ?? ""));
  worker.addEventListener("message", ({ data }) => {
    if (data.failed) return fail(data.failed);
    if (data.ready) ready = true;
    else take(data.reply);
    waiting.hidden = ready;
    next();
  });
  worker.addEventListener("error", (event) => fail(event.message || "its file cannot be loaded"));
  worker.postMessage({ program: new URL(site.program ?? "", document.baseURI).href });
  const waiting = find("[data-wait]");
  waiting.hidden = false;
  scripted(form);

  form.addEventListener("input", (event) => {
    if (event.target instanceof HTMLInputElement && event.target.type === "file") return;
    left = !(event.target instanceof HTMLInputElement && event.target.type === "text");
    rest();
    ask({ ask: "answer" });
  });
  form.addEventListener("change", leave);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    leave();
    const button = event.submitter;
    const action = button instanceof HTMLButtonElement && button.name === "action" ? button.value : undefined;
    ask({ ask: "answer", action, submitted: true });
  });

  const log = document.querySelector("form#log");
  if (log instanceof HTMLFormElement) {
    log.addEventListener("input", () => {
      keep(log);
      ask({ ask: "feedback" });
    });
    log.addEventListener("submit", (event) => {
      event.preventDefault();
      if (event.submitter instanceof HTMLButtonElement) ask({ ask: "feedback", action: event.submitter.value });
    });
    const text = kept();
    if (text) {
      log.inert = true; // what was typed now would be lost under what comes
      ask({ ask: "feedback", text, action: "log-open", quiet: true });
    }
  }

  document.addEventListener("click", (event) => {
    if (!(event.target instanceof Element)) return;
    const inside = event.target.closest('a[href^="#"]');
    const place = inside && document.getElementById((inside.getAttribute("href") ?? "").slice(1));
    if (place) {
      event.preventDefault(); // the address holds the plan, not the place
      reveal(place);
    } else if (inside && !event.ctrlKey && !event.metaKey && !event.shiftKey) {
      if (inside.getAttribute("href") === location.hash) reveal(find("#question"));
      else leading = true; // a plan: its answer is what the reader wants to see
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
  addEventListener("hashchange", open);
  addEventListener("beforeprint", leave);
  addEventListener("pagehide", () => {
    leave();
    settle();
  });
  if (location.hash.length > 1) open();
  else address();

  /** Opens the plan in the page's address. */
  function open() {
    if (location.hash === link || (location.hash && document.getElementById(location.hash.slice(1)))) return;
    // What stands on the page is of another plan, and must not pass for this one.
    clearTimeout(opening);
    opening = setTimeout(() => { site.opening = ""; }, ready ? 200 : 0);
    ask({ ask: "open", text: location.hash });
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

  /** Whether the answer to another plan is on its way. */
  function busy() {
    return Boolean(asked && changes(asked)) || queue.some(changes);
  }

  /** Keeps the plan whose answer stands on the page. */
  function keepPlan() {
    link = shown;
    if (share) draw("share", share);
    share = "";
    // Browsers allow some three changes of the address a second; a reload right
    // after a change must not lose it.
    if (performance.now() - written > 400) write();
    else setTimeout(write, 400);
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
    next();
  }

  function next() {
    if (!ready || asked) return;
    asked = queue.shift();
    if (!asked) return;
    sent = typed();
    let text = asked.text;
    if (text === undefined || asked.ask === "feedback") {
      const data = new URLSearchParams(sentData(form));
      if (log instanceof HTMLFormElement && asked.ask === "feedback") {
        for (const [name, typed] of new URLSearchParams(text ?? sentData(log))) data.set(name, typed);
      }
      if (asked.action) data.set("action", asked.action);
      if (asked.clock) data.set("clock", asked.clock);
      if (asked.step) data.set("step", String(asked.step));
      if (asked.step || (asked.ask === "answer" && shown && shown !== (link || first))) data.set("good", (asked.good = link));
      text = data.toString();
    }
    worker.postMessage({ ask: asked.ask === "open" && !link ? "openFirst" : asked.ask, text });
  }

  /** What the form holds, by id. */
  function typed() {
    const held = new Map();
    for (const box of form.elements) {
      if (box.id && (box instanceof HTMLInputElement || box instanceof HTMLSelectElement)) held.set(box.id, value(box));
    }
    return held;
  }

  /** @param {Reply} reply */
  function take(reply) {
    const question = asked;
    asked = undefined;
    if (question?.ask === "rest") {
      for (const { id, html } of reply.fragments) draw(id, html);
      if (!reply.more && kept()) queue.push({ ask: "feedback", quiet: true });
      return later(reply.more);
    }
    const typing = !question?.action && question?.ask === "answer" ? [...typed()].filter(([id, now]) => sent.get(id) !== now) : [];
    if (question?.ask === "open") {
      clearTimeout(opening);
      delete site.opening;
    }
    if (reply.link) {
      shown = reply.link;
      left ||= question?.ask !== "answer";
    }
    if (reply.errors.length && question?.good !== undefined) {
      shown = link; // an error falls back to it
      share = "";
    }
    if (reply.link && question?.ask !== "answer") other(reply);
    for (const { id, html } of reply.fragments) {
      if (id === "share" && shown !== link) share = html;
      else draw(id, html);
    }
    for (const [id, now] of typing) {
      const box = document.getElementById(id);
      if ((box instanceof HTMLInputElement || box instanceof HTMLSelectElement) && value(box) !== now) put(box, now);
    }
    const feedback = question?.ask === "feedback";
    const saving = feedback || question?.ask === "save" || question?.ask === "calendar";
    if (feedback && question.action && log instanceof HTMLFormElement) {
      log.inert = false;
      keep(log);
    }
    if (feedback && log instanceof HTMLFormElement) mark(reply.errors, log);
    else if (!saving || reply.errors.length) mark(reply.errors, form);
    if (reply.title) document.title = reply.title + " – Evenrow";
    if (reply.link && !busy()) {
      if (left) keepPlan();
      else rest();
    }
    if (reply.file) save(reply.fileName, reply.fileKind, reply.file);
    if (!question?.quiet) announcing = reply.announce;
    clearTimeout(settling);
    settling = setTimeout(settle, 700);
    const led = question?.ask === "open" && leading;
    if (led) leading = false;
    const place = document.getElementById(reply.focus) ?? (led ? find("#question") : null);
    if (place) reveal(place);
    else if (reply.errors.length && !feedback && (question?.submitted || saving)) reveal(find("#errors"));
    // With an error the rest is of the plan whose answer stands, wherever that was.
    if (!saving) later(reply.more || (reply.errors.length ? due : 0));
  }

  /** Marks what is still of the plan before, until it is told of this one. @param {Reply} reply */
  function other(reply) {
    for (const place of desk.querySelectorAll(".part > div[id]")) {
      if (!["examples", "advice", ...reply.fragments.map((f) => f.id)].includes(place.id)) {
        place.setAttribute("data-before", "");
        drawn.delete(place.id);
      }
    }
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
    return ["answer", "open", "openFile"].includes(question.ask);
  }

  /** @param {(question: Question) => boolean} which */
  function drop(which) {
    const i = queue.findIndex(which);
    if (i >= 0) queue.splice(i, 1);
  }

  let announcing = "";
  let written = 0;

  /** Puts the plan into the address. */
  function write() {
    if (!link || location.hash === link) return;
    history.replaceState(null, "", link);
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

  /**
   * Puts a fragment in its place. What is open stays open, what has the focus
   * keeps it, what is scrolled stays.
   * @param {string} id
   * @param {string} html
   */
  function draw(id, html) {
    const place = document.getElementById(id);
    if (!place || drawn.get(id) === html) return;
    drawn.set(id, html);
    const focus = document.activeElement;
    const held = focus instanceof HTMLElement && focus !== place && place.contains(focus) ? focus : undefined;
    const heldIn = held && path(place, held);
    const selection = held instanceof HTMLInputElement && held.type === "text" ? [held.selectionStart, held.selectionEnd] : undefined;
    const folds = new Map([...place.querySelectorAll("details")].map((d, i) => [d.id || i, d.open]));
    const scrolls = [...place.querySelectorAll(".scroll")].map((s) => s.scrollLeft);
    const top = form.scrollTop;

    place.removeAttribute("data-before");
    place.innerHTML = trusted.createHTML(html);

    place.querySelectorAll("details").forEach((d, i) => { d.open ||= folds.get(d.id || i) ?? false; });
    place.querySelectorAll(".scroll").forEach((s, i) => { s.scrollLeft = scrolls[i] ?? 0; });
    cautions(place);
    scripted(place);
    if (id === "share") address();
    if (!held) return;
    const again = (held.id && document.getElementById(held.id)) || (heldIn && follow(place, heldIn));
    if (again instanceof HTMLElement) {
      again.focus({ preventScroll: true });
      if (selection && again instanceof HTMLInputElement) again.setSelectionRange(selection[0], selection[1]);
    }
    form.scrollTop = top;
  }

  /**
   * Shows each error beside its field.
   * @param {Reply["errors"]} errors
   * @param {HTMLFormElement} root
   */
  function mark(errors, root) {
    const texts = new Map(errors.map((e) => [e.path, e.text]));
    for (const line of root.querySelectorAll(".field__error[id]")) {
      if (!(line instanceof HTMLElement)) continue;
      const path = line.id.slice(2);
      const text = texts.get(path) ?? "";
      const box = document.getElementById("f-" + path);
      if (line.textContent !== text) line.textContent = text;
      line.hidden = !text;
      if (text) box?.setAttribute("aria-invalid", "true");
      else box?.removeAttribute("aria-invalid");
    }
  }

  /** @param {HTMLElement} button */
  async function press(button) {
    switch (button.dataset.do) {
      case "save":
      case "calendar":
        return ask({ ask: button.dataset.do });
      case "set-clock":
        return ask({ ask: "answer", action: "set-clock", clock: clock() });
      case "print":
        settle();
        return print();
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

  /** @param {string} why */
  function fail(why) {
    waiting.hidden = true;
    asked = undefined;
    const line = document.createElement("p");
    line.textContent = `The planner cannot start in this browser: ${why}. The page shows the example, or your last good plan. Load the page again, or try another browser.`;
    find("#message").replaceChildren(line);
    if (site.opening === undefined) return;
    clearTimeout(opening);
    delete site.opening;
    const notice = line.cloneNode();
    notice.textContent = find("#always").textContent = "This is an example, not the plan in the link.";
    find("#stale").replaceChildren(notice);
  }
}

/** Shows what only a script can do. @param {ParentNode} root */
function scripted(root) {
  for (const button of root.querySelectorAll('[data-do="set-clock"]')) button.removeAttribute("hidden");
}

/** How far this device's clock is ahead, from each day of this year on which that changes: "2027-03-28 120" and so on. */
function clock() {
  const changes = [];
  let before;
  for (const day = new Date(new Date().getFullYear(), 0, 1, 12), year = day.getFullYear(); day.getFullYear() === year; day.setDate(day.getDate() + 1)) {
    const ahead = -day.getTimezoneOffset();
    if (ahead !== before) changes.push(`${year}-${String(day.getMonth() + 1).padStart(2, "0")}-${String(day.getDate()).padStart(2, "0")} ${ahead}`);
    before = ahead;
  }
  return changes.join("\n");
}

/**
 * Puts the boxes of the cautions into their places.
 * @param {Element} root
 */
function cautions(root) {
  for (const place of root.querySelectorAll("[data-caution]")) {
    const text = document.querySelector(`template[data-caution-text="${place.getAttribute("data-caution")}"]`);
    if (text instanceof HTMLTemplateElement) place.replaceChildren(text.content.cloneNode(true));
  }
}

/**
 * Keeps the log of the drain on this device, where the browser lets us.
 * @param {HTMLFormElement} log
 */
function keep(log) {
  const held = sentData(log).filter(([, text]) => text);
  try {
    localStorage.setItem("evenrow-log", new URLSearchParams(held).toString());
  } catch {
    // It is lost with the page then; the log can be saved as a table.
  }
}

/** The log that was kept; empty for none. */
function kept() {
  try {
    return localStorage.getItem("evenrow-log") ?? "";
  } catch {
    return "";
  }
}

/**
 * The form as pairs of text.
 * @param {HTMLFormElement} form
 * @returns {string[][]}
 */
function sentData(form) {
  return Array.from(new FormData(form), ([name, text]) => [name, String(text)]);
}

/** @param {HTMLInputElement | HTMLSelectElement} box */
function value(box) {
  return box.type === "radio" ? String(/** @type {HTMLInputElement} */ (box).checked) : box.value;
}

/**
 * @param {HTMLInputElement | HTMLSelectElement} box
 * @param {string} text
 */
function put(box, text) {
  if (box.type === "radio") /** @type {HTMLInputElement} */ (box).checked = text === "true";
  else box.value = text;
}

/**
 * Where an element stands in another, for one that has no id.
 * @param {Element} root
 * @param {Element} element
 */
function path(root, element) {
  const steps = [];
  for (let e = element; e !== root && e.parentElement; e = e.parentElement) {
    steps.unshift(Array.prototype.indexOf.call(e.parentElement.children, e));
  }
  return steps;
}

/**
 * @param {Element | undefined} root
 * @param {number[]} steps
 */
function follow(root, steps) {
  for (const step of steps) root = root?.children[step];
  return root;
}

/**
 * Opens what an element is folded into, and leads there.
 * @param {Element} place
 */
function reveal(place) {
  for (let e = /** @type {Element | null} */ (place); e; e = e.parentElement) {
    if (e instanceof HTMLDetailsElement) e.open = true;
  }
  const target = place instanceof HTMLDetailsElement ? place.querySelector("summary") : place;
  if (!(target instanceof HTMLElement)) return;
  target.focus({ preventScroll: true });
  // Of what is read on from, and of what is tall, the beginning matters.
  const start = target.matches("h1, h2, fieldset") || target.offsetHeight > innerHeight / 2;
  target.scrollIntoView({ block: place instanceof HTMLInputElement ? "center" : start ? "start" : "nearest" });
}

/**
 * @param {string} name
 * @param {string} type
 * @param {string} text
 */
function save(name, type, text) {
  const a = document.createElement("a");
  a.href = URL.createObjectURL(new Blob([text], { type }));
  a.download = name;
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 10000);
}

/** Keeps the site on the device, and offers a newer version when one waits. */
function offline() {
  /** @type {ServiceWorkerRegistration | undefined} */
  let kept;
  let loading = false;
  if ("serviceWorker" in navigator && site.offline && isSecureContext) register(site.offline);

  /** @param {string} address */
  async function register(address) {
    try {
      const had = navigator.serviceWorker.controller;
      kept = await navigator.serviceWorker.register(trusted.createScriptURL(address));
      const offer = () => {
        if (kept?.waiting && had) find("[data-update]").hidden = false;
      };
      offer();
      kept.addEventListener("updatefound", () => kept?.installing?.addEventListener("statechange", offer));
      navigator.serviceWorker.addEventListener("controllerchange", () => loading && location.reload());
    } catch {
      // Without it the page works as long as there is a connection.
    }
  }
  return {
    load() {
      loading = true;
      kept?.waiting?.postMessage("load");
    },
  };
}

/**
 * The one element that must be there; a missing one is a fault in the template.
 * @param {string} selector
 * @returns {HTMLElement}
 */
function find(selector) {
  const found = document.querySelector(selector);
  if (!(found instanceof HTMLElement)) throw new Error(`no ${selector} in the page`);
  return found;
}
