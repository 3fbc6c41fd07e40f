// What a public audit says of the finished site, as a phone and as a desk see it: the median of
// five visits, each to a browser that knows nothing of the site. It ends with an error where that is less
// than it must be. Speed is measured here and in the benchmark, never in a test.
import lighthouse from "lighthouse";
import desk from "lighthouse/core/config/desktop-config.js";
import { launch } from "../chromium.js";
import { command, serve } from "../site.js";

const visits = 5;

/** The least that each category may have, of 100. */
const least = { performance: 98, accessibility: 100, "best-practices": 100, seo: 100 };

const presets = { phone: undefined, desk };

const site = await serve();
const link = (await command(["link"], await command(["example", "balcony"]))).trim().replace("#", "");
const pages = { "the five questions": "", "an answer": "#/answer", "a plan by a host": `plan?${link}`, "a guide": "guides.html" };
/** A plan is somebody's own: its page asks search engines to leave it out. */
const skipped = { "a plan by a host": ["is-crawlable"] };

let short = false;
for (const [page, path] of Object.entries(pages)) {
  for (const [preset, config] of Object.entries(presets)) {
    const all = [];
    for (let i = 0; i < visits; i++) all.push(await visit(site.address + path, config, skipped[page]));
    all.sort((a, b) => (a.categories.performance.score ?? 0) - (b.categories.performance.score ?? 0));
    const middle = all[Math.floor(visits / 2)];
    const scores = Object.entries(least).map(([category, wanted]) => {
      const score = Math.round((middle.categories[category].score ?? 0) * 100);
      short ||= score < wanted;
      return `${category} ${score}${score < wanted ? ` (want ${wanted})` : ""}`;
    });
    console.log(`${page}, ${preset}: ${scores.join(", ")}`);
    for (const audit of lacking(middle)) console.log(`    ${audit}`);
  }
}
await site.stop();
process.exitCode = short ? 1 : 0;

/**
 * @param {string} url
 * @param {import("lighthouse").Config | undefined} config
 * @param {string[]} [skipAudits]
 */
async function visit(url, config, skipAudits = []) {
  const browser = await launch();
  try {
    const port = Number(new URL(browser.wsEndpoint()).port);
    const result = await lighthouse(url, { port, logLevel: "error", onlyCategories: Object.keys(least), skipAudits }, config);
    if (!result || result.lhr.runtimeError) throw new Error(result?.lhr.runtimeError?.message ?? "no result");
    return result.lhr;
  } finally {
    await browser.close();
  }
}

/** What takes something from a category that must be whole, and how fast it was. @param {import("lighthouse").Result} result */
function lacking(result) {
  const said = [];
  for (const [category, wanted] of Object.entries(least)) {
    const { score, auditRefs } = result.categories[category];
    if (Math.round((score ?? 0) * 100) >= wanted) continue;
    for (const { id, weight } of auditRefs) {
      const audit = result.audits[id];
      if (weight > 0 && audit.score !== null && audit.score < 0.9) said.push(`${category}: ${audit.title} ${audit.displayValue ?? ""}`);
    }
  }
  return said;
}
