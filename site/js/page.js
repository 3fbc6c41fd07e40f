// @ts-check
// The page's script. It carries text between the forms and the planner, and puts
// what comes back in its place. It computes nothing and knows no field, unit or
// message of the job; without it the page still shows the worked-out example.
//
// This module only says what happens when: each of the others has one purpose.

import { settle, unsettle } from "./aloud.js";
import { typedEarly } from "./boxes.js";
import { press } from "./buttons.js";
import { agree, book, keeping, keepTyped } from "./diary.js";
import { again, down, noReply } from "./failing.js";
import { address, leave, typing } from "./keeping.js";
import { listed } from "./list.js";
import { followed, opened, openWanted } from "./opening.js";
import { logForm, planForm, reveal, scripted } from "./places.js";
import { ask, begin } from "./questions.js";
import { compose, take } from "./replies.js";
import { planId } from "./standing.js";
import { listen, watch } from "./store.js";
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
    listed(planId);
    agree(true);
    if (typedEarly(planForm)) {
      keepTyped();
      ask({ ask: "answer" });
    }
  }
  keeping(); // what cannot be read is known now
}

function hear() {
  planForm.addEventListener("input", ({ target }) => {
    const { type } = /** @type {HTMLInputElement} */ (target);
    if (type === "file") return;
    keepTyped();
    unsettle();
    typing(type === "text");
    ask({ ask: "answer" });
  });
  planForm.addEventListener("change", leave);
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
    const place = inside && document.getElementById((inside.getAttribute("href") ?? "").slice(1));
    if (place) {
      event.preventDefault(); // the address holds the plan, not the place
      reveal(place);
    } else if (inside instanceof HTMLAnchorElement && !event.ctrlKey && !event.metaKey && !event.shiftKey && !event.altKey) {
      event.preventDefault();
      followed(inside);
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

  addEventListener("popstate", () => openWanted());
  addEventListener("pageshow", ({ persisted }) => {
    if (!persisted) return;
    agree(); // it has heard nothing of what other pages did
    listed(planId);
    keeping();
  });
  listen((name) => {
    if (name === "log-" + book.id()) agree();
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
