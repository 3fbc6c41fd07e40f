// Thousands of questions to one page, as somebody restless asks them, while the
// worker of its planner is killed at any moment. After each one, what was typed
// stands in the boxes, and the answer is the one that a planner gives which
// nobody kills, or the page says that it has none.
//
// node endure-page.js [QUESTIONS] [SEED] [PAGES]: 10000 by default, 1, and 2 at
// the same time. The seed chooses what is asked and when a worker is killed; what
// the worker was doing then is up to the machine. Broken off, it tells of what was
// asked so far.
//
// What is asked stands in endure-ask.js, and what must be so in endure-judge.js.
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { launch } from "./chromium.js";
import { helped, look, put, restless } from "./endure-ask.js";
import { judge, oracle } from "./endure-judge.js";
import { hurry } from "./hurry.js";
import { serve } from "./site.js";
import { watch } from "./watch.js";

/** @typedef {import("puppeteer-core").Page} Page */

/**
 * @typedef {object} Tally
 * @property {Map<string, {tried: number, said: number, failed: number, seconds: number, most: number}>} kinds of questions; said: without an answer, and the page said so
 * @property {number} tried
 * @property {Record<string, number>} killed by how
 * @property {number} replaced
 * @property {number} fresh compared with a page that was opened anew
 * @property {string[]} failures
 */

/**
 * Asks one page.
 * @param {object} how
 * @param {Page[]} how.pages three that are watched, each in a profile of its own: one to ask, the others to compare with
 * @param {string} how.address of the site
 * @param {number} how.questions
 * @param {number} how.seed
 * @param {(done: number) => Promise<void>} [how.weigh] runs after every tenth of them
 * @param {() => boolean} [how.enough] whether it is to end before that
 * @returns {Promise<Tally>}
 */
export async function endure({ pages: [page, quiet, anew], address, questions, seed, weigh, enough }) {
  /** @type {Tally} */
  const tally = { kinds: new Map(), tried: 0, killed: {}, replaced: 0, fresh: 0, failures: [] };
  await hurry(page, 10);
  await helped(page);
  await helped(anew);
  await anew.evaluateOnNewDocument(() => { window.e2eExplores = true; });
  const planner = await oracle(quiet, address);
  await page.goto(address + "#/answer");
  await page.evaluate(() => window.e2eHelp.rest());
  const examples = await page.$$eval("#examples a", (all) => all.map((a) => a.hash));
  const save = (/** @type {string} */ form) => quiet.evaluate(async (text) => (await window.e2eAsk({ ask: "save", text })).reply.file, form);
  const next = restless(seed, examples, save);
  let now = await look(page);
  const judged = judge(planner, now);
  /** Checks under way. @type {Promise<void>[]} */
  const waits = [];

  for (let n = 0; n < questions && !enough?.(); n++) {
    const was = now;
    const asked = await next(was);
    const { kind, typing, action, kills, early } = asked;
    for (const { how } of kills) tally.killed[how] = (tally.killed[how] ?? 0) + 1;
    const row = tally.kinds.get(kind) ?? { tried: 0, said: 0, failed: 0, seconds: 0, most: 0 };
    tally.kinds.set(kind, row);
    row.tried++;
    tally.tried++;
    const began = performance.now();
    /** @param {string[]} faults @param {boolean} [without] whether there was no answer */
    const tell = (faults, without) => {
      if (!faults.length) return;
      row.failed++;
      tally.failures.push(`question ${n} of seed ${seed}, ${kind}${action && " " + action}, ${JSON.stringify(typing).slice(0, 300)}, killed ${JSON.stringify(kills)}${early ? " before it" : ""}, plan ${was.id}, then ${now.id}${without ? ", without an answer" : ""}: ${faults.join("; ")}`);
    };
    try {
      const { typed, stands } = await put(page, asked);
      now = stands;
      tally.replaced += now.started - (kind === "a reload after a key" ? 1 : was.started);
      const seconds = (performance.now() - began) / 1000;
      row.seconds += seconds;
      row.most = Math.max(row.most, seconds);
      const { without, faults } = judged.after(asked, typed, was, now);
      if (without) row.said++;
      if (waits.length > 20) await waits.shift();
      waits.push(faults.then((list) => tell(list, without)));
      // The same as in a page that is opened anew, and all that takes longer.
      if (n % 40 === 39) {
        tally.fresh++;
        tell(await judged.compare(page, anew, address, now, n % 120 === 79 && !now.errors.length)); // what is told of the last good plan was perhaps not explored
      }
    } catch (fault) {
      tell([`${fault instanceof Error ? fault.message : fault}, at ${page.url().slice(0, 60)}`]);
      await page.goto(address + "#/answer");
      await page.evaluate(() => window.e2eHelp.rest());
      judged.loaded();
      now = await look(page);
    }
    if ((n + 1) % Math.ceil(questions / 10) === 0) await weigh?.(n + 1);
  }
  await Promise.all(waits);
  return tally;
}

/** The tallies of several pages as one table. @param {Tally[]} all */
export function table(all) {
  const kinds = [...new Set(all.flatMap(({ kinds }) => [...kinds.keys()]))].sort();
  const sum = (/** @type {number[]} */ numbers) => numbers.reduce((a, b) => a + b, 0);
  const line = (/** @type {(string | number)[]} */ [name, ...figures]) => String(name).padEnd(30) + figures.map((figure) => String(figure).padStart(10)).join("");
  const lines = [line(["questions", "tried", "no answer", "failed", "mean s", "most s"])];
  for (const kind of [...kinds, "together"]) {
    const rows = all.flatMap(({ kinds }) => [...kinds].filter(([name]) => name === kind || kind === "together").map(([, row]) => row));
    const tried = sum(rows.map((row) => row.tried));
    lines.push(line([kind, tried, sum(rows.map((row) => row.said)), sum(rows.map((row) => row.failed)), (sum(rows.map((row) => row.seconds)) / tried).toFixed(2), Math.max(...rows.map((row) => row.most)).toFixed(2)]));
  }
  for (const how of ["gone", "error", "stopped", "fault"]) lines.push(line([`workers killed: ${how}`, sum(all.map(({ killed }) => killed[how] ?? 0))]));
  lines.push(line(["workers replaced", sum(all.map(({ replaced }) => replaced))]));
  lines.push(line(["compared with a fresh page", sum(all.map(({ fresh }) => fresh))]));
  return lines.join("\n");
}

/** What a page holds once it has been tidied up, and its browser for it. @param {Page} page */
async function held(page) {
  const session = await page.createCDPSession();
  await session.send("HeapProfiler.collectGarbage");
  await session.detach();
  const { JSHeapUsedSize = 0, Nodes, JSEventListeners } = await page.metrics();
  const whole = await page.browser().target().createCDPSession();
  const { processInfo } = await whole.send("SystemInfo.getProcessInfo");
  await whole.detach();
  const renderers = processInfo.filter(({ type }) => type === "renderer").map(({ id }) => id);
  const each = await Promise.all(renderers.map(async (id) => Number(/VmRSS:\s+(\d+)/.exec(await readFile(`/proc/${id}/status`, "utf8").catch(() => ""))?.[1] ?? 0) / 1024));
  return `${Nodes} nodes, ${JSEventListeners} listeners, ${(JSHeapUsedSize / 1e6).toFixed(1)} MB of objects, largest renderer ${Math.max(...each).toFixed(0)} MB`;
}

async function main() {
  const [questions = 10_000, seed = 1, pages = 2] = process.argv.slice(2).map(Number);
  let broken = false;
  for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => { broken = true; }); // and what it has found by then is told
  const site = await serve();
  const open = () => launch({ handleSIGINT: false, handleSIGTERM: false }); // what it is asked is brought to an end first
  const aside = await open();
  /** @type {string[]} */
  const faults = [];
  /** @param {import("puppeteer-core").Browser} browser */
  const another = async (browser) => {
    const page = await (await browser.createBrowserContext()).newPage();
    await page.setViewport({ width: 1280, height: 900 });
    await watch(page, site.address, faults);
    return page;
  };
  console.log(`${questions} questions to ${pages} pages, seed ${seed}`);
  const tallies = await Promise.all(Array.from({ length: pages }, async (_, i) => {
    const browser = await open(); // of its own, so that it is plain what it holds
    const page = await another(browser);
    const tally = await endure({
      pages: [page, await another(aside), await another(aside)],
      address: site.address,
      questions: Math.ceil(questions / pages),
      seed: seed * 1000 + i,
      enough: () => broken,
      weigh: async (done) => console.log(`page ${i + 1}, after ${done} questions: ${await held(page)}`),
    });
    await browser.close();
    return tally;
  }));
  await aside.close();
  await site.stop();
  console.log(table(tallies));
  const failures = tallies.flatMap((tally) => tally.failures);
  for (const failure of failures.slice(0, 50)) console.log(failure);
  for (const fault of faults.slice(0, 20)) console.log(`what no page may do: ${fault}`);
  process.exitCode = failures.length + faults.length ? 1 : 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
