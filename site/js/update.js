// @ts-check
// The site on the device, without a connection, and its newer versions.

import { find } from "./places.js";
import { site, trusted } from "./site.js";

/** @type {ServiceWorkerRegistration | undefined} */
let registered;
let loading = false;

/** Keeps the site on the device, and offers a newer version when one waits. */
export async function offline() {
  if (!("serviceWorker" in navigator && site.offline && isSecureContext)) return;
  try {
    const { serviceWorker } = navigator;
    const had = serviceWorker.controller;
    const show = () => { find("[data-update]").hidden = !had; };
    const offer = () => registered?.waiting && show();
    serviceWorker.addEventListener("message", ({ data, ports }) => data === "uses" && ports[0].postMessage(uses()));
    // Another page may have loaded the newer version: this one is still of the old.
    serviceWorker.addEventListener("controllerchange", () => (loading ? location.reload() : show()));
    registered = await serviceWorker.register(trusted.createScriptURL(site.offline), { updateViaCache: "none" });
    offer();
    registered.addEventListener("updatefound", () => registered?.installing?.addEventListener("statechange", offer));
    serviceWorker.controller?.postMessage("loaded");
  } catch {
    // Without it the page works as long as there is a connection.
  }
}

/** Loads the newer version. */
export function load() {
  if (!registered?.waiting) return location.reload(); // it is there already
  loading = true;
  registered.waiting.postMessage("load");
}

/** The files of its version that a page may still ask for, by address. */
function uses() {
  return [site.worker, site.program].map((file) => new URL(file ?? "", document.baseURI).href);
}
