// Several slashes in one line: the handbook's figures, and that the order in which they are named makes no difference.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { turnAt } from "../../kernel/alter/turned.ts";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { cubic, straight } from "../../kernel/geometry/path.ts";
import { toDegrees } from "../../kernel/geometry/trig.ts";
import { kernel } from "../../kernel/kernel.ts";
import { overlapEvenly } from "../../kernel/steps/overlap-evenly.ts";
import { overlapSeveral } from "../../kernel/steps/overlap-several.ts";
import { spreadEvenly } from "../../kernel/steps/spread-evenly.ts";
import { spreadFrom } from "../../kernel/steps/spread-from.ts";
import { spreadSeveral } from "../../kernel/steps/spread-several.ts";
import { takeGore } from "../../kernel/steps/take-gore.ts";
import { trueSeam } from "../../kernel/steps/true-seam.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import type { Piece } from "../../kernel/working.ts";
import {
  apart,
  areaOf,
  at,
  lengthOf,
  madePiece,
  pathOf,
  place,
  placeOf,
  problemOf,
  rectangle,
  worked,
} from "./made-piece.ts";

const sideTurn = (piece: Piece): number => Math.abs(toDegrees(turnAt(piece, "side", placeOf(piece, "C"))));

describe("three even slashes of 200 in all, in the handbook's rectangle of 300 x 1000", () => {
  // Source: handbook of the trade 4.4 and check values 27 and 28.
  const { now, words } = worked(
    spreadEvenly,
    { from: "top", edge: "hem", amount: 200, count: 3 },
    rectangle(300, 1000),
    "cm",
  );
  test("turn by 11.4613 deg", () => expect(sideTurn(now)).toBeCloseTo(11.4613, 4));
  test("make a hem of 500.037 where the gaps are filled with arcs", () => {
    expect(lengthOf(now, "hem")).toBeCloseTo(500, 9);
    expect(lengthOf(worked(trueSeam, { edges: ["hem"] }, now).now, "hem")).toBeCloseTo(500.037, 3);
  });
  test("leave half a space at both sides", () => {
    const pivots = pathOf(now, "hem").flatMap(({ pivot }) => (pivot ? [pivot] : []));
    expect(pivots).toHaveLength(3);
    expect(apart(pivots[0]!, at(50, 0))).toBeLessThan(1e-9);
    expect(apart(pivots[0]!, pivots[1]!)).toBeCloseTo(100, 9);
  });
  test("tell in words what all of them add up to", () => {
    expect(words).toBe("3 slashes opened 6.67 cm each at the hem, 20 cm and 11.5 deg in all");
  });
  // The other columns of the handbook's table 4.4.
  test.each([
    [1, 11.4783, 500.335],
    [2, 11.4639, 500.083],
    [5, 11.4599, 500.013],
    [10, 11.4593, 500.003],
  ])("with %i of them %f deg and %f", (count, degrees, hem) => {
    const piece = worked(spreadEvenly, { from: "top", edge: "hem", amount: 200, count }, rectangle(300, 1000)).now;
    expect(sideTurn(piece)).toBeCloseTo(degrees, 4);
    expect(lengthOf(worked(trueSeam, { edges: ["hem"] }, piece).now, "hem")).toBeCloseTo(hem, 3);
  });
});

test("four tucks take 200 out of a hem of radius 700 at 4.0934 deg each", () => {
  // Source: handbook of the trade 4.17 and check value 45.
  const piece = worked(overlapEvenly, { from: "top", edge: "hem", amount: 200, count: 4 }, rectangle(1200, 700));
  expect(sideTurn(piece.now) / 4).toBeCloseTo(4.0934, 4);
  expect(piece.amount).toBeCloseTo(-200, 9);
  expect(lengthOf(piece.now, "top")).toBeCloseTo(1200, 9);
});

test("8 slashes of 60 in a piece that is cut twice add 960 in the garment", () => {
  // Source: handbook of the trade, check value 32.
  const piece = worked(
    spreadEvenly,
    { from: "top", edge: "hem", amount: 60, count: 8, each: true },
    rectangle(900, 1000),
  );
  expect(piece.amount! * 2).toBeCloseTo(960, 9);
  expect(lengthOf(piece.now, "hem")).toBeCloseTo(900 + 480, 9);
});

/** A half back with a curved neck and a sloping shoulder, its side on a slant. */
const halfBack = madePiece(
  [
    { name: "center", path: straight(at(0, 0), at(0, 900)), turned: true, role: "fold" },
    { name: "neck", path: [cubic(at(0, 0), at(40, 0), at(70, -8), at(75, -25))] },
    { name: "shoulder", path: straight(at(75, -25), at(205, 18)) },
    { name: "armscye", path: [cubic(at(205, 18), at(180, 120), at(190, 240), at(270, 245))] },
    { name: "side", path: straight(at(270, 245), at(300, 895)) },
    { name: "hem", path: [cubic(at(0, 900), at(100, 900), at(200, 900), at(300, 895))], turned: true, role: "hem" },
  ],
  { mid: at(100, 400), pocket: at(230, 600) },
);

const samePiece = (one: Piece, other: Piece): void => {
  for (const name of other.places.keys()) expect(apart(placeOf(one, name), placeOf(other, name))).toBeLessThan(1e-6);
  for (const [name, { path }] of other.edges) {
    const length = pathLength(path);
    expect(Math.abs(lengthOf(one, name) - length)).toBeLessThan(1e-6);
    for (const share of [0, 0.13, 0.4, 0.77, 1])
      expect(apart(pointAt(pathOf(one, name), share * length), pointAt(path, share * length))).toBeLessThan(1e-6);
  }
};

const along = (piece: Piece, edge: string, share: number) => ({
  kind: "place",
  point: pointAt(pathOf(piece, edge), share * lengthOf(piece, edge)),
  on: edge,
});

test("in any order they make the piece that single slashes make, in any order", () => {
  const spots: readonly (readonly [string, number])[] = [
    ["neck", 0.4],
    ["shoulder", 0.2],
    ["shoulder", 0.55],
    ["shoulder", 0.9],
    ["armscye", 0.6],
  ];
  const order = fc.shuffledSubarray([...spots.keys()], { minLength: 5, maxLength: 5 });
  const size = fc.double({ min: 1, max: 60, noNaN: true });
  fc.assert(
    fc.property(order, order, size, (first, second, each) => {
      const hinges = first.map((index) => along(halfBack, ...spots[index]!));
      const together = worked(spreadSeveral, { hinges, edge: "hem", amount: each, each: true }, halfBack).now;
      const singly = second.reduce(
        (piece, index) =>
          worked(
            spreadFrom,
            { hinge: along(piece, ...spots[index]!), target: { edge: "hem" }, opening: { length: each } },
            piece,
          ).now,
        halfBack,
      );
      samePiece(together, singly);
      expect([...together.places.keys()]).toEqual(["mid", "pocket"]);
      const again = first.map((index) => along(together, ...spots[index]!));
      samePiece(
        worked(overlapSeveral, { hinges: again, edge: "hem", amount: each * 5, total: true }, together).now,
        halfBack,
      );
    }),
    { numRuns: 60 },
  );
});

test.each([
  ["as it was bridged", (piece: Piece) => piece],
  ["trued", (piece: Piece) => worked(trueSeam, { edges: ["hem"] }, piece).now],
])("even slashes and as many even tucks restore the piece, the hem %s", (_, meanwhile) => {
  const fill = { from: "top", edge: "hem", amount: 180, count: 4 };
  const piece = rectangle(400, 800);
  samePiece(worked(overlapEvenly, fill, meanwhile(worked(spreadEvenly, fill, piece).now)).now, piece);
});

test("even slashes divide both edges evenly, though the one is wider than the other", () => {
  // A sleeve: the cap is wider than the wrist.
  const sleeve = madePiece([
    {
      name: "cap",
      path: [
        cubic(at(-200, 0), at(-80, 0), at(-60, -150), at(0, -150)),
        cubic(at(0, -150), at(60, -150), at(80, 0), at(200, 0)),
      ],
    },
    { name: "under-front", path: straight(at(200, 0), at(140, 440)) },
    { name: "wrist", path: straight(at(-140, 440), at(140, 440)), turned: true, role: "hem" },
    { name: "under-back", path: straight(at(-200, 0), at(-140, 440)), turned: true },
  ]);
  const { now } = worked(spreadEvenly, { from: "cap", edge: "wrist", amount: 120, count: 4 }, sleeve);
  for (const edge of ["cap", "under-front", "under-back"])
    expect(lengthOf(now, edge)).toBeCloseTo(lengthOf(sleeve, edge), 6);
  expect(lengthOf(now, "wrist")).toBeCloseTo(400, 6);
  // The wrist was 280 wide: 35 before the first slash and behind the last, 70 between two.
  const kept = pathOf(now, "wrist").filter(({ pivot }) => !pivot);
  expect(kept.map(({ start, end }) => apart(start, end).toFixed(6))).toEqual([
    "35.000000",
    "70.000000",
    "70.000000",
    "70.000000",
    "35.000000",
  ]);
});

describe("a gore", () => {
  test("is the wedge between its two lines", () => {
    const fill = { hinge: place(150, 0, { on: "top" }), sides: [at(130, 1000), at(200, 1000)] };
    const { now, amount } = worked(takeGore, fill, rectangle(300, 1000));
    // Two triangles of 1000 high, 20 and 50 wide, lie beside the line straight down.
    const angle = Math.atan(20 / 1000) + Math.atan(50 / 1000);
    expect(sideTurn(now)).toBeCloseTo(toDegrees(angle), 9);
    expect(amount).toBeCloseTo(-70, 9);
    expect(areaOf(now)).toBeCloseTo(300_000 - 35_000, 4);
    // Of the two lines the longer stands out by a step.
    const step = Math.hypot(1000, 50) - Math.hypot(1000, 20);
    expect(lengthOf(now, "hem")).toBeCloseTo(230 + step, 6);
  });
  test("lies between two places of one edge", () => {
    const fill = (sides: object) => ({ hinge: place(150, 0, { on: "top" }), sides });
    expect(problemOf(takeGore, fill([at(130, 1000)]), rectangle(300, 1000)).code).toBe("gore-sides");
    expect(problemOf(takeGore, fill([at(130, 1000), at(300, 500)]), rectangle(300, 1000)).code).toBe("gore-sides");
  });
});

test("what cannot be", () => {
  const piece = rectangle(300, 1000);
  const code = (fill: object): string =>
    problemOf(spreadEvenly, { from: "top", edge: "hem", amount: 30, count: 3, ...fill }, piece).code;
  expect(code({ count: 0 })).toBe("slash-count");
  expect(code({ count: 2.5 })).toBe("slash-count");
  expect(code({ amount: -5 })).toBe("amount-negative");
  const hinges = [place(100, 0, { on: "top" }), place(200, 0, { on: "top" })];
  const several = (fill: object): string =>
    problemOf(spreadSeveral, { hinges, edge: "hem", amount: 30, ...fill }, piece).code;
  expect(several({ each: true, total: true })).toBe("each-or-total");
  expect(several({ hinges: [hinges[0], hinges[0]] })).toBe("slash-twice");
  // A place 20 from a tuck lies in cloth that is taken out; it is called what it is.
  expect(
    problemOf(
      overlapSeveral,
      { hinges: [place(100, 0, { on: "top" }), place(102, 0, { on: "top" })], edge: "hem", amount: 60 },
      piece,
    ),
  ).toMatchObject({
    code: "place-folded-away",
    message: "The far end of slash 2 lies in the cloth that would be taken out.",
  });
});

test("the examples of these steps come out clean", () => {
  const own = new Set(
    "spread-apart spread-several spread-evenly overlap overlap-several overlap-evenly take-gore flare-side lengthen-across pleat gather slit godet gore flounce".split(
      " ",
    ),
  );
  const steps = vocabulary.steps.filter(({ name }) => own.has(name));
  expect(steps).toHaveLength(own.size);
  const atelier = kernel(vocabulary);
  for (const { name, example } of steps)
    expect([
      name,
      ...atelier.work({ file: "test.chalk", text: example }).findings.map(({ message }) => message),
    ]).toEqual([name]);
});
