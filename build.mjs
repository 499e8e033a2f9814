// Bundles the command line into a file that node runs by itself, dist/chalkline.js, and the page into dist/editor.
import { chmodSync, readFileSync, renameSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { buildPage } from "./editor/page/build.mjs";

const root = fileURLToPath(new URL(".", import.meta.url));
const outfile = `${root}dist/chalkline.js`;
// Written aside and renamed, so that nobody ever runs half of it.
const aside = `${root}dist/.chalkline-${process.pid}.js`;
const { version } = JSON.parse(readFileSync(`${root}package.json`, "utf8"));

// What settles cloth is ten times as large as all the rest and seldom wanted: it stands in a file of its own, which is read then.
const world = `${root}dist/hang-world.js`;
const worldApart = {
  name: "world-apart",
  setup: (bundle) => {
    bundle.onResolve({ filter: /\/world\.ts$/ }, ({ kind }) =>
      kind === "dynamic-import" ? { path: "./hang-world.js", external: true } : undefined,
    );
  },
};

const common = {
  absWorkingDir: root,
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
};

const bundled = (entry, to, more = {}) =>
  build({ ...common, entryPoints: [entry], outfile: aside, ...more }).then(
    () => renameSync(aside, to),
    () => {
      // What is the matter has been printed, with its line.
      process.exit(1);
    },
  );

await bundled("kernel/cloth/hang/world.ts", world, { banner: {} });
await bundled("editor/terminal/main.ts", outfile, { plugins: [worldApart] });
chmodSync(outfile, 0o755);
console.log(`dist/chalkline.js  ${Math.round(statSync(outfile).size / 1024)} KiB`);

// The tests of the command line build it anew and leave the page alone, which others have open meanwhile.
if (!process.argv.includes("--terminal")) {
  await buildPage(`${root}dist/editor`);
  console.log("dist/editor/      the page");
}
