// @ts-check
// What is read aloud, once the typing rests.

import { writeKept } from "./keeping.js";
import { find } from "./places.js";

const silence = 700; // ms

let announcing = "";
let settling = 0;

/** What is to be read aloud next. @param {string} text empty for nothing */
export function announce(text) {
  announcing = text;
}

/** The answer to what is typed now comes first. */
export function unsettle() {
  clearTimeout(settling);
}

export function settleSoon() {
  unsettle();
  settling = setTimeout(settle, silence);
}

/** Says the answer aloud and puts the plan into the address. */
export function settle() {
  unsettle();
  writeKept();
  const region = find("[data-announce]");
  if (announcing && region.textContent !== announcing) region.textContent = announcing;
  announce("");
}
