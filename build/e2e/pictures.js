// Pictures of every job, to be looked at: on four screens by day and by night, and on two sizes of
// paper. They are left in build/out-screens, or in the folder $SCREENS.
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { instrument, launch } from "./chromium.js";
import { explored, inJob, jobs, open, see } from "./form.js";
import { setClock } from "./journeys.js";
import { folder, pictures, sizes } from "./screens.js";
import { serve } from "./site.js";

const site = await serve();
const browser = await launch();
try {
  const page = await browser.newPage();
  await instrument(page);
  await setClock(page, "2027-07-15T14:10"); // in its season, when most is in sight
  await open(page, site.address);
  await show("start", () => see(page, "/start"));
  await page.goto("about:blank");
  await open(page, site.address);
  for (const job of jobs) await show(job, () => inJob(page, job));
  await show("all", () => inJob(page, "all"));
  for (const job of jobs) {
    await inJob(page, job);
    await explored(page);
    for (const format of /** @type {const} */ (["A4", "Letter"])) {
      const paper = join(folder, `${job}-${format}`);
      writeFileSync(`${paper}.pdf`, await page.pdf({ format }));
      execFileSync("pdftoppm", ["-r", "80", "-png", `${paper}.pdf`, paper]);
    }
  }

  /** @param {string} name @param {() => Promise<void>} come */
  async function show(name, come) {
    await come();
    await explored(page);
    for (const size of sizes) {
      await page.setViewport(size);
      await pictures(page, `${name}-${size.width}`);
    }
  }
  console.log(`the pictures are in ${folder}`);
} finally {
  await browser.close();
  await site.stop();
}
