// The pages beside the tool.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { root } from "./site.js";

/** Addresses of the list of guides and of every guide, relative to the site. */
export const guides = [
  "guides.html",
  ...readdirSync(join(root, "content", "guides"))
    .filter((name) => name.endsWith(".md"))
    .map((name) => name.replace(/\.md$/, ".html")),
];
