// Trueing: what the language page and the handbook give as numbers, and what must hold of the ends and the length.
import { describe, expect, test } from "vitest";
import { greatestMove, trued, withArcs } from "../../kernel/alter/trued.ts";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import {
  corners,
  cubic,
  endDirection,
  endOf,
  type Path,
  reversed,
  startDirection,
  startOf,
  straight,
  through,
} from "../../kernel/geometry/path.ts";
import { rotated } from "../../kernel/geometry/rotate.ts";
import { toDegrees, toRadians, turnBetween } from "../../kernel/geometry/trig.ts";
import { boundary } from "../../kernel/outline.ts";
import { extendHem } from "../../kernel/steps/extend-hem.ts";
import { spreadFrom } from "../../kernel/steps/spread-from.ts";
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

const spread = (piece: Piece, x: number, length: number): Piece => {
  const hinge = pointAt(pathOf(piece, "top"), x);
  return worked(
    spreadFrom,
    { hinge: place(hinge.x, hinge.y, { on: "top" }), target: { edge: "hem" }, opening: { length } },
    piece,
  ).now;
};
const truedEdges = (piece: Piece, ...edges: string[]): Piece => worked(trueSeam, { edges }, piece).now;
const lengthened = (piece: Piece, length: number): Piece => worked(extendHem, { edge: "hem", length }, piece).now;
const kept = { start: undefined, end: undefined };

/** Two straight lines of half a length each that make a corner in the middle. */
const bentLine = (length: number, degrees: number): Path => {
  const [middle, half] = [at(length / 2, 0), length / 2];
  return through([at(0, 0), middle, rotated(at(middle.x + half, 0), middle, toRadians(degrees))]);
};

describe("the hem of the handbook's rectangle, opened by 200", () => {
  const opened = spread(rectangle(300, 1000, { hem: "hem", center: "fold" }), 150, 200);
  const { now, words } = worked(trueSeam, { edges: ["hem"] }, opened);

  test("is 500.335 long", () => {
    // Source: handbook of the trade 4.2, check value 20; language page, `true-seam`.
    expect(lengthOf(now, "hem")).toBeCloseTo(500.335, 3);
    expect(lengthOf(now, "hem")).toBeCloseTo(300 + 1000 * 2 * Math.asin(0.1), 6);
  });
  test("has no corner, and stands square to both sides", () => {
    const hem = pathOf(now, "hem");
    expect(corners(hem, toRadians(0.001))).toEqual([]);
    expect(Math.abs(toDegrees(turnBetween(startDirection(hem), startDirection(pathOf(now, "center")))))).toBeCloseTo(
      90,
      6,
    );
    expect(Math.abs(toDegrees(turnBetween(endDirection(hem), endDirection(pathOf(now, "side")))))).toBeCloseTo(90, 6);
  });
  test("adds the sector of 100167.4 square mm to the piece", () => {
    // Source: handbook of the trade 4.2, check value 26.
    expect(areaOf(now) - 300_000).toBeCloseTo(100_167.4, 1);
  });
  test("lies 1000 from the hinge all along the opening, 20.013 below the line of its corners", () => {
    // Source: handbook of the trade 4.2, check value 22 (its piece stands upright; ours leans by half the angle).
    const arc = pathOf(now, "hem").filter(({ pivot }) => pivot);
    for (const share of [0, 0.1, 0.37, 0.5, 0.92, 1]) {
      expect(apart(pointAt(arc, share * pathLength(arc)), at(150, 0))).toBeCloseTo(1000, 5);
    }
    const [left, right] = [placeOf(now, "D"), placeOf(now, "C")];
    const lowest = pointAt(arc, pathLength(arc) / 2);
    const area = Math.abs(signedArea([...straight(left, right), ...straight(right, lowest)]));
    expect((2 * area) / apart(left, right)).toBeCloseTo(20.013, 3);
  });
  test("is told with its greatest move and its change in length", () => {
    // The chord lies 1000 (1 - cos 5.739 deg) = 5.013 inside the arc, and is 200 where the arc is 200.335.
    expect(words).toBe("trued hem: moved 5 mm at most, 0.33 mm longer");
    expect(worked(trueSeam, { edges: ["hem"] }, now).words).toBe("hem was true already");
  });
  test("of three slashes is 500.037", () => {
    // Source: handbook of the trade 4.4, check value 28.
    const three = [50, 150, 250].reduce((piece, x) => spread(piece, x, 200 / 3), rectangle(300, 1000, { hem: "hem" }));
    expect(lengthOf(truedEdges(three, "hem"), "hem")).toBeCloseTo(500.037, 3);
  });
});

describe("the chord 200 over a radius of 400", () => {
  test("becomes an arc of 202.14", () => {
    // Source: handbook of the trade 4.17, check value 46.
    const [start, hinge] = [at(0, 400), at(0, 0)];
    const end = rotated(start, hinge, -2 * Math.asin(0.25));
    const arc = withArcs([{ kind: "line", start, end, pivot: hinge }]);
    expect(pathLength(arc)).toBeCloseTo(202.14, 2);
  });
});

describe("a corner inside an edge", () => {
  test.each([
    [5, 0.06],
    [11, 0.31],
  ])("a shoulder of 138 opened by %d deg loses %d", (degrees, loss) => {
    // Source: language page, `true-seam`.
    const smooth = trued(bentLine(138, degrees), kept);
    expect(138 - pathLength(smooth)).toBeCloseTo(loss, 2);
    expect(corners(smooth, toRadians(0.001))).toEqual([]);
  });
  test("changes the line only from 50 before it to 50 behind it, by one cubic", () => {
    const smooth = trued(bentLine(300, 8), kept);
    expect(smooth.map(({ kind }) => kind)).toEqual(["line", "cubic", "line"]);
    expect(apart(smooth[0]!.end, at(100, 0))).toBeLessThan(1e-9);
    expect(pathLength(smooth.slice(0, 1))).toBeCloseTo(100, 9);
    expect(pathLength(smooth.slice(2))).toBeCloseTo(100, 9);
  });
  test("never reaches past the end of the edge, nor past halfway to the next corner", () => {
    const path = through([at(0, 0), at(30, 0), at(90, 6), at(190, 0)]);
    const smooth = trued(path, kept);
    expect(smooth.map(({ kind }) => kind)).toEqual(["cubic", "cubic", "line"]);
    expect(apart(startOf(smooth), at(0, 0))).toBe(0);
    expect(apart(smooth[0]!.end, at(60, 3))).toBeLessThan(1e-9);
    expect(smooth[1]!.start).toEqual(smooth[0]!.end);
    expect(corners(smooth, toRadians(0.001))).toEqual([]);
  });
  test("of 0.1 deg and less stays", () => {
    expect(trued(bentLine(300, 0.09), kept)).toEqual(bentLine(300, 0.09));
    expect(trued(bentLine(300, 0.11), kept)).toHaveLength(3);
  });
  test("leaves its hinge on the line, for the checks to look at", () => {
    const now = truedEdges(spread(rectangle(300, 1000), 150, 50), "top");
    expect(now.hinges).toHaveLength(1);
    expect(nearest(pathOf(now, "top"), now.hinges[0]!.point).distance).toBeLessThan(1e-9);
    expect(apart(now.hinges[0]!.point, at(150, 0))).toBeGreaterThan(0.1);
  });
});

describe("the ends", () => {
  // A neck that meets the fold at 80 deg, as after a wedge opened at the fold.
  const neck = (role: "fold" | "seam"): Piece =>
    madePiece([
      { name: "neck", path: [cubic(at(0, 0), rotated(at(30, 0), at(0, 0), toRadians(10)), at(80, 10), at(90, -20))] },
      { name: "side", path: through([at(90, -20), at(200, 0), at(200, 500)]) },
      { name: "hem", path: straight(at(200, 500), at(0, 500)), role: "hem" },
      { name: "center", path: straight(at(0, 500), at(0, 0)), role },
    ]);

  test("stand square to a fold, the length kept", () => {
    const now = truedEdges(neck("fold"), "neck");
    const start = startDirection(pathOf(now, "neck"));
    expect(start.x).toBeCloseTo(1, 9);
    expect(start.y).toBeCloseTo(0, 9);
    expect(lengthOf(now, "neck")).toBeCloseTo(lengthOf(neck("fold"), "neck"), 6);
    expect(endDirection(pathOf(now, "neck"))).toEqual(endDirection(pathOf(neck("fold"), "neck")));
  });
  test("keep their direction at a seam, and everywhere with `keeping ends`", () => {
    expect(pathOf(truedEdges(neck("seam"), "neck"), "neck")).toEqual(pathOf(neck("seam"), "neck"));
    const keeping = worked(trueSeam, { edges: ["neck"], keeping: "ends" }, neck("fold")).now;
    expect(pathOf(keeping, "neck")).toEqual(pathOf(neck("fold"), "neck"));
  });
  test("turn over 50 mm, where the line begins with a short stretch", () => {
    const path = [...straight(at(0, 0), at(5, 0)), cubic(at(5, 0), at(60, 0), at(100, -10), at(140, -40))];
    const smooth = trued(path, { start: rotated(at(1, 0), at(0, 0), toRadians(6)), end: undefined });
    expect(toDegrees(turnBetween(at(1, 0), startDirection(smooth)))).toBeCloseTo(6, 9);
    // Nearly straight before, it can only grow longer: the handle keeps its length.
    expect(pathLength(smooth.slice(0, 1))).toBeCloseTo(50, 0);
    expect(pathLength(smooth) - pathLength(path)).toBeGreaterThan(0);
    expect(corners(smooth, toRadians(0.001))).toEqual([]);
  });
  test("of a hem stand square to seams and openings", () => {
    const flared = (role: "seam" | "opening"): Piece =>
      madePiece([
        { name: "top", path: straight(at(0, 0), at(200, 0)) },
        { name: "side", path: straight(at(200, 0), at(260, 600)), role },
        { name: "hem", path: straight(at(260, 600), at(0, 600)), role: "hem" },
        { name: "center", path: straight(at(0, 600), at(0, 0)), role: "fold" },
      ]);
    for (const role of ["seam", "opening"] as const) {
      const now = truedEdges(flared(role), "hem");
      const angle = turnBetween(startDirection(pathOf(now, "hem")), endDirection(pathOf(now, "side")));
      expect(Math.abs(toDegrees(angle))).toBeCloseTo(90, 6);
      expect(Math.abs(endDirection(pathOf(now, "hem")).y)).toBeCloseTo(0, 9);
    }
  });
  test("turn alike on a piece and on its mirror image", () => {
    const path = through([at(0, 0), at(150, 10), at(300, 0)]);
    const ends = { start: at(1, 0), end: at(1, 0) };
    const there = trued(path, ends);
    const back = reversed(trued(reversed(path), { start: at(-1, 0), end: at(-1, 0) }));
    for (const share of [0.1, 0.4, 0.5, 0.77]) {
      const length = pathLength(there);
      expect(apart(pointAt(there, share * length), pointAt(back, share * length))).toBeLessThan(1e-6);
    }
  });
});

describe("holding length", () => {
  const shoulder = (degrees: number): Piece => {
    const path = bentLine(138, degrees);
    return madePiece([
      { name: "shoulder", path },
      { name: "rest", path: through([endOf(path), at(160, 500), at(-10, 500), at(0, 0)]) },
    ]);
  };
  test.each([3, 5, 11, -11])("a shoulder of 138 with a corner of %d deg stays 138", (degrees) => {
    const { now, words } = worked(trueSeam, { edges: ["shoulder"], holding: "length" }, shoulder(degrees));
    expect(Math.abs(lengthOf(now, "shoulder") - 138)).toBeLessThan(0.001);
    expect(corners(pathOf(now, "shoulder"), toRadians(0.001))).toEqual([]);
    expect(apart(startOf(pathOf(now, "shoulder")), at(0, 0))).toBe(0);
    expect(words).toMatch(/as long as before, its free ends turned outward [\d.]+ deg to hold the length$/);
  });
  test("both ends turn by one angle, the way the corner turns", () => {
    // Both ends off the chord by d: the arc of that chord has length c d / sin d; 138 of it where c is 138 cos 5.5 deg.
    const { now } = worked(trueSeam, { edges: ["shoulder"], holding: "length" }, shoulder(11));
    const [start, end] = [startDirection(pathOf(now, "shoulder")), endDirection(pathOf(now, "shoulder"))];
    const chord = { x: Math.cos(toRadians(5.5)), y: Math.sin(toRadians(5.5)) };
    const off = toDegrees(turnBetween(start, chord));
    expect(toDegrees(turnBetween(chord, end))).toBeCloseTo(off, 6);
    const d = toRadians(off);
    // Hobby's cubic is an arc to a few parts in ten thousand of its turn.
    expect((138 * Math.cos(toRadians(5.5)) * d) / Math.sin(d)).toBeCloseTo(138, 2);
  });
  test("with both ends fixed is refused", () => {
    expect(
      problemOf(trueSeam, { edges: ["shoulder"], holding: "length", keeping: "ends" }, shoulder(11)),
    ).toMatchObject({
      code: "length-not-held",
      message: "shoulder cannot be made smooth and stay 138 mm long with its ends kept.",
    });
  });
});

describe("to a length", () => {
  // A neighbour at 45 deg, so that moving along it changes the length either way.
  const piece = madePiece(
    [
      { name: "top", path: straight(at(0, 0), at(100, 0)) },
      { name: "side", path: straight(at(100, 0), at(300, 200)) },
      { name: "hem", path: straight(at(300, 200), at(0, 200)) },
      { name: "center", path: straight(at(0, 200), at(0, 0)) },
    ],
    { corner: at(300, 200) },
    { notches: [{ edge: "hem", point: at(100, 200), double: false, drawnBy: nowhere }] },
  );
  test.each([260, 320])("a straight hem of 300 is brought to %d along its side", (length) => {
    const { now } = worked(trueSeam, { edges: ["hem"], length, moving: "start" }, piece);
    expect(lengthOf(now, "hem")).toBeCloseTo(length, 6);
    const corner = startOf(pathOf(now, "hem"));
    // On the line of the side, at that distance from (0, 200).
    expect(corner.x - corner.y).toBeCloseTo(100, 6);
    expect(apart(corner, at(0, 200))).toBeCloseTo(length, 6);
    expect(endOf(pathOf(now, "side"))).toEqual(corner);
    expect(placeOf(now, "corner")).toEqual(corner);
    expect(nearest(pathOf(now, "hem"), now.notches[0]!.point).distance).toBeLessThan(1e-9);
  });
  test("that the neighbour never gives is refused, with what it measures", () => {
    const problem = problemOf(trueSeam, { edges: ["hem"], length: 150, moving: "start" }, piece);
    expect(problem.code).toBe("length-out-of-reach");
    expect(problem.message).toContain("it measures 300 mm");
  });
  test("a smooth curve follows as a smooth curve", () => {
    const [first, second] = [
      cubic(at(300, 200), at(250, 250), at(200, 240), at(150, 220)),
      cubic(at(150, 220), at(100, 200), at(50, 200), at(0, 200)),
    ];
    const curved = {
      ...piece,
      edges: new Map(piece.edges).set("hem", { ...piece.edges.get("hem")!, path: [first, second] }),
    };
    const { now } = worked(trueSeam, { edges: ["hem"], keeping: "ends", length: 360, moving: "start" }, curved);
    expect(lengthOf(now, "hem")).toBeCloseTo(360, 6);
    // No corner came of it, so no curve was put in.
    expect(pathOf(now, "hem")).toHaveLength(2);
    expect(corners(pathOf(now, "hem"), toRadians(1e-6))).toEqual([]);
  });
  test("goes for one edge at a time", () => {
    expect(problemOf(trueSeam, { edges: ["hem", "top"], length: 150, moving: "start" }, piece).code).toBe(
      "true-to-length",
    );
  });
});

test("lengthening, then trueing gives what trueing, then lengthening gives", () => {
  const opened = [60, 150, 260].reduce(
    (piece, x) => spread(piece, x, 70),
    rectangle(300, 1000, { hem: "hem", center: "fold" }),
  );
  for (const length of [60, 400, -100]) {
    const first = truedEdges(lengthened(opened, length), "hem");
    const last = lengthened(truedEdges(opened, "hem"), length);
    expect(lengthOf(first, "hem")).toBeCloseTo(lengthOf(last, "hem"), 6);
    expect(areaOf(first)).toBeCloseTo(areaOf(last), 4);
    const hem = pathOf(last, "hem");
    for (const span of pathOf(first, "hem")) expect(nearest(hem, span.end).distance).toBeLessThan(1e-6);
    expect(boundary(first)).toBeDefined();
  }
});

test("the greatest move is that of the corner, not of the ends", () => {
  const path = bentLine(300, 10);
  const smooth = trued(path, kept);
  expect(greatestMove(path, smooth)).toBeCloseTo(nearest(smooth, at(150, 0)).distance, 9);
  expect(greatestMove(path, path)).toBeLessThan(1e-9);
  // A circle that touches both sides 50 from the corner misses it by 50 (1 / cos 5 deg - 1) / tan 5 deg = 2.182; so nearly does the cubic.
  expect(greatestMove(path, smooth)).toBeCloseTo(2.182, 1);
});
