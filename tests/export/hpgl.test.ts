// HP-GL for pen plotters, read back by a few lines that know IN, SP, PU and PD (HP-GL reference: 0.025 mm to the unit, y up).
import { describe, expect, test } from "vitest";
import type { Drawing, StrokeKind } from "../../kernel/drawing/drawing.ts";
import { hpgl } from "../../kernel/export/hpgl.ts";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { straight } from "../../kernel/geometry/path.ts";
import { nested } from "../../kernel/sizes/nested.ts";
import { at } from "../cloth/made-piece.ts";
import { hostileGarment, hostileWords, recipeGarment, sheetOf, sizesOf, vest } from "./export-garments.ts";

interface Plotted {
  readonly pen: number;
  readonly points: [number, number][];
}

/** Lines with the pen down, in mm from the lower left. */
const read = (file: string): Plotted[] => {
  let [pen, position]: [number, [number, number]] = [0, [0, 0]];
  const lines: Plotted[] = [];
  for (const [, code, values] of file.matchAll(/([A-Z]{2})([^;]*);/g)) {
    const numbers = values === "" ? [] : values!.split(",").map(Number);
    if (code === "SP") pen = numbers[0]!;
    const places = numbers.flatMap((x, i) => (i % 2 === 0 ? [[x / 40, numbers[i + 1]! / 40] as [number, number]] : []));
    if (code === "PD") lines.push({ pen, points: [position, ...places] });
    if (code === "PU" || code === "PD") position = places[places.length - 1] ?? position;
  }
  return lines;
};

const lengthOf = ({ points }: Plotted): number =>
  points.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0);

const strokesOf = (drawing: Drawing, ...kinds: StrokeKind[]) =>
  drawing.groups.flatMap(({ strokes }) => strokes.filter(({ kind }) => kinds.includes(kind)));

const drawings = new Map<string, Drawing>([
  ["vest", sheetOf(vest)],
  ["uneven jacket", sheetOf(recipeGarment("uneven-jacket.chalk"))],
  ["nest", nested(sizesOf("blocks/fitted-bodice.chalk"), { choices: [] }).sheet],
]);

describe.each([...drawings])("the plot of the %s", (_, drawing) => {
  const file = hpgl(drawing);
  const lines = read(file);

  test("has instructions that every plotter knows, whole numbers, one instruction a line", () => {
    expect(file.startsWith("IN;\n")).toBe(true);
    expect(file.endsWith("PU;\nSP0;\n")).toBe(true);
    for (const line of file.trimEnd().split("\n")) expect(line).toMatch(/^(?:IN|PU|SP\d|P[UD]\d+,\d+(?:,\d+,\d+)*);$/);
  });

  test("covers the paper that the drawing covers", () => {
    const { paper } = drawing;
    const box = bounds(
      drawing.groups.flatMap(({ strokes }) => strokes.filter(({ kind }) => kind !== "before").map(({ path }) => path)),
    );
    const [xs, ys] = [0, 1].map((i) => lines.flatMap(({ points }) => points.map((p) => p[i]!))) as [number[], number[]];
    const found = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
    const wanted = [box.left - paper.left, paper.bottom - box.bottom, box.right - paper.left, paper.bottom - box.top];
    // Half a unit, and a curve's bent line.
    for (const [i, each] of wanted.entries()) expect(Math.abs(each - found[i]!)).toBeLessThan(0.07);
  });

  test("has as many millimetres of marks to read as the drawing", () => {
    const wanted = strokesOf(drawing, "grain", "fold-bracket", "arrowhead", "scale-square", "frame");
    const found = lines.filter(({ pen }) => pen === 3).reduce((sum, line) => sum + lengthOf(line), 0);
    const length = wanted.reduce((sum, { path }) => sum + pathLength(path), 0);
    expect(Math.abs(found - length) / length).toBeLessThan(0.001);
  });
});

test("solid cutting lines are as long as they are drawn, dashed sewing lines about two thirds", () => {
  const drawing = drawings.get("vest")!;
  const lines = read(hpgl(drawing));
  const penDown = (pen: number): number =>
    lines.filter((line) => line.pen === pen).reduce((sum, line) => sum + lengthOf(line), 0);
  const drawn = (...kinds: StrokeKind[]): number =>
    strokesOf(drawing, ...kinds).reduce((sum, { path }) => sum + pathLength(path), 0);
  expect(Math.abs(penDown(1) / drawn("cutting-line", "notch") - 1)).toBeLessThan(0.001);
  const dashed = penDown(2) - drawn("inner-line", "drill", "dart-center");
  // A dash of 4 and a gap of 2, of hems 12 of 16, of folds 16 of 20.
  const expected = (drawn("sewing-line") * 4) / 6 + (drawn("hem-line") * 12) / 16 + (drawn("fold") * 16) / 20;
  expect(Math.abs(dashed / expected - 1)).toBeLessThan(0.02);
});

test("what a piece was before is not plotted, as a pen has no grey", () => {
  const drawing = drawings.get("vest")!;
  expect(strokesOf(drawing, "before").length).toBeGreaterThan(0);
  const without = {
    ...drawing,
    groups: drawing.groups.map((group) => ({
      ...group,
      strokes: group.strokes.filter(({ kind }) => kind !== "before"),
    })),
  };
  expect(hpgl(drawing)).toBe(hpgl(without));
});

test("no number leaves the plotter's range, and none that is no number is written", () => {
  const far = (x: number): Drawing => ({
    title: "",
    words: "",
    paper: { left: 0, top: 0, right: 100, bottom: 100 },
    groups: [
      {
        of: "piece",
        name: "a",
        words: "",
        strokes: [{ kind: "cutting-line", path: straight(at(-50, 50), at(x, 300)) }],
        texts: [],
      },
    ],
  });
  expect(hpgl(far(1e9))).toBe(`IN;\nSP1;\nPU0,2000;\nPD${2 ** 23 - 1},0;\nPU;\nSP0;\n`);
  expect(() => hpgl(far(Number.NaN))).toThrow("not finite");
});

test("no word of a recipe is in it", () => {
  for (const word of hostileWords) expect(hpgl(sheetOf(hostileGarment(word)))).toMatch(/^(?:[A-Z]{2}[\d,]*;\n)+$/);
});

test("the same drawing gives the same bytes", () => {
  expect(hpgl(structuredClone(drawings.get("nest")!))).toBe(hpgl(drawings.get("nest")!));
});
