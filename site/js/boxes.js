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

/** The form as one text. @param {HTMLFormElement} form */
export function formText(form) {
  return new URLSearchParams(sentData(form)).toString();
}

/**
 * Notes in the form itself that something was typed in a box of it.
 * @param {HTMLFormElement} form
 * @param {string} name of the box
 */
export function touch(form, name) {
  const touched = form.elements.namedItem("touched");
  if (touched instanceof HTMLInputElement && name && !touched.value.split(" ").includes(name)) touched.value += " " + name;
}

/**
 * Whether a form holds something else than it came with: typed before there was
 * a script, or brought back by the browser.
 * @param {HTMLFormElement} form
 */
export function typedEarly(form) {
  const served = form.cloneNode(true);
  if (!(served instanceof HTMLFormElement)) return false;
  served.reset();
  return formText(served) !== formText(form);
}
