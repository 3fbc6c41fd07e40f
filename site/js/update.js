// @ts-check
// The site on the device, without a connection, and its newer versions.

import { find, site, trusted } from "./site.js";

/** Keeps the site on the device, and offers a newer version when one waits. */
export function offline() {
  /** @type {ServiceWorkerRegistration | undefined} */
  let kept;
  let loading = false;
  if ("serviceWorker" in navigator && site.offline && isSecureContext) register(site.offline);

  /** @param {string} address */
  async function register(address) {
    try {
      const had = navigator.serviceWorker.controller;
      kept = await navigator.serviceWorker.register(trusted.createScriptURL(address));
      const offer = () => {
        if (kept?.waiting && had) find("[data-update]").hidden = false;
      };
      offer();
      kept.addEventListener("updatefound", () => kept?.installing?.addEventListener("statechange", offer));
      navigator.serviceWorker.addEventListener("controllerchange", () => loading && location.reload());
    } catch {
      // Without it the page works as long as there is a connection.
    }
  }
  return {
    load() {
      loading = true;
      kept?.waiting?.postMessage("load");
    },
  };
}
