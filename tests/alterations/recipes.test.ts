// The alterations as a pattern maker writes them: whole recipes, the record in words, and lengths against hand reckoning.
import { describe, expect, test } from "vitest";
import { kernel, type Outcome } from "../../kernel/kernel.ts";
import { tellStep } from "../../kernel/record.ts";
import type { Sources } from "../../kernel/sources.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { areaOf, lengthOf, placeOf } from "./made-piece.ts";

const atelier = kernel(vocabulary);
const worked = (text: string, sources?: Sources): Outcome =>
  atelier.work({ file: "test.chalk", text }, sources ? { sources } : {});
const complaints = ({ findings }: Outcome): string[] =>
  findings.filter(({ severity }) => severity === "error").map(({ message }) => message);
const told = (outcome: Outcome): string[] =>
  outcome.records.map((record) => tellStep(record, outcome.garment)).filter((words) => words !== "");

/** A half back of 30 x 100 cm, on the fold at its center, with a sloping shoulder. */
const block = `chalkline 1
units cm
piece block {
  point nape = (0, 0)
  point tip = (20 cm, 4 cm)
  point underarm = (30 cm, 25 cm)
  curve neck = nape to (8 cm, 0) leaving right arriving right
  line shoulder = (8 cm, 0) to tip
  curve armscye = tip to underarm leaving down arriving right
  line side = underarm to (30 cm, 100 cm)
  line hem = (0, 100 cm) to (30 cm, 100 cm)
  line center = nape to (0, 100 cm)
  outline center, neck, shoulder, armscye, side, hem
  mark hem as hem
  mark center as fold
  notch side at 20 cm
}
`;

describe("a back that is flared, lengthened and trued", () => {
  const outcome = worked(`${block}
piece back = block {
  spread-from nape along center to hem by 4 cm
  spread-from shoulder at 50% to hem by 9 cm
  extend-hem hem by 6 cm
  true-seam hem, neck, shoulder
  keep neck, shoulder, armscye
}
fabric shell "gabardine" width 150 cm
cut back 1 from shell
`);
  const [before, back] = [outcome.garment.pieces.get("block")!, outcome.garment.pieces.get("back")!];

  test("has no complaint", () => expect(complaints(outcome)).toEqual([]));
  test("keeps what it is to keep, within 0.5 mm", () => {
    for (const edge of ["neck", "shoulder", "armscye"])
      expect(Math.abs(lengthOf(back, edge) - lengthOf(before, edge))).toBeLessThan(0.5);
    expect(lengthOf(back, "side")).toBeCloseTo(lengthOf(before, "side") + 60, 6);
    expect(lengthOf(back, "center")).toBeCloseTo(1060, 9);
  });
  test("has the hem that the arcs add up to", () => {
    // The slash from the shoulder is hinged halfway along it, at (14, 2) cm, so 98 cm above the hem; both arcs grow with the length.
    const atFold = 2 * Math.asin(20 / 1000) * 1060;
    const atShoulder = 2 * Math.asin(45 / 980) * 1040;
    expect(lengthOf(back, "hem")).toBeCloseTo(300 + atFold + atShoulder, 1);
  });
  test("tells every step in words, and what the fold doubles", () => {
    expect(told(outcome).slice(0, 3)).toEqual([
      "opened 4 cm at the hem, 2.3 deg about nape: 8 cm in the garment; hem 30 cm to 34 cm",
      "opened 9 cm at the hem, 5.3 deg about the shoulder: 18 cm in the garment; hem 34 cm to 43 cm",
      expect.stringMatching(
        /^lengthened 6 cm at the hem; center 100 cm to 106 cm; side 75 cm to 81 cm; hem 43 cm to 43\.79 cm$/,
      ),
    ]);
  });
  test("leaves its source as it was", () => {
    expect(lengthOf(before, "hem")).toBe(300);
    expect(placeOf(before, "tip")).toEqual({ x: 200, y: 40 });
  });
});

test("the 8 slashes of 60 in a piece that is cut twice add 960 in the garment", () => {
  // Source: handbook of the trade, check value 32.
  const outcome =
    worked(`${block.replace("  mark center as fold\n", "").replace("piece block {", "piece block {\n  point top = (4 cm, 0)")}
piece back = block {
  repeat 8 as n {
    spread-from shoulder at n / 9 to hem by 6 cm
  }
}
fabric shell "gabardine" width 150 cm
cut back 2 from shell
`);
  expect(complaints(outcome)).toEqual([]);
  const inGarment = told(outcome).map((words) => /: ([\d.]+) cm in the garment/.exec(words)?.[1] ?? "0");
  expect(inGarment.reduce((sum, words) => sum + Number(words), 0)).toBe(96);
  expect(lengthOf(outcome.garment.pieces.get("back")!, "hem")).toBeCloseTo(300 + 480, 6);
});

test("opening and closing by a parameter of 0 or its minus leaves the block as it was", () => {
  const outcome = worked(`${block}
param flare = 9 cm from -20 cm to 20 cm "opening"
piece same = block {
  spread-from shoulder at 50% to hem by flare - 9 cm
  spread-from shoulder at 50% to hem by flare
  spread-from shoulder at 50% to hem by -flare
}
`);
  expect(complaints(outcome)).toEqual([]);
  const [before, same] = [outcome.garment.pieces.get("block")!, outcome.garment.pieces.get("same")!];
  for (const edge of before.edges.keys()) expect(lengthOf(same, edge)).toBeCloseTo(lengthOf(before, edge), 6);
  expect(areaOf(same)).toBeCloseTo(areaOf(before), 3);
});

test("an armhole is moved, replaced and bound", () => {
  const outcome = worked(`${block}
piece vest = block {
  move tip to shoulder at end - 3 cm
  move underarm to side at 4 cm
  curve armhole = underarm to tip leaving left arriving square-to shoulder
  replace armscye with armhole
  allow armhole by 0
}
`);
  expect(complaints(outcome)).toEqual([]);
  const vest = outcome.garment.pieces.get("vest")!;
  expect(vest.outline.map(({ edge }) => edge)).toEqual(["center", "neck", "shoulder", "armhole", "side", "hem"]);
  expect(lengthOf(vest, "shoulder")).toBeCloseTo(Math.hypot(120, 40) - 30, 6);
  expect(lengthOf(vest, "side")).toBeCloseTo(710, 9);
  expect(vest.notches[0]!.point).toEqual({ x: 300, y: 450 });
});

test("each of the three options of true-seam can be written", () => {
  const flared = (line: string): Outcome =>
    worked(`${block}
piece back = block {
  spread-from shoulder at 50% to hem by 9 cm
  true-seam hem
  ${line}
}
`);
  for (const line of [
    "true-seam shoulder holding length",
    "true-seam neck keeping ends",
    "true-seam side to 80 cm moving end",
  ]) {
    const outcome = flared(line);
    expect([line, ...complaints(outcome)]).toEqual([line]);
  }
  const length = lengthOf(flared("true-seam shoulder holding length").garment.pieces.get("back")!, "shoulder");
  expect(Math.abs(length - Math.hypot(120, 40))).toBeLessThan(0.001);
});

test("the examples of these steps come out clean", () => {
  const own = new Set(["spread-from", "extend-hem", "true-seam", "strip", "replace", "move", "allow"]);
  const steps = vocabulary.steps.filter(({ name }) => own.has(name));
  expect(steps).toHaveLength(own.size);
  for (const { name, example } of steps)
    expect([name, ...worked(example).findings.map(({ message }) => message)]).toEqual([name]);
});
