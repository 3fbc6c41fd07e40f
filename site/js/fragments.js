// @ts-check
// The parts of the page that the planner writes.

import { cautions, find, follow, path, scripted } from "./places.js";
import { trusted } from "./site.js";
import { marked } from "./ticks.js";

/** What was drawn on the page, by id, so that nothing is drawn twice. @type {Map<string, string>} */
const drawn = new Map();

/** What was ever scrolled: to ask anything else where it stands would have the page laid out before its time. @type {WeakSet<EventTarget>} */
const scrolled = new WeakSet();
document.addEventListener("scroll", ({ target }) => target && scrolled.add(target), true);

/** What the page's own words stand in place of, by id. @type {Map<string, ChildNode[]>} */
const aside = new Map();

/**
 * Puts words of the page itself in the place of a fragment, until the planner
 * has more to say there.
 * @param {string} id
 * @param {string} words
 */
export function say(id, words) {
  const place = find("#" + id);
  if (!aside.has(id)) aside.set(id, [...place.childNodes]);
  const line = document.createElement(place.matches("span") ? "span" : "p");
  line.textContent = words;
  place.replaceChildren(line);
  undraw(id);
}

/** Takes back what the page has said by itself. */
export function unsay() {
  for (const [id, nodes] of aside) find("#" + id).replaceChildren(...nodes);
  aside.clear();
}

/** The number of the last reply of which all is drawn; 0 where something else stands on the page. */
export let seen = 0;

/** All of a reply is drawn. @param {number} number */
export function drew(number) {
  if (number) seen = number;
}

/** Lets a fragment be drawn again, even if it is the same. @param {string} id */
export function undraw(id) {
  drawn.delete(id);
  seen = 0;
}

/**
 * Puts a fragment in its place. What is open stays open, what has the focus
 * keeps it, what is scrolled stays. Says whether it is new.
 * @param {string} id
 * @param {string} html
 */
export function draw(id, html) {
  const place = document.getElementById(id);
  if (!place) return false;
  const form = place.closest("form");
  // In what holds boxes, something else may stand by now than was drawn there.
  if (drawn.get(id) === html && !(form && place.querySelector("input"))) return false;
  drawn.set(id, html);
  aside.delete(id);
  const focus = document.activeElement;
  const held = focus instanceof HTMLElement && focus !== place && place.contains(focus) ? focus : undefined;
  const heldIn = held && path(place, held);
  const selection = held instanceof HTMLInputElement && held.type === "text" ? [held.selectionStart, held.selectionEnd] : undefined;
  const folds = new Map([...place.querySelectorAll("details")].map((d, i) => [d.id || i, { by: "open" in d.dataset, open: d.open }]));
  const scrolls = [...place.querySelectorAll(".scroll")].map((s) => scrolled.has(s) && s.scrollLeft);
  const top = held && form && form.scrollTop;

  place.removeAttribute("data-before");
  for (const inner of drawn.keys()) if (inner !== id && place.contains(document.getElementById(inner))) drawn.delete(inner);
  place.innerHTML = trusted.createHTML(html);

  place.querySelectorAll("details").forEach((d, i) => {
    const was = folds.get(d.id || i);
    if (was && was.by !== was.open) d.open = was.open; // a hand opened it, or shut it
  });
  place.querySelectorAll(".scroll").forEach((s, i) => { if (scrolls[i]) s.scrollLeft = scrolls[i]; });
  cautions(place);
  scripted(place);
  marked(place);
  if (!held) return true;
  const again = (held.id && document.getElementById(held.id)) || (heldIn && follow(place, heldIn));
  if (again instanceof HTMLElement) {
    again.focus({ preventScroll: true });
    if (selection && again instanceof HTMLInputElement) again.setSelectionRange(selection[0], selection[1]);
  }
  if (form && top) form.scrollTop = top;
  return true;
}

/**
 * Puts the parts of a job below each other, the gravest first. What has the focus keeps it.
 * @param {string[]} [order] the id of the first place in each; none where the planner has not replied
 */
export function arrange(order = []) {
  const parts = order.flatMap((id) => document.getElementById(id)?.closest(".part") ?? []);
  const focus = document.activeElement;
  for (const [i, part] of parts.entries()) {
    const before = parts[i - 1];
    if (before && before.nextElementSibling !== part) before.after(part);
  }
  if (focus instanceof HTMLElement && focus !== document.activeElement) focus.focus({ preventScroll: true });
}

/**
 * Shows each error beside its field.
 * @param {{path: string, text: string}[]} errors
 * @param {HTMLFormElement} root
 */
export function mark(errors, root) {
  const texts = new Map(errors.map((e) => [e.path, e.text]));
  for (const line of root.querySelectorAll(".field__error[id]")) {
    if (!(line instanceof HTMLElement)) continue;
    const field = line.id.slice(2);
    const text = texts.get(field) ?? "";
    const box = document.getElementById("f-" + field);
    if (line.textContent !== text) line.textContent = text;
    line.hidden = !text;
    if (text) box?.setAttribute("aria-invalid", "true");
    else box?.removeAttribute("aria-invalid");
  }
}
