// @ts-check
// The site on the device, without a connection, and its newer versions.

import { find } from "./places.js";
import { site, trusted } from "./site.js";

/** Keeps the site on the device, and offers a newer version when one waits. */
export function offline() {
  /** @type {ServiceWorkerRegistration | undefined} */
  let kept;
  let loading = false;
  if ("serviceWorker" in navigator && site.offline && isSecureContext) register(site.offline);

  /** @param {string} address */
  async function register(address) {
    try {
      const { serviceWorker } = navigator;
      const had = serviceWorker.controller;
      const show = () => { find("[data-update]").hidden = !had; };
      const offer = () => kept?.waiting && show();
      serviceWorker.addEventListener("message", ({ data, ports }) => data === "uses" && ports[0].postMessage(uses()));
      // Another page may have loaded the newer version: this one is still of the old.
      serviceWorker.addEventListener("controllerchange", () => (loading ? location.reload() : show()));
      kept = await serviceWorker.register(trusted.createScriptURL(address), { updateViaCache: "none" });
      offer();
      kept.addEventListener("updatefound", () => kept?.installing?.addEventListener("statechange", offer));
      serviceWorker.controller?.postMessage("loaded");
    } catch {
      // Without it the page works as long as there is a connection.
    }
  }
  return {
    load() {
      if (!kept?.waiting) return location.reload(); // it is there already
      loading = true;
      kept.waiting.postMessage("load");
    },
  };
}

/** The files of its version that a page may still ask for, by address. */
function uses() {
  return [site.worker, site.program].map((file) => new URL(file ?? "", document.baseURI).href);
}
