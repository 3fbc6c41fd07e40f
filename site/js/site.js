// @ts-check
// What the page says of its site, and the one way to markup and script addresses.

export const site = document.documentElement.dataset;

/** The one way to markup and script addresses: those of our own worker and site. */
export const trusted = policy();

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
