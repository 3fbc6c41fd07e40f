// A host of the site that can be made to fail: it serves files from memory, and
// a test says which of them are other than they should be.
import { createHash } from "node:crypto";
import { createServer } from "node:http";

/**
 * @typedef {object} File
 * @property {Buffer} body
 * @property {string} type
 * @property {number} [status]
 * @property {boolean} [cut] whether the connection ends in the middle of it
 */

/** @typedef {Map<string, File>} Files by path, such as "/index.html" */

/**
 * Copies a site: every file that its service worker keeps, and that itself.
 * @param {string} address of the site, ending with "/"
 * @returns {Promise<Files>}
 */
export async function copied(address) {
  const script = await (await fetch(address + "offline.js")).text();
  const names = [...script.matchAll(/"([\w./-]+\.(?:css|html|js|png|svg|wasm|webmanifest))"/g)].map((found) => found[1]);
  /** @type {Files} */
  const files = new Map();
  for (const name of new Set([...names, "offline.js"])) {
    const answer = await fetch(address + name);
    files.set("/" + name, { body: Buffer.from(await answer.arrayBuffer()), type: answer.headers.get("Content-Type") ?? "", status: answer.status });
  }
  return files;
}

/**
 * The path of the one asset that is called so, without the hash in its name.
 * @param {Files} files
 * @param {string} name such as "worker.js"
 */
export function named(files, name) {
  const found = [...files.keys()].filter((path) => path.replace(/-[0-9a-f]{16}\./, ".") === `/assets/${name}`);
  if (found.length !== 1) throw new Error(`${found.length} files are called ${name}`);
  return found[0];
}

/**
 * Other content for one file.
 * @param {Files} files
 * @param {string} path
 * @param {(text: string) => string} change
 */
export function change(files, path, change) {
  const file = files.get(path);
  if (!file) throw new Error(`no ${path}`);
  files.set(path, { ...file, body: Buffer.from(change(file.body.toString())) });
}

/**
 * Another version of the site: with another worker, and all that names it.
 * @param {Files} files
 * @param {string} name such as "B"
 * @returns {Files}
 */
export function version(files, name) {
  const was = named(files, "worker.js").slice(1);
  const body = Buffer.concat([files.get("/" + was).body, Buffer.from(`\n// Version ${name}`)]);
  const is = `assets/worker-${createHash("sha256").update(body).digest("hex").slice(0, 16)}.js`;
  /** @type {Files} */
  const next = new Map();
  for (const [path, file] of files) {
    if (path === "/" + was) next.set("/" + is, { ...file, body });
    else next.set(path, path.endsWith(".html") ? { ...file, body: Buffer.from(file.body.toString().replaceAll(was, is)) } : file);
  }
  change(next, "/offline.js", (script) => {
    const kept = Object.keys(JSON.parse(listed.exec(script)?.[0] ?? "{}")).map((path) => (path === was ? is : path));
    const sums = kept.map((path) => [path, createHash("sha256").update(next.get("/" + path).body).digest("base64")]);
    return script.replace(listed, JSON.stringify(Object.fromEntries(sums))).replace(/"[0-9a-f]{16}"/, JSON.stringify(createHash("sha256").update(name).digest("hex").slice(0, 16)));
  });
  return next;
}

/** The list of files in the service worker's script. */
const listed = /\{"[\w.-]+\.html":[^}]*\}/;

/**
 * Serves files, which may be changed or replaced while it runs.
 * @param {Files} files
 */
export async function host(files) {
  const own = {
    files,
    address: "",
    /** Whether it is out of reach. */
    away: false,
    /** Every request as it came, such as "GET /index.html". @type {string[]} */
    asked: [],
    /** Runs before an answer is sent, and may take its time. @type {(path: string) => unknown} */
    before: () => {},
    stop: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
  const server = createServer(async (request, response) => {
    own.asked.push(`${request.method} ${request.url}`);
    const path = new URL(request.url ?? "", "http://host").pathname;
    await own.before(path);
    if (own.away) return request.socket.destroy();
    const file = own.files.get(path.endsWith("/") ? path + "index.html" : path);
    const headers = { "Cache-Control": path.startsWith("/assets/") ? "public, max-age=31536000, immutable" : "no-cache" };
    if (file) response.writeHead(file.status ?? 200, { ...headers, "Content-Type": file.type, "Content-Length": file.body.length });
    else response.writeHead(404, { "Content-Type": "text/plain" });
    if (file?.cut) return response.write(file.body.subarray(0, file.body.length / 2), () => request.socket.destroy());
    response.end(file?.body ?? "missing");
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", () => resolve(undefined)));
  own.address = `http://127.0.0.1:${/** @type {import("node:net").AddressInfo} */ (server.address()).port}/`;
  return own;
}
