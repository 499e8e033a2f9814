// Bundles the command line into dist/chalkline.js and parts beside it, and the page into dist/editor.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
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
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { buildPage } from "./editor/page/build.mjs";

const root = fileURLToPath(new URL(".", import.meta.url));
const { version } = JSON.parse(readFileSync(`${root}package.json`, "utf8"));

const common = {
  absWorkingDir: root,
  bundle: true,
  platform: "node",
  target: "node20",
  // Of a script V8 can keep what it has compiled, and of a module it cannot.
  format: "cjs",
  charset: "ascii",
  // Names stay as they are, so that a fault of the program can be read.
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: "inline",
  define: { CHALKLINE_VERSION: JSON.stringify(version), "import.meta.url": "builtUrl" },
  banner: { js: 'const builtUrl = require("node:url").pathToFileURL(__filename).href;' },
  // The pool of threads would ask for it only to make its threads yield to others, which nobody wants of it here.
  external: ["@napi-rs/nice"],
  logLevel: "warning",
  write: false,
};

// Large packages that only some commands ask for. Each stands in a part of its own, which is read when it is wanted: what settles
// cloth is twice as large as all the rest. One that uses another stands behind it.
const large = [
  "@cantoo/pdf-lib",
  "@dimforge/rapier2d-compat",
  "clipper2-ts",
  "ioredis",
  "bullmq",
  "opentype.js",
  "piscina",
  "vscode-languageserver/node",
];

/** The files of the program, by their names in dist/. */
const files = new Map();
/** The parts of large packages, each by its package. */
const parts = new Map();

// A script that comes out of what V8 kept of it can import nothing at run time, so what does that is no part of the program either.
const importing = "./import-text.ts";

const partsApart = {
  name: "parts-apart",
  setup: ({ onResolve }) =>
    onResolve({ filter: /.*/ }, ({ path, kind }) =>
      kind !== "entry-point" && parts.has(path) ? { path: `./${parts.get(path)}`, external: true } : undefined,
    ),
};

const bundled = async (entry, more = {}) => {
  const { outputFiles } = await build({ ...common, entryPoints: [entry], plugins: [partsApart], ...more }).catch(() => {
    // What is the matter has been printed, with its line.
    process.exit(1);
  });
  // The bundler leaves regular expressions as they are written, and launch.cjs reads nothing but ASCII.
  return outputFiles[0].text.replaceAll(
    /[^\0-\x7f]/g,
    (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
};

/** Named after what is in it, so that nobody ever runs half of one program and half of another. */
const nameOf = (kind, text) => `${kind}-${createHash("sha256").update(text).digest("hex").slice(0, 8)}.js`;

for (const name of [...large, importing]) {
  const text = await bundled(name === importing ? `editor/terminal/${name}` : name);
  parts.set(name, nameOf("part", text));
  files.set(parts.get(name), text);
}
// What runs in each thread of a batch and of a packing, and the threads themselves: the pool looks for a file of this name beside it.
files.set("batch-thread.js", await bundled("editor/batch/thread.ts"));
files.set("pack-thread.js", await bundled("editor/terminal/pack-thread.ts"));
files.set("worker.js", await bundled("node_modules/piscina/dist/worker.js"));
const text = await bundled("editor/terminal/main.ts");
const program = nameOf("program", text);
files.set(program, text);

// Each is written aside and renamed, and what starts the program comes last.
const put = (name, content) => {
  const aside = `${root}dist/.aside-${process.pid}`;
  writeFileSync(aside, content);
  renameSync(aside, `${root}dist/${name}`);
};
mkdirSync(`${root}dist`, { recursive: true });
// Wherever the folder is copied to, and already when it is run below, node then takes its files for scripts.
put("package.json", '{ "type": "commonjs" }\n');
for (const [name, content] of files) put(name, content);
const compiled = program.replace(".js", ".compiled");
const kept = spawnSync(
  process.execPath,
  ["editor/terminal/keep-compiled.cjs", `${root}dist/${program}`, "check", "recipes/lobby-coat-swing.chalk"],
  { cwd: root, encoding: "utf8" },
);
if (kept.status !== 0) throw new Error(`the program that was built does not run: ${kept.stderr}`);
const launch = { banner: { js: "#!/usr/bin/env node" }, define: { CHALKLINE_PROGRAM: JSON.stringify(program) } };
put("chalkline.js", await bundled("editor/terminal/launch.cjs", launch));
chmodSync(`${root}dist/chalkline.js`, 0o755);
// What prints are lettered in; its license stands beside it.
for (const face of ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"])
  copyFileSync(`${root}node_modules/dejavu-fonts-ttf/ttf/${face}`, `${root}dist/${face}`);
copyFileSync(`${root}node_modules/dejavu-fonts-ttf/LICENSE`, `${root}dist/DejaVuSans-LICENSE.txt`);
console.log(`dist/chalkline.js  ${Math.round(text.length / 1024)} KiB, and ${parts.size} parts beside it`);

// Older programs and their parts, which nobody runs any more after a whole build.
if (!process.argv.includes("--terminal")) {
  for (const name of readdirSync(`${root}dist`))
    if (/^(?:part|program)-.*\.(?:js|compiled)$/.test(name) && !files.has(name) && name !== compiled)
      rmSync(`${root}dist/${name}`);
}

// The tests of the command line build it anew and leave the page alone, which others have open meanwhile.
if (!process.argv.includes("--terminal")) {
  await buildPage(`${root}dist/editor`);
  console.log("dist/editor/      the page");
}
