// A real recipe, spoiled in a few places: what a slip of the hand does to a recipe, and what malice does.
import fc from "fast-check";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { seedRecipes } from "./seed-recipes.ts";
import type { Subject } from "./target.ts";

/** Words to put in the place of others: names that JavaScript knows, and names that nobody made. */
const names = ["a", "__proto__", "constructor", "toString", "hem", "piece", "é", "袖", "x-1", "end", "start"];

/** Numbers at which something turns over. */
const numbers = ["0", "-0", "1", "-1", "0.0001", "1e308", "99999999999999999999", "9007199254740993", "1 1/2", "1/0"];

const units = [" mm", " cm", " m", " in", " yd", " deg", " rad", " gsm", "%", ""];

/** Signs that end, open or turn something in the recipe or in a file that it is written to. */
const hostile = [
  "}",
  "{",
  "(",
  ")",
  ",",
  "=",
  "--",
  '"',
  "\\",
  "#",
  ".",
  "-",
  "@",
  "\u0000",
  "\u202e",
  "\u200b",
  "\ufeff",
  "\r",
  "\r\n",
  "\u2028",
  "\ud800",
  "\u{1f9f5}",
  "]]>",
  "<script>",
  "&amp;",
  "%%u",
  "\x1b[2J",
  "\u0300".repeat(40),
  "0\nSECTION",
  "=1+1",
];

/** One thing that happens to a text; `at`, `to` and `pick` are reduced to what there is. */
interface Slip {
  readonly kind: (typeof kinds)[number];
  readonly at: number;
  readonly to: number;
  readonly pick: number;
}

const kinds = [
  "number",
  "unit",
  "delete",
  "duplicate",
  "swap",
  "rename",
  "take",
  "sign",
  "nest",
  "cut",
  "move",
  "text",
  "texts",
  "line",
  "line",
] as const;

const slip: fc.Arbitrary<Slip> = fc.record({
  kind: fc.constantFrom(...kinds),
  at: fc.nat(1_000_000),
  to: fc.nat(1_000_000),
  pick: fc.nat(1_000_000),
});

/** Recipes of recipes/ with up to six slips in each. */
export const spoiledRecipe: fc.Arbitrary<Subject> = fc
  .tuple(fc.constantFrom(...seedRecipes), fc.array(slip, { minLength: 1, maxLength: 6 }))
  .map(([from, slips]) => ({ from, text: slips.reduce(slipped, from.text) }));

const slipped = (text: string, { kind, at, to, pick }: Slip): string => {
  const lines = text.split("\n");
  const [line, other] = [at % lines.length, to % lines.length];
  switch (kind) {
    case "number":
      return replacedMatch(text, /\d+(?:\.\d+)?/g, at, pickedFrom(numbers, pick));
    case "unit":
      return replacedMatch(text, / (?:cm|mm|deg|in)\b|%/g, at, pickedFrom(units, pick));
    case "rename":
      return replacedMatch(text, /[a-z][a-z0-9-]*/g, at, pickedFrom(names, pick));
    case "take":
      // A word of the recipe in the place of another: what it names is there, and mostly of the wrong kind.
      return replacedMatch(text, /[a-z][a-z0-9-]*/g, at, pickedFrom(text.match(/[a-z][a-z0-9-]*/g) ?? names, pick));
    case "text":
      return replacedMatch(text, /"[^"\n]*"/g, at, `"${pickedFrom(hostile, pick)}${pickedFrom(hostile, to)}"`);
    case "texts":
      // Every text but the paths of used recipes: titles, notes and labels all go into files of their own kind.
      return text.replace(/(?<!use )"([^"\n]*)"/g, (_, said: string) => `"${said}${pickedFrom(hostile, pick)}"`);
    case "delete":
      return lines.toSpliced(line, 1 + (pick % 3)).join("\n");
    case "duplicate":
      return lines.toSpliced(line, 0, lines[line]!).join("\n");
    case "swap":
      return lines.with(line, lines[other]!).with(other, lines[line]!).join("\n");
    case "move":
      return lines.toSpliced(line, 1).toSpliced(other, 0, lines[line]!).join("\n");
    case "nest":
      return lines
        .toSpliced(line, 0, pickedFrom(["repeat 3 as i {", "if 1 = 1 {", "piece p = back {", "{"], pick))
        .toSpliced(other, 0, "}")
        .join("\n");
    case "cut":
      return text.slice(0, at % (text.length + 1));
    case "line": {
      // A line of a step from the manual, inside a piece: a garment meets what it was not made for.
      const inPieces = lines.flatMap((each, index) => (/^ {2}\S/.test(each) ? [index + 1] : []));
      return lines
        .toSpliced(inPieces[at % Math.max(1, inPieces.length)] ?? line, 0, pickedFrom(stepLines, pick))
        .join("\n");
    }
    case "sign": {
      const place = at % (text.length + 1);
      return text.slice(0, place) + pickedFrom(hostile, pick) + text.slice(place);
    }
  }
};

/** The lines of the manual's examples that stand inside a piece. */
const stepLines = vocabulary.steps.flatMap(({ example }) => example.split("\n").filter((each) => /^ {2}\S/.test(each)));

const pickedFrom = <Each>(all: readonly Each[], pick: number): Each => all[pick % all.length]!;

const replacedMatch = (text: string, what: RegExp, at: number, by: string): string => {
  const found = [...text.matchAll(what)];
  const one = found[at % Math.max(1, found.length)];
  return one ? text.slice(0, one.index) + by + text.slice(one.index + one[0].length) : text;
};
