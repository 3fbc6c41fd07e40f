// @ts-check
// The site at the edge of a network: plans go to the Go program, everything
// else to the platform's asset store. The builder writes site.mjs beside this
// file, with all that both must agree on.
import "./wasm_exec.js";
// @ts-ignore: the platform compiles it
import program from "./app.wasm";
// @ts-ignore: written by the builder
import site from "./site.mjs";

/**
 * What the program answers: the status, the headers, a line each, and the body.
 * @typedef {[number, string, Uint8Array | null]} Answer
 */

/**
 * A program that answers; undefined means that it has not finished yet.
 * @typedef {{go: {exited: boolean}, inside: boolean,
 *   ask: (id: number, request: object) => Answer | undefined | null,
 *   step: (id: number, gone: boolean) => Answer | undefined | null}} Program
 */

/** The program that answers now; it serves all requests of this isolate. @type {Program | undefined} */
let running;

/** Requests that the program has not finished, by number: when they were last seen, by the watch. @type {Map<number, number>} */
const under = new Map();

/** How many requests there were. */
let count = 0;

/** After so long a request that is not seen is one whose client has left, in ms on the watch. */
const patience = 5000;

/**
 * A watch that stands while the script gets no time: nobody is seen meanwhile.
 * now is what it shows, and read when it was looked at last.
 */
const watch = { now: 0, read: 0, most: 100 };

/** Looks at the watch. @returns {number} ms */
function look() {
  const at = Date.now();
  watch.now += Math.max(0, Math.min(at - watch.read, watch.most));
  watch.read = at;
  return watch.now;
}

/**
 * How much the program may take up, in percent of what it still needs, before it
 * collects, and the sum above which it collects sooner. A page's memory is of no
 * use once it is sent, so that to collect seldom is to copy little; an isolate
 * has 128 MB, of which the page and the script need some too.
 */
const pace = "400";
const room = "64MiB";

/** Starts a program. It runs until it has nothing to do, and is then ready. @returns {Program} */
function start() {
  // @ts-ignore: Go is defined by wasm_exec.js
  const go = new Go();
  go.env.GOGC = pace;
  go.env.GOMEMLIMIT = room;
  const instance = new WebAssembly.Instance(program, go.importObject);
  /** @type {any} */
  const given = { go, shell: site.shell, version: site.version, inside: false };
  // @ts-ignore: the program takes it from there, at once
  globalThis.evenrow = given;
  go.run(instance).catch(() => {});
  under.clear();
  return given;
}

/**
 * Lets the program work for one request. A platform may break a request off in
 * the middle of this, and nothing is told of it: the program is then in no state
 * to go on, and says so by still being inside.
 * @param {Program} by
 * @param {() => Answer | undefined | null} work
 */
function within(by, work) {
  by.inside = true;
  const answer = work();
  by.inside = false;
  return answer;
}

/**
 * @param {Request} request
 * @param {URL} url
 * @param {string} path its path, clean
 */
async function plan(request, url, path) {
  const asked = {
    method: request.method,
    scheme: url.protocol.slice(0, -1),
    host: url.host,
    path,
    query: url.search.slice(1),
    headers: [...request.headers].map(([name, value]) => name + ":" + value).join("\n"),
    body: await whole(request),
  };
  if (!running || running.go.exited || running.inside) running = start();
  const by = running;
  const id = ++count;
  try {
    let answer = within(by, () => by.ask(id, asked));
    while (answer === undefined) {
      under.set(id, look());
      await new Promise((resolve) => setTimeout(resolve, 0));
      if (by !== running || by.go.exited || by.inside) throw new Error("the program has ended");
      under.set(id, look());
      leave(by);
      answer = within(by, () => by.step(id, request.signal.aborted));
    }
    under.delete(id);
    if (!answer) return fault(); // it was taken for one whose client has left, and nobody else's plan is at fault
    const [status, lines, body] = answer;
    const headers = new Headers();
    for (const line of lines.trimEnd().split("\n")) {
      const at = line.indexOf(":");
      headers.append(line.slice(0, at), line.slice(at + 1));
    }
    return new Response(body && passed(body), { status, headers });
  } catch {
    if (by === running) running = undefined;
    return fault();
  }
}

function fault() {
  return said(500, "Evenrow has a fault. The planner itself works on your own device: open the first page of this site.");
}

/** Ends the work for those whose client has left without a word. @param {Program} by */
function leave(by) {
  for (const [id, seen] of under) {
    if (watch.now - seen > patience) {
      under.delete(id);
      while (within(by, () => by.step(id, true)) === undefined);
    }
  }
}

/**
 * The body of a form, or null. What is longer than a form may be is not read to
 * its end: the program refuses it.
 * @param {Request} request
 */
async function whole(request) {
  if (!request.body) return null;
  const most = site.maxForm + 1;
  if (Number(request.headers.get("Content-Length")) > site.maxForm) return new Uint8Array(most);
  const bytes = new Uint8Array(most);
  let length = 0;
  const reader = request.body.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return bytes.subarray(0, length);
    bytes.set(value.subarray(0, most - length), length);
    length = Math.min(length + value.length, most);
    if (length === most) {
      await reader.cancel();
      return bytes;
    }
  }
}

/**
 * A body of these bytes, whose memory is given back when they have been sent.
 * The collector takes a page for a small thing and would keep thousands.
 * @param {Uint8Array} bytes
 */
function passed(bytes) {
  const { readable, writable } = new FixedLengthStream(bytes.byteLength);
  const writer = writable.getWriter();
  const done = () => bytes.buffer.transfer(0);
  writer.write(bytes).then(() => writer.close()).then(done, done); // also when the reader has left
  return readable;
}

/**
 * @param {Request} request
 * @param {{ASSETS: {fetch: (request: Request) => Promise<Response>}}} env
 * @param {string} path its path, clean
 */
async function file(request, env, path) {
  if (request.method !== "GET" && request.method !== "HEAD") {
    return said(405, "This site only answers GET and HEAD.", { Allow: "GET, HEAD" });
  }
  let name = path.slice(1);
  if (name === "" || name.endsWith("/")) name += "index.html";
  // What the site does not have is not looked for: a store may say more of itself.
  const missing = !site.files.includes(name);
  if (missing) name = "404.html";
  const { method } = request;
  const asked = missing ? undefined : request.headers; // no part and no version of a page that is not there
  // The store has one host. Of an address only the path comes from outside.
  const stored = await env.ASSETS.fetch(new Request("http://assets.local/" + name, { method, headers: asked }));
  const headers = new Headers(stored.headers);
  headers.set("Content-Type", site.types[name.slice(name.lastIndexOf("."))] ?? "application/octet-stream");
  headers.set("Cache-Control", !missing && name.startsWith(site.assets) ? site.forEver : site.askFirst);
  return closed(new Response(stored.body, { status: missing && stored.ok ? 404 : stored.status, headers }));
}

/** An address, or undefined: two hosts in a request come as one that is none. @param {string} text */
function address(text) {
  try {
    return new URL(text);
  } catch {
    return undefined;
  }
}

/**
 * A path without escapes, as the program on a machine reads it: two slashes are
 * one, and dots lead up. A slash at its end stays. Escapes that are none are
 * undefined.
 * @param {string} path
 */
function clean(path) {
  if (/%(?![0-9a-f]{2})/i.test(path)) return undefined;
  let text;
  try {
    text = decodeURIComponent(path);
  } catch {
    return "/" + path; // not in UTF-8, as no name of a file is
  }
  /** @type {string[]} */
  const parts = [];
  for (const part of text.split("/")) {
    if (part === "..") parts.pop();
    else if (part !== "" && part !== ".") parts.push(part);
  }
  return "/" + parts.join("/") + (parts.length && text.endsWith("/") ? "/" : "");
}

/**
 * @param {number} status
 * @param {string} text
 * @param {Record<string, string>} [headers]
 */
function said(status, text, headers) {
  return closed(new Response(text + "\n", { status, headers: { ...headers, "Content-Type": "text/plain; charset=utf-8", "Cache-Control": "no-store" } }));
}

/** @param {Response} response */
function closed(response) {
  for (const [name, value] of site.headers) response.headers.set(name, value);
  return response;
}

export default {
  /**
   * @param {Request} request
   * @param {{ASSETS: {fetch: (request: Request) => Promise<Response>}}} env
   * @param {{waitUntil: (work: Promise<unknown>) => void}} context
   */
  async fetch(request, env, context) {
    const url = address(request.url);
    const path = url && clean(url.pathname);
    if (!url || !path) return said(400, "This is no address: the host or the path is not written as it must be.");
    if (!site.paths.includes(path)) return file(request, env, path);
    const answer = plan(request, url, path);
    context.waitUntil(answer.catch(() => {})); // so that who leaves gives up the turn
    return answer;
  },
};
