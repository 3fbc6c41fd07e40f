// The process that draws a page ends of a sudden, as one short of memory does.
import { readFile, readdir } from "node:fs/promises";

/** @param {import("puppeteer-core").Page} page */
export async function crash(page) {
  if (page.browser().protocol === "cdp") {
    const session = await page.createCDPSession();
    const dead = new Promise((resolve) => page.once("error", resolve));
    session.send("Page.crash").catch(() => {});
    return dead;
  }
  // Firefox is asked in no such way, and does not say which process a page has: it is the largest that draws any.
  const processes = await Promise.all(
    (await readdir("/proc")).filter((name) => /^\d+$/.test(name)).map(async (id) => {
      const read = (/** @type {string} */ name) => readFile(`/proc/${id}/${name}`, "utf8").catch(() => "");
      const [stat, line, size] = await Promise.all(["stat", "cmdline", "statm"].map(read));
      return { id: Number(id), parent: Number(stat.split(") ").at(-1)?.split(" ")[1]), draws: /\btab\0*$/.test(line), size: Number(size.split(" ")[1]) };
    }),
  );
  /** @param {number | undefined} id @returns {typeof processes} */
  const under = (id) => processes.filter(({ parent }) => parent === id).flatMap((one) => [one, ...under(one.id)]);
  const [drawing] = under(page.browser().process()?.pid).filter(({ draws }) => draws).sort((a, b) => b.size - a.size);
  process.kill(drawing.id, "SIGKILL");
}
