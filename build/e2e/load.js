// How many plan pages a second, and how long each takes: by the program on this
// machine, and by the edge runtime, whose memory is looked at as well.
//
// node load.js [REQUESTS]: how many in each line, 1000 by default, of pages with
// many plants a fifth,
// and to see the memory, five times as many four times. A measurement for people, not a test.
import { Agent, request } from "node:http";
import { serve } from "./site.js";
import { edge } from "./workerd.js";

const requests = Number(process.argv[2] ?? 1000);
const clients = 4;

for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => process.exit(130));
const [near, far] = await Promise.all([serve(), edge()]);
try {
  const page = await (await fetch(near.address + "plan")).text();
  const links = [...new Set(page.match(/plan\?1[\w-]+/g))];
  // The smallest page, and that of the example with 120 plants.
  const small = (await sized(links)).at(0) ?? "plan";
  await load("this machine, 120 plants", near.address + "plan", requests / 5);
  await load("this machine, smallest example", near.address + small);
  const colds = [];
  for (let i = 0; i < 5; i++) colds.push(await far.again());
  colds.sort((a, b) => a - b);
  console.log(`${"edge, first page after the start".padEnd(34)} ${colds[2].toFixed(0)} ms (${colds[0].toFixed(0)} to ${colds[4].toFixed(0)}, of 5)`);
  await load("edge, 120 plants", far.address + "plan", requests / 5);
  for (let i = 0; i < 4; i++) {
    await load(`edge, smallest example, round ${i + 1}`, far.address + small, 5 * requests);
    console.log(`${"".padEnd(34)} the runtime holds ${(await far.memory()).toFixed(0)} MB`);
  }
  await load("edge, a file of 148 kB", far.address);
} finally {
  await near.stop();
  await far.stop();
}

/** Pages of plans by how long they are. @param {string[]} paths */
async function sized(paths) {
  const all = [];
  for (const path of paths) all.push({ path, size: (await (await fetch(near.address + path)).text()).length });
  return all.sort((a, b) => a.size - b.size).map((one) => one.path);
}

/**
 * Asks as fast as answers come, over a few connections, and prints what came of it.
 * @param {string} what
 * @param {string} address
 * @param {number} [count]
 */
async function load(what, address, count = requests) {
  const agent = new Agent({ keepAlive: true, maxSockets: clients });
  const once = () =>
    new Promise((resolve, reject) => {
      const start = performance.now();
      request(address, { agent }, (r) => {
        if (r.statusCode !== 200) reject(new Error(`${r.statusCode} for ${address}`));
        r.resume();
        r.once("end", () => resolve(performance.now() - start));
      }).once("error", reject).end();
    });
  for (let i = 0; i < 20; i++) await once(); // warm
  /** @type {number[]} */
  const times = [];
  let left = count;
  const start = performance.now();
  await Promise.all(Array.from({ length: clients }, async () => {
    while (left-- > 0) times.push(Number(await once()));
  }));
  const seconds = (performance.now() - start) / 1000;
  agent.destroy();
  times.sort((a, b) => a - b);
  const at = (/** @type {number} */ share) => times[Math.min(times.length - 1, Math.floor(times.length * share))].toFixed(1);
  console.log(`${what.padEnd(34)} ${(times.length / seconds).toFixed(0).padStart(5)} a second, p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, of ${times.length}`);
}
