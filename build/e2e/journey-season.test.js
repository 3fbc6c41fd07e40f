// In the middle of the season, on a phone: a drain reading in a heat wave, a pump that
// stands still, and the calendar.
import assert from "node:assert/strict";
import ICAL from "ical.js";
import { behaviour } from "./browser.js";
import { explored, inJob, open, text } from "./form.js";
import { phone, setClock, short, solved, Walk } from "./journeys.js";

// RFC 7986 came later than the library: the name of a calendar is text.
ICAL.design.icalendar.property.name = { defaultType: "text" };

/** Opens the example at a time of its own. @param {import("puppeteer-core").Page} page @param {string} address @param {string} at */
async function opened(page, address, at) {
  await setClock(page, at);
  await open(page, address);
  await explored(page);
}

/** A setting that a text begins with: "11 × 7 min" or "12 shots of 8 min". @param {string | undefined} said */
function setting(said) {
  const [, shots, minutes] = /^(\d+) (?:×|shots of) (\d+) min/.exec((said ?? "").replace(/\s/g, " ")) ?? [];
  assert.ok(shots, `no setting: ${said}`);
  return { shots: Number(shots), minutes: Number(minutes), run: Number(shots) * Number(minutes) };
}

behaviour(
  "mid-July on a phone, a heat wave, and 5 % of drain",
  async ({ page, address, firefox }) => {
    await opened(page, address, "2027-07-15T14:10");
    const { plan, timer } = await solved(page);
    const hot = timer.findLast((/** @type {any} */ line) => line.from <= "2027-07-15").set.find((/** @type {any} */ set) => set.sky === "hot").zones[0];
    const walk = new Walk(page, "a drain of 5 % in a heat wave");
    await walk.tap('[data-job="water"]');

    // Today's setting for hot weather is that of the card.
    const today = setting((await walk.seek("#today")).match(/If it is hot, ([^;]+);/)?.[1]);
    assert.deepEqual([today.shots, today.run * 60], [hot.shots.length, hot.given_s]);

    await walk.seek('[id="f-log.1.out"]');
    await walk.type("log.1.day", "14 July");
    await walk.type("log.1.out", "5");
    await walk.pick("log.1.sky", "hot");
    const advice = (await walk.seek("#advice")).replace(/\s+/g, " ");
    // What the plants took up was 95 % of what they were given.
    const wanted = plan.timer["drain-hot"] / 100;
    assert.match(advice, new RegExp(`5 % drained, and ${wanted * 100} % should`));
    assert.ok(0.95 / (1 - wanted) > 1.15);
    assert.match(advice, /A larger change would do it, but not in one day/);
    const [, share, to] = /^Give (\d+) % more on a hot day: (.*)/.exec(advice) ?? [];
    const next = setting(to);
    assert.equal(Number(share), Math.round((next.run / today.run - 1) * 100));
    // No less than 15 % more, and no more than what would do.
    assert.ok(next.run >= 1.15 * today.run - 1 && next.run < (0.95 / (1 - wanted)) * today.run, `${next.run} min for ${today.run}`);
    assert.ok(next.shots <= plan.timer.programmes);
    // The rest of the card begins with that setting.
    const cells = await page.$eval("#advice tbody tr", (row) => [.../** @type {HTMLTableRowElement} */ (row).cells].map((cell) => (cell.textContent ?? "").replace(/\s+/g, " ")));
    assert.match(cells[0], /^15 Jul/);
    assert.equal(setting(cells[2]).run, next.run);
    if (!firefox) walk.tell();
    await short(page);
  },
  phone,
);

behaviour(
  "the pump stands still now, on a phone",
  async ({ page, address, firefox }) => {
    // The morning of which Mend says how long water lasts on any day of that fortnight.
    await opened(page, address, "2027-07-24T09:00");
    const walk = new Walk(page, "the pump has stopped");
    await walk.tap('[data-job="all"]');
    const mend = '.all__jobs a[href="#/mend"]';
    await walk.seek(mend);
    await walk.tap(mend);
    const said = await walk.seek("#stopped");
    const clock = (/** @type {string | undefined} */ time) => Number(time?.split(":")[0]) * 60 + Number(time?.split(":")[1]);
    const [, now, typical, hot] = /If the pump stops now, at ([\d:]+), .* has water that is easy to take up until ([\d:]+) in typical weather, until ([\d:]+) if it is hot and /.exec(said) ?? [];
    assert.equal(now, "09:00");
    const [, anyHot, anyTypical] = /If the pump stops at 9:00 of a hot day in the fortnight from 24 July, .* until ([\d:]+) \(.*?\), and until ([\d:]+) \(/.exec(await text(page, "#outage")) ?? [];
    assert.deepEqual([hot, typical], [anyHot, anyTypical]);
    assert.ok(clock("09:00") < clock(hot) && clock(hot) < clock(typical), said);
    assert.match(said, /give each plant of .* [\d.]+ L every \d+ h/);
    if (!firefox) walk.tell();
    // Water says the same.
    await inJob(page, "water");
    assert.ok((await text(page, "#today")).includes(`until ${hot} if it is hot`));
    await short(page);
  },
  phone,
);

behaviour(
  "the calendar into the phone",
  async ({ page, address, firefox }) => {
    await opened(page, address, "2027-03-20T19:00");
    const walk = new Walk(page, "the calendar");
    await page.evaluate(() => {
      const make = URL.createObjectURL;
      URL.createObjectURL = (blob) => {
        window.e2eSaved = blob;
        return make.call(URL, blob);
      };
    });
    await walk.tap('[data-job="all"]');
    await walk.seek('[data-do="calendar"]');
    await walk.tap('[data-do="calendar"]');
    if (!firefox) walk.tell();
    await page.waitForFunction(() => window.e2eSaved);
    const file = await page.evaluate(async () => ({ type: window.e2eSaved.type, text: await window.e2eSaved.text() }));
    assert.match(file.type, /^text\/calendar\b/);

    const events = new ICAL.Component(ICAL.parse(file.text)).getAllSubcomponents("vevent");
    const told = events.map((event) => ({
      day: event.getFirstPropertyValue("dtstart").toString(),
      what: event.getFirstPropertyValue("summary"),
      how: event.getFirstPropertyValue("description"),
      alarms: event.getAllSubcomponents("valarm").map((alarm) => [alarm.getFirstPropertyValue("action"), alarm.getFirstPropertyValue("trigger").toString()]),
    }));
    const { season, timer } = await solved(page);
    assert.deepEqual(told.map(({ day, what }) => ({ day, what })), season.tasks.map(({ day, what }) => ({ day, what })));
    // Each change of the timer is a task, on the day of its line of the card, and rings the evening before.
    const changes = told.filter(({ what }) => what.startsWith("Set the timer: "));
    const typical = (/** @type {any} */ line) => {
      const { shots } = line.set.find((/** @type {any} */ set) => set.sky === "typical").zones[0];
      return `Set the timer: ${shots.length}\u00a0×\u00a0${shots[0].lasts_s / 60}\u00a0min`;
    };
    for (const { day, what, how, alarms } of changes) {
      assert.equal(what, typical(timer.find((/** @type {any} */ line) => line.from === day)), day);
      assert.match(how, /Typical day: .*Hot day: .*Dull day: /);
      assert.deepEqual(alarms, [["DISPLAY", "-PT6H"]], what);
    }
    // And no line differs from the one before without such a task.
    const all = ["typical", "hot", "dull"].map((sky) => (/** @type {any} */ line) => JSON.stringify(line.set.find((/** @type {any} */ set) => set.sky === sky).zones.map((/** @type {any} */ zone) => zone.shots)));
    const turns = timer.filter((/** @type {any} */ line, /** @type {number} */ i) => i === 0 || all.some((of) => of(line) !== of(timer[i - 1])));
    assert.deepEqual(changes.map(({ day }) => day), turns.map((/** @type {any} */ line) => line.from));
    await short(page);
  },
  phone,
);
