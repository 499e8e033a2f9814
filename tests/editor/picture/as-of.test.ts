// The table as some of the steps left it.
import { expect, test } from "vitest";
import { picturedAsOf } from "../../../editor/picture/as-of.ts";
import { pictured } from "../../../editor/picture/pictured.ts";
import { panel, worked } from "./worked-picture.ts";

const text = `${panel.replace("  drill A", "  line low = (0, 15 cm) to (20 cm, 15 cm)")}split upper, lower = panel along panel.low
piece copy = lower { }
`;
const outcome = worked(text);
const { records } = outcome;

const after = (step: string, count = 0): number =>
  records.indexOf(records.filter((record) => record.step === step)[count]!) + 1;
const names = (steps: number): string[] => picturedAsOf(outcome, steps).pieces.map(({ name }) => name);

test("before the first step nothing lies there; then the pieces in the order in which they were begun", () => {
  expect(names(0)).toEqual([]);
  expect(names(after("piece"))).toEqual(["panel"]);
  expect(names(after("split"))).toEqual(["panel", "upper", "lower"]);
  expect(names(after("piece", 1))).toEqual(["panel", "upper", "lower", "copy"]);
});

test("a piece has the edges that were drawn by then", () => {
  const [early] = picturedAsOf(outcome, after("line", 1)).pieces;
  expect(early!.edges.map(({ name }) => name)).toEqual(["waist", "side"]);
  expect(early!.shape).toBe("");
});

test("after all steps it is the finished picture", () => {
  expect(picturedAsOf(outcome, records.length)).toEqual(pictured(outcome));
});

test("and so it is where blocks gave names and a line failed", () => {
  const blocks = worked(
    panel
      .replace("  line hem ", "  if 1 < 2 {\n  line hem ")
      .replace("  outline waist, side, hem, fold\n", "  outline waist, side, hem, fold\n  }\n")
      .replace("drill A", "drill nowhere"),
  );
  expect(blocks.garment.pieces.get("panel")!.doubtful).toBe(true);
  expect([...blocks.garment.pieces.get("panel")!.edges.keys()]).toContain("hem");
  expect(picturedAsOf(blocks, blocks.records.length)).toEqual(pictured(blocks));
});
