// @ts-check
// The boxes of a form and what stands in them.

/**
 * The form as pairs of text.
 * @param {HTMLFormElement} form
 * @returns {string[][]}
 */
export function sentData(form) {
  return Array.from(new FormData(form), ([name, text]) => [name, String(text)]);
}

/** @param {HTMLInputElement | HTMLSelectElement} box */
export function value(box) {
  return box.type === "radio" ? String(/** @type {HTMLInputElement} */ (box).checked) : box.value;
}

/**
 * @param {HTMLInputElement | HTMLSelectElement} box
 * @param {string} text
 */
export function put(box, text) {
  if (box.type === "radio") /** @type {HTMLInputElement} */ (box).checked = text === "true";
  else box.value = text;
}
