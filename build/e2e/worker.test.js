// The worker's script by itself, around a program that can be made to fail.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

const site = {
  paths: ["/plan"],
  headers: [["X-Closed", "yes"]],
  types: { ".html": "text/html", ".js": "text/javascript" },
  assets: "assets/",
  forEver: "for ever",
  askFirst: "ask",
  shell: "the shell",
};

/** The script with its modules put in by hand, and what it starts. */
async function worker() {
  const text = await readFile(new URL("../edge/worker/worker.mjs", import.meta.url), "utf8");
  const own = text.replace(/^import .*$/gm, "");
  assert.equal(text.match(/^import /gm)?.length, 3);
  const given = `const site = ${JSON.stringify(site)}; const program = new WebAssembly.Module(new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0]));`;
  /** @type {any[]} */
  const started = [];
  globalThis.Go = class {
    importObject = {};
    exited = false;
    run(_, context) {
      started.push(this);
      assert.equal(context.shell, site.shell);
      context.binding.handleRequest = async () => {
        if (this.broken) throw new Error("a leak");
        return new Response(`program ${started.length}`);
      };
      return new Promise(() => {});
    }
  };
  const module = await import(`data:text/javascript,${encodeURIComponent(given + own)}#${Math.random()}`);
  const env = { ASSETS: { fetch: async (/** @type {Request} */ request) => stored(new URL(request.url).pathname) } };
  return { started, ask: (path, method = "GET") => module.default.fetch(new Request("https://garden.example" + path, { method }), env) };
}

/** A platform's store of files. @param {string} path */
function stored(path) {
  const files = { "/index.html": "first", "/404.html": "none", "/assets/page-1.js": "export {}" };
  return path in files ? new Response(files[path], { headers: { ETag: '"1"' } }) : new Response("", { status: 404 });
}

test("one program answers all requests", async () => {
  const { started, ask } = await worker();
  for (let i = 0; i < 3; i++) assert.equal(await (await ask("/plan?1")).text(), "program 1");
  assert.equal(started.length, 1);
});

test("a program that has ended, or fails, is followed by another", async () => {
  const { started, ask } = await worker();
  await ask("/plan");
  started[0].exited = true;
  assert.equal(await (await ask("/plan")).text(), "program 2");
  started[1].broken = true;
  const failed = await ask("/plan");
  assert.equal(failed.status, 500);
  assert.match(await failed.text(), /^Evenrow has a fault/);
  assert.equal(failed.headers.get("X-Closed"), "yes");
  assert.equal(await (await ask("/plan")).text(), "program 3");
});

test("everything that is no plan is a file", async () => {
  const { started, ask } = await worker();
  for (const [path, status, body, type, kept] of [
    ["/", 200, "first", "text/html", "ask"],
    ["/assets/page-1.js", 200, "export {}", "text/javascript", "for ever"],
    ["/assets/page-0.js", 404, "none", "text/html", "ask"],
    ["/plans", 404, "none", "text/html", "ask"],
  ]) {
    const answer = await ask(path);
    assert.equal(answer.status, status, String(path));
    assert.equal(await answer.text(), body);
    assert.equal(answer.headers.get("Content-Type"), type);
    assert.equal(answer.headers.get("Cache-Control"), kept);
    assert.equal(answer.headers.get("X-Closed"), "yes");
  }
  assert.equal((await ask("/", "POST")).status, 405);
  assert.equal(started.length, 0);
});
