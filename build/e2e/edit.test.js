// A change in the form changes the answer at once.
import assert from "node:assert/strict";
import { behaviour } from "./browser.js";
import { atRest, box, choose, explored, figure, head, number, open, press, see, text, told, type, verdict } from "./form.js";

behaviour("a higher rise leaves less to spare, by as much", async ({ page, address }) => {
  await open(page, address);
  const spare = await head(page, "To spare");
  await type(page, "runs.1.rise", "5.4");
  assert.ok(Math.abs(spare - 5 - (await head(page, "To spare"))) < 0.11);
  await type(page, "runs.1.rise", "28");
  assert.equal(await verdict(page), "No");
  assert.match(await text(page, "#always"), /^No\. .* short at row/);
});

behaviour("a decimal comma is a decimal point", async ({ page, address }) => {
  await open(page, address);
  await type(page, "runs.1.rise", "5.4");
  const point = await told(page);
  await type(page, "runs.1.rise", "1");
  await type(page, "runs.1.rise", "5,4");
  assert.deepEqual(await told(page), point);
  assert.equal(await page.$eval(box("runs.1.rise"), (e) => e.value), "5,4");
  assert.equal(await page.$eval(box("runs.1.rise"), (e) => e.getAttribute("aria-invalid")), null);
});

behaviour("rows and points of the pump's curve count", async ({ page, address }) => {
  await open(page, address);
  await type(page, "rows.2.plants", "60");
  assert.match(await text(page, "#answer .answer__plan"), /4 rows, 150 plants/);
  assert.ok(Math.abs(number(await figure(page, "Flow")) - 5) < 0.01);
  assert.match(await text(page, '[id="s-rows.2"]'), /60 plants/);
  await type(page, "points.1.head", "29.5");
  assert.ok((await head(page, "Weakest emitter")) < 30);
  await press(page, "add-row");
  assert.match(await text(page, "#answer .answer__plan"), /5 rows, 180 plants/);
});

behaviour("typing goes on in the field while answers come", async ({ page, address }) => {
  await open(page, address);
  await see(page, "f-place.length");
  await page.focus(box("place.length"));
  await page.$eval(box("place.length"), (e) => e.setSelectionRange(1, 1));
  for (const letter of "1234") await page.keyboard.type(letter); // "1" + "1234" + "2"
  await atRest(page);
  assert.equal(await page.evaluate(() => document.activeElement?.id), "f-place.length");
  assert.equal(await page.$eval(box("place.length"), (e) => e.value), "112342");
  assert.equal(await page.$eval(box("place.length"), (e) => e.selectionStart), 5);
});

behaviour("a choice that changes the form keeps the focus and what stands in other fields", async ({ page, address }) => {
  await open(page, address);
  await type(page, "name", "Kept");
  await choose(page, "supply.kind", "mains");
  assert.equal(await page.evaluate(() => document.activeElement?.id), "f-supply.kind");
  assert.equal(await page.$(box("points.1.head")), null);
  assert.ok(await page.$(box("supply.static")));
  await choose(page, "supply.kind", "pump-points");
  assert.equal(await page.$eval(box("points.2.head"), (e) => e.value), "29");
  assert.equal(await page.$eval(box("name"), (e) => e.value), "Kept");
});

behaviour("power alone is no answer: the tool says why, and which pump to ask for", async ({ page, address }) => {
  await open(page, address);
  await choose(page, "supply.kind", "pump-power");
  const power = await text(page, "#answer");
  assert.match(power, /Yes, with a pump of at least .* at .*, at most .* with everything shut\./);
  assert.match(power, /Power is flow times head/);
  await choose(page, "supply.kind", "pump-wanted");
  const wanted = await text(page, "#answer");
  assert.match(wanted, /Yes, with a pump of at least .* at .*, at most .* with everything shut\./);
  assert.doesNotMatch(wanted, /Power is flow times head/);
});

behaviour("the answer is read aloud once after the typing rests, however late answers come", async ({ page, address }) => {
  await page.evaluateOnNewDocument(() => {
    const Real = window.Worker;
    window.Worker = class extends Real {
      addEventListener(kind, hear) {
        super.addEventListener(kind, kind === "message" ? (event) => setTimeout(hear, 600, event) : hear);
      }
    };
  });
  await open(page, address);
  await see(page, "f-runs.1.rise");
  await explored(page);
  // The typing is timed by the page itself: a busy machine delays both.
  await page.evaluate((field) => {
    const region = document.querySelector("[data-announce]");
    window.said = [];
    new MutationObserver(() => window.said.push(region.textContent)).observe(region, { childList: true, characterData: true, subtree: true });
    const key = (text) => {
      document.querySelector(field).value = text;
      document.querySelector(field).dispatchEvent(new InputEvent("input", { bubbles: true }));
    };
    key("2");
    setTimeout(key, 1000, "27"); // 400 ms after the answer to "2", 300 before that is said
    setTimeout(key, 1500, "27.5"); // while the answer to "27" is on its way
  }, box("runs.1.rise"));
  await page.waitForFunction(() => window.said.length > 0);
  await new Promise((resolve) => setTimeout(resolve, 1500));
  const said = await page.evaluate(() => window.said);
  assert.equal(said.length, 1, JSON.stringify(said));
  assert.match(said[0], /^No\. /);
  const region = await page.$eval("[data-announce]", (e) => [e.getAttribute("role"), e.getAttribute("aria-live")]);
  assert.deepEqual(region, ["status", "polite"]);
});
