// @ts-check
// What the page's buttons do.

import { announce, settle } from "./aloud.js";
import { clock } from "./device.js";
import { keepTyped } from "./diary.js";
import { compared, copied, listed } from "./list.js";
import { find } from "./places.js";
import { ask } from "./questions.js";
import { planId } from "./standing.js";
import { forgetAll } from "./store.js";
import { step } from "./undo.js";
import { light } from "./ticks.js";
import { load } from "./update.js";

/** @param {HTMLElement} button */
export function press(button) {
  switch (button.dataset.do) {
    case "save":
    case "calendar":
    case "parts":
    case "cuts":
    case "marks":
      return ask({ ask: button.dataset.do });
    case "set-clock":
      keepTyped();
      return ask({ ask: "answer", action: "set-clock", clock: clock() });
    case "undo":
      return void step(-1);
    case "redo":
      return void step(1);
    case "print":
      settle();
      return print();
    case "print-set":
      return ask({ ask: "paper", print: [...document.querySelectorAll(".prints input:checked")].map((box) => box instanceof HTMLInputElement ? box.value : "").join(" ") });
    case "duplicate":
      keepTyped();
      copied(button.dataset.plan ?? planId, button.dataset.mark ?? "", Number(button.dataset.most));
      announce(button.dataset.done ?? "");
      listed(planId);
      return settle();
    case "compare": {
      keepTyped();
      const text = compared(button.dataset.plan ?? planId);
      button.setAttribute("aria-pressed", String(!text && button.getAttribute("aria-pressed") !== "true"));
      if (!text) return;
      for (const pressed of document.querySelectorAll('[data-do="compare"]')) pressed.setAttribute("aria-pressed", "false");
      return ask({ ask: "compare", text });
    }
    case "where":
      announce(light(button));
      return settle();
    case "forget-all":
      forgetAll();
      return location.replace(location.pathname);
    case "forget":
      announce(listed(planId, button.dataset.plan));
      return settle();
    case "update":
      return load();
    case "copy":
      copy(button);
  }
}

/** Copies the plan's link. @param {HTMLElement} button */
async function copy(button) {
  const box = /** @type {HTMLInputElement} */ (find("[data-link]"));
  box.select();
  try {
    await navigator.clipboard.writeText(box.value);
    button.textContent = button.dataset.done ?? button.textContent;
  } catch {
    box.focus(); // selected, and ready to be copied by hand
  }
}
