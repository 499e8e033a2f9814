// A slash laid apart at both ends: the handbook's figures, what must hold of any piece, and closing it again.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { turnAt } from "../../kernel/alter/turned.ts";
import { mirroredIn } from "../../kernel/geometry/mirror.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, type Path, startOf } from "../../kernel/geometry/path.ts";
import { toDegrees } from "../../kernel/geometry/trig.ts";
import { boundary } from "../../kernel/outline.ts";
import { Problem } from "../../kernel/problem.ts";
import { overlap } from "../../kernel/steps/overlap.ts";
import { spreadApart } from "../../kernel/steps/spread-apart.ts";
import { spreadFrom } from "../../kernel/steps/spread-from.ts";
import { trueSeam } from "../../kernel/steps/true-seam.ts";
import type { Piece } from "../../kernel/working.ts";
import { type AnySlash, anySlash } from "./any-piece.ts";
import { apart, areaOf, at, lengthOf, pathOf, place, placeOf, problemOf, rectangle, worked } from "./made-piece.ts";

const laid = (piece: Piece, near: number, far: number): Piece =>
  worked(spreadApart, { hinge: place(150, 0, { on: "top" }), target: { edge: "hem" }, near, far }, piece).now;

/** Where the bridges of an edge run. */
const bridges = (piece: Piece, edge: string) =>
  pathOf(piece, edge)
    .filter(({ start, end }) => apart(start, end) > 0)
    .slice(1, -1);

describe("the handbook's slash of 600, opened by 50 at the top and by 150 at the hem", () => {
  // Source: handbook of the trade 4.5 and check value 30.
  const piece = laid(rectangle(300, 600), 50, 150);
  test("turns by 9.560 deg", () => {
    expect(Math.abs(toDegrees(turnAt(piece, "side", placeOf(piece, "C"))))).toBeCloseTo(9.56, 3);
  });
  test("bridges both gaps straight, about a point 300 above the top", () => {
    const [top, hem] = [bridges(piece, "top")[0]!, bridges(piece, "hem")[0]!];
    expect(apart(top.start, top.end)).toBeCloseTo(50, 9);
    expect(apart(hem.start, hem.end)).toBeCloseTo(150, 9);
    for (const { pivot } of [top, hem]) expect(apart(pivot!, at(150, -300))).toBeLessThan(1e-9);
  });
  test("keeps the sides, and grows top and hem by their gaps", () => {
    expect(lengthOf(piece, "side")).toBeCloseTo(600, 9);
    expect(lengthOf(piece, "center")).toBeCloseTo(600, 9);
    expect(lengthOf(piece, "top")).toBeCloseTo(350, 9);
    expect(lengthOf(piece, "hem")).toBeCloseTo(450, 9);
  });
  test("adds the trapezium between the gaps", () => {
    // Its legs are 600 long and its parallel sides 50 and 150, so it is the root of 600² - 50² high.
    expect(areaOf(piece) - 300 * 600).toBeCloseTo(100 * Math.sqrt(600 ** 2 - 50 ** 2), 5);
  });
  test("is trued to arcs about that point", () => {
    const trued = worked(trueSeam, { edges: ["hem", "top"] }, piece).now;
    // The slash is square to both edges, so the arcs join them smoothly: radii 900 and 300.
    const turn = 2 * Math.asin(150 / 1800);
    expect(lengthOf(trued, "hem")).toBeCloseTo(300 + 900 * turn, 5);
    expect(lengthOf(trued, "top")).toBeCloseTo(300 + 300 * turn, 5);
  });
});

test("level, the part moves and does not turn", () => {
  const { now, words } = worked(
    spreadApart,
    { hinge: place(150, 0, { on: "top" }), target: { edge: "hem" }, near: 40, far: 40 },
    rectangle(300, 600),
    "cm",
  );
  expect(apart(placeOf(now, "B"), at(340, 0))).toBeLessThan(1e-9);
  expect(apart(placeOf(now, "C"), at(340, 600))).toBeLessThan(1e-9);
  expect(areaOf(now)).toBeCloseTo(340 * 600, 6);
  expect(words).toBe("opened 4 cm at the top and 4 cm at the hem, level all along");
});

test("with nothing near it is spread-from", () => {
  const one = laid(rectangle(300, 600), 0, 150);
  const other = worked(
    spreadFrom,
    { hinge: place(150, 0, { on: "top" }), target: { edge: "hem" }, opening: { length: 150 } },
    rectangle(300, 600),
  ).now;
  for (const name of ["A", "B", "C", "D"]) expect(apart(placeOf(one, name), placeOf(other, name))).toBeLessThan(1e-9);
  expect(one.hinges).toEqual(other.hinges);
});

test("closing the top while the hem opens takes the triangle above the crossing out", () => {
  // The sides cross where 20 / (20 + 100) of the slash lies above: 100 of 600.
  const piece = laid(rectangle(300, 600), -20, 100);
  const turn = 2 * Math.asin(120 / 1200);
  expect(Math.abs(turnAt(piece, "side", placeOf(piece, "C")))).toBeCloseTo(turn, 9);
  const [hem] = bridges(piece, "hem");
  expect(apart(hem!.start, hem!.end)).toBeCloseTo(100, 9);
  expect(apart(hem!.pivot!, at(150, 100))).toBeLessThan(1e-9);
  // The top is straight, so it loses 100 tan, and a step of 100 / cos - 100 is left in it.
  expect(lengthOf(piece, "top")).toBeCloseTo(300 - 100 * Math.tan(turn) + 100 / Math.cos(turn) - 100, 6);
  expect(lengthOf(piece, "side")).toBeCloseTo(600, 9);
});

test("what cannot be", () => {
  const fill = (more: object) => ({
    hinge: place(150, 0, { on: "top" }),
    target: { edge: "hem" },
    near: 0,
    far: 0,
    ...more,
  });
  expect(problemOf(spreadApart, fill({ near: 5, far: 1300 }), rectangle(300, 600))).toMatchObject({
    code: "opening-too-wide",
    message: "The slash is 600 mm long, and its ends differ by 1200 mm at most; 1295 mm is asked for.",
  });
  expect(problemOf(spreadApart, fill({ near: -200, far: -200 }), rectangle(300, 600)).code).toBe("cloth-too-narrow");
  expect(problemOf(overlap, fill({ near: -1, far: 5 }), rectangle(300, 600)).code).toBe("overlap-negative");
  expect(worked(spreadApart, fill({}), rectangle(300, 600)).words).toBe("");
});

const runs = { numRuns: 200 };
const amount = fc.double({ min: 1, max: 90, noNaN: true });

const eachApart = (what: (slash: AnySlash, near: number, far: number, now: Piece) => void): void => {
  let tried = 0;
  fc.assert(
    fc.property(anySlash, amount, amount, (slash, near, far) => {
      const now = tryApart(slash.piece, slash, near, far);
      if (!now) return;
      tried += 1;
      what(slash, near, far, now);
    }),
    runs,
  );
  expect(tried).toBeGreaterThan(runs.numRuns / 2);
};

const tryApart = (piece: Piece, { hinge, target }: AnySlash, near: number, far: number): Piece | undefined => {
  const fill = {
    hinge: { kind: "place", point: hinge.point, on: hinge.edge },
    target: { place: target.point },
    near,
    far,
  };
  try {
    return worked(spreadApart, fill, piece).now;
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
};

test("on any piece both gaps are exact, and every other edge keeps its length", () => {
  eachApart(({ piece, hinge, target }, near, far, now) => {
    for (const name of piece.edges.keys()) {
      if (name === "level") continue;
      const grown = (name === hinge.edge ? near : 0) + (name === target.edge ? far : 0);
      expect(Math.abs(lengthOf(now, name) - lengthOf(piece, name) - grown)).toBeLessThan(1e-6);
    }
    // An isosceles trapezium between the two places and their copies.
    const leg = apart(hinge.point, target.point);
    const high = Math.sqrt(leg * leg - ((far - near) / 2) ** 2);
    expect(Math.abs(areaOf(now) - areaOf(piece) - ((near + far) / 2) * high)).toBeLessThan(1e-4);
  });
});

test("on any piece, closing both ends again restores it", () => {
  eachApart((slash, near, far, now) => {
    // At a corner the bridge may take the start of the first edge along, and then the other part stays.
    if (apart(slash.hinge.point, startOf(pathOf(slash.piece, slash.hinge.edge))) < 0.01) return;
    if (apart(slash.hinge.point, endOf(pathOf(slash.piece, slash.hinge.edge))) < 0.01) return;
    const back = tryApart(now, slash, -near, -far);
    expect(back).toBeDefined();
    expectSame(back!, slash.piece);
  });
});

const expectSame = (piece: Piece, wanted: Piece): void => {
  for (const name of wanted.places.keys())
    expect(apart(placeOf(piece, name), placeOf(wanted, name))).toBeLessThan(1e-6);
  for (const [name, edge] of wanted.edges) expectSamePath(pathOf(piece, name), edge.path);
  expect(piece.hinges).toEqual(wanted.hinges);
};

const expectSamePath = (path: Path, wanted: Path): void => {
  expect(apart(startOf(path), startOf(wanted))).toBeLessThan(1e-6);
  expect(apart(endOf(path), endOf(wanted))).toBeLessThan(1e-6);
  for (const span of path) expect(nearest(wanted, span.end).distance).toBeLessThan(1e-6);
  for (const span of wanted) expect(nearest(path, span.end).distance).toBeLessThan(1e-6);
};

test("on any piece the part that moves lies as a mirror image of the gap would have it", () => {
  // Opened symmetrically: the two sides of the slash are mirror images in the line between the middles of both gaps.
  eachApart(({ hinge, target }, near, far, now) => {
    const loop = boundary(now)!;
    const spans = loop.filter(({ kind, start, end }) => kind === "line" && apart(start, end) > 0);
    const bridge = (point: { x: number; y: number }, size: number) =>
      spans.find(
        ({ start, end }) =>
          Math.abs(apart(start, end) - size) < 1e-6 && Math.min(apart(start, point), apart(end, point)) < 1e-6,
      );
    const [one, other] = [bridge(hinge.point, near), bridge(target.point, far)];
    if (!one || !other) throw new Error("a gap is not bridged");
    const middle = ({ start, end }: typeof one) => at((start.x + end.x) / 2, (start.y + end.y) / 2);
    const [a, b] = [middle(one), middle(other)];
    for (const { start, end } of [one, other]) expect(apart(mirroredIn(start, a, b), end)).toBeLessThan(1e-5);
  });
});
