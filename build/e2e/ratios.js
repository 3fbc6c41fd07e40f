// How the solver's time compares, all in one run: with a million emitters and
// with a thousand, as WebAssembly and natively, and with a dense matrix. After
// them, how long a search and the draws of chance take in a browser.
//
// Rounds of all take turns and the best time of each counts, so that whatever
// else the machine does meanwhile weighs little. A measurement for people, not
// a test.
import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { launch } from "./chromium.js";
import { root } from "./site.js";

const rounds = 3;
const run = promisify(execFile);
const folder = await mkdtemp(join(tmpdir(), "evenrow-"));
const [native, wasm] = [join(folder, "native"), join(folder, "wasm")];
const inside = { GOOS: "js", GOARCH: "wasm" };
const glue = join((await run("go", ["env", "GOROOT"])).stdout.trim(), "lib/wasm");
// Many short looks: the programs warm up, and one falls into a quiet moment.
const flags = (what, looks = 20) => ["-test.run=^$", `-test.bench=^Benchmark${what}$`, "-test.benchtime=0.1s", `-test.count=${looks}`];

const browser = await launch();
const server = createServer((_, reply) => reply.setHeader("Content-Type", "text/html").end("<!doctype html><title>t</title>"));
try {
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const compile = (out, env, what = "network") => run("go", ["test", "-c", "-o", out, "./wasm/works/" + what], { cwd: root, env: { ...process.env, ...env } });
  await compile(native, {});
  await compile(wasm, inside);
  const best = {};
  const note = (where, text) => {
    for (const [, name, ns] of text.matchAll(/^Benchmark(\w+\/\d+)\S*\s.*?([\d.]+) ns\/emitter/gm)) {
      const key = `${where} ${name}`;
      best[key] = Math.min(best[key] ?? Infinity, Number(ns));
    }
  };
  for (let i = 0; i < rounds; i++) {
    note("native", (await run(native, flags("Solve/1000"))).stdout);
    note("native", (await run(native, flags("Solve/1000000", 3))).stdout);
    note("native", (await run(native, flags("Dense/1000"))).stdout);
    note("node", (await run("node", ["--stack-size=8192", join(glue, "wasm_exec_node.js"), wasm, ...flags("Solve/1000")])).stdout);
    note("Chromium", await inBrowser(wasm, flags("Solve/1000")));
  }
  for (const [name, ns] of Object.entries(best)) console.log(`${name.padEnd(44)} ${ns.toFixed(0).padStart(6)} ns an emitter`);
  const ratio = (what, a, b, aim) => console.log(`${what.padEnd(44)} ${(best[a] / best[b]).toFixed(2).padStart(6)}     (${aim})`);
  ratio("a million emitters, over a thousand", "native Solve/1000000", "native Solve/1000", "at most 2");
  ratio("WebAssembly under node, over native", "node Solve/1000", "native Solve/1000", "at most 2.5");
  ratio("WebAssembly in Chromium, over native", "Chromium Solve/1000", "native Solve/1000", "at most 2.5");
  ratio("a dense matrix, over ours", "native Dense/1000", "native Solve/1000", "at least 200");
  for (const [what, name, where, aim] of [
    ["search of the long field, in Chromium", "Search", "design", 100],
    ["10,000 draws of 400 emitters, in Chromium", "Draws", "chance", 1000],
  ]) {
    await compile(wasm, inside, where);
    const told = await inBrowser(wasm, flags(name, 10));
    const times = [...told.matchAll(/([\d.]+) ns\/op/g)].map(([, ns]) => Number(ns) / 1e6);
    console.log(`${what.padEnd(44)} ${Math.min(...times).toFixed(1).padStart(6)} ms  (at most ${aim})`);
  }
} finally {
  await browser.close();
  server.close();
  await rm(folder, { recursive: true });
}

/** Runs a program of tests in a page. @param {string} wasm @param {string[]} flags @returns {Promise<string>} what it prints */
async function inBrowser(wasm, flags) {
  const page = await browser.newPage();
  let told = "";
  page.on("console", (message) => (told += message.text() + "\n"));
  await page.goto(`http://127.0.0.1:${server.address().port}/`);
  await page.addScriptTag({ content: await readFile(join(glue, "wasm_exec.js"), "utf8") });
  const bytes = (await readFile(wasm)).toString("base64");
  await page.evaluate(
    async (bytes, flags) => {
      const go = new window.Go();
      go.argv = ["test", ...flags];
      const program = Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0));
      await go.run((await WebAssembly.instantiate(program, go.importObject)).instance);
    },
    bytes,
    flags,
  );
  await page.close();
  return told;
}
