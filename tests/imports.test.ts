// Which file may know which. The arrows between the folders are what keeps a step readable by itself, and the kernel and
// the page free of files and clocks; a new import that goes the wrong way is told in a sentence.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, posix } from "node:path";
import { expect, test } from "vitest";

interface SourceFile {
  readonly file: string;
  readonly text: string;
  /** What it imports: files of ours by their path from the root, packages by their name. */
  readonly imports: readonly string[];
  /** The same without what is imported for its types alone, of which nothing is left when the program runs. */
  readonly needs: readonly string[];
}

const root = new URL("../", import.meta.url);
const importLine =
  /(?:^|\n)\s*(?:import|export)\b(\s+type\b(?!\s*(?:,|from\b)))?[^;"']*?from\s*["']([^"']+)["']|import\s*\(?\s*["']([^"']+)["']/g;

/** What a file imports; exported lines and dynamic imports count too. */
const importsOf = (file: string, text: string): { path: string; isType: boolean }[] =>
  [...text.matchAll(importLine)].map(([, type, from, bare]) => {
    const path = from ?? bare!;
    return { path: path.startsWith(".") ? posix.join(dirname(file), path) : path, isType: type !== undefined };
  });

const sources: readonly SourceFile[] = ["grammar", "kernel", "editor"].flatMap((folder) =>
  readdirSync(new URL(`${folder}/`, root), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => {
      const file = `${folder}/${name}`;
      const text = readFileSync(new URL(file, root), "utf8");
      const found = importsOf(file, text);
      const needs = found.filter(({ isType }) => !isType).map((each) => each.path);
      return { file, text, imports: found.map((each) => each.path), needs };
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
  expect(sources.filter(({ file }) => file.endsWith(".tsx")).length).toBeGreaterThan(10);
  const sample =
    'import a from "b";\nimport type { C } from "../kernel/c.ts";\nimport {\n  d,\n} from "./d.ts";\nexport * from "./e.ts";\nconst f = await import("./f.ts");\nimport "g";\nimport type H from "h";\nimport { type I, i } from "i";';
  expect(importsOf("grammar/x.ts", sample).map(({ path, isType }) => (isType ? `type ${path}` : path))).toEqual([
    "b",
    "type kernel/c.ts",
    "grammar/d.ts",
    "grammar/e.ts",
    "grammar/f.ts",
    "g",
    "type h",
    "i",
  ]);
});

test("the grammar knows chevrotain and itself", () => {
  const allowed = (path: string): boolean => isIn(path, "grammar") || path === "chevrotain";
  expect(wrong(({ file }) => isIn(file, "grammar"), allowed, "the grammar knows no step and no garment.")).toEqual([]);
});

/** Packages of the kernel, each behind the files that alone know it. */
const packagesKnown = new Map([
  ["kernel/cloth/hang/world.ts", "@dimforge/rapier2d-compat"],
  ["kernel/cloth/lay/outer-polygon.ts", "clipper2-ts"],
  ["kernel/compare/cloth-between.ts", "clipper2-ts"],
  ["kernel/lettering/lettering.ts", "opentype.js"],
  ["kernel/packing/is-valid-layout.ts", "clipper2-ts"],
  ["kernel/packing/no-fit.ts", "clipper2-ts"],
  ["kernel/paper/pdf.ts", "@cantoo/pdf-lib"],
  ["kernel/paper/pdf-letters.ts", "@cantoo/pdf-lib"],
]);

test("the kernel knows the grammar and itself, and packages only where they belong", () => {
  const allowed = (path: string, { file }: SourceFile): boolean =>
    isIn(path, "grammar") || isIn(path, "kernel") || packagesKnown.get(file) === path;
  expect(
    wrong(({ file }) => isIn(file, "kernel"), allowed, "the kernel knows no file, no page and no package."),
  ).toEqual([]);
  // The hang preview settles its cloth where that is asked for, and nowhere else.
  const world = "kernel/cloth/hang/world.ts";
  const needsWorld = sources.filter(({ needs }) => needs.includes(world)).map(({ file }) => file);
  expect(needsWorld.sort()).toEqual(["editor/page/hang/settler.ts", "kernel/cloth/hang/settled.ts"]);
  expect(sourceOf.get("kernel/cloth/hang/settled.ts")!.text).toContain('await import("./world.ts")');
});

test("geometry knows geometry", () => {
  const allowed = (path: string): boolean => isIn(path, "kernel/geometry");
  expect(wrong(({ file }) => isIn(file, "kernel/geometry"), allowed, "geometry would serve any drawing.")).toEqual([]);
});

test("packing knows geometry and no garment", () => {
  const known = ["kernel/stress/seeded.ts", "clipper2-ts"];
  const allowed = (path: string): boolean =>
    isIn(path, "kernel/packing") || isIn(path, "kernel/geometry") || known.includes(path);
  expect(wrong(({ file }) => isIn(file, "kernel/packing"), allowed, "packing would serve any shapes.")).toEqual([]);
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
  const known = ["kernel/drawing", "kernel/geometry", "kernel/lettering", "kernel/export"];
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

const touchesFiles =
  /^(?:node:.*|fs|fs\/promises|child_process|net|http|https|worker_threads|os|process|path|vscode-languageserver.*)$/;

test("only the terminal and the files beside it touch the file system", () => {
  const may = ({ file }: SourceFile): boolean =>
    !/^editor\/(?:terminal|files|batch|server|language-server)\//.test(file);
  expect(
    wrong(may, (path) => !touchesFiles.test(path), "it has no file system; whoever calls it reads and writes."),
  ).toEqual([]);
});

test("only the two ends of a batch's queue reach a network, and are loaded only where a queue is asked for", () => {
  const queue = /^editor\/batch\/queue(?:-drafter|-jobs|-worker)?\.ts$/;
  const networked = /^(?:bullmq|ioredis)$/;
  const why = "the program reaches no network, but for the queue that somebody asks for.";
  expect(
    wrong(
      ({ file }) => !queue.test(file),
      (path) => !networked.test(path),
      why,
    ),
  ).toEqual([]);
  // Everybody else goes through imports on demand.
  const needsQueue = sources.filter(({ file, needs }) => !queue.test(file) && needs.some((path) => queue.test(path)));
  expect(needsQueue.map(({ file }) => file).sort()).toEqual([
    "editor/batch/drafter-for.ts",
    "editor/terminal/batch-worker.ts",
  ]);
  expect(sourceOf.get("editor/batch/drafter-for.ts")!.text).toContain('await import("./queue-drafter.ts")');
  const needsWorker = sources.filter(({ needs }) => needs.includes("editor/terminal/batch-worker.ts"));
  expect(needsWorker.map(({ file }) => file)).toEqual(["editor/terminal/commands/batch-worker.ts"]);
  expect(needsWorker[0]!.text).toContain('await import("../batch-worker.ts")');
  const pools = ["editor/batch/thread-pool.ts", "editor/terminal/packer-threads.ts"];
  const pool = ({ file }: SourceFile): boolean => !pools.includes(file);
  expect(wrong(pool, (path) => path !== "piscina", `only ${pools.join(" and ")} know the pool.`)).toEqual([]);
});

const sourceOf = new Map(sources.map((source) => [source.file, source]));

/** What a file needs to run, whatever files it goes through, each with the way there. */
const reached = (start: string): Map<string, readonly string[]> => {
  const ways = new Map<string, readonly string[]>([[start, [start]]]);
  for (const [file, way] of ways)
    for (const path of sourceOf.get(file)?.needs ?? []) if (!ways.has(path)) ways.set(path, [...way, path]);
  return ways;
};

test.each(["editor/page", "editor/assist", "editor/picture", "editor/paper", "editor/bring-in", "kernel", "grammar"])(
  "nothing that %s needs touches the file system, through whatever files",
  (folder) => {
    const files = sources.filter(({ file }) => isIn(file, folder));
    expect(files.length).toBeGreaterThan(0);
    const ways = files.flatMap(({ file }) => [...reached(file)].filter(([path]) => touchesFiles.test(path)));
    expect(ways.map(([, way]) => `${way.join(" needs ")}: it runs where there are no files.`)).toEqual([]);
  },
);

test("the chains are followed to their end", () => {
  const terminal = [...reached("editor/terminal/main.ts")].filter(([path]) => touchesFiles.test(path));
  expect(terminal.some(([, way]) => way.length > 2)).toBe(true);
});

/** Files that need one another in a ring: the shortest ring that each stands in, told from its first file by name. */
const rings = (needs: ReadonlyMap<string, readonly string[]>): string[] => {
  const found = [...needs.keys()].flatMap((file) => {
    const way = wayBack(needs, file);
    if (!way) return [];
    const first = way.indexOf([...way].sort()[0]!);
    return [[...way.slice(first), ...way.slice(0, first + 1)].join(" needs ")];
  });
  return [...new Set(found)].sort();
};

/** The shortest way from a file through what it needs back to itself; undefined where none leads there. */
const wayBack = (needs: ReadonlyMap<string, readonly string[]>, start: string): readonly string[] | undefined => {
  const ways = new Map<string, readonly string[]>([[start, [start]]]);
  for (const [file, way] of ways) {
    for (const path of needs.get(file) ?? []) {
      if (path === start) return way;
      if (!ways.has(path)) ways.set(path, [...way, path]);
    }
  }
  return undefined;
};

test("no files need one another in a ring", () => {
  // A path finds its corners by going along it, and going along it is made of paths: nothing of either runs on loading.
  const known = "kernel/geometry/arc-length.ts needs kernel/geometry/path.ts needs kernel/geometry/arc-length.ts";
  expect(rings(new Map(sources.map(({ file, needs }) => [file, needs])))).toEqual([known]);
  const sample = { d: ["b", "e"], b: ["c"], c: ["a", "d"], a: ["b"], e: ["e"] };
  expect(rings(new Map(Object.entries(sample)))).toEqual([
    "a needs b needs c needs a",
    "b needs c needs d needs b",
    "e needs e",
  ]);
});

test("imports carry their ending, and lead to files that are there", () => {
  const leadsNowhere = (path: string): boolean =>
    isOurs(path) && !(/\.\w+$/.test(path) && existsSync(new URL(path, root)));
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

test("the grammar and the kernel run without a page", () => {
  const inside = ({ file }: SourceFile): boolean => isIn(file, "grammar") || isIn(file, "kernel");
  const ofThePage =
    /\b(?:document|window|navigator|self|globalThis|localStorage|sessionStorage|indexedDB|caches)\s*\??\.|\b(?:fetch|postMessage|requestAnimationFrame|getComputedStyle|matchMedia)\(|\bnew (?:Worker|WebSocket|XMLHttpRequest|DOMParser|Blob|Image|FileReader)\b|\b(?:HTML|SVG)\w*Element\b|\breference\s+lib\s*=/;
  expect(holds(inside, ofThePage, "it works recipes, and knows no page.")).toEqual([]);
  expect('const a = document.querySelector("b");').toMatch(ofThePage);
  expect("const a = (b: SVGPathElement) => b;").toMatch(ofThePage);
  // Without the DOM among the libraries the compiler knows none of its names either.
  const { compilerOptions } = JSON.parse(readFileSync(new URL("tsconfig.json", root), "utf8"));
  expect(compilerOptions.lib).toEqual(["ES2023"]);
});

test("the user's words never index a plain object", () => {
  const inside = ({ file }: SourceFile): boolean => isIn(file, "grammar") || isIn(file, "kernel");
  expect(holds(inside, /\b(?:hasOwnProperty|__proto__)\b|\bObject\.assign\b/, "tables of names are Maps.")).toEqual([]);
});

test("no file re-exports another", () => {
  const isReexport = /(?:^|\n)\s*export\s+(?:\*|(?:type\s+)?\{[^}]*\})\s+from\b/;
  expect(sources.filter(({ text }) => isReexport.test(text)).map(({ file }) => file)).toEqual([]);
});
