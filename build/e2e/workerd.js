// The site at the edge: the real runtime on this machine, with the worker as it
// is put there and the site's files beside it.
import { spawn } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { command } from "./site.js";

const runtime = createRequire(import.meta.url)("workerd").default;

/**
 * Builds the worker and runs it.
 * @returns {Promise<{address: string, memory: () => Promise<number>, again: () => Promise<number>, sleep: (seconds: number) => Promise<void>, stop: () => Promise<void>}>}
 *   address ends with "/"; memory is what the runtime holds, in MB,
 *   once it has collected; again starts the runtime afresh and returns how
 *   many milliseconds the first page of a plan takes then; sleep stops it in the
 *   midst of whatever it does, as a machine does that has no time for it
 */
export async function edge() {
  const folder = await mkdtemp(join(tmpdir(), "evenrow-edge-"));
  await command(["edge", "-out", join(folder, "out")]);
  const port = await free();
  const address = `http://127.0.0.1:${port}/`;
  await writeFile(join(folder, "out", "config.capnp"), config(port));
  await writeFile(join(folder, "out", "outer.mjs"), outer);

  let server = await start();

  async function start() {
    const child = spawn(runtime, ["serve", "config.capnp"], { cwd: join(folder, "out"), stdio: ["ignore", "inherit", "pipe"] });
    process.once("exit", () => child.kill()); // nobody else would
    let told = "";
    child.stderr.on("data", (text) => (told += text));
    const end = new Promise((resolve) => child.once("close", resolve));
    let ended = false;
    end.then(() => (ended = true));
    for (;;) {
      if (ended) throw new Error(`the runtime has ended before it was ready:\n${told}`);
      if (await fetch(address + "offline.js", { method: "HEAD" }).then((r) => r.ok, () => false)) break;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    return { child, end };
  }

  async function end() {
    server.child.kill("SIGTERM");
    await server.end;
  }
  return {
    address,
    async memory() {
      await fetch(address + "collect");
      const status = await readFile(`/proc/${server.child.pid}/status`, "utf8");
      return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]) / 1024;
    },
    async again() {
      await end();
      server = await start();
      const before = performance.now();
      await (await fetch(address + "plan")).text();
      return performance.now() - before;
    },
    async sleep(seconds) {
      server.child.kill("SIGSTOP");
      await new Promise((resolve) => setTimeout(resolve, 1000 * seconds));
      server.child.kill("SIGCONT");
    },
    async stop() {
      await end();
      await rm(folder, { recursive: true });
    },
  };
}

/** A port that nobody listens at. @returns {Promise<number>} */
function free() {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => resolve(typeof address === "object" && address ? address.port : 0));
    });
  });
}

/** The worker, and one address more. Here nothing limits the memory, so the runtime would not collect for long. */
const outer = `import worker from "worker.mjs";
export default {
  fetch(request, env, context) {
    if (!request.url.endsWith("/collect")) return worker.fetch(request, env, context);
    gc();
    return new Response();
  },
};
`;

/** What the runtime is told: no network but the one socket. @param {number} port */
function config(port) {
  return `using Workerd = import "/workerd/workerd.capnp";
const config :Workerd.Config = (
  v8Flags = ["--expose-gc"],
  services = [
    (name = "main", worker = .worker),
    (name = "site", disk = "site"),
    (name = "internet", network = (allow = [])),
  ],
  sockets = [(name = "http", address = "127.0.0.1:${port}", http = (), service = "main")],
);
const worker :Workerd.Worker = (
  compatibilityDate = "2026-11-01",
  modules = [
    (name = "outer.mjs", esModule = embed "outer.mjs"),
    (name = "worker.mjs", esModule = embed "worker/worker.mjs"),
    (name = "site.mjs", esModule = embed "worker/site.mjs"),
    (name = "wasm_exec.js", esModule = embed "worker/wasm_exec.js"),
    (name = "app.wasm", wasm = embed "worker/app.wasm"),
  ],
  bindings = [(name = "ASSETS", service = "site")],
);
`;
}
