// The edge runtime answers as the program on this machine does, byte by byte.
import assert from "node:assert/strict";
import { request } from "node:http";
import { connect } from "node:net";
import { after, before, test } from "node:test";
import { gzipSync } from "node:zlib";
import { attack, kinds, wrong } from "./attack.js";
import { shared } from "./site.js";
import { edge } from "./workerd.js";

// A thousand pages: a minute on a machine that does nothing else, three on a busy one.
const limit = { timeout: 600_000 };
const paths = ["plan", "plan.csv", "plan-cuts.csv", "plan-marks.csv", "plan.json", "plan.ics", "plan.svg"];

/** @type {Awaited<ReturnType<typeof edge>>} */
let far;
/** @type {{address: string, stop: () => Promise<void>}} */
let near;
/** The plans of all examples, as the end of an address. @type {string[]} */
let links;

before(async () => {
  [far, near] = await Promise.all([edge(), shared()]);
  const page = (await ask(near, "plan")).body.toString();
  links = [...new Set(page.match(/plan\?1[\w-]+/g))].map((address) => address.slice(5));
  assert.ok(links.length >= 5, "the page of a plan leads to the examples");
}, limit);

after(async () => {
  await far?.stop();
  await near?.stop();
}, limit);

/**
 * Asks one of the two as a client that knows it by the same name.
 * @param {{address: string}} server
 * @param {string} path after the host, without a slash
 * @param {{method?: string, body?: string | Buffer, headers?: Record<string, string>}} [how]
 * @returns {Promise<{status: number, headers: import("node:http").IncomingHttpHeaders, body: Buffer}>}
 */
function ask(server, path, { method = "GET", body, headers } = {}) {
  return new Promise((resolve, reject) => {
    const form = body === undefined ? {} : { "Content-Type": "application/x-www-form-urlencoded" };
    const sent = request(server.address + path, { method, headers: { Host: "garden.example", ...form, ...headers } }, (r) => {
      /** @type {Buffer[]} */
      const parts = [];
      r.on("data", (part) => parts.push(part));
      r.once("end", () => resolve({ status: r.statusCode ?? 0, headers: r.headers, body: Buffer.concat(parts) }));
      r.once("error", reject);
    });
    sent.once("error", reject);
    sent.end(body);
  });
}

/** What a runtime says about the connection, and not about the answer. */
const own = ["connection", "content-length", "date", "keep-alive", "transfer-encoding"];

/**
 * Both give the same answer.
 * @param {string} path
 * @param {Parameters<typeof ask>[2]} [how]
 */
async function same(path, how) {
  const [a, b] = await Promise.all([ask(near, path, how), ask(far, path, how)]);
  // Each tag also names the program that gives it.
  const named = (/** @type {typeof a} */ r) => Object.fromEntries(Object.entries(r.headers).filter(([name]) => ![...own, "etag"].includes(name)));
  assert.equal("etag" in b.headers, "etag" in a.headers, path);
  const what = `${how?.method ?? "GET"} ${path.slice(0, 60)}`;
  assert.equal(b.status, a.status, what);
  assert.deepEqual(named(b), named(a), what);
  assert.ok(a.body.equals(b.body), `${what}: ${a.body.length} bytes here and ${b.body.length} there, which differ`);
  return b;
}

test("the same bytes for every example, at every address", limit, async () => {
  for (const link of ["", ...links]) {
    for (const path of paths) {
      const { status, headers, body } = await same(link ? `${path}?${link}` : path);
      assert.equal(status, 200);
      assert.ok(body.length > (path.includes("-") ? 100 : 500), `${path} holds a plan`);
      if (!link) await same(path, { method: "HEAD" });
      assert.match(String(headers["cache-control"]), link ? /^(private, )?no-cache$/ : /^no-cache$/);
      const again = await ask(far, `${path}?${link}`, { headers: { "If-None-Match": String(headers.etag) } });
      assert.equal(again.status, 304);
      assert.equal(again.body.length, 0);
      assert.equal(again.headers.etag, headers.etag);
    }
  }
});

test("the same answer to a form, good or bad", limit, async () => {
  for (const [body, status, headers] of /** @type {[string | Buffer, number, Record<string, string>?][]} */ ([
    ["", 200],
    ["name=Plot+2&rows.1.plants=7&rows.1.spacing=0,4", 200],
    ["units=us&units-was=metric&place.length=12", 200],
    ["action=add-row&rows.1.plants=7", 200],
    [`place.length=far&good=${links[1]}`, 422],
    ["name=" + "x".repeat(100_000), 413],
    ["user=me&password=secret", 400],
    ["name=%zz", 400],
    [gzipSync("name=Plot"), 415, { "Content-Encoding": "gzip" }],
    [Buffer.from("name=Plot", "utf16le"), 415, { "Content-Type": "application/x-www-form-urlencoded; charset=utf-16" }],
    [Buffer.from("name=Zo\u00eb", "latin1"), 400],
  ])) {
    const { status: got } = await same("plan", { method: "POST", body, headers });
    assert.equal(got, status, String(body).slice(0, 40));
  }
});

test("the same five questions, and the same plan of their answers", limit, async () => {
  for (const path of ["plan?/start", `plan?${links[1]}/start`]) {
    const { status, body } = await same(path);
    assert.equal(status, 200);
    assert.match(body.toString(), /What drives the water\?/);
  }
  const answers = "at=start&units=metric&ask.crop.1=tomato&ask.plants.1=20&ask.medium=bucket&ask.length=9&ask.width=4&ask.supply=mains&ask.distance=";
  assert.equal((await same("plan", { method: "POST", body: answers })).status, 422);
  const { status, body } = await same("plan", { method: "POST", body: answers + "8" });
  assert.equal(status, 200);
  assert.match(body.toString(), /The dates are assumed: last frost on/);
});

test("the same refusals", limit, async () => {
  for (const [path, how, status] of /** @type {[string, Parameters<typeof ask>[2], number][]} */ ([
    ["plan?1zz", {}, 400],
    ["plan.svg?9zz", {}, 400],
    ["plan?1" + "A".repeat(42_000), {}, 414],
    ["plan", { method: "DELETE" }, 405],
    ["plan.csv", { method: "POST", body: "a=b" }, 405],
    ["plan", { method: "POST", body: "{}", headers: { "Content-Type": "application/json" } }, 415],
  ])) {
    assert.equal((await same(path, how)).status, status, path.slice(0, 40));
  }
});

test("files come from the asset store, under the same headers", limit, async () => {
  for (const path of ["", "guides.html", "offline.js", "nowhere.html", "manifest.webmanifest"]) {
    const [a, b] = await Promise.all([ask(near, path), ask(far, path)]);
    assert.equal(b.status, a.status, path);
    assert.ok(a.body.equals(b.body), `${path} differs`);
    for (const [name, value] of Object.entries(a.headers)) {
      // Tags and compression are the store's own business.
      if (![...own, "etag", "vary", "accept-ranges"].includes(name)) assert.equal(b.headers[name], value, `${name} of ${path}`);
    }
  }
  const style = (await ask(far, "")).body.toString().match(/assets\/style[^"]+/)?.[0];
  assert.match(String((await ask(far, String(style))).headers["cache-control"]), /immutable/);
  assert.equal((await ask(far, "index.html", { method: "POST", body: "a=b" })).status, 405);
});

/**
 * Sends a request as it is written, and returns the status and the body.
 * @param {{address: string}} server
 * @param {string} text
 * @returns {Promise<{status: number, body: string}>}
 */
function raw(server, text) {
  return new Promise((resolve, reject) => {
    const { hostname, port } = new URL(server.address);
    const socket = connect(Number(port), hostname, () => socket.write(text, "latin1"));
    let got = "";
    socket.on("data", (part) => (got += part.toString("latin1")));
    socket.once("error", reject);
    socket.once("close", () => {
      const at = got.indexOf("\r\n\r\n");
      resolve({ status: Number(got.split(" ", 2)[1]), body: got.slice(at + 4) });
    });
  });
}

test("a path is the same one however it is written, and leads nowhere else", limit, async () => {
  for (const [path, status] of /** @type {[string, number][]} */ ([
    ["/plan.csv", 200],
    ["/plan%2ecsv", 200],
    ["/%70lan.csv", 200],
    ["//plan.csv", 200],
    ["/x/../plan.csv", 200],
    ["/x%2f..%2fplan.csv", 200],
    ["/plan.csv#%zz", 200], // as a client may not write it; the program on this machine refuses
    ["/plan/", 404],
    ["/plan%00", 404],
    ["/PLAN", 404],
    ["/%ff", 404],
    ["/%zz", 400],
    ["//", 200],
    ["//guides.html", 200],
    ["/guides.html/", 404],
    ["//evil.example/plan", 404],
    ["//evil.example/guides.html", 404],
    ["///evil.example/", 404],
    ["/\\evil.example/", 404],
    ["/%2f%2fevil.example/", 404],
    ["/assets", 404],
    ["/http://evil.example/", 404],
  ])) {
    const [a, b] = await Promise.all([near, far].map((server) => raw(server, `GET ${path} HTTP/1.1\r\nHost: garden.example\r\nConnection: close\r\n\r\n`)));
    assert.equal(b.status, status, path);
    if (!path.includes("#")) assert.equal(a.status, status, `${path} on this machine`);
    assert.doesNotMatch(b.body, /"type":/, `${path} lists a folder`);
  }
});

test("requests that are none are refused in words", limit, async () => {
  const rest = "Host: garden.example\r\nConnection: close\r\n\r\n";
  for (const [text, status] of /** @type {[string, number][]} */ ([
    [`GET /plan.csv HTTP/1.1\r\nHost: a.example\r\n${rest}`, 400],
    [`GET /plan.csv HTTP/1.1\r\nHost: a b<">\r\nConnection: close\r\n\r\n`, 400],
    [`GET http://evil.example/plan.csv HTTP/1.1\r\n${rest}`, 200],
    [`TRACE /plan HTTP/1.1\r\n${rest}`, 405],
    [`OPTIONS /plan HTTP/1.1\r\n${rest}`, 405],
    [`PROPFIND /guides.html HTTP/1.1\r\n${rest}`, 405],
  ])) {
    const [a, b] = await Promise.all([near, far].map((server) => raw(server, text)));
    assert.equal(a.status, status, `${text} on this machine`);
    assert.equal(b.status, status, text);
    assert.ok(b.body.length > 20, `${text} is refused without a word`);
  }
  // A tunnel is refused too; at the edge by the runtime itself, which never asks the script.
  for (const [server, status] of /** @type {const} */ ([[near, 405], [far, 500]])) {
    assert.equal((await raw(server, `CONNECT garden.example:443 HTTP/1.1\r\n${rest}`)).status, status);
  }
});

test("one program answers many at once, forms that arrive slowly among them", limit, async () => {
  const want = await ask(near, `plan?${links[0]}`);
  const slow = new Promise((resolve, reject) => {
    const sent = request(far.address + "plan", { method: "POST", headers: { Host: "garden.example", "Content-Type": "application/x-www-form-urlencoded" } }, (r) => {
      r.resume();
      r.once("end", () => resolve(r.statusCode));
    });
    sent.once("error", reject);
    sent.write("name=slow");
    setTimeout(() => sent.end("ly"), 400);
  });
  const many = Array.from({ length: 40 }, () => ask(far, `plan?${links[0]}`));
  for (const { body } of await Promise.all(many)) assert.ok(body.equals(want.body), "all get the same page");
  assert.equal(await slow, 200);
});

test("a runtime that gets no time for a while forgets nobody who waits", limit, async () => {
  const form = Array.from({ length: 20 }, (_, i) => `rows.${i + 1}.plants=200`).join("&");
  const heavy = Array.from({ length: 2 }, () => ask(far, `plan?${form}`));
  await ask(far, "plan?" + links[0]); // they have begun, and make way
  await far.sleep(6);
  const page = await ask(far, "plan?" + links[0]);
  assert.equal(page.status, 200, page.body.toString().slice(0, 200));
  for (const { status, body } of await Promise.all(heavy)) assert.equal(status, 200, body.toString().slice(0, 200));
});

test("whatever is sent, the answer is what it must be", limit, async () => {
  const { lines, faults } = await attack(far, { requests: 500, plans: 6 });
  assert.deepEqual(faults, []);
  assert.equal(lines.size, kinds.length, "each kind is among them");
});

test("an answer that is not what it must be is seen", () => {
  const page = { status: 200, headers: { "content-type": "text/html", "content-security-policy": "none" }, length: 9 };
  const asked = { kind: "a plan as a page", path: "/plan?1", status: [200] };
  const body = "<!doctype html><p title='>'>3 m</p></html>";
  for (const [why, t, a] of /** @type {[string, object, object][]} */ ([
    ["", {}, {}],
    ["status 500", {}, { status: 500 }],
    ["status 404", {}, { status: 404 }],
    ["503 without", {}, { status: 503 }],
    ["", {}, { status: 503, headers: { "retry-after": "3" } }],
    ["no policy", {}, { headers: { "content-type": "text/html" } }],
    ["a header that was typed", {}, { headers: { ...page.headers, "set-cookie": "a=b" } }],
    ["not a word", {}, { length: 0 }],
    ["9 bytes where none", { method: "HEAD" }, {}],
    ["9 bytes where none", { status: [304] }, { status: 304 }],
    ["NaN in the answer", {}, { body: body.replace("3", "NaN") }],
    ["+Inf in the answer", {}, { body: body.replace("3", "+Inf") }],
    ["a text became markup", {}, { body: body.replace("3", "<zq>") }],
    ["a text became markup", {}, { body: body.replace("<p ", '<p class="a>b" zq=1 ') }],
    ["", {}, { body: body.replace("<p ", '<p class=" zq=1" ') }],
    ["not whole", {}, { body: body.slice(0, -3) }],
    ["not whole", { path: "/plan.ics?1" }, { body: "BEGIN:VCALENDAR\r\n" }],
  ])) {
    const told = wrong({ ...asked, ...t }, { body, ...page, ...a });
    assert.ok(why ? told.startsWith(why) : !told, `${told || "nothing"} instead of ${why || "nothing"}`);
  }
});

test("a page's memory is given back", limit, async () => {
  const many = async (/** @type {number} */ times) => {
    for (let i = 0; i < times; i += 4) await Promise.all([0, 1, 2, 3].map(async () => (await fetch(far.address + "plan")).arrayBuffer()));
    return far.memory();
  };
  const size = (await (await fetch(far.address + "plan")).arrayBuffer()).byteLength;
  const before = await many(200);
  const grown = ((await many(600)) - before) * 2 ** 20;
  // Kept, the pages alone would be all of it; a third leaves the runtime room for its own.
  assert.ok(grown < (600 * size) / 3, `600 pages of ${size} bytes, and the runtime grew by ${grown}`);
});
