// Bundles the command line into dist/chalkline.js and parts beside it, and the page into dist/editor.
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { basename } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { buildPage } from "./editor/page/build.mjs";

const root = fileURLToPath(new URL(".", import.meta.url));
const isPart = ({ path }) => basename(path).startsWith("part-");
const { version } = JSON.parse(readFileSync(`${root}package.json`, "utf8"));

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

// What only one command needs is imported when it is wanted, and so stands in a part of its own that no other command reads:
// what settles cloth is twice as large as all the rest.
const { outputFiles } = await build({
  ...common,
  entryPoints: { chalkline: "editor/terminal/main.ts" },
  outdir: "dist",
  chunkNames: "part-[hash]",
  splitting: true,
  write: false,
}).catch(() => {
  // What is the matter has been printed, with its line.
  process.exit(1);
});
mkdirSync(`${root}dist`, { recursive: true });
// Parts first, and each written aside and renamed, so that nobody ever runs half a program.
const [entry, ...parts] = outputFiles.toSorted((a, b) => Number(isPart(a)) - Number(isPart(b)));
for (const { path, contents } of [...parts, entry]) {
  const aside = `${root}dist/.aside-${process.pid}`;
  writeFileSync(aside, contents);
  renameSync(aside, path);
}
const outfile = `${root}dist/chalkline.js`;
chmodSync(outfile, 0o755);
// Wherever the folder is copied to, node then takes its files for modules.
writeFileSync(`${root}dist/package.json`, '{ "type": "module" }\n');
// What prints are lettered in; its license stands beside it.
for (const face of ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"])
  copyFileSync(`${root}node_modules/dejavu-fonts-ttf/ttf/${face}`, `${root}dist/${face}`);
copyFileSync(`${root}node_modules/dejavu-fonts-ttf/LICENSE`, `${root}dist/DejaVuSans-LICENSE.txt`);
console.log(`dist/chalkline.js  ${Math.round(entry.contents.length / 1024)} KiB, and ${parts.length} parts beside it`);

// Parts of older programs, which nobody runs any more after a whole build.
const wanted = new Set(parts.map(({ path }) => basename(path)));
if (!process.argv.includes("--terminal")) {
  for (const name of readdirSync(`${root}dist`))
    if (name.endsWith(".js") && name !== "chalkline.js" && !wanted.has(name)) rmSync(`${root}dist/${name}`);
}

// The tests of the command line build it anew and leave the page alone, which others have open meanwhile.
if (!process.argv.includes("--terminal")) {
  await buildPage(`${root}dist/editor`);
  console.log("dist/editor/      the page");
}
