// @ts-check
// The worker that runs the planner. The builder puts Go's own wasm_exec.js
// before this text, so that the worker loads no other script.
//
// The first message names the program, or holds it as another worker has
// compiled it, and where there is one the list of texts of the page's language. It
// may come once more, from a page that was not there yet to hear the answer.
// Each one after it is a question, {ask, text}: the name of a function of the
// planner and what it is given. Every message is answered by one, a question also by {begun} before that: who does not even hear this
// waits for a worker that is gone.

/* global Go */

/** @type {Promise<WebAssembly.Module> | undefined} */
let started;

/**
 * @param {string | WebAssembly.Module} program
 * @param {string} sum its SHA-256, in base64
 * @param {string} [list] the address of the texts in another language, from this script; what cannot be had stays English
 * @returns the program, for the worker that may follow this one
 */
async function start(program, sum, list) {
  // @ts-ignore: Go is defined by wasm_exec.js
  const go = new Go();
  // The heap is small and the page asks often: collect less eagerly. Said here,
  // because the package that says it from within costs 200 kB of download.
  go.env = { GOGC: "400" };
  const compiled = typeof program === "string" ? await compile(program, sum) : program;
  const instance = await WebAssembly.instantiate(compiled, go.importObject);
  // The program waits for questions and never ends by itself.
  go.run(instance).finally(() => postMessage({ failed: "it has stopped" }));
  // @ts-ignore: evenrow is set by the program
  if (list) await fetch(list).then(async (r) => r.ok && globalThis.evenrow.speak(await r.text()), () => {});
  return compiled;
}

/**
 * Compiles the program while it comes, and looks whether it is what it should
 * be: a host, or a cache on the way, may give something else, or half of it.
 * @param {string} address
 * @param {string} sum
 */
async function compile(address, sum) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`its file is missing (${response.status})`);
  const copy = response.clone();
  // A server that does not know the type of the file stops the fast way.
  const streamed = WebAssembly.compileStreaming(response).catch(() => undefined);
  const bytes = await copy.arrayBuffer();
  // Only a page that came by a safe way has this; the others still see whether it compiles.
  if (crypto.subtle) {
    const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    if (btoa(String.fromCharCode(...digest)) !== sum) throw new Error("its file is damaged");
  }
  return (await streamed) ?? WebAssembly.compile(bytes);
}

addEventListener("message", async ({ data }) => {
  try {
    if (data.program) {
      started ??= start(data.program, data.sum, data.list);
      postMessage({ ready: true, program: await started });
      return;
    }
    await started;
    postMessage({ begun: true });
    // @ts-ignore: evenrow is set by the program
    postMessage({ reply: globalThis.evenrow[data.ask](data.text) });
  } catch (fault) {
    postMessage({ failed: fault instanceof Error ? fault.message : String(fault) });
  }
});
