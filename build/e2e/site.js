// The real server of the finished site, started for the tests and stopped after them.
import { execFile, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../../", import.meta.url));

/**
 * Builds and serves the site on a free port.
 * @returns {Promise<{address: string, stop: () => Promise<void>}>} address ends with "/"
 */
export async function serve() {
  // A group of its own: go run does not hand a signal on to what it runs.
  const server = spawn("go", ["run", "./build", "serve", "-port", "0"], { cwd: root, detached: true });
  let told = "";
  let ended = false;
  const end = new Promise((resolve) => server.once("close", resolve)).then(() => (ended = true));
  const address = await new Promise((resolve, reject) => {
    const hear = (text) => {
      told += text;
      const found = told.match(/http:\/\/127\.0\.0\.1:\d+\//);
      if (found) resolve(found[0]);
    };
    server.stdout.on("data", hear);
    server.stderr.on("data", hear);
    server.once("error", reject);
    end.then(() => reject(new Error(`the server has ended before it was ready:\n${told}`)));
  });
  const kill = () => {
    if (!ended) process.kill(-server.pid, "SIGTERM");
  };
  process.once("exit", kill); // also when the tests are broken off
  const stop = async () => {
    kill();
    await end;
    process.off("exit", kill);
  };
  return { address, stop };
}

/** The server that the whole run shares, or one for this file when it runs alone. */
export async function shared() {
  const address = process.env.EVENROW;
  return address ? { address, stop: async () => {} } : serve();
}

/**
 * Runs the project's command line, natively, and returns what it prints.
 * @param {string[]} args
 * @param {string} [input]
 * @returns {Promise<string>}
 */
export function command(args, input = "") {
  return new Promise((resolve, reject) => {
    const run = execFile("go", ["run", "./build", ...args], { cwd: root, maxBuffer: 1 << 26 }, (error, out, complaint) =>
      error ? reject(new Error(`${args.join(" ")}: ${error.message}\n${complaint}`)) : resolve(out),
    );
    run.stdin.end(input);
  });
}
