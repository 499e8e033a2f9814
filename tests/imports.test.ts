// Which file may know which. The arrows between the folders are what keeps a step readable by itself, the kernel free of
// files and clocks, and the page free of the kernel's insides; a new import that goes the wrong way is told in a sentence.
import { readdirSync, readFileSync } from "node:fs";
import { dirname, posix } from "node:path";
import { expect, test } from "vitest";

interface SourceFile {
  readonly file: string;
  readonly text: string;
  /** What it imports: files of ours by their path from the root, packages by their name. */
  readonly imports: readonly string[];
}

const root = new URL("../", import.meta.url);
const importLine = /(?:^|\n)\s*(?:import|export)\b[^;"']*?from\s*["']([^"']+)["']|import\s*\(?\s*["']([^"']+)["']/g;

/** What a file imports; exported lines and dynamic imports count too. */
const importsOf = (file: string, text: string): string[] =>
  [...text.matchAll(importLine)]
    .map((found) => found[1] ?? found[2]!)
    .map((path) => (path.startsWith(".") ? posix.join(dirname(file), path) : path));

const sources: readonly SourceFile[] = ["grammar", "kernel", "editor"].flatMap((folder) =>
  readdirSync(new URL(`${folder}/`, root), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => {
      const file = `${folder}/${name}`;
      const text = readFileSync(new URL(file, root), "utf8");
      return { file, text, imports: importsOf(file, text) };
    }),
);

const isOurs = (path: string): boolean => /^(?:grammar|kernel|editor|tests)\//.test(path);
const isIn = (path: string, folder: string): boolean => path.startsWith(`${folder}/`);

/** A sentence for every import of these files that is not allowed. */
const wrong = (
  files: (file: SourceFile) => boolean,
  allowed: (path: string, file: SourceFile) => boolean,
  why: string,
): string[] =>
  sources
    .filter(files)
    .flatMap((source) =>
      source.imports.filter((path) => !allowed(path, source)).map((path) => `${source.file} imports ${path}: ${why}`),
    );

test("there are files to look at, and their imports are seen", () => {
  expect(sources.length).toBeGreaterThan(100);
  const sample =
    'import a from "b";\nimport type { C } from "../kernel/c.ts";\nimport {\n  d,\n} from "./d.ts";\nexport * from "./e.ts";\nconst f = await import("./f.ts");\nimport "g";';
  expect(importsOf("grammar/x.ts", sample)).toEqual([
    "b",
    "kernel/c.ts",
    "grammar/d.ts",
    "grammar/e.ts",
    "grammar/f.ts",
    "g",
  ]);
});

test("the grammar knows chevrotain and itself", () => {
  const allowed = (path: string): boolean => isIn(path, "grammar") || path === "chevrotain";
  expect(wrong(({ file }) => isIn(file, "grammar"), allowed, "the grammar knows no step and no garment.")).toEqual([]);
});

test("the kernel knows the grammar and itself, and no package", () => {
  const allowed = (path: string): boolean => isIn(path, "grammar") || isIn(path, "kernel");
  expect(
    wrong(({ file }) => isIn(file, "kernel"), allowed, "the kernel knows no file, no page and no package."),
  ).toEqual([]);
});

test("geometry knows geometry", () => {
  const allowed = (path: string): boolean => isIn(path, "kernel/geometry");
  expect(wrong(({ file }) => isIn(file, "kernel/geometry"), allowed, "geometry would serve any drawing.")).toEqual([]);
});

test("steps do not know one another, and neither do checks", () => {
  const isFree = (path: string): boolean => !isIn(path, "kernel/steps") && !isIn(path, "kernel/checks");
  const step = "a step is read by itself; what two share stands beside them, as in kernel/alter.";
  expect(wrong(({ file }) => isIn(file, "kernel/steps"), isFree, step)).toEqual([]);
  const check = "a check is read by itself; what two share stands beside them.";
  expect(wrong(({ file }) => isIn(file, "kernel/checks"), isFree, check)).toEqual([]);
});

test("only the vocabulary lists the steps and the checks", () => {
  const isFree = (path: string): boolean => !isIn(path, "kernel/steps") && !isIn(path, "kernel/checks");
  const others = ({ file }: SourceFile): boolean =>
    file !== "kernel/vocabulary.ts" && !isIn(file, "kernel/steps") && !isIn(file, "kernel/checks");
  expect(wrong(others, isFree, "only kernel/vocabulary.ts names them; ask the vocabulary.")).toEqual([]);
  const listed = sources.find(({ file }) => file === "kernel/vocabulary.ts")!.imports;
  expect(listed.filter((path) => !isFree(path)).length).toBeGreaterThan(30);
});

test("a format knows the drawing, and no piece", () => {
  // How a number is written is the one thing that it shares with reports.
  const known = ["kernel/drawing", "kernel/geometry", "kernel/export"];
  const allowed = (path: string): boolean => known.some((folder) => isIn(path, folder)) || path === "kernel/units.ts";
  expect(wrong(({ file }) => isIn(file, "kernel/export"), allowed, "a new format never meets a step.")).toEqual([]);
});

test("nobody knows the editor but itself", () => {
  const allowed = (path: string): boolean => !isIn(path, "editor");
  expect(wrong(({ file }) => !isIn(file, "editor"), allowed, "the arrows go from the editor to the kernel.")).toEqual(
    [],
  );
});

test("no source file knows the tests", () => {
  const why = "the tests know the program, and not the other way round.";
  expect(
    wrong(
      () => true,
      (path) => !isIn(path, "tests"),
      why,
    ),
  ).toEqual([]);
});

test("only the terminal and the files beside it touch the file system", () => {
  const touchesFiles = /^(?:node:)?(?:fs|fs\/promises|child_process|net|http|https|worker_threads|os|process|path)$/;
  const may = ({ file }: SourceFile): boolean => !/^editor\/(?:terminal|files|server|language-server)\//.test(file);
  expect(
    wrong(may, (path) => !touchesFiles.test(path), "it has no file system; whoever calls it reads and writes."),
  ).toEqual([]);
});

test("imports carry their ending, and lead to files that are there", () => {
  const there = new Set(sources.map(({ file }) => file));
  const leadsNowhere = (path: string): boolean => isOurs(path) && !there.has(path);
  expect(
    wrong(
      () => true,
      (path) => !leadsNowhere(path),
      "there is no such file.",
    ),
  ).toEqual([]);
});

/** A sentence for every line of these files that holds what it must not. */
const holds = (files: (file: SourceFile) => boolean, what: RegExp, why: string): string[] =>
  sources.filter(files).flatMap(({ file, text }) =>
    text.split("\n").flatMap((line, index) => {
      const code = line.replace(/\/\/.*|^\s*\*.*|\/\*\*.*/, "");
      const found = what.exec(code);
      return found ? [`${file}:${index + 1} holds ${found[0]}: ${why}`] : [];
    }),
  );

test("sine and its kin are asked for in one place, which gives the same digits on every machine", () => {
  const others = ({ file }: SourceFile): boolean => isIn(file, "kernel") && file !== "kernel/geometry/trig.ts";
  const why = "ask kernel/geometry/trig.ts.";
  const engines = /\bMath\.(?:a?sinh?|a?cosh?|a?tanh?|atan2|exp|expm1|log\w*|pow|cbrt|hypot)\b/;
  expect(holds(others, engines, why)).toEqual([]);
  expect(holds(({ file }) => isIn(file, "grammar"), /\bMath\.(?:sin|cos|tan)\b/, why)).toEqual([]);
});

test("the same recipe gives the same bytes: no clock, no dice, no locale", () => {
  const inside = ({ file }: SourceFile): boolean => isIn(file, "grammar") || isIn(file, "kernel");
  const changing =
    /\bnew Date\b|\bDate\.now\b|\bperformance\.|\bMath\.random\b|\bcrypto\.|\.toLocale\w*|\bIntl\.|\blocaleCompare\b|\bprocess\.|\bsetTimeout\b/;
  expect(holds(inside, changing, "what comes out depends on nothing but the recipe.")).toEqual([]);
  expect("const a = Math.random();").toMatch(changing);
  expect("a.toLocaleLowerCase()").toMatch(changing);
});

test("the user's words never index a plain object", () => {
  const inside = ({ file }: SourceFile): boolean => isIn(file, "grammar") || isIn(file, "kernel");
  expect(holds(inside, /\b(?:hasOwnProperty|__proto__)\b|\bObject\.assign\b/, "tables of names are Maps.")).toEqual([]);
});

test("no file re-exports another", () => {
  const isReexport = /(?:^|\n)\s*export\s+(?:\*|(?:type\s+)?\{[^}]*\})\s+from\b/;
  expect(sources.filter(({ text }) => isReexport.test(text)).map(({ file }) => file)).toEqual([]);
});
