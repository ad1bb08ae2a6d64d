// Writes built/viewer.js and built/page.css. Run: npm ci && npm run build
import { build } from "esbuild";
import { createHash } from "node:crypto";
import { readFileSync, readdirSync } from "node:fs";

const target = ["chrome105", "firefox115", "safari16.4"];
// Every page is a copy of these libraries, so their notices travel inside the script.
const notices = ["three", "d3-contour", "d3-array", "internmap", "delatin", "smol-toml"].map((name) => {
  const { version, license } = JSON.parse(readFileSync(`node_modules/${name}/package.json`, "utf8"));
  return `${name} ${version} (${license})\n${readFileSync(`node_modules/${name}/LICENSE`, "utf8").trim()}`;
});

// What it was built from: a test compares this with the sources, so that neither is changed alone.
const sources = [
  ...readdirSync("src")
    .sort()
    .map((name) => `src/${name}`),
  "build.mjs",
  "package-lock.json",
];
const hash = createHash("sha256");
for (const name of sources) hash.update(`${name}\n`).update(readFileSync(name));

await build({
  entryPoints: {
    viewer: "src/main.js",
    line: "src/open_line.js",
    open: "src/open.js",
    tight: "src/open_tight.js",
  },
  outdir: "built",
  bundle: true,
  minify: true,
  format: "iife",
  charset: "utf8",
  target,
  legalComments: "none",
  banner: {
    js: `/*!\nbuilt from ${hash.digest("hex")}\n\n${notices.join("\n\n").replaceAll("*/", "* /")}\n*/`,
  },
});
await build({
  entryPoints: { page: "src/page.css", open: "src/open.css" },
  outdir: "built",
  bundle: true,
  minify: true,
  target,
});
