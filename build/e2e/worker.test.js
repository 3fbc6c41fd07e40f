// The worker's script by itself, around a program that can be made to fail.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";

const site = {
  paths: ["/plan"],
  files: ["index.html", "404.html", "assets/page-1.js"],
  headers: [["X-Closed", "yes"]],
  types: { ".html": "text/html", ".js": "text/javascript" },
  assets: "assets/",
  forEver: "for ever",
  askFirst: "ask",
  shell: "the shell",
  version: "1",
  maxForm: 100,
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
    /** @type {Record<string, string>} */
    env = {};
    exited = false;
    /** How many steps an answer takes, and what was asked and ended. */
    steps = 0;
    /** @type {any[]} */
    asked = [];
    /** @type {number[]} */
    ended = [];
    run() {
      const given = globalThis.evenrow;
      started.push(this);
      this.paced = { ...this.env }; // a program reads it when it starts
      assert.equal(given.shell, site.shell);
      assert.equal(given.version, site.version);
      const left = new Map();
      const number = started.length;
      given.ask = (id, request) => {
        this.asked.push(request);
        if (this.broken) throw new Error("a leak");
        left.set(id, this.steps);
        return go(id);
      };
      given.step = (id, gone) => {
        if (gone) {
          this.ended.push(id);
          left.set(id, 0);
        } else left.set(id, left.get(id) - 1);
        return go(id);
      };
      const go = (id) => (left.get(id) > 0 ? undefined : [200, "X-By:program\n", new TextEncoder().encode(`program ${number}`)]);
      return new Promise(() => {});
    }
  };
  // What the platform has and this node may not.
  globalThis.FixedLengthStream ??= class extends TransformStream {
    constructor() {
      super();
    }
  };
  ArrayBuffer.prototype.transfer ??= function () {
    return this;
  };
  const module = await import(`data:text/javascript,${encodeURIComponent(given + own)}#${Math.random()}`);
  /** @type {string[]} */
  const fetched = [];
  const env = {
    ASSETS: {
      fetch: async (/** @type {Request} */ request) => {
        fetched.push(request.url);
        return stored(new URL(request.url).pathname);
      },
    },
  };
  /** @type {Promise<unknown>[]} */
  const kept = [];
  const context = { waitUntil: (work) => kept.push(work) };
  return { started, fetched, kept, ask: (path, init = {}) => module.default.fetch(new Request("https://garden.example" + path, init), env, context) };
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

test("a program collects seldom, and within the memory of an isolate", async () => {
  const { started, ask } = await worker();
  await ask("/plan");
  assert.ok(Number(started[0].paced.GOGC) > 100, "no less often than a program that is told nothing");
  assert.ok(parseInt(started[0].paced.GOMEMLIMIT) <= 64, "half of the 128 MB that an isolate has");
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
  assert.equal((await ask("/", { method: "POST" })).status, 405);
  assert.equal(started.length, 0);
});

test("no path becomes another host", async () => {
  const { fetched, ask } = await worker();
  for (const path of ["//evil.example/", "//evil.example/index.html", "///evil.example", "/\\evil.example/", "/%2f%2fevil.example/", "/%5cevil.example/", "/https:%2f%2fevil.example/", "/a%2f..%2f..%2f..%2fb", "/%2e%2e/%2e%2e/b"]) {
    assert.equal((await ask(path)).status, 404, path);
  }
  assert.equal(fetched.length, 9);
  for (const url of fetched) assert.equal(url, "http://assets.local/404.html");
});

test("a path is read without its escapes", async () => {
  const { started, ask } = await worker();
  for (const path of ["/plan", "/%70lan", "//plan", "/./plan", "/x/%2e%2e/plan", "/x%2f..%2fplan"]) {
    assert.equal((await ask(path + "?1a%20b")).headers.get("X-By"), "program", path);
  }
  for (const { path, query, host } of started[0].asked) assert.deepEqual([path, query, host], ["/plan", "1a%20b", "garden.example"]);
  for (const path of ["/plan/", "/PLAN", "/plan%00", "/%ff"]) assert.equal((await ask(path)).status, 404, path);
  const odd = await ask("/%zz");
  assert.equal(odd.status, 400);
  assert.match(await odd.text(), /not written as it must be/);
});

test("a form is handed over whole, and one that is too long in part", async () => {
  const { started, ask } = await worker();
  for (const [sent, length] of [["name=Plot", 9], ["x".repeat(100), 100], ["x".repeat(101), 101], ["x".repeat(5000), 101]]) {
    const chunks = new ReadableStream({
      start(to) {
        for (let i = 0; i < sent.length; i += 7) to.enqueue(new TextEncoder().encode(sent.slice(i, i + 7)));
        to.close();
      },
    });
    await ask("/plan", { method: "POST", body: chunks, duplex: "half" });
    assert.equal(started[0].asked.at(-1).body.length, length);
  }
  await ask("/plan");
  assert.equal(started[0].asked.at(-1).body, null);
});

test("a program that has not finished is asked again, and a file is sent in between", async () => {
  const { started, ask, kept } = await worker();
  await ask("/plan");
  started[0].steps = 20;
  let done = false;
  const slow = ask("/plan").then((answer) => {
    done = true;
    return answer.text();
  });
  await new Promise((resolve) => setTimeout(resolve, 0));
  assert.equal((await ask("/")).status, 200);
  assert.equal(done, false, "the file waited for the plan");
  assert.equal(await slow, "program 1");
  assert.equal(kept.length, 2, "the platform is asked to let the work end");
});

test("who has left is worked for no more", async () => {
  const { started, ask } = await worker();
  await ask("/plan");
  started[0].steps = 1e9;
  const leave = new AbortController();
  const left = ask("/plan", { signal: leave.signal });
  await new Promise((resolve) => setTimeout(resolve, 20));
  leave.abort();
  await left;
  assert.deepEqual(started[0].ended, [2]);
});

test("a program that was broken off in the middle is followed by another", async () => {
  const { started, ask } = await worker();
  await ask("/plan");
  globalThis.evenrow.inside = true; // as it stays when the platform ends a request there
  assert.equal(await (await ask("/plan")).text(), "program 2");
  assert.equal(started.length, 2);
});
