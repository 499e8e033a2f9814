// The swing coat: what may not change does not, to the last digit, and what should grows by what was asked.
import { describe, expect, test } from "vitest";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import type { StepRecord } from "../../kernel/record.ts";
import { lengthOf, workedRecipe } from "../worked-recipe.ts";

const straight = workedRecipe("blocks/straight-coat.chalk");
const swing = workedRecipe("lobby-coat-swing.chalk");

/** What a slash promises, in mm. */
const exactly = 1e-6;
/** What `keep` allows, in mm: what nobody feels when the collar goes on. */
const kept = 0.5;

const recordsOf = (piece: string, step: string): StepRecord[] =>
  swing.records.filter((record) => record.piece === piece && record.step === step);

const lengthAfter = (record: StepRecord, edge: string): number =>
  pathLength(record.changed[0]!.after.edges.get(edge)!.path);
const lengthBefore = (record: StepRecord, edge: string): number =>
  pathLength(record.changed[0]!.before!.edges.get(edge)!.path);

describe.each(["back", "front"])("the %s of the swing coat", (piece) => {
  const [firstSpread] = recordsOf(piece, "spread-from");
  const lastSpread = recordsOf(piece, "spread-from").at(-1)!;
  const [trued] = recordsOf(piece, "true-seam");

  test.each(["neck", "shoulder", "armscye", "side"])("keeps its %s through every slash", (edge) => {
    expect(Math.abs(lengthAfter(lastSpread, edge) - lengthBefore(firstSpread!, edge))).toBeLessThanOrEqual(exactly);
  });

  test("takes the same sleeve to the end: its armscye is the block's", () => {
    expect(Math.abs(lengthOf(swing, piece, "armscye") - lengthOf(straight, piece, "armscye"))).toBeLessThanOrEqual(
      exactly,
    );
  });

  test.each(["neck", "shoulder"])("loses next to nothing of its %s when it is trued", (edge) => {
    expect(Math.abs(lengthAfter(trued!, edge) - lengthBefore(firstSpread!, edge))).toBeLessThanOrEqual(kept);
  });

  test("has a fuller hem, by at least what was opened", () => {
    const opened = piece === "back" ? 40 + 90 : 90;
    expect(lengthOf(swing, piece, "hem") - lengthBefore(firstSpread!, "hem")).toBeGreaterThanOrEqual(opened);
  });

  test("is longer at the side by what was added, the hem being square to it (common practice, no source)", () => {
    expect(lengthOf(swing, piece, "side") - lengthOf(straight, piece, "side")).toBeCloseTo(60, 6);
  });
});

test("the back's neck is the block's less the 15 mm of allowance that was stripped", () => {
  expect(Math.abs(lengthOf(swing, "back", "neck") - lengthOf(straight, "back", "neck") + 15)).toBeLessThanOrEqual(kept);
});

test("what is opened at the fold comes twice in the garment (trade handbook 4.7)", () => {
  const [atFold] = recordsOf("back", "spread-from");
  expect(atFold!.words).toContain("opened 4 cm");
  expect(atFold!.amount).toBe(40);
});
