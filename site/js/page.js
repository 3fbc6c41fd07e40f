// @ts-check
// The page's script. It carries text between the forms and the planner, and puts
// what comes back in its place. It computes nothing and knows no field, unit or
// message of the job; without it the page still shows the worked-out example.
//
// This module only says what happens when: each of the others has one purpose.

import { settle, unsettle } from "./aloud.js";
import { touch, typedEarly } from "./boxes.js";
import { press } from "./buttons.js";
import { agree, book, keeping, keepTyped } from "./diary.js";
import { again, down, noReply } from "./failing.js";
import { address, blurred, leave, typing } from "./keeping.js";
import { closed, show, turned } from "./jobs.js";
import { listed } from "./list.js";
import { followed, opened, openWanted } from "./opening.js";
import { at, inSight, jobOf, placeIn } from "./sight.js";
import { logForm, planForm, reveal, scripted } from "./places.js";
import { ask, begin } from "./questions.js";
import { compose, take } from "./replies.js";
import { planId } from "./standing.js";
import { listen, watch } from "./store.js";
import { marked, ticking } from "./ticks.js";
import { step, unshape } from "./undo.js";
import { offline } from "./update.js";

offline();
if (planForm) tool();

/** The tool. */
function tool() {
  begin(compose, { reply: take, again, lost: noReply, down });
  scripted(planForm);
  hear();
  book.open(planId, "");
  address(); // of the example, also where nothing else comes
  if (!openWanted(true)) {
    opened();
    inSight("start");
    listed(planId);
    agree(true);
    if (typedEarly(planForm)) {
      keepTyped();
      ask({ ask: "answer" });
    }
  }
  keeping(); // what cannot be read is known now
}

/** Leads to what is not in sight. @param {string} to a place as an address has it, or an element's id */
function lead(to) {
  if (to.startsWith("/")) return show(to.slice(1));
  const held = document.getElementById(to);
  if (!held?.closest('[data-in~="all"]')) return show(to);
  show("all");
  reveal(held);
}

function hear() {
  planForm.addEventListener("input", ({ target }) => {
    const { name, type } = /** @type {HTMLInputElement} */ (target);
    if (type === "file") return;
    touch(planForm, name);
    typing(type === "text");
    ask({ ask: "answer" }); // first, so that the planner works while the rest is done
    keepTyped();
    unsettle();
  });
  planForm.addEventListener("change", leave);
  // A box that was drawn anew under the typing tells of no change. As it is drawn anew it is left
  // too, in some browsers, while the form is not whole: whether it has the focus again is seen afterwards.
  planForm.addEventListener("focusout", ({ target }) => queueMicrotask(() => {
    if (document.activeElement?.id !== /** @type {HTMLElement} */ (target).id) blurred();
  }));
  planForm.addEventListener("submit", (event) => {
    event.preventDefault();
    leave();
    const button = /** @type {HTMLButtonElement | null} */ (event.submitter);
    const action = button?.name === "action" ? button.value : undefined;
    if (action) keepTyped();
    ask({ ask: "answer", action, submitted: true });
  });
  logForm.addEventListener("input", () => {
    keepTyped();
    if (!agree(true)) ask({ ask: "feedback" });
  });
  logForm.addEventListener("submit", (event) => {
    event.preventDefault();
    const button = /** @type {HTMLButtonElement | null} */ (event.submitter);
    if (button) ask({ ask: "feedback", action: button.value });
  });

  document.addEventListener("click", (event) => {
    if (!(event.target instanceof Element)) return;
    const inside = event.target.closest('a[href^="#"]');
    const to = (inside?.getAttribute("href") ?? "").slice(1);
    const place = inside && document.getElementById(to);
    const modified = event.ctrlKey || event.metaKey || event.shiftKey || event.altKey;
    if (place && !place.closest("[data-in][hidden]") && (jobOf(at) !== "all" || !place.closest("#job, #plan"))) {
      event.preventDefault(); // the address holds the plan, not the place
      reveal(place);
    } else if (inside && !modified) {
      event.preventDefault();
      if (inside instanceof HTMLAnchorElement && /^\d/.test(to)) followed(inside); // in a picture it is another kind of element
      else lead(to);
    }
    const button = event.target.closest("[data-do]");
    if (button instanceof HTMLElement) press(button);
  });
  document.addEventListener("change", async ({ target }) => {
    if (target instanceof HTMLInputElement && target.dataset.tick) {
      ticking(target);
      return keepTyped();
    }
    if (!(target instanceof HTMLInputElement) || !("open" in target.dataset)) return;
    const file = target.files?.[0];
    if (file) ask({ ask: "openFile", text: await file.text() });
    target.value = "";
  });

  planForm.addEventListener("toggle", ({ target }) => {
    if (target instanceof HTMLDetailsElement && target.dataset.group) turned(target);
  }, true);
  document.addEventListener("toggle", ({ target }) => {
    if (!(target instanceof HTMLDetailsElement)) return;
    const { long, drawn } = target.dataset;
    if (target.open && long) lead("d-" + long);
    else if (!target.open && drawn) closed(drawn);
  }, true);
  addEventListener("popstate", ({ state }) => {
    const place = placeIn(location.hash) || "answer"; // before the address is that of what stands
    if (!openWanted() && !unshape(state?.shape ?? 0) && place !== at) show(place, true);
  });
  addEventListener("keydown", (event) => {
    const key = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || event.altKey || !(key === "z" || key === "y") || event.target instanceof Element && event.target.closest("#log")) return;
    leave();
    if (step(key === "y" || event.shiftKey ? 1 : -1)) event.preventDefault();
  });
  addEventListener("pageshow", ({ persisted }) => {
    if (!persisted) return;
    agree(); // it has heard nothing of what other pages did
    listed(planId);
    keeping();
  });
  listen((name) => {
    if (name === "log-" + book.id()) agree();
    if (name === "ticks-" + planId) marked(document);
    if (!name || name.startsWith("plan-")) listed(planId);
    keeping();
  });
  watch(keeping);
  addEventListener("beforeprint", leave);
  addEventListener("pagehide", () => {
    leave();
    settle();
  });
}
