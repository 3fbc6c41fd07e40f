// @ts-check
// Places in the page: how to find one again when its content is new, how to
// lead the reader there, and what belongs into it.

/** The form of the plan; a page that is only read has none, nor a log. @type {HTMLFormElement} */
export const planForm = /** @type {any} */ (document.querySelector("form#plan"));
/** The form of its log. @type {HTMLFormElement} */
export const logForm = /** @type {any} */ (document.querySelector("form#log"));

/**
 * The one element that must be there; a missing one is a fault in the template.
 * @param {string} selector
 * @returns {HTMLElement}
 */
export function find(selector) {
  const found = document.querySelector(selector);
  if (!(found instanceof HTMLElement)) throw new Error(`no ${selector} in the page`);
  return found;
}

/** What the page has to say by itself. @param {string} name */
export const words = (name) => find(`[data-words="${name}"]`).textContent ?? "";

/**
 * Where an element stands in another, for one that has no id.
 * @param {Element} root
 * @param {Element} element
 */
export function path(root, element) {
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
export function follow(root, steps) {
  for (const step of steps) root = root?.children[step];
  return root;
}

/**
 * Opens what an element is folded into, and leads there.
 * @param {Element} place
 */
export function reveal(place) {
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
 * Puts the boxes of the cautions into their places.
 * @param {Element} root
 */
export function cautions(root) {
  for (const place of root.querySelectorAll("[data-caution]")) {
    const text = document.querySelector(`template[data-caution-text="${place.getAttribute("data-caution")}"]`);
    if (text instanceof HTMLTemplateElement) place.replaceChildren(text.content.cloneNode(true));
  }
}

/** Shows what only a script can do. @param {ParentNode} root */
export function scripted(root) {
  for (const button of root.querySelectorAll('[data-do="set-clock"]')) button.removeAttribute("hidden");
}
