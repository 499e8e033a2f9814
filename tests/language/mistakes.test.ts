// Several mistakes in one recipe: each is told on its own line, and nothing else changes.
import fc from "fast-check";
import { expect, test } from "vitest";
import { workedRecipe, workedText } from "../worked-recipe.ts";
import { recipes } from "./recipe-texts.ts";
import { parse } from "./told.ts";

const { text } = recipes.find(({ name }) => name === "lobby-coat-swing.chalk")!;
const lines = text.trimEnd().split("\n");

/** Mistakes that stand in a piece as well as outside, with their codes; # is for a number that makes names of their own. */
const mistakes: readonly (readonly [string, string])[] = [
  ["wobble hem#", "step-unknown"],
  ["let m# = 3 cm + 4 deg", "dimension"],
  ["let m# = (3 cm", "bracket-open"],
  ["let m# = nothing# * 2", "name-unknown"],
  ["let m# 3 cm", "equals-missing"],
  ["let end = 3 cm", "name-reserved"],
  ['let m# = "open', "text-open"],
  ["let m# = 3 cm; 4 cm", "character-strange"],
  ["let m# = sqrt(-1)", "root-negative"],
  ["let m# = distance((0, 0))", "value-count"],
  ["if 3 cm { let m# = 1 }", "value-kind"],
  ["repeat 1.5 as i { let m# = 1 }", "whole-number"],
  ["check 3 cm = 3 deg", "dimension"],
];
/** Lines of the recipe that a mistake may be put above: those on which a statement begins, at the top and in pieces. */
const gaps = parse({ file: "test.chalk", text })
  .tree.lines.slice(1)
  .flatMap((line) => [line, ...(line.verb.text === "piece" ? (line.block?.lines ?? []) : [])])
  .map(({ from }) => text.slice(0, from).split("\n").length - 1);

const clean = workedRecipe("lobby-coat-swing.chalk");

test("the recipe is clean without them", () => {
  expect(clean.findings).toEqual([]);
});

test("each is told on its own line", () => {
  const some = fc.uniqueArray(fc.record({ gap: fc.constantFrom(...gaps), mistake: fc.constantFrom(...mistakes) }), {
    minLength: 1,
    maxLength: 8,
    selector: ({ gap }) => gap,
  });
  fc.assert(
    fc.property(some, (chosen) => {
      const sorted = [...chosen].sort((a, b) => a.gap - b.gap);
      const marred = [...lines];
      const expected = sorted.map(({ gap, mistake: [written, code] }, index) => {
        marred.splice(gap + index, 0, written.replaceAll("#", String(index)));
        return `${gap + index + 1} ${code}`;
      });
      const { findings, garment } = workedText(marred.join("\n"));
      const told = findings
        .filter(({ where }) => where.file === "test.chalk")
        .map(({ code, where }) => `${where.line} ${code}`);
      expect(told.filter((each) => expected.includes(each))).toEqual(expected);
      // Of a piece with a mistake in it nothing is judged but its own line; no other error comes up anywhere.
      expect(findings.filter(({ severity }) => severity === "error")).toHaveLength(expected.length);
      expect([...garment.pieces.keys()]).toEqual([...clean.garment.pieces.keys()]);
      for (const [name, piece] of garment.pieces) {
        expect([...piece.edges].map(([edge, { path }]) => [edge, path])).toEqual(
          [...clean.garment.pieces.get(name)!.edges].map(([edge, { path }]) => [edge, path]),
        );
      }
    }),
    { seed: 11, numRuns: 25 },
  );
});
