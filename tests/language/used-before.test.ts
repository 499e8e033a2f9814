// A kernel remembers what used recipes came to. Whatever is edited, it must come out as in a kernel that knows nothing yet.
import { expect, test } from "vitest";
import { limits } from "../../grammar/limits.ts";
import { type Circumstances, kernel, type Outcome } from "../../kernel/kernel.ts";
import type { Sources } from "../../kernel/sources.ts";
import { length, type Scalar } from "../../kernel/value.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { recipeSources } from "../worked-recipe.ts";
import { comesTo } from "./without-places.ts";

const sourcesOf = (files: ReadonlyMap<string, string>): Sources => ({
  read: (path) => {
    const text = files.get(path);
    if (text === undefined) return { problem: { code: "file-missing", message: `There is no ${path}.` } };
    return { file: path, text };
  },
});

const block = `chalkline 1
units cm
measure chest = 92 cm
param ease = 4 cm from 0 cm to 20 cm
piece back {
  let width = (chest + ease) / 4
  line top  = (0, 0) to (width, 0)
  line side = (width, 0) to (width, 40 cm)
  line hem  = (0, 40 cm) to (width, 40 cm)
  line fold = (0, 0) to (0, 40 cm)
  outline top, side, hem, fold
}
`;

const vest = `chalkline 1
units cm
use "block.chalk" as straight {
  ease = 6 cm
}
piece back = straight.back {
  extend-hem hem by 2 cm
}
`;

const alike = (one: Outcome, other: Outcome): void => {
  expect(comesTo(one)).toEqual(comesTo(other));
  expect(one.findings).toEqual(other.findings);
  expect(one.judgements).toEqual(other.judgements);
};

/** Works the texts one after another in one kernel, and each in a new one. */
const inARow = (rounds: readonly (readonly [ReadonlyMap<string, string>, Circumstances?])[]): Outcome[] => {
  const long = kernel(vocabulary);
  return rounds.map(([files, given = {}]) => {
    const source = { file: "vest.chalk", text: files.get("vest.chalk")! };
    const circumstances = { ...given, sources: sourcesOf(files) };
    const outcome = long.work(source, circumstances);
    alike(outcome, kernel(vocabulary).work(source, circumstances));
    return outcome;
  });
};

const files = (changes: Readonly<Record<string, string>> = {}): Map<string, string> =>
  new Map(Object.entries({ "vest.chalk": vest, "block.chalk": block, ...changes }));

const hemOf = ({ garment }: Outcome): number => garment.pieces.get("back")!.edges.get("hem")!.path[0]!.end.x;

test("a used recipe that nothing changed for is not worked again", () => {
  const edited = files({ "vest.chalk": vest.replace("by 2 cm", "by 3 cm") });
  const [first, second] = inARow([[files()], [edited]]);
  expect(second!.uses.get("straight")).toBe(first!.uses.get("straight"));
  // A quarter of 92 cm and 6 cm of ease.
  expect(hemOf(second!)).toBeCloseTo(245, 6);
});

test("its own text, a param it is given and a measure of the body make it another", () => {
  const wider = files({ "block.chalk": block.replace("/ 4", "/ 2") });
  const looser = files({ "vest.chalk": vest.replace("6 cm", "10 cm") });
  const measures = new Map<string, Scalar>([["chest", length(1000)]]);
  const own = files({ "vest.chalk": vest.replace("use", "measure chest = 80 cm\nuse") });
  const outcomes = inARow([[files()], [wider], [looser], [files(), { measures }], [own], [files()]]);
  // (92 + 6) / 4, (92 + 6) / 2, (92 + 10) / 4, (100 + 6) / 4, (80 + 6) / 4, and as at first, in mm.
  expect(outcomes.map(hemOf).map((hem) => Math.round(hem * 1e6) / 1e6)).toEqual([245, 490, 255, 265, 215, 245]);
});

test("what a recipe further down asks for counts as well", () => {
  const twice = 'chalkline 1\nunits cm\nuse "block.chalk" as inner { ease = 6 cm }\npiece back = inner.back { }\n';
  const through = files({
    "vest.chalk": vest.replace("block", "twice").replace("  ease = 6 cm\n", ""),
    "twice.chalk": twice,
  });
  const changed = new Map(through).set("block.chalk", block.replace("92 cm", "96 cm"));
  const gone = new Map(through);
  gone.delete("block.chalk");
  const outcomes = inARow([[through], [changed], [gone], [through]]);
  expect(outcomes.map(({ incomplete }) => incomplete)).toEqual([false, false, true, false]);
  // (92 + 6) / 4 and (96 + 6) / 4.
  expect([outcomes[0]!, outcomes[1]!, outcomes[3]!].map(hemOf)).toEqual([245, 255, 245]);
});

test("the measures that one used recipe leaves are found by the next, whether it is worked or remembered", () => {
  const both = `chalkline 1
units cm
use "tall.chalk" as tall
use "block.chalk" as straight
piece back = straight.back { }
`;
  const tall = "chalkline 1\nunits cm\nmeasure chest = 100 cm\n";
  const first = files({ "vest.chalk": both, "tall.chalk": tall });
  const lower = new Map(first).set("tall.chalk", `\n\n${tall}`);
  const outcomes = inARow([[first], [new Map(first).set("vest.chalk", `${both}\n`)], [lower]]);
  expect(outcomes[0]!.findings.map(({ code }) => code)).toEqual(["measure-differs"]);
  // The first default is told with its place, and that has moved.
  expect(outcomes.map(({ findings: [finding] }) => finding!.related![0]!.where.line)).toEqual([3, 3, 5]);
});

test("lines of a remembered recipe are counted like any others", () => {
  const rounds = Math.floor(limits.steps / 2 / limits.rounds);
  const long = `chalkline 1
units cm
${`repeat ${limits.rounds} as i { let a = i }\n`.repeat(rounds - 1)}`;
  const twice = 'chalkline 1\nuse "long.chalk" as one\nuse "long.chalk" as other\n';
  const often = `${twice}use "long.chalk" as third\n`;
  const outcomes = inARow([
    [files({ "vest.chalk": twice, "long.chalk": long })],
    [files({ "vest.chalk": often, "long.chalk": long })],
    [files({ "vest.chalk": `${often}\n`, "long.chalk": long })],
  ]);
  expect(outcomes.map(({ findings }) => findings.map(({ code }) => code))).toEqual([
    [],
    ["limit-steps"],
    ["limit-steps"],
  ]);
});

test("recipes of the workroom come out as ever when they are edited line by line", () => {
  const long = kernel(vocabulary);
  for (const file of ["lobby-coat-swing.chalk", "uneven-jacket.chalk"]) {
    const source = recipeSources.read(file, "");
    if ("problem" in source) throw new Error(source.problem.message);
    const lines = source.text.split("\n");
    for (const left of [lines.length, Math.floor(lines.length * 0.8), Math.floor(lines.length * 0.5)]) {
      const text = lines.filter((_, index) => index !== left).join("\n");
      const circumstances = { sources: recipeSources };
      alike(long.work({ file, text }, circumstances), kernel(vocabulary).work({ file, text }, circumstances));
    }
  }
});
