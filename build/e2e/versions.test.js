// What a host, or a cache on the way, may give instead of the site: half a
// file, another one, the next version, a broken one. The page says what it can
// not do, keeps what works, and is well again when the host is.
import assert from "node:assert/strict";
import { after, before } from "node:test";
import { behaviour } from "./browser.js";
import { atRest, box, example, explored, fields, job, open, paste, see, text, type, verdict } from "./form.js";
import { change, copied, host, named, version } from "./host.js";
import { shared } from "./site.js";

/** @type {{address: string, stop: () => Promise<void>}} */
let site;
/** @type {import("./host.js").Files} */
let good;
/** The host of the test that runs. @type {Awaited<ReturnType<typeof host>>} */
let own;
before(async () => {
  site = await shared();
  good = await copied(site.address);
});
after(() => site?.stop());

/**
 * A behaviour in both browsers, with a host of its own.
 * @param {string} name
 * @param {Parameters<typeof behaviour>[1]} body
 * @param {RegExp} [expected]
 */
function hosted(name, body, expected) {
  behaviour(
    name,
    async (visit) => {
      own = await host(new Map(good));
      try {
        await body({ ...visit, address: own.address });
      } finally {
        await own.stop();
      }
    },
    // The address of the site is not known before the test runs: requests are looked at by the host.
    { both: true, expected: new RegExp(`request to another origin: http://127.0.0.1|${expected?.source ?? "^$"}`) },
  );
}

/** Nothing is kept on the device. */
const unkept = () => change(own.files, "/offline.js", () => "");
/** @param {string} path @param {Partial<import("./host.js").File>} how */
const spoil = (path, how) => own.files.set(path, { ...own.files.get(path), ...how });
const half = (/** @type {string} */ path) => ({ body: own.files.get(path).body.subarray(0, own.files.get(path).body.length / 2) });
const page200 = () => ({ body: Buffer.from("<!doctype html><title>Sign in</title><p>Sign in to this network."), type: "text/html" });
const cut = () => ({ cut: true });
const heal = () => { own.files = new Map(good); };

/** Which version a page is of. @param {import("puppeteer-core").Page} page */
const of = (page) => page.$eval("html", (e) => "/" + e.dataset.worker);

/** @param {import("puppeteer-core").Page} page */
const damaged = (page) => page.waitForFunction(() => document.querySelector("#message")?.textContent?.includes("cannot start"));

/** Waits until a version is kept, and the page is answered from it. @param {import("puppeteer-core").Page} page */
async function kept(page) {
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === "activated");
}

/** Waits until a newer version waits, and loads it. @param {import("puppeteer-core").Page} page */
async function update(page) {
  await page.waitForSelector("[data-update]:not([hidden])");
  await Promise.all([page.waitForNavigation(), page.$eval('[data-do="update"]', (e) => e.click())]);
  await atRest(page);
}

/** Has the browser look for a newer version, and waits until that is kept or refused. @param {import("puppeteer-core").Page} page */
const looked = (page) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration?.update().catch(() => {});
    while (registration?.installing) await new Promise((resolve) => setTimeout(resolve, 20));
  });

const complaints = /damaged|ERR_|digest|integrity|MIME|404|module|wasm|worker-|Failed|NetworkError|SyntaxError|ServiceWorker|corrupt/i;

for (const [what, file, how, said] of /** @type {[string, string, (path: string) => object, RegExp][]} */ ([
  ["half a program", "planner.wasm", half, /its file is damaged/],
  ["a program whose connection ends", "planner.wasm", cut, /cannot start/],
  ["a page with status 200 in place of the program", "planner.wasm", page200, /its file is damaged/],
  ["a page with status 200 in place of the worker", "worker.js", page200, /cannot start/],
])) {
  hosted(
    `${what} is told in words, and all is well once the host is`,
    async ({ page, address }) => {
      unkept();
      const path = named(good, file);
      spoil(path, how(path));
      await page.goto(address);
      await damaged(page);
      assert.match(await text(page, "#message"), said);
      // The questions can be answered all the same, and stay.
      const asked = () => page.$eval(box("ask.length"), (e) => e.value);
      await page.focus(box("ask.length"));
      await page.keyboard.type("12,5");
      assert.equal(await asked(), "12,5");
      heal();
      unkept();
      await page.reload(); // the browser was told to keep the broken file for ever
      await atRest(page);
      assert.equal(await asked(), "12,5");
      await example(page, "Balcony");
      await paste(page, "name", "well again");
      assert.match(await text(page, "#head"), /^well again/);
    },
    complaints,
  );

  hosted(
    `${what} that came once is asked for again, past every cache`,
    async ({ page, address }) => {
      unkept();
      const path = named(good, file);
      spoil(path, how(path));
      let times = 0;
      own.before = (asked) => {
        if (asked === path && times++ === 1) own.files.set(path, good.get(path));
      };
      await open(page, address);
      assert.equal(await text(page, "#message"), "");
      await paste(page, "name", "well");
      assert.match(await text(page, "#head"), /^well/);
    },
    complaints,
  );

  hosted(
    `${what} is not kept on the device`,
    async ({ page, address, leave }) => {
      const path = named(good, file);
      spoil(path, how(path));
      await page.goto(address + "#/answer");
      await damaged(page);
      await page.waitForFunction(async () => !(await navigator.serviceWorker.getRegistration()) && !(await caches.keys()).length);
      heal();
      await page.reload();
      await atRest(page);
      await kept(page);
      await leave(() => own.stop());
      await page.reload();
      await atRest(page);
      assert.equal(await verdict(page), "Yes");
      assert.equal(await text(page, "#message"), "");
    },
    complaints,
  );
}

hosted(
  "types that a host does not know matter to nobody, here or on the device",
  async ({ page, address, leave }) => {
    for (const path of own.files.keys()) if (/\.(wasm|svg|webmanifest)$/.test(path)) spoil(path, { type: "application/octet-stream" });
    await open(page, address);
    await kept(page);
    await leave(() => own.stop());
    await page.reload();
    await atRest(page);
    assert.equal(await verdict(page), "Yes");
    const type = await page.evaluate(async () => (await fetch(document.documentElement.dataset.program)).headers.get("Content-Type"));
    assert.equal(type, "application/wasm");
  },
);

// What the service worker of earlier versions did: it kept whatever came.
const earlier = (/** @type {string[]} */ files) => `
  const files = ${JSON.stringify(files)};
  const name = "evenrow-0123456789abcdef";
  addEventListener("install", (event) => event.waitUntil(caches.open(name).then((cache) => cache.addAll(files.map((file) => new Request(file, { cache: "reload" }))))));
  addEventListener("activate", (event) => event.waitUntil(clients.claim()));
  addEventListener("message", (event) => event.data === "load" && skipWaiting());
  addEventListener("fetch", (event) => {
    const path = new URL(event.request.url).pathname;
    event.respondWith(caches.open(name).then(async (cache) => (await cache.match(path.endsWith("/") ? path + "index.html" : path)) ?? fetch(event.request)));
  });`;

hosted(
  "what an earlier version kept broken is replaced by loading the page again",
  async ({ page, address, leave }) => {
    const path = named(good, "planner.wasm");
    spoil(path, half(path));
    spoil("/offline.js", { body: Buffer.from(earlier([...good.keys()].map((name) => name.slice(1)).filter((name) => name !== "offline.js"))) });
    await page.goto(address + "#/answer");
    await damaged(page);
    await kept(page);
    heal();
    await page.reload();
    await looked(page); // what the browser does by itself after each load
    await page.reload();
    await atRest(page);
    assert.equal(await text(page, "#message"), "");
    await leave(() => own.stop());
    await page.reload();
    await atRest(page);
    assert.equal(await verdict(page), "Yes");
  },
  complaints,
);

hosted(
  "what breaks on the device is loaded again",
  async ({ page, address, leave }) => {
    await open(page, address);
    await kept(page);
    await page.evaluate(async () => {
      const url = new URL(document.documentElement.dataset.program, location.href).href;
      const cache = await caches.open((await caches.keys())[0]);
      await cache.put(url, new Response(new Uint8Array(1000), { headers: { "Content-Type": "application/wasm" } }));
    });
    await page.reload();
    await atRest(page);
    assert.equal(await text(page, "#message"), "");
    await leave(() => own.stop());
    await page.reload();
    await atRest(page);
    assert.equal(await verdict(page), "Yes");
  },
  complaints,
);

hosted(
  "from A to B, past a broken C, to D",
  async ({ page, address, leave }) => {
    const [b, c, d] = ["B", "C", "D"].map((name) => version(good, name));
    const worker = (/** @type {import("./host.js").Files} */ files) => named(files, "worker.js");
    await open(page, address);
    await kept(page);
    assert.equal(await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.updateViaCache), "none");
    await page.reload();
    await atRest(page);
    assert.equal(await of(page), worker(good));

    own.files = b;
    await page.reload();
    await atRest(page);
    assert.equal(await of(page), worker(good), "a version came unasked");
    // What is typed, right or wrong, goes with it from one to the next.
    await type(page, "place.width", "wide");
    await type(page, "log.1.out", "40");
    const typed = await fields(page);
    await update(page);
    assert.equal(await of(page), worker(b));
    assert.deepEqual(await fields(page), typed);
    assert.match(await text(page, "#errors"), /width across the rows must be a number/);
    await type(page, "place.width", "5");

    own.files = new Map(c);
    spoil(worker(c), half(worker(c)));
    for (let i = 0; i < 3; i++) {
      await page.reload();
      await atRest(page);
      await looked(page);
      assert.equal(await of(page), worker(b));
      assert.equal(await page.$("[data-update]:not([hidden])"), null, "a broken version is offered");
      await paste(page, "name", `still B ${i}`);
      assert.match(await text(page, "#head"), /^still B/);
    }

    own.files = d;
    await page.reload();
    await atRest(page);
    await type(page, "place.width", "wider");
    await update(page);
    assert.equal(await of(page), worker(d));
    assert.equal((await fields(page))["place.width"], "wider");
    assert.match((await fields(page)).name, /^still B/);
    await page.waitForFunction(() => document.getElementById("f-log.1.out")?.value === "40");
    await type(page, "place.width", "5");
    await page.waitForFunction(async () => (await caches.keys()).length === 1);
    await leave(() => own.stop());
    await page.reload();
    await atRest(page);
    assert.equal(await of(page), worker(d));
    assert.equal(await verdict(page), "Yes");
  },
  complaints,
);

hosted(
  "a host that goes back to the version that stands, and gives half of it, takes nothing from the device",
  async ({ page, address, leave }) => {
    await open(page, address);
    await kept(page);
    own.files = version(good, "B");
    await looked(page);
    await page.waitForFunction(async () => (await caches.keys()).length === 2);
    own.files = new Map(good);
    spoil("/guides.html", half("/guides.html"));
    await looked(page);
    assert.ok(own.asked.filter((request) => request === "GET /guides.html").length > 2, "nothing was asked for anew");
    await leave(() => own.stop());
    await page.reload();
    await atRest(page);
    assert.equal(await of(page), named(good, "worker.js"));
    assert.equal(await verdict(page), "Yes");
  },
  complaints,
);

hosted("two tabs: what one loads leaves the other whole, and its button works", async ({ page, beside, address }) => {
  const b = version(good, "B");
  await open(page, address);
  await kept(page);
  await page.reload();
  await atRest(page);
  const other = await beside();
  await other.evaluateOnNewDocument(() => {
    const Real = window.Worker;
    window.Worker = class extends Real {
      constructor(...args) {
        super(...args);
        window.e2eWorker = this;
      }
    };
  });
  await open(other, address);
  own.files = b;
  await looked(page);
  await other.waitForSelector("[data-update]:not([hidden])");
  await page.bringToFront(); // one that is behind draws no frames, and waits for them
  await update(page);
  assert.equal(await of(page), named(b, "worker.js"));

  // The other is of the old version, whose worker the host no longer has.
  await other.bringToFront();
  await explored(other);
  assert.equal(await of(other), named(good, "worker.js"));
  await other.evaluate(() => window.e2eWorker.dispatchEvent(new ErrorEvent("error", { message: "out of memory" })));
  await paste(other, "name", "still of A");
  assert.match(await text(other, "#head"), /^still of A/);
  assert.equal(await text(other, "#message"), "");
  await update(other);
  assert.equal(await of(other), named(b, "worker.js"));
  // Now nobody needs the files of A.
  await other.waitForFunction(async () => (await caches.keys()).length === 1);
});

hosted(
  "a connection that ends while a version is loaded leaves the one before",
  async ({ page, address, leave }) => {
    await open(page, address);
    await kept(page);
    const b = version(good, "B");
    own.files = b;
    const asked = new Promise((resolve) => {
      own.before = (path) => {
        if (path !== named(b, "worker.js")) return;
        resolve(undefined);
        return new Promise(() => {});
      };
    });
    const looking = looked(page);
    await asked;
    await leave(() => own.stop());
    await looking;
    await paste(page, "name", "on the way home");
    assert.match(await text(page, "#head"), /^on the way home/);
    await page.reload();
    await atRest(page);
    assert.equal(await of(page), named(good, "worker.js"));
    assert.equal(await verdict(page), "Yes");
  },
  complaints,
);

hosted(
  "without a connection, at each step, what is typed stays and is answered, or the page says that it cannot",
  async ({ page, address }) => {
    /** @param {string} rise @param {string} name */
    const stands = async (rise, name) => {
      await atRest(page);
      const held = await fields(page);
      assert.deepEqual([held["runs.1.rise"], held.name], [rise, name]);
    };
    // Before anything is kept, and before the planner has come.
    const program = named(good, "planner.wasm");
    own.before = (path) => { own.away ||= path === program; };
    await page.goto(address);
    await damaged(page);
    await page.focus(box("ask.length"));
    await page.keyboard.type("12,5");
    assert.match(await text(page, "#message"), /cannot start.*what you typed stays in the form/);
    assert.equal(await text(page, "#stale"), "", "there is no answer yet that could be to something else");
    own.before = () => {};
    own.away = false;
    await page.reload();
    await atRest(page);
    assert.equal(await job(page), "start");
    assert.equal(await page.$eval(box("ask.length"), (e) => e.value), "12,5");
    await see(page, "/answer");
    await paste(page, "name", "Mine");
    await stands("0.4", "Mine");
    await kept(page);

    // From then on.
    own.away = true;
    await type(page, "runs.1.rise", "1.5");
    assert.match(await text(page, "#head"), /^Mine/);
    await page.reload();
    await stands("1.5", "Mine");
    await type(page, "runs.1.rise", "high");
    await page.reload();
    await stands("high", "Mine");
    assert.match(await text(page, "#stale"), /last good plan/);
    await example(page, "Balcony");
    await page.goto(address + "guides.html");
    await page.goto(address);
    await stands("high", "Mine");

    // While a newer version waits that came before.
    const b = version(good, "B");
    own.files = b;
    own.away = false;
    await looked(page);
    own.away = true;
    await type(page, "runs.1.rise", "higher");
    await update(page);
    assert.equal(await of(page), named(b, "worker.js"));
    await stands("higher", "Mine");
    await type(page, "runs.1.rise", "1");
    assert.match(await text(page, "#head"), /^Mine/);
    assert.equal(await text(page, "#errors") + (await text(page, "#message")), "");
  },
  complaints,
);

hosted("a browser without service workers has the tool all the same", async ({ page, address }) => {
  await page.evaluateOnNewDocument(() => {
    delete Object.getPrototypeOf(navigator).serviceWorker;
  });
  await open(page, address);
  assert.equal(await page.evaluate(() => "serviceWorker" in navigator), false);
  assert.equal(await verdict(page), "Yes");
});
