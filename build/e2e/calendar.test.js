// The season as an iCalendar file, read by an independent library for RFC 5545.
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { test } from "node:test";
import ICAL from "ical.js";
import { alike } from "./plans.js";
import { root, shared } from "./site.js";

// RFC 7986 came later than the library: the name of a calendar is text.
ICAL.design.icalendar.property.name = { defaultType: "text" };

/**
 * What the command line writes for a plan.
 * @param {string} command
 * @param {unknown} plan
 * @returns {Promise<string>}
 */
const written = (command, plan) =>
  new Promise((resolve, reject) => {
    const build = execFile("go", ["run", "./build", command], { cwd: root, maxBuffer: 64 << 20 }, (fault, out) => (fault ? reject(fault) : resolve(out)));
    build.stdin?.end(JSON.stringify(plan));
  });

/** @param {string} text */
function events(text) {
  const calendar = new ICAL.Component(ICAL.parse(text));
  assert.equal(calendar.getFirstPropertyValue("version"), "2.0");
  assert.ok(calendar.getFirstPropertyValue("prodid"));
  return { calendar, list: calendar.getAllSubcomponents("vevent") };
}

/** @param {any} event */
const read = (event) => ({
  uid: event.getFirstPropertyValue("uid"),
  first: event.getFirstPropertyValue("dtstart").toString(),
  end: event.getFirstPropertyValue("dtend").toString(),
  summary: event.getFirstPropertyValue("summary"),
  rule: event.getFirstPropertyValue("rrule"),
});

/**
 * Every day on which an event is, by the library's own reckoning.
 * @param {any} event
 */
function days(event) {
  const on = [];
  const next = new ICAL.Event(event).iterator();
  for (let time = next.next(); time; time = next.next()) on.push(time.toString());
  return on;
}

// A name with everything that has to be escaped, and letters of two, three and
// four octets where lines are folded.
const name = "Mühle; Tunnel, \\n „eins“ 🍅🍅🍅🍅🍅🍅🍅";
const plan = (season = {}) => ({
  ...alike(4, 30, name),
  season: { shelter: "heated", ...season }, // else the frost would end what is sown in February
  plantings: [
    { crop: "cucumber", from: 3, times: 2, every: 90 },
    { crop: "own crop 1", from: 4, mode: "sowing", date: "2028-02-20" },
  ],
  crops: [{ of: "own crop 1", name: "Glücksklee; \\ , 🍀".padEnd(40, "é"), plug: 9, emerge: 4 }],
});

test("an independent reader finds every task, whole", async () => {
  const text = await written("calendar", plan());
  assert.ok(!/[^\r]\n/.test(text) && text.endsWith("END:VCALENDAR\r\n"), "lines end in CR LF");
  for (const line of text.split("\r\n")) assert.ok(Buffer.byteLength(line) <= 75, line);
  const { calendar, list } = events(text);
  assert.equal(calendar.getFirstPropertyValue("name"), name);
  const solved = JSON.parse(await written("solve", plan())).season;
  assert.ok(list.length >= 30, `${list.length} events`);
  assert.equal(list.length, solved.tasks.length);
  const uids = new Set();
  list.forEach((event, i) => {
    const got = read(event);
    const task = solved.tasks[i];
    uids.add(got.uid);
    assert.equal(got.summary, task.what);
    assert.equal(got.first, task.day);
    assert.equal(event.getFirstPropertyValue("dtstart").isDate, true);
    const lasts = event.getFirstPropertyValue("dtend").subtractDate(event.getFirstPropertyValue("dtstart"));
    assert.equal(lasts.toSeconds(), task.takes_days * 86400);
    assert.equal(event.getFirstPropertyValue("description"), task.how);
    assert.match(event.getFirstPropertyValue("categories"), /^(Plants|System)$/);
    assert.equal(event.getFirstPropertyValue("sequence"), 0);
    assert.equal(event.getFirstPropertyValue("dtstamp").toString(), `${solved.first}T00:00:00Z`);
    const on = days(event);
    assert.equal(on.length, task.times, task.what);
    assert.equal(on.at(-1), new Date(Date.parse(task.day) + (task.times - 1) * (task.every_days ?? 0) * 86400000).toISOString().slice(0, 10));
  });
  assert.equal(uids.size, list.length, "each event has a name of its own");
  assert.ok(list.some((event) => read(event).summary.includes("Glücksklee; \\ , 🍀ééé")));
  assert.ok(list.some((event) => read(event).first === "2028-02-20"), "sown over a leap day");
});

test("a file of the same plan with other dates moves the same events", async () => {
  // How often the timer is changed hangs on the dates; the changes are counted, and those
  // that both have are the same events.
  const timers = (/** @type {{summary: string}} */ event) => /^Set the timer: /.test(event.summary);
  const before = events(await written("calendar", plan())).list.map(read);
  const after = events(await written("calendar", plan({ "last-frost": "2027-05-02", edition: 1 }))).list;
  const later = new Map(after.map((event) => [read(event).uid, read(event)]));
  const names = (/** @type {typeof before} */ list, /** @type {boolean} */ timer) => list.filter((event) => timers(event) === timer).map((event) => event.uid);
  assert.deepEqual(names([...later.values()], false).sort(), names(before, false).sort());
  const [changes, changed] = [names(before, true), names([...later.values()], true)];
  const both = Math.min(changes.length, changed.length);
  assert.ok(both > 3, `${changes.length} and ${changed.length} changes of the timer`);
  assert.deepEqual(changed.slice(0, both), changes.slice(0, both));
  assert.ok(before.filter((event) => !timers(event) && later.get(event.uid)?.first !== event.first).length > 20);
  for (const event of after) assert.equal(event.getFirstPropertyValue("sequence"), 1);
});

test("the address of the calendar gives the same file, to subscribe to", async () => {
  const link = (await written("link", plan())).trim().replace(/^#/, "");
  const site = await shared();
  try {
    const reply = await fetch(`${site.address}plan.ics?${link}`);
    assert.equal(reply.status, 200);
    assert.match(reply.headers.get("content-type") ?? "", /^text\/calendar\b/);
    const text = await reply.text();
    assert.equal(text, await written("calendar", plan()));
    assert.ok(events(text).list.length >= 30);
    // Whoever is subscribed asks again, and gets it only when it has changed.
    const again = await fetch(`${site.address}plan.ics?${link}`, { headers: { "If-None-Match": reply.headers.get("etag") ?? "" } });
    assert.equal(again.status, 304);
  } finally {
    await site.stop();
  }
});

test("a plan that is wrong gives no file", async () => {
  await assert.rejects(written("calendar", plan({ "first-frost": "2027-02-30" })), /a date that exists/);
});
