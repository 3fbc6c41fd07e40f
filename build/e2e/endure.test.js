// A sample of the run in which a page is asked thousands of questions while the
// worker of its planner is killed: see endure-page.js. "npm run endure-page" runs the whole. In Chromium
// alone: Firefox lets nobody read markup past a page's policy, as the page that it is compared with does.
import assert from "node:assert/strict";
import { test } from "node:test";
import { behaviour } from "./browser.js";
import { answers } from "./endure-ask.js";
import { judge } from "./endure-judge.js";
import { endure, table } from "./endure-page.js";

behaviour("whoever asks on, while workers are killed, has every key kept, and an answer or a word for it", async ({ page, address, another }) => {
  const tally = await endure({ pages: [page, await another(), await another()], address, questions: 100, seed: 7 });
  const told = table([tally]);
  console.log(told);
  assert.deepEqual(tally.failures, []);
  assert.equal(tally.tried, 100);
  assert.ok(tally.replaced >= 5 && tally.fresh === 2, told);
});

test("an example may be called one at the foot of a form with a mistake before the first answer, and never after", async () => {
  const texts = Object.fromEntries(answers.map((id) => [id, ""]));
  const plain = { form: "a=1", link: "#1a", id: "x", texts, errors: [], beside: {}, stale: "", always: "Yes", message: "", log: "", kept: "a=1", boxes: [], buttons: [], started: 1 };
  const wrong = { ...plain, form: "a=x", errors: ["A must be a number"], stale: "This is an example.", always: "Below stands an example, not the plan that you opened.", message: "This link cannot be opened." };
  const nothing = { typing: [], action: "", link: "", back: true, drained: "", explores: false, kills: [], doomed: 0, early: false };
  const ask = async ({ ask, text }) => ({ form: ask === "answer" ? text : undefined, link: "#1a", texts, errors: text === "a=x" ? [{ path: "a", text: "A must be a number" }] : [], message: "" });
  const judged = judge(ask, plain);
  const broken = { ...nothing, kind: "a broken link", link: "#1" };
  const typing = { ...nothing, kind: "a box", typing: [{ path: "a", typed: "1", left: true }] };
  assert.deepEqual(await judged.after(broken, "a=x", wrong, wrong).faults, []);
  assert.deepEqual(await judged.after(typing, "a=1", wrong, plain).faults, []);
  assert.deepEqual(await judged.after(broken, "a=x", wrong, wrong).faults, [`the foot says ${wrong.always}`]);
  judged.loaded();
  assert.deepEqual(await judged.after(broken, "a=x", wrong, wrong).faults, []);
});
