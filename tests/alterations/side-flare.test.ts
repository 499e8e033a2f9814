// Flare at a side seam, and length put in across the piece.
import { describe, expect, test } from "vitest";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { corners, cubic, isStraight, straight } from "../../kernel/geometry/path.ts";
import { toDegrees, toRadians } from "../../kernel/geometry/trig.ts";
import { cornersOf } from "../../kernel/outline.ts";
import { flareSide } from "../../kernel/steps/flare-side.ts";
import { lengthenAcross } from "../../kernel/steps/lengthen-across.ts";
import { trueSeam } from "../../kernel/steps/true-seam.ts";
import type { Piece } from "../../kernel/working.ts";
import {
  apart,
  areaOf,
  at,
  lengthOf,
  madePiece,
  nowhere,
  pathOf,
  place,
  placeOf,
  problemOf,
  rectangle,
  worked,
} from "./made-piece.ts";

// Source: handbook of the trade 4.6 and check values 33 to 35 and 56: slope, trim, and the hem corner from the top point.
describe.each([
  [1000, 100, 5.711, 4.988, [99.5, 995.04]],
  [600, 50, 4.764, 2.08, [49.83, 597.93]],
  [755, 60, 4.544, 2.38, [59.81, 752.63]],
] as const)("a side seam of %f flared by %f", (length, amount, slope, trim, corner) => {
  const { now, words } = worked(
    flareSide,
    { edge: "side", hem: "hem", amount },
    rectangle(270, length, { hem: "hem" }),
  );
  test("turns by the slope, and is trimmed to its length", () => {
    const line = pathOf(now, "side")[0]!;
    expect(toDegrees(Math.atan2(line.end.x - line.start.x, line.end.y - line.start.y))).toBeCloseTo(slope, 3);
    expect(lengthOf(now, "side")).toBeCloseTo(length, 9);
    expect(Math.hypot(length, amount) - length).toBeCloseTo(trim, 3);
    expect(words).toBe(
      `flared side by ${amount} mm at the hem, ${Number(slope.toFixed(1))} deg, trimmed ${Number(trim.toFixed(1))} mm to keep its length`,
    );
  });
  test("has its hem corner where the handbook has it", () => {
    expect(apart(placeOf(now, "C"), at(270 + corner[0], corner[1]))).toBeLessThan(0.01);
  });
  test("meets a trued hem squarely", () => {
    const trued = worked(trueSeam, { edges: ["hem"] }, now).now;
    const found = cornersOf(trued).find(({ before }) => before.edge.name === "side")!;
    expect(Math.abs(found.interior - Math.PI / 2)).toBeLessThan(1e-6);
    expect(corners(pathOf(trued, "hem"), toRadians(0.1))).toEqual([]);
  });
});

test("the handbook's coat block gets its hem corner at (329.81, 997.63)", () => {
  // Source: handbook of the trade, check value 56: underarm (270, 245), 1000 long, 60 added.
  const block = madePiece([
    { name: "top", path: straight(at(0, 0), at(270, 245)) },
    { name: "side", path: straight(at(270, 245), at(270, 1000)) },
    { name: "hem", path: straight(at(0, 1000), at(270, 1000)), turned: true, role: "hem" },
    { name: "center", path: straight(at(0, 0), at(0, 1000)), turned: true, role: "fold" },
  ]);
  const { now } = worked(flareSide, { edge: "side", hem: "hem", amount: 60 }, block);
  expect(apart(pathOf(now, "side")[0]!.end, at(329.81, 997.63))).toBeLessThan(0.01);
});

describe("from a place on the seam", () => {
  const piece = rectangle(
    300,
    600,
    { hem: "hem" },
    { notches: [100, 300].map((y) => ({ edge: "side", point: at(300, y), double: false, drawnBy: nowhere })) },
  );
  const { now } = worked(flareSide, { edge: "side", hem: "hem", amount: 40, from: place(300, 200) }, piece);
  test("only what lies below it swings out, stiffly", () => {
    const angle = Math.atan(40 / 400);
    expect(apart(placeOf(now, "C"), at(300 + 400 * Math.sin(angle), 200 + 400 * Math.cos(angle)))).toBeLessThan(1e-9);
    expect(now.notches[0]!.point).toEqual(at(300, 100));
    expect(apart(now.notches[1]!.point, at(300 + 100 * Math.sin(angle), 200 + 100 * Math.cos(angle)))).toBeLessThan(
      1e-9,
    );
    expect(lengthOf(now, "side")).toBeCloseTo(600, 9);
    expect(now.hinges).toMatchObject([{ edge: "side", point: at(300, 200) }]);
  });
  test("and swings back by as much", () => {
    const back = worked(flareSide, { edge: "side", hem: "hem", amount: -40, from: place(300, 200) }, now).now;
    expect(apart(placeOf(back, "C"), at(300, 600))).toBeLessThan(1e-6);
    expect(areaOf(back)).toBeCloseTo(areaOf(piece), 5);
    expect(lengthOf(back, "hem")).toBeCloseTo(300, 6);
    expect(back.hinges).toEqual([]);
  });
});

test("where a flare cannot be", () => {
  const code = (fill: object): string =>
    problemOf(flareSide, { edge: "side", hem: "hem", amount: 40, ...fill }, rectangle(300, 600)).code;
  expect(code({ hem: "center" })).toBe("flare-apart");
  expect(code({ from: place(100, 200) })).toBe("flare-off-seam");
  expect(code({ from: place(300, 600) })).toBe("flare-at-hem");
});

/** A gored panel: straight top, slanting side, curved front edge, hem square to the side. */
const panel: Piece = madePiece(
  [
    { name: "top", path: straight(at(0, 0), at(150, 0)) },
    { name: "side", path: straight(at(150, 0), at(230, 800)) },
    { name: "hem", path: straight(at(-20, 800), at(230, 800)), turned: true, role: "hem" },
    { name: "front", path: [cubic(at(0, 0), at(-30, 300), at(-20, 500), at(-20, 800))], turned: true },
  ],
  { hip: at(80, 200), knee: at(100, 600) },
  {
    grain: { kind: "line", from: at(80, 100), to: at(80, 700), drawnBy: nowhere },
    notches: [
      { edge: "side", point: at(170, 200), double: false, drawnBy: nowhere },
      { edge: "side", point: at(210, 600), double: false, drawnBy: nowhere },
    ],
  },
);

describe("60 longer across, below the hip", () => {
  // Source: handbook of the trade 4.11: cut square to the grain, separated, the side seams redrawn; the hem keeps its width.
  const { now, words } = worked(lengthenAcross, { place: at(80, 400), length: 60 }, panel, "cm");
  test("moves what lies below down by 60, and leaves hem and top as they are", () => {
    expect(placeOf(now, "hip")).toEqual(at(80, 200));
    expect(apart(placeOf(now, "knee"), at(100, 660))).toBeLessThan(1e-9);
    expect(lengthOf(now, "hem")).toBeCloseTo(250, 9);
    expect(pathOf(now, "top")).toEqual(pathOf(panel, "top"));
    expect(now.grain).toMatchObject({ from: at(80, 100), to: { x: 80, y: 760 } });
  });
  test("draws the straight side straight again, and the curved edge smooth", () => {
    expect(isStraight(pathOf(now, "side"), 1e-9)).toBe(true);
    expect(lengthOf(now, "side")).toBeCloseTo(Math.hypot(80, 860), 9);
    expect(corners(pathOf(now, "front"), toRadians(0.1))).toEqual([]);
    expect(now.hinges).toEqual([]);
  });
  test("keeps notches on the side, the upper where it was", () => {
    for (const { point } of now.notches) expect(Math.abs((point.x - 150) * 860 - point.y * 80)).toBeLessThan(1e-6);
    expect(Math.abs(now.notches[0]!.point.y - 200)).toBeLessThan(1);
    expect(Math.abs(now.notches[1]!.point.y - 660)).toBeLessThan(1);
  });
  test("says so", () => {
    expect(words).toMatch(/^lengthened 6 cm across; side drawn anew, moved 0\.\d+ cm at most; front drawn anew/);
  });
  test("and shortened by as much again it is as it was where its edges are straight", () => {
    const back = worked(lengthenAcross, { place: at(80, 400), length: -60 }, now).now;
    for (const name of ["hip", "knee"]) expect(apart(placeOf(back, name), placeOf(panel, name))).toBeLessThan(1e-9);
    for (const edge of ["top", "side", "hem"])
      expect(Math.abs(lengthOf(back, edge) - lengthOf(panel, edge))).toBeLessThan(1e-6);
    expect(back.grain).toMatchObject({ from: at(80, 100), to: { x: 80, y: 700 } });
  });
});

test("a rectangle lengthened and shortened is the rectangle, to a millionth of a mm", () => {
  const piece = rectangle(300, 600, { center: "fold" });
  const longer = worked(lengthenAcross, { place: at(0, 250), length: 45 }, piece).now;
  expect(areaOf(longer)).toBeCloseTo(300 * 645, 6);
  expect(pathOf(longer, "center")).toHaveLength(1);
  const back = worked(lengthenAcross, { place: at(0, 250), length: -45 }, longer).now;
  for (const name of ["A", "B", "C", "D"]) expect(apart(placeOf(back, name), placeOf(piece, name))).toBeLessThan(1e-6);
  expect(Math.abs(pathLength(pathOf(back, "side")) - 600)).toBeLessThan(1e-6);
});

test("the upper part moves up when it is named", () => {
  const now = worked(lengthenAcross, { place: at(150, 250), length: 45, moving: "top" }, rectangle(300, 600)).now;
  expect(placeOf(now, "C")).toEqual(at(300, 600));
  expect(apart(placeOf(now, "B"), at(300, -45))).toBeLessThan(1e-9);
});

test("across a piece whose grain lies level, the cut stands upright", () => {
  const piece = rectangle(
    600,
    300,
    {},
    { grain: { kind: "line", from: at(500, 150), to: at(100, 150), drawnBy: nowhere } },
  );
  const now = worked(lengthenAcross, { place: at(250, 150), length: 45 }, piece).now;
  expect(apart(placeOf(now, "B"), at(645, 0))).toBeLessThan(1e-9);
  expect(placeOf(now, "A")).toEqual(at(0, 0));
});

test("where it cannot be", () => {
  const code = (fill: object): string =>
    problemOf(lengthenAcross, { place: at(150, 250), length: 20, ...fill }, rectangle(300, 600)).code;
  expect(code({ place: at(400, 900) })).toBe("across-outside");
  expect(code({ length: -400 })).toBe("cloth-too-narrow");
  expect(code({ moving: "side" })).toBe("moving-edge-cut");
  const withPlace: Piece = {
    ...rectangle(300, 600),
    places: new Map([["pocket", { name: "pocket", point: at(100, 260), drawnBy: nowhere }]]),
  };
  expect(problemOf(lengthenAcross, { place: at(150, 250), length: -20 }, withPlace)).toMatchObject({
    code: "place-folded-away",
    message: "pocket lies in the cloth that would be taken out.",
  });
});
