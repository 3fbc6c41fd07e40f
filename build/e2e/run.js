// Runs every test file, or those named, against one server.
import { spawn } from "node:child_process";
import { readdirSync } from "node:fs";
import { serve } from "./site.js";

const here = new URL("./", import.meta.url);
const named = process.argv.slice(2);
const files = named.length ? named : readdirSync(here).filter((name) => name.endsWith(".test.js"));

for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => process.exit(130));
const site = await serve();
const code = await new Promise((resolve) => {
  const node = spawn(process.execPath, ["--test", "--test-concurrency=2", "--test-reporter=spec", ...files], {
    cwd: here,
    stdio: "inherit",
    env: { ...process.env, EVENROW: site.address },
  });
  node.once("error", () => resolve(1));
  node.once("close", (code) => resolve(code ?? 1));
});
await site.stop();
process.exitCode = code;
