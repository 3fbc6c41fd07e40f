// @ts-check
// The worker that runs the planner. The builder puts Go's own wasm_exec.js
// before this text, so that the worker loads no other script.
//
// The first message names the program, or holds its bytes. Each one after it
// is a question, {ask, text}: the name of a function of the planner and what
// it is given. Every message is answered by one.

/* global Go */

/** @type {Promise<unknown> | undefined} */
let started;

/** @param {string | ArrayBuffer} program */
async function start(program) {
  // @ts-ignore: Go is defined by wasm_exec.js
  const go = new Go();
  // The heap is small and the page asks often: collect less eagerly. Said here,
  // because the package that says it from within costs 200 kB of download.
  go.env = { GOGC: "400" };
  const { instance } = await instantiate(program, go.importObject);
  // The program waits for questions and never ends by itself.
  go.run(instance).finally(() => postMessage({ failed: "it has stopped" }));
}

/**
 * @param {string | ArrayBuffer} program
 * @param {WebAssembly.Imports} imports
 */
async function instantiate(program, imports) {
  if (typeof program !== "string") return WebAssembly.instantiate(program, imports);
  try {
    return await WebAssembly.instantiateStreaming(fetch(program), imports);
  } catch {
    // A server that does not know the type of the file stops the fast way.
    const response = await fetch(program);
    if (!response.ok) throw new Error(`its file is missing (${response.status})`);
    return WebAssembly.instantiate(await response.arrayBuffer(), imports);
  }
}

addEventListener("message", async ({ data }) => {
  try {
    if (!started) {
      started = start(data.program);
      await started;
      postMessage({ ready: true });
      return;
    }
    await started;
    // @ts-ignore: evenrow is set by the program
    postMessage({ reply: globalThis.evenrow[data.ask](data.text) });
  } catch (fault) {
    postMessage({ failed: fault instanceof Error ? fault.message : String(fault) });
  }
});
