// A sample of the run in which a page is asked thousands of questions while the
// worker of its planner is killed: see endure-page.js. "npm run endure-page" runs the whole. In Chromium
// alone: Firefox lets nobody read markup past a page's policy, as the page that it is compared with does.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { endure, table } from "./endure-page.js";

behaviour("whoever asks on, while workers are killed, has every key kept, and an answer or a word for it", async ({ page, address, another }) => {
  const tally = await endure({ pages: [page, await another(), await another()], address, questions: 100, seed: 7 });
  const told = table([tally]);
  console.log(told);
  assert.deepEqual(tally.failures, []);
  assert.equal(tally.tried, 100);
  assert.ok(tally.replaced >= 5 && tally.fresh === 2, told);
});
