// Bundles the command line into one file that node runs by itself, dist/chalkline.js, and the page into dist/editor.
import { chmodSync, readFileSync, renameSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { buildPage } from "./editor/page/build.mjs";

const root = fileURLToPath(new URL(".", import.meta.url));
const outfile = `${root}dist/chalkline.js`;
// Written aside and renamed, so that nobody ever runs half of it.
const aside = `${root}dist/.chalkline-${process.pid}.js`;
const { version } = JSON.parse(readFileSync(`${root}package.json`, "utf8"));

await build({
  absWorkingDir: root,
  entryPoints: ["editor/terminal/main.ts"],
  outfile: aside,
  bundle: true,
  platform: "node",
  target: "node20",
  format: "esm",
  // Names stay as they are, so that a fault of the program can be read.
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: "inline",
  define: { CHALKLINE_VERSION: JSON.stringify(version) },
  // One dependency is written for `require`, which an ES module has to make for itself.
  banner: {
    js: '#!/usr/bin/env node\nimport { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
  },
  logLevel: "warning",
}).catch(() => {
  // What is the matter has been printed, with its line.
  process.exit(1);
});

chmodSync(aside, 0o755);
renameSync(aside, outfile);
console.log(`dist/chalkline.js  ${Math.round(statSync(outfile).size / 1024)} KiB`);

await buildPage(`${root}dist/editor`);
console.log("dist/editor/      the page");
