// @ts-check
// The site at the edge of a network: plans go to the Go program, everything
// else to the platform's asset store. The builder writes site.mjs beside this
// file, with all that both must agree on.
import "./wasm_exec.js";
// @ts-ignore: the platform compiles it
import program from "./app.wasm";
// @ts-ignore: written by the builder
import site from "./site.mjs";

/** The Go program that answers now; it serves all requests of this isolate. */
let running;

/** Starts a program. It runs until it has nothing to do, and is then ready. */
function start() {
  // @ts-ignore: Go is defined by wasm_exec.js
  const go = new Go();
  const binding = {};
  const instance = new WebAssembly.Instance(program, { ...go.importObject, workers: { ready() {} } });
  go.run(instance, { binding, shell: site.shell, passed }).catch(() => {});
  return { go, binding };
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

/** @param {Request} request */
async function plan(request) {
  // A program that has ended answers nothing more; its promise would not say so
  // to a later request.
  if (!running || running.go.exited) running = start();
  try {
    return await running.binding.handleRequest(request);
  } catch {
    running = undefined;
    return said(500, "Evenrow has a fault. The planner itself works on your own device: open the first page of this site.");
  }
}

/**
 * @param {Request} request
 * @param {{ASSETS: {fetch: (request: Request) => Promise<Response>}}} env
 * @param {URL} url
 */
async function file(request, env, url) {
  if (request.method !== "GET" && request.method !== "HEAD") {
    return said(405, "This site only answers GET and HEAD.", { Allow: "GET, HEAD" });
  }
  let name = url.pathname.slice(1) || "index.html";
  let stored = await ask(name);
  const missing = stored.status === 404;
  if (missing) stored = await ask((name = "404.html"));
  const headers = new Headers(stored.headers);
  headers.set("Content-Type", site.types[name.slice(name.lastIndexOf("."))] ?? "application/octet-stream");
  headers.set("Cache-Control", !missing && name.startsWith(site.assets) ? site.forEver : site.askFirst);
  return closed(new Response(stored.body, { status: missing ? 404 : stored.status, headers }));

  /** @param {string} name */
  function ask(name) {
    const { method, headers } = request;
    return env.ASSETS.fetch(new Request(new URL("/" + name, url), { method, headers }));
  }
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
  /** @param {Request} request */
  async fetch(request, env) {
    const url = new URL(request.url);
    return site.paths.includes(url.pathname) ? plan(request) : file(request, env, url);
  },
};
