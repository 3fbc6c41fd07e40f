// @ts-check
// What this device keeps: the one module that touches the browser's stores. It
// knows nothing of what it keeps, only by which name; each thing has a text.
//
// localStorage, because it writes at once: a page that is left a moment after a
// key, or dies, has kept it. A browser may deny it, it may be full, and it may
// hold what nobody can read: each is told. What could not be kept is held as
// long as the page lives, and is kept as soon as there is room.

/** The number is that of the form of what is kept. */
const prefix = "evenrow-1-";

/** What is not kept yet, by name. @type {Map<string, string>} */
const held = new Map();

/** Names of what cannot be read. @type {Set<string>} */
const spoilt = new Set();

/** Why not all is kept; empty when it is. @type {"" | "denied" | "full"} */
let lost = "";

/** Whether all was forgotten, and the page is about to go. */
let gone = false;

let tell = () => {};

/**
 * Does something with one of the browser's stores. Some throw when they are only
 * named, some are null, and each call may throw.
 * @template T
 * @param {boolean | undefined} own that of this tab alone, which a reload does not empty
 * @param {(store: Storage) => T} what
 * @param {(fault: string) => T} otherwise
 */
function attempt(own, what, otherwise) {
  try {
    return what(own ? sessionStorage : localStorage);
  } catch (fault) {
    return otherwise(String(fault));
  }
}

/** @param {boolean} [own] @returns {string[]} */
const keys = (own) => attempt(own, Object.keys, () => []);

/** @param {string} name @param {boolean} [own] */
const raw = (name, own) => (own ? undefined : held.get(name)) ?? attempt(own, (store) => store.getItem(prefix + name), () => null);

/** What stands in the way of keeping something, cannot be read, or is of a newer version of the page; all of it is left as it is. */
export function troubles() {
  return {
    denied: lost === "denied",
    full: lost === "full",
    unread: spoilt.size > 0,
    newer: keys().some((key) => Number(/^evenrow-(\d+)-/.exec(key)?.[1]) > 1),
  };
}

/** The names of what is kept that begin in this way. @param {string} start @param {boolean} [own] by this tab */
export function names(start, own) {
  const all = [...(own ? [] : held.keys()), ...keys(own).filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length))];
  return [...new Set(all)].filter((name) => name.startsWith(start));
}

/** How long is what is kept under a name. @param {string} name */
export const size = (name) => raw(name)?.length ?? 0;

/** What is kept under a name. @param {string} name @param {boolean} [own] by this tab @returns {any} */
export function get(name, own) {
  const text = raw(name, own);
  if (text === null) return undefined;
  try {
    const found = JSON.parse(text);
    if (typeof found.text === "string") return found;
  } catch {
    // It is no JSON, or null.
  }
  spoilt.add(name);
  return undefined;
}

/**
 * Keeps something under a name, and says whether it is kept. What stands there
 * and cannot be read is put aside, not written over.
 * @param {string} name
 * @param {{text: string, [more: string]: any}} what
 */
export function put(name, what) {
  if (gone) return false;
  if (spoilt.delete(name)) held.set(`aside-${Date.now()}-${name}`, raw(name) ?? "");
  held.set(name, JSON.stringify(what));
  lost = "";
  for (const [name, text] of held) {
    attempt(
      false,
      (store) => {
        store.setItem(prefix + name, text);
        held.delete(name);
      },
      (fault) => void (lost = /quota/i.test(fault) ? "full" : "denied"),
    );
  }
  tell();
  return !held.has(name);
}

/** Keeps something for this tab alone; where that is full, nothing older may stand for it. @param {string} name @param {{text: string, [more: string]: any}} what */
export function note(name, what) {
  if (gone) return;
  attempt(true, (store) => store.setItem(prefix + name, JSON.stringify(what)), () => attempt(true, (store) => store.removeItem(prefix + name), () => {}));
}

/** @param {string} name */
export function remove(name) {
  held.delete(name);
  for (const own of [true, false]) attempt(own, (store) => store.removeItem(prefix + name), () => {});
}

/** Forgets everything, also what an older or a newer page has kept; this page keeps nothing any more. */
export function forgetAll() {
  gone = true;
  held.clear();
  for (const own of [true, false]) {
    for (const key of keys(own)) if (key.startsWith("evenrow-")) attempt(own, (store) => store.removeItem(key), () => {});
  }
}

/** Tries whether anything can be kept; has it told now, and whenever something was to be kept. @param {() => void} telling */
export function watch(telling) {
  tell = telling;
  put("trial", { text: "" });
  remove("trial");
}

/** Runs when another page of the site has changed something; without a name when all of it. @param {(name?: string) => void} hear */
export function listen(hear) {
  addEventListener("storage", ({ key }) => {
    if (key === null) hear();
    else if (key.startsWith(prefix)) hear(key.slice(prefix.length));
  });
}

/** The one text from before names had a version; it goes when it is taken over. @param {boolean} [taken] */
export function former(taken) {
  return attempt(false, (store) => (taken ? void store.removeItem("evenrow-log") : store.getItem("evenrow-log")), () => null) ?? "";
}
