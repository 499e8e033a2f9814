// How a picture lies on the paper, and what is said when too little or nonsense is known of it.
import { expect, test } from "vitest";
import { sentBy } from "../../../editor/paper/homography.ts";
import { lengthWritten } from "../../../editor/paper/length-written.ts";
import { type KnownDistance, type KnownRectangle, pixelAt, straightened } from "../../../editor/paper/straightened.ts";
import type { Point } from "../../../kernel/geometry/point.ts";

const at = (x: number, y: number): Point => ({ x, y });
const noRectangle: KnownRectangle = { corners: [], width: 200, height: 200 };
const noDistance: KnownDistance = { points: [], length: undefined };
const seen = [at(100, 100), at(300, 100), at(400, 500), at(0, 500)];

const onPaper = (rectangle: KnownRectangle, known: KnownDistance, spot: Point): Point | undefined => {
  const found = straightened(rectangle, known);
  if ("words" in found) throw new Error(found.words);
  return sentBy(found.toPaper, spot);
};

const said = (rectangle: KnownRectangle, known: KnownDistance): string => {
  const found = straightened(rectangle, known);
  return "words" in found ? `${found.part}: ${found.words}` : "";
};

test("a scan is measured by two points alone: 300 pixels that are 15 cm make a pixel half a millimetre", () => {
  const known = { points: [at(10, 10), at(10, 310)], length: 150 };
  expect(onPaper(noRectangle, known, at(100, 40))).toEqual({ x: 50, y: 20 });
  const found = straightened(noRectangle, known);
  expect("words" in found ? undefined : pixelAt(found, at(5, 5))).toBeCloseTo(0.5, 9);
});

test("a rectangle straightens, whichever way round it is clicked, its first corner top left", () => {
  const rectangle = { corners: seen, width: 200, height: 300 };
  const other = { ...rectangle, corners: [seen[0]!, seen[3]!, seen[2]!, seen[1]!] };
  for (const each of [rectangle, other]) {
    const corner = onPaper(each, noDistance, at(400, 500));
    expect(corner?.x).toBeCloseTo(200, 9);
    expect(corner?.y).toBeCloseTo(300, 9);
  }
  // The middle of a rectangle is where its diagonals cross. What is seen is the same left and right of x = 200, and there the one
  // from (100, 100) to (400, 500), which falls 4 px in every 3, is at y = 100 + 400 / 3.
  const middle = onPaper(rectangle, noDistance, at(200, 100 + 400 / 3));
  expect(middle?.x).toBeCloseTo(100, 9);
  expect(middle?.y).toBeCloseTo(150, 9);
});

test("two points correct a rectangle: its sides keep their proportion", () => {
  const rectangle = { corners: seen, width: 200, height: 300 };
  const corner = onPaper(rectangle, { points: [at(100, 100), at(300, 100)], length: 210 }, at(400, 500));
  expect(corner?.x).toBeCloseTo(210, 9);
  expect(corner?.y).toBeCloseTo(315, 9);
});

test("what is missing or cannot be is said at its place", () => {
  const known = { points: [at(0, 0), at(100, 0)], length: 100 };
  const withCorners = (corners: Point[]): KnownRectangle => ({ corners, width: 200, height: 200 });
  expect(said(noRectangle, noDistance)).toMatch(/^size: Its size is not known/);
  expect(said(noRectangle, { points: [at(0, 0)], length: 100 })).toBe("size: 1 of the 2 points is set.");
  expect(said(noRectangle, { ...known, length: 0 })).toMatch(/^size: Write how far apart/);
  expect(said(noRectangle, { ...known, length: undefined })).toMatch(/^size: Write how far apart/);
  expect(said(noRectangle, { points: [at(5, 5), at(5.5, 5)], length: 10 })).toMatch(/^size: .*one spot/);
  expect(said(withCorners([at(0, 0), at(9, 0)]), known)).toBe("straighten: 2 of the rectangle's 4 corners are set.");
  expect(said(withCorners([at(0, 0), at(50, 0), at(100, 0), at(0, 100)]), known)).toMatch(/^straighten: .*one line/);
  expect(said(withCorners([at(0, 0), at(0, 0), at(100, 100), at(0, 100)]), known)).toMatch(/^straighten: .*one line/);
  expect(said(withCorners([at(0, 0), at(100, 100), at(100, 0), at(0, 100)]), known)).toMatch(/^straighten: .*in turn/);
  expect(said(withCorners([at(0, 0), at(100, 0), at(30, 30), at(0, 100)]), known)).toMatch(/^straighten: .*inside/);
  for (const width of [0, undefined])
    expect(said({ corners: seen, width, height: 10 }, noDistance)).toMatch(/^straighten: Write how long/);
  // Sides that go from 200 px to 400 px over 400 px meet 400 px above the shorter one: what lies there is the horizon.
  expect(
    said({ corners: seen, width: 200, height: 200 }, { points: [at(200, 200), at(200, -310)], length: 9 }),
  ).toMatch(/^size: .*horizon/);
});

test("lengths are read as they are written, and nothing else is", () => {
  // An inch is 25.4 mm (international yard and pound agreement of 1959).
  const lengths: [string, "cm" | "in", number | undefined][] = [
    ["21", "cm", 210],
    [" 29,7 ", "cm", 297],
    ["29.7", "cm", 297],
    ["297 mm", "in", 297],
    ["8 1/2", "in", 215.9],
    ["5/8", "in", 15.875],
    ["11in", "cm", 279.4],
    ["0", "cm", 0],
    ["", "cm", undefined],
    ["-3", "cm", undefined],
    ["8 2", "in", undefined],
    ["1/0", "in", undefined],
    ["two", "cm", undefined],
    ["3 yd", "cm", undefined],
    ["1e3", "cm", undefined],
  ];
  for (const [written, units, wanted] of lengths) {
    const found = lengthWritten(written, units);
    if (wanted === undefined) expect(found, written).toBeUndefined();
    else expect(found, written).toBeCloseTo(wanted, 9);
  }
});
