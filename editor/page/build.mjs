// Bundles the page into plain scripts that work from a folder as well as from a server: dist/editor.
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("../../", import.meta.url));

const common = {
  absWorkingDir: root,
  bundle: true,
  platform: "browser",
  target: ["chrome110", "firefox115", "safari16.4"],
  format: "iife",
  minify: true,
  write: false,
  legalComments: "inline",
  logLevel: "warning",
};

const bundled = async (entry, more = {}) => {
  const { outputFiles } = await build({ ...common, entryPoints: [entry], outdir: "out", ...more });
  return new Map(outputFiles.map(({ path, text }) => [path.slice(path.lastIndexOf("/") + 1), text]));
};

/** The recipes that come with the program, by their path under recipes/. */
const recipes = () =>
  readdirSync(join(root, "recipes"), { recursive: true, encoding: "utf8" })
    .map((name) => name.replaceAll("\\", "/"))
    .filter((name) => name.endsWith(".chalk"))
    .sort()
    .map((file) => ({ file, text: readFileSync(join(root, "recipes", file), "utf8") }));

/**
 * What the page may do, whatever a recipe says: run its own scripts, and nothing from elsewhere. Worker programs are texts in those scripts,
 * so they start from blobs; what settles cloth is compiled there as WebAssembly; the full editor writes its own styles.
 */
const policy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src blob:",
  "connect-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "font-src 'self' data:",
  "img-src 'self' data: blob:",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** Programs that run in workers of their own and are loaded when they are first wanted (editor/page/worker/open-program.ts). */
const programs = new Map([
  ["settler", "editor/page/hang/settler.ts"],
  ["layer", "editor/page/cloth/layer.ts"],
  ["printer", "editor/page/print/printer.ts"],
  ["tracer", "editor/page/bring-in/tracer.ts"],
]);

const programScript = async ([name, entry]) => {
  // A page that was opened from a folder may fetch nothing, so what prints carries its font along.
  const text = (await bundled(entry, { loader: { ".ttf": "binary" } })).get(`${name}.js`);
  return [`${name}.js`, `(globalThis.chalklinePrograms??=new Map).set("${name}",${JSON.stringify(text)});\n`];
};

/** Writes the page into a folder, all of it or nothing. */
export const buildPage = async (folder) => {
  const worker = (await bundled("editor/page/worker/worker.ts")).get("worker.js");
  const page = await bundled("editor/page/main.tsx", { jsx: "automatic", jsxImportSource: "preact" });
  const monaco = await bundled("editor/page/monaco/open-editor.ts", {
    globalName: "chalklineMonaco",
    loader: { ".ttf": "dataurl" },
  });
  const html = readFileSync(join(root, "editor/page/index.html"), "utf8").replace("CSP", policy);
  const files = new Map([
    ["index.html", html],
    ["worker.js", `var chalklineWorker=${JSON.stringify(worker)};\n`],
    ["recipes.js", `var chalklineRecipes=${JSON.stringify(recipes())};\n`],
    ["page.js", page.get("main.js")],
    ["page.css", page.get("main.css")],
    ["monaco.js", monaco.get("open-editor.js")],
    ["monaco.css", monaco.get("open-editor.css")],
    ["DejaVuSans-LICENSE.txt", readFileSync(join(root, "node_modules/dejavu-fonts-ttf/LICENSE"), "utf8")],
  ]);
  for (const [name, text] of await Promise.all([...programs].map(programScript))) files.set(name, text);
  const aside = `${folder}-${process.pid}`;
  mkdirSync(aside, { recursive: true });
  for (const [name, text] of files) writeFileSync(join(aside, name), text);
  rmSync(folder, { recursive: true, force: true });
  renameSync(aside, folder);
  return files;
};
