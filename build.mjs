// Bundles the command line into a file that node runs by itself, dist/chalkline.js, and the page into dist/editor.
import { chmodSync, copyFileSync, readFileSync, renameSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { buildPage } from "./editor/page/build.mjs";

const root = fileURLToPath(new URL(".", import.meta.url));
const outfile = `${root}dist/chalkline.js`;
// Written aside and renamed, so that nobody ever runs half of it.
const aside = `${root}dist/.chalkline-${process.pid}.js`;
const { version } = JSON.parse(readFileSync(`${root}package.json`, "utf8"));

// What only one command needs is imported when it is wanted, and then stands in a file of its own, so that no other command reads
// it: what settles cloth is twice as large as all the rest.
const apart = new Map([
  ["language-server.ts", "editor/language-server/language-server.ts"],
  ["world.ts", "kernel/cloth/hang/world.ts"],
  ["paper-files.ts", "editor/files/paper-files.ts"],
]);
const builtName = (file) => file.replace(/\.ts$/, ".js");
const whenWanted = {
  name: "when-wanted",
  setup: (bundle) => {
    bundle.onResolve({ filter: /\.ts$/ }, ({ kind, path }) => {
      const file = path.slice(path.lastIndexOf("/") + 1);
      return kind === "dynamic-import" && apart.has(file)
        ? { path: `./${builtName(file)}`, external: true }
        : undefined;
    });
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

const bundled = (entry, to) =>
  build({ ...common, entryPoints: [entry], outfile: aside, plugins: [whenWanted] }).then(
    () => renameSync(aside, to),
    () => {
      // What is the matter has been printed, with its line.
      process.exit(1);
    },
  );

for (const [file, entry] of apart) await bundled(entry, `${root}dist/${builtName(file)}`);
await bundled("editor/terminal/main.ts", outfile);
chmodSync(outfile, 0o755);
// What prints are lettered in; its license stands beside it.
for (const face of ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"])
  copyFileSync(`${root}node_modules/dejavu-fonts-ttf/ttf/${face}`, `${root}dist/${face}`);
copyFileSync(`${root}node_modules/dejavu-fonts-ttf/LICENSE`, `${root}dist/DejaVuSans-LICENSE.txt`);
console.log(`dist/chalkline.js  ${Math.round(statSync(outfile).size / 1024)} KiB`);

// The tests of the command line build it anew and leave the page alone, which others have open meanwhile.
if (!process.argv.includes("--terminal")) {
  await buildPage(`${root}dist/editor`);
  console.log("dist/editor/      the page");
}
