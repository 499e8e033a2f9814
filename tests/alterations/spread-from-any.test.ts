// What must hold of every slash, whatever the piece: language page, `spread-from`, the rules marked MUST.
import fc from "fast-check";
import { expect, test } from "vitest";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { corners, endOf, mapped, type Path, startOf } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { toRadians } from "../../kernel/geometry/trig.ts";
import { boundary } from "../../kernel/outline.ts";
import { Problem } from "../../kernel/problem.ts";
import { spreadFrom } from "../../kernel/steps/spread-from.ts";
import { trueSeam } from "../../kernel/steps/true-seam.ts";
import type { Piece } from "../../kernel/working.ts";
import { type AnySlash, anySlash } from "./any-piece.ts";
import { apart, areaOf, lengthOf, placeOf, worked } from "./made-piece.ts";

/** The piece after a slash; undefined where the step says why it cannot be. */
const spread = (piece: Piece, { hinge, target }: AnySlash, opening: number): Piece | undefined => {
  const fill = {
    hinge: { kind: "place", point: hinge.point, on: hinge.edge },
    target: { place: target.point },
    opening: { length: opening },
  };
  try {
    return worked(spreadFrom, fill, piece).now;
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
};

const opening = fc.double({ min: 0.5, max: 150, noNaN: true });
const runs = { numRuns: 150, seed: 1986 };

const eachSlash = (what: (slash: AnySlash, amount: number, now: Piece) => void): void => {
  let worked = 0;
  fc.assert(
    fc.property(anySlash, opening, (slash, amount) => {
      const now = spread(slash.piece, slash, amount);
      if (!now) return;
      worked += 1;
      what(slash, amount, now);
    }),
    runs,
  );
  // Most random slashes can be cut; if they could not, nothing would have been tried.
  expect(worked).toBeGreaterThan(runs.numRuns / 2);
};

test("every edge but the one that opens keeps its length", () => {
  eachSlash(({ piece, target }, amount, now) => {
    for (const name of piece.edges.keys()) {
      if (name === target.edge || name === "level") continue;
      expect(Math.abs(lengthOf(now, name) - lengthOf(piece, name))).toBeLessThan(1e-6);
    }
    expect(Math.abs(lengthOf(now, target.edge) - lengthOf(piece, target.edge) - amount)).toBeLessThan(1e-6);
  });
});

test("the hinge does not move, and stays on the outline", () => {
  eachSlash(({ hinge }, _, now) => {
    expect(nearest(boundary(now)!, hinge.point).distance).toBeLessThan(1e-6);
  });
});

test("the area grows by the triangle between hinge and opening", () => {
  eachSlash(({ piece, hinge, target }, amount, now) => {
    const radius = apart(hinge.point, target.point);
    const triangle = (amount / 2) * Math.sqrt(radius * radius - (amount * amount) / 4);
    expect(Math.abs(areaOf(now) - areaOf(piece) - triangle)).toBeLessThan(1e-4);
  });
});

test("places, inner lines and edges keep their distances within each part", () => {
  eachSlash(({ piece, hinge }, _, now) => {
    // All that turns keeps its distance from the hinge, and so does all that stays.
    for (const name of piece.places.keys()) {
      const before = apart(placeOf(piece, name), hinge.point);
      expect(Math.abs(apart(placeOf(now, name), hinge.point) - before)).toBeLessThan(1e-6);
    }
  });
});

test("opening, then closing by as much, restores the piece", () => {
  eachSlash((slash, amount, now) => {
    const back = spread(now, slash, -amount);
    expect(back).toBeDefined();
    expectSame(back!, slash.piece);
  });
});

test("opening twice, then closing twice in the other order, restores the piece", () => {
  fc.assert(
    fc.property(anySlash, opening, opening, (slash, first, second) => {
      const once = spread(slash.piece, slash, first);
      const twice = once && spread(once, slash, second);
      if (!once || !twice) return;
      const half = spread(twice, slash, -second)!;
      expectSame(half, once);
      expectSame(spread(half, slash, -first)!, slash.piece);
    }),
    runs,
  );
});

const expectSame = (piece: Piece, wanted: Piece): void => {
  for (const name of wanted.places.keys())
    expect(apart(placeOf(piece, name), placeOf(wanted, name))).toBeLessThan(1e-6);
  for (const [name, edge] of wanted.edges) expectSamePath(piece.edges.get(name)!.path, edge.path);
  expect(piece.turned ?? []).toHaveLength(wanted.turned?.length ?? 0);
  expect(piece.hinges).toHaveLength(wanted.hinges.length);
};

const expectSamePath = (path: Path, wanted: Path): void => {
  expect(Math.abs(pathLength(path) - pathLength(wanted))).toBeLessThan(1e-6);
  expect(apart(startOf(path), startOf(wanted))).toBeLessThan(1e-6);
  expect(apart(endOf(path), endOf(wanted))).toBeLessThan(1e-6);
  for (const span of path) expect(nearest(wanted, span.end).distance).toBeLessThan(1e-6);
  for (const span of wanted) expect(nearest(path, span.end).distance).toBeLessThan(1e-6);
};

test("folding away keeps every edge but the one that opens, and the hinge", () => {
  let folded = 0;
  fc.assert(
    fc.property(anySlash, fc.double({ min: 0.5, max: 40, noNaN: true }), (slash, amount) => {
      const now = spread(slash.piece, slash, -amount);
      if (!now) return;
      folded += 1;
      for (const name of slash.piece.edges.keys()) {
        if (name === slash.target.edge || name === "level") continue;
        expect(Math.abs(lengthOf(now, name) - lengthOf(slash.piece, name))).toBeLessThan(1e-6);
      }
      expect(nearest(boundary(now)!, slash.hinge.point).distance).toBeLessThan(1e-6);
      expect(areaOf(now)).toBeLessThan(areaOf(slash.piece));
    }),
    runs,
  );
  expect(folded).toBeGreaterThan(runs.numRuns / 3);
});

test("a mirrored piece comes out mirrored", () => {
  const mirror = (p: Point): Point => ({ x: -p.x, y: p.y });
  eachSlash(({ piece, hinge, target }, amount, now) => {
    const mirrored: Piece = {
      ...piece,
      edges: new Map([...piece.edges].map(([name, edge]) => [name, { ...edge, path: mapped(edge.path, mirror) }])),
      places: new Map([...piece.places].map(([name, place]) => [name, { ...place, point: mirror(place.point) }])),
    };
    const other = spread(
      mirrored,
      {
        piece: mirrored,
        hinge: { ...hinge, point: mirror(hinge.point) },
        target: { ...target, point: mirror(target.point) },
      },
      amount,
    )!;
    for (const name of piece.places.keys())
      expect(apart(placeOf(other, name), mirror(placeOf(now, name)))).toBeLessThan(1e-6);
    for (const [name, edge] of now.edges) expectSamePath(other.edges.get(name)!.path, mapped(edge.path, mirror));
  });
});

test("trueing the opened edge never moves its ends, and leaves no corner in it", () => {
  eachSlash(({ target }, _, now) => {
    const trued = worked(trueSeam, { edges: [target.edge] }, now).now;
    const [path, before] = [trued.edges.get(target.edge)!.path, now.edges.get(target.edge)!.path];
    expect(corners(path, toRadians(0.1))).toEqual([]);
    expect(apart(startOf(path), startOf(before))).toBeLessThan(1e-9);
    expect(apart(endOf(path), endOf(before))).toBeLessThan(1e-9);
  });
});
