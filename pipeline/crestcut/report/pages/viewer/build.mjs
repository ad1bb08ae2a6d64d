// Writes built/. Run: npm ci && npm run build
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

const from = `built from ${hash.digest("hex")}`;

/** Scripts whose first comment says what they were built from and what else `says` holds. */
const scripts = (entryPoints, says, more) =>
  build({
    entryPoints,
    outdir: "built",
    bundle: true,
    minify: true,
    format: "iife",
    charset: "utf8",
    target,
    legalComments: "none",
    banner: { js: `/*!\n${[from, ...says].join("\n\n").replaceAll("*/", "* /")}\n*/` },
    ...more,
  });

// the libraries stand in this one alone: offline pages carry it, the screens' own scripts find it under this name
await scripts({ viewer: "src/main.js" }, notices, { globalName: "crestcutViewer" });
await scripts(
  { open: "src/open.js", line: "src/open_line.js", tight: "src/open_tight.js", size: "src/open_size.js" },
  [],
);
await build({
  entryPoints: { page: "src/page.css", open: "src/open.css" },
  outdir: "built",
  bundle: true,
  minify: true,
  target,
});
