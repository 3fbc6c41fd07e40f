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
