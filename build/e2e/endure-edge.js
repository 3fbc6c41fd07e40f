// The site at the edge under all that anybody may send, for hours if need be, and
// its memory meanwhile.
//
// node endure-edge.js [REQUESTS [RUN]]: 100,000 by default; RUN has others.
// It fails when an answer is not what it must be, and when the memory is not
// flat: over the last 40,000 requests each quarter's mean within 5 % of the
// others.
import { attack, table } from "./attack.js";
import { edge } from "./workerd.js";

const requests = Number(process.argv[2] ?? 100_000);
const run = Number(process.argv[3] ?? 1);
const watched = Math.min(requests, 40_000);
const samples = 160;
const slack = 0.05;

for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => process.exit(130));
const far = await edge();
try {
  /** @type {number[]} */
  const held = [];
  const begun = Date.now();
  const { lines, faults } = await attack(far, {
    requests,
    run,
    async each(done) {
      if (done % 5000 === 0) console.error(`${done} requests after ${((Date.now() - begun) / 60_000).toFixed(1)} min`);
      const seen = done - (requests - watched);
      if (seen > 0 && seen % Math.floor(watched / samples) === 0) held.push(await far.memory());
    },
  });
  console.log(table(lines));
  for (const fault of faults) console.log(fault);
  const quarters = [0, 1, 2, 3].map((i) => mean(held.slice((i * held.length) / 4, ((i + 1) * held.length) / 4)));
  const apart = (Math.max(...quarters) - Math.min(...quarters)) / Math.min(...quarters);
  console.log(`memory over the last ${watched} requests, by quarters: ${quarters.map((m) => m.toFixed(1)).join(", ")} MB, ${(100 * apart).toFixed(1)} % apart; ${Math.min(...held).toFixed(0)} to ${Math.max(...held).toFixed(0)} MB in ${held.length} samples`);
  const flat = apart <= slack;
  if (!flat) console.log(`the memory is not flat: more than ${100 * slack} % apart`);
  if (faults.length || !flat) process.exitCode = 1;
} finally {
  await far.stop();
}

/** @param {number[]} list */
function mean(list) {
  return list.reduce((sum, x) => sum + x, 0) / list.length;
}
