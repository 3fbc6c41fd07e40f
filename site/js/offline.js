// @ts-check
// The service worker: it keeps one version of the site on the device, whole,
// and answers from it. The builder puts in the list of files and the hash over
// them. A new version waits until the page asks for it, so that files of two
// versions never mix.

/** @type {string[]} addresses, relative to this file */
// @ts-ignore: put in by the builder
const files = __FILES__;
const prefix = "evenrow-";
const name = prefix + "__VERSION__";
/** @type {any} the types of a service worker are not in the page's library */
const self_ = self;

self_.addEventListener("install", (/** @type {any} */ event) => {
  event.waitUntil(
    caches.open(name).then((cache) => cache.addAll(files.map((file) => new Request(file, { cache: "reload" })))),
  );
});

self_.addEventListener("activate", (/** @type {any} */ event) => {
  event.waitUntil(forget().then(() => self_.clients.claim()));
});

/** Deletes the caches of older versions, and no one else's. */
async function forget() {
  for (const key of await caches.keys()) {
    if (key.startsWith(prefix) && key !== name) await caches.delete(key);
  }
}

self_.addEventListener("message", (/** @type {any} */ event) => {
  if (event.data === "load") self_.skipWaiting();
});

self_.addEventListener("fetch", (/** @type {any} */ event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== location.origin) return;
  event.respondWith(answer(event.request, url));
});

/**
 * @param {Request} request
 * @param {URL} url
 */
async function answer(request, url) {
  const cache = await caches.open(name);
  const path = url.pathname.endsWith("/") ? url.pathname + "index.html" : url.pathname;
  return (await cache.match(path)) ?? fetch(request);
}
