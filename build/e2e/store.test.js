// What the device keeps, by itself: the page's modules on stores that deny, are
// full, or hold what nobody can read.
import assert from "node:assert/strict";
import { test } from "node:test";

/**
 * A store of a browser.
 * @param {Record<string, string>} [holds]
 * @param {() => string} [fails] why nothing can be written: the name of the fault, empty for none
 */
function store(holds = {}, fails = () => "") {
  return new Proxy(holds, {
    get: (all, name) =>
      ({
        getItem: (key) => all[key] ?? null,
        setItem: (key, text) => {
          if (fails()) throw new DOMException("it cannot be written", fails());
          all[key] = text;
        },
        removeItem: (key) => void delete all[key],
      })[name],
  });
}

/** The events that the modules listen to. */
let heard = new EventTarget();
globalThis.addEventListener = (kind, hear) => heard.addEventListener(kind, hear);

/**
 * The modules as a page loads them, with stores of their own.
 * @param {any} local
 * @param {any} [session]
 */
async function page(local, session = store()) {
  heard = new EventTarget();
  for (const [name, what] of Object.entries({ localStorage: local, sessionStorage: session })) {
    Object.defineProperty(globalThis, name, { configurable: true, get: typeof what === "function" ? what : () => what });
  }
  const { readFile } = await import("node:fs/promises");
  const folder = new URL("../../site/js/", import.meta.url);
  const mark = Math.random();
  /** @param {string} name @returns {Promise<string>} */
  const module = async (name) => {
    let text = await readFile(new URL(name, folder), "utf8");
    for (const [whole, neighbour] of text.matchAll(/from "\.\/([a-z]+\.js)"/g)) text = text.replace(whole, `from "${loaded.get(neighbour) ?? (await module(neighbour))}"`);
    const address = `data:text/javascript,${encodeURIComponent(text + `//${mark}`)}`;
    loaded.set(name, address);
    return address;
  };
  /** @type {Map<string, string>} */
  const loaded = new Map();
  const log = await import(await module("log.js"));
  return { store: await import(loaded.get("store.js") ?? ""), plans: await import(loaded.get("plans.js") ?? ""), log };
}

/** A plan, to keep. @param {string} id @param {string} text @param {string} [link] @param {string} [title] */
const plan = (id, text, link = "#1a", title = "Mine") => ({ id, text, link, title, when: Date.now() });

/** Time goes on: plans are told apart by milliseconds. */
const tick = () => new Promise((later) => setTimeout(later, 2));

test("what is kept is there again, and says that it is kept", async () => {
  const local = store();
  const first = await page(local);
  assert.equal(first.store.put("a", { text: "x=1&y=ü" }), true);
  assert.deepEqual(first.store.troubles(), { denied: false, full: false, unread: false, newer: false });
  const again = await page(local);
  assert.deepEqual(again.store.get("a"), { text: "x=1&y=ü" });
  assert.deepEqual(again.store.names("a"), ["a"]);
  assert.equal(again.store.get("b"), undefined);
  assert.equal(again.store.troubles().unread, false);
});

for (const [name, local, why] of [
  ["denied when it is named", () => { throw new DOMException("no", "SecurityError"); }, "denied"],
  ["null", () => null, "denied"],
  ["missing", () => undefined, "denied"],
  ["denied when it is written", store({}, () => "SecurityError"), "denied"],
  ["full", store({}, () => "QuotaExceededError"), "full"],
  ["full, in the words of another browser", store({}, () => "NS_ERROR_DOM_QUOTA_REACHED"), "full"],
]) {
  test(`a store that is ${name} is told, and the page goes on with what it holds`, async () => {
    for (const session of [store(), local]) {
      const { store, plans } = await page(local, session);
      let told = 0;
      store.watch(() => told++);
      assert.equal(told, 1);
      const troubles = { denied: false, full: false, unread: false, newer: false, [why]: true };
      assert.deepEqual(store.troubles(), troubles);
      assert.equal(store.put("a", { text: "x" }), false);
      assert.equal(told, 2);
      assert.deepEqual(store.get("a"), { text: "x" });
      plans.putPlan(plan("p", "name=x"));
      assert.equal(plans.planOf("p").text, "name=x");
      assert.equal(plans.planBy("#1a").id, "p");
      plans.putLog("p", "log.1.out=3");
      assert.equal(plans.logOf("p"), "log.1.out=3");
      plans.forgetPlan("p");
      assert.deepEqual(plans.allPlans(), []);
      assert.equal(plans.logOf("p"), "");
      assert.deepEqual(store.troubles(), troubles);
    }
  });
}

test("what could not be kept is kept as soon as there is room, and an older text does not come back before", async () => {
  let why = "";
  const local = store({}, () => why);
  const { store: kept } = await page(local);
  kept.put("a", { text: "old" });
  why = "QuotaExceededError";
  assert.equal(kept.put("a", { text: "new" }), false);
  assert.deepEqual(kept.get("a"), { text: "new" });
  assert.equal(kept.troubles().full, true);
  why = "";
  assert.equal(kept.put("b", { text: "more" }), true);
  assert.equal(kept.troubles().full, false);
  assert.deepEqual((await page(local)).store.get("a"), { text: "new" });
});

test("what cannot be read is told and left alone, and put aside before something else takes its place", async () => {
  for (const spoilt of ["", "garbage", "null", "5", '"text"', "[]", '{"link":"#1a"}', '{"text":1,"link":"","title":"","when":5}', "\u0000"]) {
    const local = store({ "evenrow-1-plan-p": spoilt, "evenrow-1-log-p": spoilt, "evenrow-1-plan-q": JSON.stringify({ ...plan("q", "name=q", "#1b"), when: 5 }), "evenrow-1-plan": spoilt });
    const { store: kept, plans } = await page(local);
    assert.deepEqual(plans.allPlans().map(({ id }) => id), ["q"], spoilt);
    assert.equal(plans.planOf("p"), undefined);
    assert.equal(plans.logOf("p"), "", spoilt);
    assert.equal(kept.troubles().unread, true, spoilt);
    plans.putLog("p", "log.1.out=3");
    assert.equal(plans.logOf("p"), "log.1.out=3");
    const aside = Object.keys(local).filter((key) => key.startsWith("evenrow-1-aside-"));
    assert.equal(aside.length, 1, spoilt);
    assert.equal(local.getItem(aside[0]), spoilt);
    assert.equal(local.getItem("evenrow-1-plan-p"), spoilt);
  }
});

test("what a newer version of the page has kept is left alone and told", async () => {
  const holds = { "evenrow-2-plan-p": '{"form":"other"}', "other-9-thing": "x" };
  const local = store({ ...holds });
  const { store: kept, plans } = await page(local);
  assert.equal(kept.troubles().newer, true);
  assert.deepEqual(plans.allPlans(), []);
  plans.putPlan(plan("p", "name=x"));
  for (const [key, text] of Object.entries(holds)) assert.equal(local.getItem(key), text);
  assert.equal((await page(store({ "other-9-thing": "x" }))).store.troubles().newer, false);
});

test("plans come by the time when they were worked on, each with its id, link and log", async () => {
  const { plans } = await page(store());
  const [a, b] = [plans.newPlan(), plans.newPlan()];
  assert.notEqual(a, b);
  plans.putPlan(plan(a, "name=a", "#1a", "A"));
  plans.putLog(a, "log.1.out=1");
  await tick();
  plans.putPlan(plan(b, "name=b", "#1b", "B"));
  assert.deepEqual(plans.allPlans().map(({ id, title }) => [id, title]), [[b, "B"], [a, "A"]]);
  await tick();
  plans.takeUp(a);
  assert.deepEqual(plans.allPlans().map(({ id }) => id), [a, b]);
  await tick();
  plans.putPlan(plan(b, "name=bb", "#1c", "B"));
  assert.equal(plans.planBy("#1c").id, b);
  assert.equal(plans.planBy("#1b"), undefined);
  assert.equal(plans.logOf(b), "");
  assert.equal(plans.logOf(a), "log.1.out=1");
  const all = plans.allPlans();
  const back = plans.forgetPlan(a);
  assert.equal(plans.planOf(a), undefined);
  assert.equal(plans.logOf(a), "");
  assert.deepEqual(plans.allPlans().map(({ id }) => id), [b]);
  back();
  assert.deepEqual(plans.allPlans(), all);
  assert.equal(plans.logOf(a), "log.1.out=1");
  plans.forgetPlan(b)();
  assert.deepEqual(plans.allPlans(), all);
  assert.equal(plans.logOf(b), "");
});

test("each tab has a plan as it left it; the device has it as it was typed last", async () => {
  const local = store();
  const [one, two] = [store(), store()];
  const type = async (/** @type {any} */ session, /** @type {string} */ text) => {
    await tick();
    const { plans } = await page(local, session);
    plans.putPlan(plan("p", text), true);
    plans.putPlan(plan("p", text));
  };
  await type(one, "name=one");
  await type(two, "name=two");
  for (const [session, text] of [[one, "name=one"], [two, "name=two"], [store(), "name=two"]]) {
    const { plans } = await page(local, session);
    assert.equal(plans.planOf("p").text, text);
    assert.deepEqual(plans.allPlans().map(({ text }) => text), ["name=two"]);
    assert.equal(plans.allPlans(true)[0]?.text, session === one || session === two ? text : undefined);
  }
  const { plans } = await page(local, one);
  plans.forgetPlan("p");
  assert.equal(plans.planOf("p"), undefined);
});

test("a tab whose own store is full has the plan as the device has it, and no older one", async () => {
  let why = "";
  const local = store();
  const { plans } = await page(local, store({}, () => why));
  for (const text of ["name=old", "name=new"]) {
    plans.putPlan(plan("p", text), true);
    plans.putPlan(plan("p", text));
    why = "QuotaExceededError";
  }
  assert.equal(plans.planOf("p").text, "name=new");
});

test("as many plans stay as there is room for, but always the one that is worked on", async () => {
  const local = store();
  const { plans, store: kept } = await page(local);
  for (let i = 0; i < 60; i++) {
    plans.putLog(`q${i}`, "log.1.out=1");
    plans.putPlan(plan(`q${i}`, "x"));
    await tick();
  }
  assert.equal(plans.allPlans().length, 50);
  assert.equal(plans.allPlans()[0].id, "q59");
  assert.equal(plans.allPlans()[49].id, "q10");
  assert.equal(kept.names("log-").length, 50, "the log of a plan that is gone has stayed");
  for (let i = 0; i < 5; i++) {
    plans.putPlan(plan(`big${i}`, "x".repeat(500_000)));
    await tick();
  }
  assert.deepEqual(plans.allPlans().map(({ id }) => id), ["big4", "big3", "big2"]);
  plans.putPlan(plan("huge", "x".repeat(2_000_000)));
  assert.deepEqual(plans.allPlans().map(({ id }) => id), ["huge"]);
});

test("the one log from before is that of the plan whose log is written next", async () => {
  const local = store({ "evenrow-log": "log.1.day=2027-07-12&log.1.out=40" });
  const { plans } = await page(local);
  assert.equal(plans.logOf("p"), "log.1.day=2027-07-12&log.1.out=40");
  assert.equal(plans.logOf("q"), plans.logOf("p"));
  plans.putLog("p", "log.1.out=40");
  assert.equal(plans.logOf("q"), "");
  assert.equal(local.getItem("evenrow-log"), null);
  const full = store({ "evenrow-log": "log.1.out=40" }, () => "QuotaExceededError");
  (await page(full)).plans.putLog("p", "log.1.out=41");
  assert.equal(full.getItem("evenrow-log"), "log.1.out=40", "it is gone without being kept elsewhere");
});

test("a change by another tab is heard, and nobody else's", async () => {
  const { store: kept } = await page(store());
  const names = [];
  kept.listen((name) => names.push(name));
  for (const key of ["evenrow-1-log-p", "evenrow-2-log-p", "other", null]) heard.dispatchEvent(Object.assign(new Event("storage"), { key }));
  assert.deepEqual(names, ["log-p", undefined]);
});

test("two who write in one log lose no row", async () => {
  const { log } = await page(store());
  /** Rows as "day out", each in its place. @param {string[]} rows */
  const form = (...rows) => {
    const pairs = new URLSearchParams();
    rows.forEach((row, i) => row.split(" ").forEach((typed, k) => typed && pairs.append(`log.${i + 1}.${["day", "out"][k]}`, typed)));
    return pairs.toString();
  };
  for (const [what, base, here, there, both] of [
    ["only here", ["1 10"], ["1 10", "2 20"], ["1 10"], ["1 10", "2 20"]],
    ["only there", ["1 10"], ["1 10"], ["1 10", "2 20"], ["1 10", "2 20"]],
    ["different rows", ["1 10"], ["1 11"], ["1 10", "2 20"], ["1 11", "2 20"]],
    ["one row", ["1 10"], ["1 11"], ["1 12"], ["1 11", "1 12"]],
    ["one row in one way", ["1 10"], ["1 11"], ["1 11"], ["1 11"]],
    ["a new row in one place", ["1 10"], ["1 10", "2 20"], ["1 10", "3 30"], ["1 10", "2 20", "3 30"]],
    ["a new row in one place, and more after it", [], ["2 20"], ["3 30", "4 40"], ["2 20", "4 40", "3 30"]],
    ["taken away here, added there", ["1 1", "2 2", "3 3"], ["2 2", "3 3"], ["1 1", "2 2", "3 3", "4 4"], ["2 2", "3 3", "", "4 4"]],
    ["added here, taken away there", ["1 1", "2 2", "3 3"], ["1 1", "2 2", "3 3", "4 4"], ["2 2", "3 3"], ["2 2", "3 3", "", "4 4"]],
    ["emptied here", ["1 10"], [], ["1 10"], []],
    ["emptied here, changed there", ["1 10"], [], ["1 11"], ["", "1 11"]],
  ]) assert.equal(log.merged(form(...base), form(...here), form(...there)), form(...both), what);
});

test("a plan is taken up as it was typed last, whether in this tab or in another", async () => {
  const local = store();
  const session = store();
  const { plans } = await page(local, session);
  const other = await page(local);
  plans.putPlan(plan("p", "name=old", "#1a"), true);
  plans.putPlan(plan("p", "name=old", "#1a"));
  await tick();
  other.plans.putPlan(plan("p", "name=new", "#1b"));
  await tick();
  plans.putPlan(plan("q", "name=q", "#1q"));
  assert.equal(plans.planOf("p").text, "name=old", "a reload brings the form of another tab");
  assert.equal(plans.planBy("#1a"), undefined, "a plan is found by a link that it has no more");
  assert.equal(plans.planBy("#1b").text, "name=new");
  await tick();
  plans.takeUp("p");
  assert.equal(plans.planOf("p").text, "name=new");
  assert.equal(plans.allPlans()[0].text, "name=new");

  // What only the tab has is newer where the device was full.
  await tick();
  plans.putPlan(plan("p", "name=newer", "#1c"), true);
  await tick();
  plans.takeUp("p");
  assert.equal(plans.allPlans()[0].text, "name=newer");
  // An example that was only looked at goes to no device.
  plans.putPlan(plan("e", "name=e", "#1e"), true);
  plans.takeUp("e");
  assert.deepEqual(plans.allPlans().map(({ id }) => id), ["p", "q"]);
});
