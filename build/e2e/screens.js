// The screens that every page must fit. Pictures are left in build/out-screens,
// or in the folder $SCREENS, to be looked at.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { overflow, overlaps, small } from "./sight.js";
import { root } from "./site.js";

export const folder = process.env.SCREENS || join(root, "build", "out-screens");
mkdirSync(folder, { recursive: true });

export const sizes = [
  { width: 320, height: 640 },
  { width: 360, height: 740 },
  { width: 768, height: 1024 },
  { width: 1280, height: 900 },
];

/** Widths of which pictures are left. */
export const kept = [360, 1280];

/**
 * Leaves a picture by day, by night or both, of the whole page: on a screen as high as that, so
 * that what sticks to an edge lies over nothing.
 * @param {import("puppeteer-core").Page} page
 * @param {string} name
 * @param {string[]} [schemes]
 */
export async function pictures(page, name, schemes = ["light", "dark"]) {
  const { width, height } = page.viewport() ?? sizes[0];
  await page.setViewport({ width, height: Math.max(height, await page.evaluate(() => document.documentElement.scrollHeight)) });
  for (const scheme of schemes) {
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
    await page.screenshot({ path: join(folder, `${name}-${scheme}.png`) });
  }
  await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: "light" }]);
  await page.setViewport({ width, height });
}

/**
 * What lies badly on the screen.
 * @param {import("puppeteer-core").Page} page
 * @param {string} where
 */
export async function faults(page, where) {
  await page.evaluate(() => scrollTo(0, 0)); // where what sticks to an edge is in its place
  const found = [
    ...(await overflow(page)).map((e) => `beyond the screen: ${e}`),
    ...(await small(page, 44)).map((e) => `too small to touch: ${e}`),
    ...(await overlaps(page)).map((e) => `over each other: ${e}`),
  ];
  return found.map((e) => `${where}: ${e}`);
}
