// @ts-check
// The service worker: it keeps one version of the site on the device, whole,
// and answers from it. The builder puts in the files with the hash of each, and
// the hash over all. A new version waits until the page asks for it, so that
// files of two versions never mix; one whose files are not what they should be
// is never kept, and the version before stays.

/** The SHA-256 of each file, in base64, by its address relative to this one. @type {Record<string, string>} */
// @ts-ignore: put in by the builder
const files = __FILES__;
const prefix = "evenrow-";
const checked = prefix + "whole-"; // the caches of workers before this one may hold anything
const name = checked + "__VERSION__";
/** @type {any} the types of a service worker are not in the page's library */
const self_ = self;
const root = new URL("./", location.href).pathname;

/** What a browser must be told that a file is, whatever the host says of it. @type {Record<string, string>} */
const types = {
  css: "text/css",
  html: "text/html",
  js: "text/javascript",
  svg: "image/svg+xml",
  wasm: "application/wasm",
};

self_.addEventListener("install", (/** @type {any} */ event) => event.waitUntil(install()));
self_.addEventListener("activate", (/** @type {any} */ event) => event.waitUntil(self_.clients.claim()));
self_.addEventListener("message", (/** @type {any} */ event) => {
  if (event.data === "load") self_.skipWaiting();
  if (event.data === "loaded") event.waitUntil(forget());
});
self_.addEventListener("fetch", (/** @type {any} */ event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== location.origin) return;
  event.respondWith(answer(event.request, url));
});

async function install() {
  // A host that goes back to a version, or has no more than another worker for it, gives again what a page may be of.
  const had = await caches.has(name);
  try {
    const cache = await caches.open(name);
    await Promise.all(Object.keys(files).map(async (file) => cache.put(file, await whole(file))));
  } catch (fault) {
    if (!had) await caches.delete(name);
    throw fault;
  }
  // Nobody waits for the end of a version that may have been kept broken.
  if ((await others()).some((key) => !key.startsWith(checked))) self_.skipWaiting();
}

/**
 * A file of this version, as the host or the browser's own cache has it; if
 * that is something else, past every cache.
 * @param {string} file
 * @param {RequestCache[]} [ways]
 */
async function whole(file, ways = ["default", "reload"]) {
  let why;
  for (const cache of ways) {
    try {
      const answer = await fetch(new Request(file, { cache, integrity: "sha256-" + files[file] }));
      if (!answer.ok) throw new Error(`${file} is missing (${answer.status})`);
      const headers = new Headers(answer.headers);
      const type = types[file.split(".")[1]];
      const right = !type || headers.get("Content-Type")?.startsWith(type);
      // No browser opens a page with an answer that was led on from another address.
      if (right && !answer.redirected) return answer;
      if (!right) headers.set("Content-Type", type);
      return new Response(answer.body, { headers });
    } catch (fault) {
      why = fault;
    }
  }
  throw why;
}

/** The caches of other versions, and no one else's. */
async function others() {
  return (await caches.keys()).filter((key) => key.startsWith(prefix) && key !== name);
}

/** Deletes the caches of versions that no page is of any more. */
async function forget() {
  const old = await others();
  if (!old.length || self_.registration.waiting || self_.registration.installing) return;
  const own = await caches.open(name);
  for (const page of await self_.clients.matchAll({ type: "window", includeUncontrolled: true })) {
    /** @type {string[] | undefined} */
    const uses = await new Promise((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = ({ data }) => resolve(data);
      setTimeout(resolve, 3000, undefined);
      page.postMessage("uses", [port2]);
    });
    if (!uses) return; // of whatever version: it may need anything
    for (const address of uses) if (!(await own.match(address))) return;
  }
  for (const key of old) await caches.delete(key);
}

/**
 * @param {Request} request
 * @param {URL} url
 */
async function answer(request, url) {
  const path = url.pathname.endsWith("/") ? url.pathname + "index.html" : url.pathname;
  const file = path.slice(root.length);
  const cache = await caches.open(name);
  if (request.cache === "reload" && file in files) {
    // A page has found what is kept broken.
    try {
      const mended = await whole(file, ["reload"]);
      await cache.put(file, mended.clone());
      return mended;
    } catch {
      // What is kept is all there is.
    }
  }
  const kept = await cache.match(path);
  if (kept) return kept;
  // A page of a version before needs its own files, whose names no others have.
  return (file.startsWith("assets/") && (await caches.match(path))) || fetch(request);
}
