// No text, however it is made, keeps a regular expression busy: every one in the sources is judged by recheck, which looks for texts that
// would, and tried on long texts of the signs that it speaks of. Those that are slower than in proportion stand in a list, with what
// bounds the texts that they are asked about.
import { readdirSync, readFileSync } from "node:fs";
import { checkSync } from "recheck";
import { expect, test } from "vitest";
import { timed } from "../language/told.ts";
import { regexesIn } from "./regexes-in.ts";

const root = new URL("../../", import.meta.url);

/** All expressions of the program, each once, with the first file that it stands in. */
const all: ReadonlyMap<string, { readonly source: string; readonly flags: string; readonly file: string }> = new Map(
  ["grammar", "kernel", "editor"]
    .flatMap((folder) =>
      readdirSync(new URL(`${folder}/`, root), { recursive: true, encoding: "utf8" })
        .filter((name) => /\.tsx?$/.test(name) && !name.endsWith(".d.ts"))
        .map((name) => `${folder}/${name}`),
    )
    .reverse()
    .flatMap((file) =>
      regexesIn(readFileSync(new URL(file, root), "utf8"), file.endsWith("x")).map(
        ({ source, flags }) => [`/${source}/${flags}`, { source, flags, file }] as const,
      ),
    ),
);

/** Expressions that take longer than in proportion: the longest text that they are ever given, and why it is no longer. */
const bounded = new Map<string, { readonly most: number; readonly because: string }>([
  [
    '/"(?:[^"\\\\\\n]|\\\\[^\\n])*"/',
    { most: 2000, because: "asked at one place of a line, and where it fails all the rest is one unclosed text" },
  ],
  ["/\\s+,/g", { most: 400, because: "the sentence of a step, written in its declaration" }],
  ["/0+$/", { most: 330, because: "one number as toFixed writes it" }],
  ["/^-+|-+$/g", { most: 200, because: "a name out of which runs of hyphens were made single, and cut short" }],
  ["/^annotation:\\s*(.*)$/i", { most: 3200, because: "a text of a DXF, cut short by dxfWords" }],
  ["/^piece name:\\s*(.+)$/i", { most: 3200, because: "a text of a DXF, cut short by dxfWords" }],
  ["/^size:\\s*(.+)$/i", { most: 3200, because: "a text of a DXF, cut short by dxfWords" }],
  [
    "/\\\\S([^;]*)[#^/]([^;]*);/g",
    { most: 1600, because: "a text of a DXF, cut short by dxfWords, each code of two signs" },
  ],
  ["/^[^A-Za-z]+|-+$/g", { most: 4000, because: "its hyphens were made single the line before" }],
  ["/-+$/", { most: 40, because: "a name that was cut to 40 letters" }],
  ["/^(.*?)\\s*[([]?\\s*(mm|cm|m|in|ft|yd)?\\s*[)\\]]?$/i", { most: 60, because: "a heading of at most 60 letters" }],
  ["/-?\\d+$/", { most: 200, because: "the name of a layer of at most 200 letters" }],
  ["/^\\s*(?:0\\s*\\r?\\n\\s*SECTION|999\\s*\\r?\\n)/", { most: 1000, because: "the first 1,000 letters of a file" }],
  [
    "/\\$\\{\\d+:((?:\\\\.|[^\\\\}])*)\\}|\\$\\{\\d+\\}|\\$\\d+/g",
    { most: 2000, because: "a line that completion offers, made of a step's own sentence" },
  ],
  ['/[\\p{L}\\d-]+(?=\\.chalk"$)/u', { most: 2000, because: "the path of a use line, a text" }],
  ["/^[-\\d]+|-+$/g", { most: 2000, because: "the words of one clause, of which none is longer" }],
]);

/** Signs that long texts are made of; what an expression says by its letters is added. */
const pumps = [
  " ",
  "\t",
  "\n",
  "\r\n",
  "-",
  "a",
  "Z",
  "0",
  "1.",
  "é",
  "\\",
  "\\S",
  "(",
  ";",
  "|",
  ".",
  '"',
  "<",
  "/",
  "_",
  "a-",
  " a",
  "0 ",
  "night",
  " is ",
];

const tried = (source: string, flags: string, length: number): number => {
  const expression = new RegExp(source, flags);
  const own = source.replace(/\\[A-Za-z]|[^\p{L}\p{N} #^:=<>/-]/gu, "").slice(0, 12);
  return Math.max(
    ...[...pumps, ...(own === "" ? [] : [own])].flatMap((pump) =>
      ["", "\u2028!", "!"].map((end) => {
        const text = pump.repeat(Math.ceil(length / pump.length)).slice(0, length) + end;
        return timed(() => {
          expression.lastIndex = 0;
          expression.test(text);
        });
      }),
    ),
  );
};

test("expressions are told from divisions, texts, templates and comments", () => {
  const sample =
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the sample is a source with a template in it.
    'const a = b / c / d; // /no/\nconst e = "/no/" + `x${/yes[/]1/g.test(`${/yes2/}`)}/no/`;\n/* /no/ */ if (/yes\\/3/u.test(a)) (a) / b;\nreturnsNot / 2 / a;\nconst f = (): RegExp => { return /yes4/; };';
  expect(regexesIn(sample, false).map(({ source, flags }) => `${source} ${flags}`.trim())).toEqual([
    "yes[/]1 g",
    "yes2",
    "yes\\/3 u",
    "yes4",
  ]);
  expect(all.size).toBeGreaterThan(150);
});

test("recheck tells a slow expression when it sees one", () => {
  // The classic of a repeat within a repeat (OWASP, "Regular expression Denial of Service - ReDoS").
  expect(checkSync("^(a+)+$", "", { timeout: 5000 }).status).toBe("vulnerable");
  expect(checkSync("^a+$", "", { timeout: 5000 }).status).toBe("safe");
});

test("every expression is safe, or its texts are short", { timeout: 120_000 }, () => {
  // Without a repeat that has no end nothing can grow with the text.
  const repeating = [...all].filter(([, { source }]) => /[*+]|\{\d+,\}/.test(source));
  expect(repeating.length).toBeGreaterThan(60);
  const slow = repeating.flatMap(([written, { source, flags, file }]) => {
    if (bounded.has(written)) return [];
    const { status } = checkSync(source, flags, { timeout: 400 });
    // Where there was no time for a judgement the long texts below judge.
    return status === "vulnerable" ? [`${file}: ${written}`] : [];
  });
  expect(slow).toEqual([]);
});

test("no expression takes long over a long text", { retry: 1, timeout: 120_000 }, () => {
  for (const [written, { source, flags, file }] of all) {
    const most = bounded.get(written)?.most ?? 5000;
    expect(tried(source, flags, most), `${file}: ${written}`).toBeLessThan(150);
  }
});

test("what stands in the list is there, and is as slow as it says", () => {
  for (const [written, { most, because }] of bounded) {
    expect(all.has(written), written).toBe(true);
    expect(most).toBeLessThanOrEqual(4000);
    expect(because.length).toBeGreaterThan(10);
  }
});
