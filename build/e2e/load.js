// How many plan pages a second, and how long each takes: by the program on this
// machine, and by the edge runtime, whose memory is looked at as well. And how
// long what is light waits while others ask for what is heavy.
//
// node load.js [REQUESTS]: how many in each line, 1000 by default, of pages with
// many plants a fifth, of files ten times as many,
// and to see the memory, five times as many four times. A measurement for people, not a test.
import { Agent, request } from "node:http";
import { alike } from "./plans.js";
import { command, serve } from "./site.js";
import { edge } from "./workerd.js";

const requests = Number(process.argv[2] ?? 1000);
const clients = 4;
const crowd = 20;
const rounds = 5; // of those who wait alone and among others

for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => process.exit(130));
const [near, far] = await Promise.all([serve(), edge()]);
try {
  const page = await (await fetch(near.address + "plan")).text();
  const links = [...new Set(page.match(/plan\?1[\w-]+/g))];
  // The smallest page, and that of the example with 120 plants.
  const small = (await sized(links)).at(0) ?? "plan";
  await load("this machine, 120 plants", near.address + "plan", { count: requests / 5 });
  await load("this machine, smallest example", near.address + small);

  // One who waits for each answer, alone and among others who ask for the largest plan there is: in turns, so
  // that whatever else this machine does meets both.
  const largest = near.address + "plan?" + (await command(["link"], JSON.stringify(alike(40, 100)))).trim().replace(/^#/, "");
  /** @type {number[][]} */
  const [plan, planAmong, file, fileAmong] = [[], [], [], []];
  const meanwhile = { answered: 0, refused: 0 };
  const one = { many: 1, count: requests / rounds };
  const files = { many: 1, count: (10 * requests) / rounds };
  for (let i = 0; i < rounds; i++) {
    plan.push(...(await ask(near.address + "plan", one)).times);
    file.push(...(await ask(near.address, files)).times);
    const end = await heavy(largest, meanwhile);
    planAmong.push(...(await ask(near.address + "plan", one)).times);
    fileAmong.push(...(await ask(near.address, files)).times);
    await end();
  }
  tell("one client, 120 plants", plan);
  tell(`the same among ${crowd} heavy plans`, planAmong);
  tell("one client, a file", file);
  tell(`the same among ${crowd} heavy plans`, fileAmong);
  console.log(`${"".padEnd(34)} p99 of the plan ${ratio(p99(planAmong), p99(plan))}, of the file ${ratio(p99(fileAmong), p99(file))}; ${meanwhile.answered} heavy plans were answered meanwhile, ${meanwhile.refused} told to come later`);

  const colds = [];
  for (let i = 0; i < 5; i++) colds.push(await far.again());
  colds.sort((a, b) => a - b);
  console.log(`${"edge, first page after the start".padEnd(34)} ${colds[2].toFixed(0)} ms (${colds[0].toFixed(0)} to ${colds[4].toFixed(0)}, of 5)`);
  await load("edge, 120 plants", far.address + "plan", { count: requests / 5 });
  for (let i = 0; i < 4; i++) {
    await load(`edge, smallest example, round ${i + 1}`, far.address + small, { count: 5 * requests });
    console.log(`${"".padEnd(34)} the runtime holds ${(await far.memory()).toFixed(0)} MB`);
  }
  const sent = await load("edge, a file of 148 kB", far.address, { count: 5 * requests });
  const tag = (await fetch(far.address + "plan", { method: "HEAD" })).headers.get("etag") ?? "";
  const known = await load("edge, a plan that the client has", far.address + "plan", { count: 5 * requests, headers: { "If-None-Match": tag }, status: 304 });
  console.log(`${"".padEnd(34)} the file goes out ${ratio(sent, known)} as often`);
} finally {
  await near.stop();
  await far.stop();
}

/** @param {number} a @param {number} b */
function ratio(a, b) {
  return `${(a / b).toFixed(1)} times`;
}

/** Pages of plans by how long they are. @param {string[]} paths */
async function sized(paths) {
  const all = [];
  for (const path of paths) all.push({ path, size: (await (await fetch(near.address + path)).text()).length });
  return all.sort((a, b) => a.size - b.size).map((one) => one.path);
}

/**
 * Keeps asking for the largest plan there may be, so many at once. Who is told to
 * come later does so. The function that it returns ends this.
 * @param {string} address
 * @param {{answered: number, refused: number}} count what came of it
 */
async function heavy(address, count) {
  const agent = new Agent({ keepAlive: true, maxSockets: crowd });
  let over = false;
  /** The status and after how many seconds to come again; undefined when it was broken off. @returns {Promise<{status?: number, later: number} | undefined>} */
  const once = () =>
    new Promise((resolve) => {
      request(address, { agent, headers: { "Accept-Encoding": "gzip" } }, (r) => {
        r.resume();
        r.once("close", () => resolve(r.complete ? { status: r.statusCode, later: Number(r.headers["retry-after"] ?? 0) } : undefined));
      }).once("error", () => resolve(undefined)).end();
    });
  const all = Array.from({ length: crowd }, async () => {
    while (!over) {
      const r = await once();
      if (over) return;
      if (r?.status !== 200 && r?.status !== 503) throw new Error(`${r?.status} for a heavy plan`);
      if (r.status === 200) count.answered++;
      else count.refused++;
      for (let left = 10 * r.later; left > 0 && !over; left--) await new Promise((resolve) => setTimeout(resolve, 100));
    }
  });
  const ended = Promise.all(all);
  await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, 500))]); // until all of them wait
  return async () => {
    over = true;
    agent.destroy();
    await ended;
  };
}

/**
 * Asks as fast as answers come, over a few connections.
 * @param {string} address
 * @param {{count?: number, many?: number, headers?: Record<string, string>, status?: number}} [how] many is how many connections
 * @returns {Promise<{times: number[], rate: number}>} ms, and answers a second
 */
async function ask(address, { count = requests, many = clients, headers = {}, status = 200 } = {}) {
  const agent = new Agent({ keepAlive: true, maxSockets: many });
  const once = () =>
    new Promise((resolve, reject) => {
      const start = performance.now();
      request(address, { agent, headers }, (r) => {
        if (r.statusCode !== status) reject(new Error(`${r.statusCode} for ${address}`));
        r.resume();
        r.once("end", () => resolve(performance.now() - start));
      }).once("error", reject).end();
    });
  for (let i = 0; i < 20; i++) await once(); // warm
  /** @type {number[]} */
  const times = [];
  let left = count;
  const start = performance.now();
  await Promise.all(Array.from({ length: many }, async () => {
    while (left-- > 0) times.push(Number(await once()));
  }));
  const rate = (1000 * times.length) / (performance.now() - start);
  agent.destroy();
  return { times, rate };
}

/** The same, and prints what came of it. @param {string} what @param {string} address @param {Parameters<typeof ask>[1]} [how] */
async function load(what, address, how) {
  const { times, rate } = await ask(address, how);
  tell(what, times, `${rate.toFixed(0).padStart(5)} a second, `);
  return rate;
}

/** @param {string} what @param {number[]} times @param {string} [rate] */
function tell(what, times, rate = "") {
  console.log(`${what.padEnd(34)} ${rate}p50 ${share(times, 0.5).toFixed(1)} ms, p99 ${p99(times).toFixed(1)} ms, of ${times.length}`);
}

/** @param {number[]} times */
function p99(times) {
  return share(times, 0.99);
}

/** The time within which this share of them came. @param {number[]} times @param {number} of */
function share(times, of) {
  return times.toSorted((a, b) => a - b)[Math.min(times.length - 1, Math.floor(times.length * of))];
}
