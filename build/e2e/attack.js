// What anybody may send to the site at the edge, at random, and what must be so
// of every answer. The number of a request makes it again.
import { Agent, request } from "node:http";
import { connect } from "node:net";
import { gzipSync } from "node:zlib";

/**
 * One request, and which statuses it may have.
 * @typedef {object} Try
 * @property {string} kind as the table calls it
 * @property {number[]} status those that are right
 * @property {string} [path] after the host, with its slash
 * @property {string} [method]
 * @property {Record<string, string>} [headers]
 * @property {string | Buffer} [body]
 * @property {string} [raw] the request as it is written, instead of all this
 * @property {number} [leave] after so many ms the client goes away
 */

/** @typedef {{status: number, headers: Record<string, string | string[] | undefined>, body: string, length: number}} Answer */

/** What came of the requests of one kind. @typedef {{tried: number, answers: Map<number, number>, failed: number}} Line */

/** Paths of a plan, and what the body of each begins and ends with. */
const forms = {
  "/plan": [/^<!doctype html>/i, /<\/html>\s*$/],
  "/plan.csv": [/^\S/, /\n$/],
  "/plan.json": [/^\{/, /\}\s*$/],
  "/plan.ics": [/^BEGIN:VCALENDAR\r\n/, /END:VCALENDAR\r\n$/],
  "/plan.svg": [/^<svg /, /<\/svg>\s*$/],
};
const paths = Object.keys(forms);

/** No tag and no attribute of ours has this name: where it stands as one, a text has become markup. */
const mark = "zq";
const born = new RegExp(`<${mark}|<[a-z][\\w-]*(\\s+[\\w:.-]+(="[^"]*")?)*\\s+${mark}\\b`);
const texts = [
  `<${mark} a="1">`, `"><${mark}>`, `' ${mark}='1`, `" ${mark}="1`, `</title><${mark}>`, `]]><${mark}>`, `[[title]]`, `{{.}}`, `\u202e${mark}\u0000`,
  `&lt;${mark}>`, `${mark}\r\nSet-Cookie: a=b`, "x".repeat(61), "\u{1F336}\uFE0F żółw", "=1+1", "%", "",
];
const numbers = [
  "0", "-0", "1", "2", "3.5", "0,5", "1 000", "1/2", "-1", "1e3", "1e300", "-1e300", "1e999", "1e-300", "0.000001", "99999999999", "nan", "0x10", "٣", "12 m", "1.2.3", " 7 ", "--1", "",
];

/**
 * How often each kind is sent, and what is drawn for it. Pages and forms take the
 * most by far, files and what is known already next to nothing.
 * @type {[number, (d: Draw, w: World) => Try][]}
 */
export const kinds = [
  [22, ({ one, in: chance }, { files }) => {
    const method = chance(5) ? "HEAD" : "GET";
    return { kind: "a file", path: one(files), method, status: [200], headers: chance(3) ? { "Accept-Encoding": one(["br", "gzip", "*;q=0", "zstd, br;q=0.1"]) } : {} };
  }],
  [4, ({ one, word }) => ({ kind: "a file that is not there", path: one(["/", "/assets/", "/plan/", "/plans-", "/plan.", "/.", "/index.html/"]) + "nowhere-" + word(8), status: [404] })],
  [9, ({ one, in: chance }, { known }) => {
    const { path, link, tag } = one(known);
    const line = one([tag, `W/${tag}`, `"other", ${tag}`, `"other",W/${tag} , "more"`, "*"]);
    return { kind: "a plan that the client has", path: `${path}?${link}`, method: chance(4) ? "HEAD" : "GET", headers: { "If-None-Match": line }, status: [304] };
  }],
  [4, ({ one, word }, { known }) => {
    const { path, link, tag } = one(known);
    const line = one([`"${word(32)}"`, tag.slice(0, -2) + '"', tag.replaceAll('"', ""), `"${tag}`, '""', "W/", ",,,", '"' + "x".repeat(4000) + '"', `'${tag}'`].filter((line) => line !== tag));
    return { kind: "a plan that the client has no more", path: `${path}?${link}`, headers: { "If-None-Match": line }, status: [200] };
  }],
  [7, ({ one, in: chance }, { links }) => ({ kind: "a plan as a page", path: `/plan?${one(links)}${chance(4) ? "&utm=1" : ""}`, method: chance(6) ? "HEAD" : "GET", status: [200] })],
  [5, ({ one }, { links }) => ({ kind: "a plan as a table", path: `/plan.csv?${one(links)}`, status: [200] })],
  [7, ({ one }, { links }) => ({ kind: "a plan as a file", path: `/plan.json?${one(links)}`, status: [200] })],
  [5, ({ one }, { links }) => ({ kind: "a plan as a calendar", path: `/plan.ics?${one(links)}`, status: [200] })],
  [5, ({ one }, { links }) => ({ kind: "a plan as a picture", path: `/plan.svg?${one(links)}`, status: [200] })],
  [8, (d, { links }) => {
    const { one, below, word } = d;
    const link = one(links);
    const at = 1 + below(link.length - 1);
    const [bad, status] = one(/** @type {[string, number[]][]} */ ([
      [link.slice(0, at) + word(1) + link.slice(at + 1), [200, 400]], // a letter more or less may be another plan
      [link.slice(0, at) + link.slice(at + 1), [200, 400]],
      [link.slice(0, at), [200, 400]],
      ["1" + word(1 + below(60)), [200, 400]],
      ["9" + link.slice(1), [400]],
      ["1%00" + link.slice(1), [400]],
      ["1" + "A".repeat(42_000), [414]],
      ["1<" + mark + ">", [400]],
      ["?" + link, [400]],
      ["%", [400]],
    ]));
    return { kind: "a link that may be broken", path: `${one(paths)}?${bad}`, status };
  }],
  [4, (d, w) => ({ kind: "a form in the address", path: "/plan?" + d.typed(w.fields, 12), status: [200, 422] })],
  [6, (d, w) => ({ kind: "a form", method: "POST", path: "/plan", body: d.typed(w.fields), headers: plain, status: [200, 422] })],
  [6, ({ one, below, word }, w) => {
    const body = encode(w.fields);
    const [sent, headers, status] = one(/** @type {[string | Buffer, Record<string, string>, number[]][]} */ ([
      ["name=" + "x".repeat(99_000 + below(200_000)), plain, [413]],
      ["user=me&password=" + word(9), plain, [400]],
      ["name=%" + one(["zz", "", "4", "%"]), plain, [400]],
      [Buffer.from("name=Zo\u00eb", "latin1"), plain, [400]],
      [gzipSync(body), { ...plain, "Content-Encoding": one(["gzip", "br", "x"]) }, [415]],
      [Buffer.from("name=Plot", "utf16le"), { "Content-Type": plain["Content-Type"] + "; charset=utf-16" }, [415]],
      [body, { "Content-Type": one(["application/json", "text/plain", "multipart/form-data; boundary=x", ";", "a/b/c"]) }, [415]],
      [Buffer.from(word(500) + "=%" + word(2), "latin1"), { "Content-Type": "application/octet-stream" }, [415]],
      ["&".repeat(1 + below(60_000)), plain, [200, 400]],
      ["rows.99999999999.plants=1&rows.-1.plants=2&rows..plants=3&name=a&name=b", plain, [200, 422]],
    ]));
    return { kind: "a form that is none", method: "POST", path: "/plan", body: sent, headers, status };
  }],
  [5, ({ one, below }) => {
    const parts = ["plan", "plan.csv", "..", ".", "%2e%2e", "%2f", "%5c", "%00", "%ff", "%zz", "assets", "evil.example", ";a=b", "%2e", "http:", "", "plan%2ecsv", "\u00e9", "~", "*", "x".repeat(300)];
    const path = Array.from({ length: 1 + below(5) }, () => "/" + one(parts)).join("") + one(["", "", "/", "?", "?%", "#"]);
    return { kind: "a strange path", raw: `GET ${path} HTTP/1.1\r\nHost: garden.example\r\nConnection: close\r\n\r\n`, status: [200, 400, 404] };
  }],
  [4, ({ one, word }, { known }) => {
    const { path, link } = one(known);
    const [line, status] = one(/** @type {[string, number[]][]} */ ([
      ["Range: bytes=0-9", [200]],
      ["Accept: " + "a/b,".repeat(3000), [200]],
      ["Cookie: a=" + word(2000), [200]],
      ["X-Forwarded-Host: evil.example", [200]],
      ["Host: b.example", [400]],
      ["Upgrade: websocket\r\nSec-WebSocket-Key: x", [200]],
      ["If-None-Match: \r\nIf-None-Match: ,", [200]],
      ["If-Modified-Since: yesterday", [200]],
      ["Transfer-Encoding: nonsense", [200, 400, 501]],
      ["Content-Length: -5", [400]],
      ["X-\xff\xfe: \xff", [200, 400]],
      [": no name", [200, 400]],
      ["no colon", [400]],
      ["Expect: 100-continue", [200]],
    ]));
    return { kind: "strange headers", raw: `GET ${path}?${link} HTTP/1.1\r\nHost: garden.example\r\nConnection: close\r\n${line}\r\n\r\n`, status };
  }],
  [3, ({ one }) => {
    const [line, status] = one(/** @type {[string, number[]][]} */ ([
      ["BLAH", [400]], ["GET /plan HTTP/9.9", [400]], ["GET /plan", [400]], [" GET /plan HTTP/1.1", [400]], ["GET /plan? HTTP/1.1 x", [400]],
      ["TRACE /plan HTTP/1.1", [405]], ["OPTIONS /plan HTTP/1.1", [405]], ["PROPFIND /guides.html HTTP/1.1", [405]], ["OPTIONS * HTTP/1.1", [400, 404, 405]],
      ["DELETE /plan.csv HTTP/1.1", [405]], ["PUT /index.html HTTP/1.1", [405]], ["PATCH /plan HTTP/1.1", [405]],
      ["GET http://evil.example/plan.json HTTP/1.1", [200]], ["GET //evil.example/plan HTTP/1.1", [404]], ["\x16\x03\x01\x02", [400]],
    ]));
    return { kind: "what is no request, or none of ours", raw: `${line}\r\nHost: garden.example\r\nConnection: close\r\n\r\n`, status };
  }],
  [3, (d, { links, fields }) => {
    const half = d.in(3) && d.typed(fields);
    const leave = d.below(40);
    if (!half) return { kind: "a client that goes away", path: `${d.one(["/plan", "/plan.svg", "/plan.csv"])}?${d.one(links)}`, leave, status: [] };
    return { kind: "a client that goes away", leave, status: [], raw: `POST /plan HTTP/1.1\r\nHost: garden.example\r\nContent-Type: ${plain["Content-Type"]}\r\nContent-Length: ${half.length + 9}\r\n\r\n${half}` };
  }],
];

const plain = { "Content-Type": "application/x-www-form-urlencoded" };

/** Fields as a form sends them. @param {Map<string, string>} fields */
const encode = (fields) => new URLSearchParams([...fields]).toString();

/** What is drawn for one request: always the same for its number. */
class Draw {
  #state;

  /** @param {number} run @param {number} number */
  constructor(run, number) {
    this.#state = (Math.imul(run, 0x9e3779b1) ^ Math.imul(number + 1, 0x85ebca6b)) >>> 0;
    for (const name of ["below", "in", "one", "word", "typed"]) this[name] = this[name].bind(this);
  }

  /** A whole number from 0, below n. @param {number} n */
  below(n) {
    // Mulberry32.
    let t = (this.#state = (this.#state + 0x6d2b79f5) | 0);
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) % n;
  }

  /** True once in n times. @param {number} n */
  in(n) {
    return this.below(n) === 0;
  }

  /** @template T @param {readonly T[]} list @returns {T} */
  one(list) {
    return list[this.below(list.length)];
  }

  /** Letters of a link. @param {number} length */
  word(length) {
    const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    return Array.from({ length }, () => letters[this.below(64)]).join("");
  }

  /**
   * A form in which some fields were typed anew.
   * @param {Map<string, string>} fields
   * @param {number} [most] how many are sent at most
   */
  typed(fields, most = fields.size) {
    let all = [...fields];
    const wild = 1 + this.below(this.in(4) ? 20 : 3);
    for (let i = 0; i < wild; i++) {
      const at = this.below(all.length);
      const [name, was] = all[at];
      const scaled = String(Number((Number(was) * (0.5 + this.below(150) / 100)).toPrecision(3)));
      const value = Number(was) > 0 && Number.isFinite(Number(was)) && !this.in(4) ? (was.includes(".") ? scaled : String(Math.ceil(Number(scaled)))) : this.one(this.in(2) ? texts : numbers);
      all[at] = [this.in(30) ? name.replace(/\d+/, this.one(["0", "99", "4000", "-1", "x"])) : name, value];
      if (most < fields.size) all = [all[at], ...all.slice(0, at), ...all.slice(at + 1)];
    }
    if (this.in(6)) all.push(["action", this.one(["add-row", "copy-row.1", "remove-row.1", "remove-row.99", "add-point", "add-run", "copy-crop.1", "nonsense", mark])]);
    return encode(new Map(all.slice(0, most)));
  }
}

/** What requests are made of. @typedef {{files: string[], links: string[], fields: Map<string, string>, known: {path: string, link: string, tag: string}[]}} World */

/**
 * Learns from the site itself what its files, its plans and its form are.
 * @param {string} address
 * @param {Agent} agent
 * @param {number} run
 * @param {number} plans how many, besides the examples
 * @returns {Promise<World>}
 */
async function world(address, agent, run, plans) {
  const get = async (/** @type {string} */ path, init = {}) => (await fetch(new URL(path, address), init)).text();
  const first = await get("/");
  const named = [...first.matchAll(/(?:href|src)="([\w./-]+)"/g)].map(([, path]) => "/" + path.replace(/^\.\//, ""));
  const files = [...new Set(["/", "/offline.js", "/manifest.webmanifest", "/guides.html", ...named])].filter((path) => !path.startsWith("/plan"));
  const page = await get("/plan");
  const links = new Set([...page.matchAll(/plan\?(1[\w-]+)/g)].map(([, link]) => link));
  const fields = fieldsOf(page);
  // Plans that no example is: what the form is sent back with.
  const examples = links.size;
  for (let i = 0; links.size < examples + plans && i < 20 * plans; i++) {
    const answer = await fetch(new URL("/plan", address), { method: "POST", headers: plain, body: new Draw(run, -2 - i).typed(fields) });
    const link = /name="good" value="(1[\w-]+)"/.exec(await answer.text())?.[1];
    if (answer.status === 200 && link) links.add(link);
  }
  const known = [];
  for (const link of links) {
    for (const path of paths) {
      // Asked by the name that all ask by: a tag is that of one address.
      const answer = await send(address, agent, { kind: "", path: `${path}?${link}`, method: "HEAD", status: [200] });
      known.push({ path, link, tag: String(answer?.headers.etag) });
    }
  }
  return { files, links: [...links], fields, known };
}

/** The form of a plan's page, as it would be sent. @param {string} page */
function fieldsOf(page) {
  const fields = new Map();
  const read = (/** @type {string} */ text) => text.replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&#34;", '"').replaceAll("&#39;", "'").replaceAll("&amp;", "&");
  for (const [tag, name] of page.matchAll(/<input [^>]*?name="([^"]*)"[^>]*>/g)) {
    if (/type="(radio|checkbox)"/.test(tag) && !/ checked/.test(tag)) continue;
    fields.set(name, read(/ value="([^"]*)"/.exec(tag)?.[1] ?? ""));
  }
  for (const [, name, options] of page.matchAll(/<select [^>]*?name="([^"]*)"[^>]*>(.*?)<\/select>/gs)) {
    fields.set(name, (/value="([^"]*)" selected/.exec(options) ?? /value="([^"]*)"/.exec(options))?.[1] ?? "");
  }
  return fields;
}

/** @param {number} run @param {number} number @param {World} w @returns {Try} */
function draw(run, number, w) {
  const d = new Draw(run, number);
  let at = d.below(kinds.reduce((sum, [share]) => sum + share, 0));
  for (const [share, make] of kinds) {
    if (at < share) return make(d, w);
    at -= share;
  }
  throw new Error("no kind");
}

/**
 * Sends it. Undefined means that the client has gone before the answer was there.
 * @param {string} address
 * @param {Agent} agent
 * @param {Try} t
 * @returns {Promise<Answer | undefined>}
 */
function send(address, agent, t) {
  if (t.raw !== undefined) return sendRaw(address, t);
  return new Promise((resolve, reject) => {
    const { hostname, port } = new URL(address);
    const sent = request({ hostname, port, path: t.path, method: t.method ?? "GET", agent, headers: { Host: "garden.example", ...t.headers } }, (r) => {
      /** @type {Buffer[]} */
      const parts = [];
      r.on("data", (part) => parts.push(part));
      r.once("error", (e) => (t.leave === undefined ? reject(e) : resolve(undefined)));
      r.once("end", () => {
        const body = Buffer.concat(parts);
        resolve({ status: r.statusCode ?? 0, headers: r.headers, body: body.toString(), length: body.length });
      });
    });
    sent.once("error", (e) => (t.leave === undefined ? reject(e) : resolve(undefined)));
    sent.setTimeout(300_000, () => sent.destroy(new Error("no answer within five minutes")));
    if (t.leave !== undefined) setTimeout(() => sent.destroy(), t.leave);
    sent.end(t.body);
  });
}

/** @param {string} address @param {Try} t @returns {Promise<Answer | undefined>} */
function sendRaw(address, t) {
  return new Promise((resolve, reject) => {
    const { hostname, port } = new URL(address);
    const socket = connect(Number(port), hostname, () => socket.write(String(t.raw), "latin1"));
    /** @type {Buffer[]} */
    const parts = [];
    socket.on("data", (part) => parts.push(part));
    socket.once("error", (e) => (t.leave === undefined && parts.length === 0 ? reject(e) : undefined));
    socket.setTimeout(300_000, () => socket.destroy(new Error("no answer within five minutes")));
    if (t.leave !== undefined) setTimeout(() => socket.destroy(), t.leave);
    socket.once("close", () => {
      if (t.leave !== undefined) return resolve(undefined);
      const whole = Buffer.concat(parts);
      const at = Math.max(0, whole.indexOf("\r\n\r\n"));
      const lines = whole.subarray(0, at).toString("latin1").split("\r\n");
      const headers = Object.fromEntries(lines.slice(1).map((line) => [line.slice(0, line.indexOf(":")).toLowerCase(), line.slice(line.indexOf(":") + 1).trim()]));
      const body = whole.subarray(at + 4);
      resolve({ status: Number(lines[0]?.split(" ", 2)[1]), headers, body: body.toString(), length: body.length });
    });
  });
}

/**
 * What is wrong with an answer; empty when nothing is.
 * @param {Try} t
 * @param {Answer} a
 */
export function wrong(t, a) {
  if (a.status === 503) return a.headers["retry-after"] ? "" : "503 without Retry-After";
  if (!t.status.includes(a.status)) return `status ${a.status}, not ${t.status.join(" or ")}`;
  if (t.method === "HEAD" || a.status === 304) return a.length ? `${a.length} bytes where none belong` : "";
  if (!a.length) return "not a word";
  const type = String(a.headers["content-type"] ?? "");
  if (/[\r\n]/.test(type) || a.headers["set-cookie"]) return "a header that was typed";
  // What the runtime refuses by itself is a line of text without our headers.
  if (type !== "text/plain" && a.status !== 400 && !a.headers["content-security-policy"]) return "no policy";
  const path = t.path?.split("?")[0] ?? "";
  if (!a.headers["content-disposition"] && !paths.includes(path)) return "";
  const number = /(?<![\w.-])(NaN|[+-]?Inf(inity)?|undefined|%!\w)(?![\w-])/.exec(a.body);
  if (number) return `${number[0]} in the answer: ${about(a.body, number.index)}`;
  if (/html|svg/.test(type)) {
    const markup = born.exec(a.body);
    if (markup) return `a text became markup: ${about(a.body, markup.index)}`;
  }
  if (a.status !== 200) return "";
  const [begin, end] = forms[path] ?? [/^/, /$/];
  if (!begin.test(a.body) || !end.test(a.body.slice(-200))) return `not whole: ${a.body.slice(0, 40)} ... ${a.body.slice(-40)}`;
  if (path.endsWith(".json")) JSON.parse(a.body);
  return "";
}

/** @param {string} text @param {number} at */
const about = (text, at) => JSON.stringify(text.slice(Math.max(0, at - 40), at + 40));

/**
 * Sends many requests, some at a time.
 * @param {{address: string, memory: () => Promise<number>}} far
 * @param {{requests: number, run?: number, plans?: number, clients?: number, each?: (done: number) => Promise<void> | void}} how
 *   run has other requests; each is called after every one
 * @returns {Promise<{lines: Map<string, Line>, faults: string[]}>} faults are the first twenty
 */
export async function attack(far, { requests, run = 1, plans = 40, clients = 6, each }) {
  const agent = new Agent({ keepAlive: true, maxSockets: clients });
  const w = await world(far.address, agent, run, plans);
  /** @type {Map<string, Line>} */
  const lines = new Map();
  /** @type {string[]} */
  const faults = [];
  let next = 0;
  let done = 0;
  const client = async () => {
    while (next < requests) {
      const number = next++;
      const t = draw(run, number, w);
      const line = lines.get(t.kind) ?? { tried: 0, answers: new Map(), failed: 0 };
      lines.set(t.kind, line);
      line.tried++;
      let fault = "";
      try {
        const answer = await send(far.address, agent, t);
        if (answer) line.answers.set(answer.status, (line.answers.get(answer.status) ?? 0) + 1);
        if (answer && t.leave === undefined) fault = wrong(t, answer);
      } catch (e) {
        fault = `no answer: ${e instanceof Error ? e.message : e}`;
      }
      if (fault) {
        line.failed++;
        if (faults.length < 20) faults.push(`request ${number} of run ${run}, ${t.kind}: ${fault}\n  ${(t.raw ?? `${t.method ?? "GET"} ${t.path} ${JSON.stringify(t.headers ?? {})} ${t.body ?? ""}`).slice(0, 400)}`);
      }
      await each?.(++done);
    }
  };
  await Promise.all(Array.from({ length: clients }, client));
  agent.destroy();
  return { lines, faults };
}

/** The table of what was tried. @param {Map<string, Line>} lines */
export function table(lines) {
  const rows = [...lines].sort(([a], [b]) => a.localeCompare(b)).map(([kind, { tried, answers, failed }]) => {
    const told = [...answers].sort(([a], [b]) => a - b).map(([status, times]) => `${status}: ${times}`);
    return `${kind.padEnd(36)} ${String(tried).padStart(7)} ${String(failed).padStart(7)}   ${told.join(", ")}`;
  });
  const sum = (/** @type {(l: Line) => number} */ of) => [...lines.values()].reduce((all, line) => all + of(line), 0);
  return [
    `${"what was sent".padEnd(36)} ${"tried".padStart(7)} ${"failed".padStart(7)}   answers`,
    ...rows,
    `${"all".padEnd(36)} ${String(sum((l) => l.tried)).padStart(7)} ${String(sum((l) => l.failed)).padStart(7)}`,
  ].join("\n");
}
