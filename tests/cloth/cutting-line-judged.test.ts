// Cutting lines against Clipper2, a general library for polygons that is not ours, where all allowances are equal: the two
// lie within 0.01 mm of one another, and ours nowhere crosses itself.
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CuttingLine, cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import { selfCrossingsOfLoop } from "../../kernel/geometry/intersect.ts";
import {
  cubic,
  endOf,
  joined,
  type Path,
  spanEndDirection,
  spanStartDirection,
  startOf,
  through,
} from "../../kernel/geometry/path.ts";
import { distance, minus, type Point, plus, quarterTurn, times, unit } from "../../kernel/geometry/point.ts";
import { asin, turnBetween } from "../../kernel/geometry/trig.ts";
import { boundary, walked } from "../../kernel/outline.ts";
import type { Piece } from "../../kernel/working.ts";
import { workedRecipe } from "../worked-recipe.ts";
import { apart, apartExcept, bentLineOf, movedOutByClipper, unitedByClipper } from "./clipper-judge.ts";
import { at, type MadeEdge, madePiece, polygonEdges } from "./made-piece.ts";

// Where the points of corners are cut off, as times the allowance: at another place than Clipper's, which is not judged.
const limit = 2.5;
const sharpTurn = Math.PI - 2 * asin(1 / limit) - 0.001;

const sharpCorners = (loop: Path): Point[] => {
  const sense = Math.sign(signedArea(loop));
  return loop.flatMap((span, i) => {
    const next = loop[(i + 1) % loop.length]!;
    return sense * turnBetween(spanEndDirection(span), spanStartDirection(next)) > sharpTurn ? [span.end] : [];
  });
};

const cut = (piece: Piece): CuttingLine => cuttingLine(piece)!;

const expectJudged = (piece: Piece, width: number): void => {
  const { path, stretches } = cut(piece);
  const loop = boundary(piece)!;
  const [judged] = movedOutByClipper(bentLineOf(loop), width, limit);
  expect(apartExcept(bentLineOf(path), judged!, sharpCorners(loop), 2 * limit * width)).toBeLessThan(0.01);
  expect(selfCrossingsOfLoop(path)).toEqual([]);
  expect(stretches.map(({ edge }) => edge)).toEqual(walked(piece).map(({ edge }) => edge.name));
  stretches.forEach((stretch, i) => {
    expect(distance(endOf(stretch.path), startOf(stretches[(i + 1) % stretches.length]!.path))).toBeLessThan(1e-6);
  });
};

/** The piece with no fold and one allowance all round. */
const allowedAllRound = (piece: Piece, width: number): Piece => ({
  ...piece,
  edges: new Map([...piece.edges].map(([name, edge]) => [name, { ...edge, role: "seam" }])),
  allowances: new Map(
    walked(piece).map(({ edge }) => [edge.name, { width, corners: "point", drawnBy: edge.drawnBy }] as const),
  ),
});

const recipes = fileURLToPath(new URL("../../recipes", import.meta.url));
const files = readdirSync(recipes, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".chalk"))
  .sort();

const drafted = files
  .map((file) => ({ file, pieces: [...workedRecipe(file).garment.pieces.values()] }))
  .filter(({ pieces }) => pieces.length > 0);

test("there are recipes with pieces", () => expect(drafted.length).toBeGreaterThan(20));

describe.each(drafted)("$file", ({ pieces }) => {
  test("with one allowance all round its pieces are cut as Clipper would", () => {
    for (const piece of pieces) for (const width of [6, 15]) expectJudged(allowedAllRound(piece, width), width);
  });

  test("as it is allowed, no cutting line crosses itself", () => {
    for (const piece of pieces) expect(selfCrossingsOfLoop(cut(piece).path), piece.name).toEqual([]);
  });
});

describe("any shape", () => {
  const width = fc.constantFrom(3, 5, 10, 15, 25);

  /** Judges every shape that is an outline at all: one that does not cross itself and has no needle or slit of no width. */
  const judgeAll = (shapes: fc.Arbitrary<readonly MadeEdge[]>, numRuns: number): void => {
    let judged = 0;
    fc.assert(
      fc.property(shapes, width, (edges, by) => {
        const loop = joined(edges.map(({ path }) => path));
        const turns = loop.map((span, i) =>
          turnBetween(spanEndDirection(span), spanStartDirection(loop[(i + 1) % loop.length]!)),
        );
        fc.pre(turns.every((turn) => Math.abs(turn) < Math.PI - 0.05) && sharpCorners(loop).length === 0);
        fc.pre(Math.abs(signedArea(loop)) > 1 && selfCrossingsOfLoop(loop).length === 0);
        judged += 1;
        expectJudged(
          madePiece(
            "piece",
            edges.map((edge) => ({ ...edge, allow: by })),
          ),
          by,
        );
      }),
      { numRuns, seed: 11 },
    );
    expect(judged).toBe(numRuns);
  };

  const radius = fc.integer({ min: 20, max: 300 });
  const around = (radii: readonly number[]): Point[] =>
    radii.map((r, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return at(r * Math.cos(angle), r * Math.sin(angle));
    });

  test("polygons with inner corners are cut as Clipper would", () => {
    judgeAll(
      fc.array(radius, { minLength: 3, maxLength: 12 }).map((radii) => polygonEdges(around(radii), 0)),
      150,
    );
  });

  test("so are those on a grid, where many lines meet in one spot", () => {
    const onGrid = (p: Point): Point => at(Math.round(p.x / 10) * 10, Math.round(p.y / 10) * 10);
    judgeAll(
      fc.array(radius, { minLength: 3, maxLength: 12 }).map((radii) => polygonEdges(around(radii).map(onGrid), 0)),
      150,
    );
  });

  // A slot as wide as two allowances, or narrower, is filled; lines of different teeth run along one another there.
  const teeth = fc.array(
    fc.record({
      tooth: fc.constantFrom(5, 6, 10, 20, 30, 50),
      deep: fc.constantFrom(5, 10, 20, 40, 80),
      slot: fc.constantFrom(5, 6, 10, 20, 30, 50),
    }),
    { minLength: 1, maxLength: 6 },
  );
  const comb = teeth.map((all) => {
    let x = 0;
    const points = all.flatMap(({ tooth, deep, slot }) => {
      const from = x;
      x += tooth + slot;
      return [at(from, 0), at(from + tooth, 0), at(from + tooth, deep), at(x, deep)];
    });
    return polygonEdges([...points, at(x, 0), at(x + 20, 0), at(x + 20, 120), at(0, 120)], 0);
  });

  test("combs, with an edge for every side or one for all teeth", () => {
    judgeAll(comb, 100);
    judgeAll(
      comb.map((edges) => [
        { name: "teeth", path: joined(edges.slice(0, -3).map(({ path }) => path)) },
        ...edges.slice(-3),
      ]),
      100,
    );
  });

  // Smooth through its points, each joint with the direction from the point before to the point after (Catmull and Rom 1974).
  const smooth = (points: readonly Point[]): MadeEdge[] =>
    points.map((p, i) => {
      const [before, next, after] = [i + points.length - 1, i + 1, i + 2].map((j) => points[j % points.length]!);
      const [out, into] = [times(minus(next!, before!), 1 / 6), times(minus(after!, p), 1 / 6)];
      return { name: String(i), path: [cubic(p, plus(p, out), minus(next!, into), next!)] };
    });

  test("smooth outlines with curves tighter than the allowance", () => {
    judgeAll(
      fc.array(fc.integer({ min: 20, max: 200 }), { minLength: 4, maxLength: 10 }).map((r) => smooth(around(r))),
      8,
    );
  });

  const handle = fc.record({ x: fc.integer({ min: -60, max: 60 }), y: fc.integer({ min: -60, max: 60 }) });

  test("curves that meet at any angle, some nearly with a point of their own", () => {
    const corner = fc.record({ reach: fc.integer({ min: 40, max: 200 }), out: handle, into: handle });
    const wild = fc.array(corner, { minLength: 3, maxLength: 6 }).map((all) => {
      const points = around(all.map(({ reach }) => reach));
      return points.map((p, i): MadeEdge => {
        const next = points[(i + 1) % points.length]!;
        const third = times(minus(next, p), 1 / 3);
        const { out, into } = all[i]!;
        return { name: String(i), path: [cubic(p, plus(plus(p, third), out), plus(minus(next, third), into), next)] };
      });
    });
    judgeAll(wild, 25);
  });

  // With corners cut off the cloth is the piece, a strip beside each edge, and at each outer corner the triangle between
  // the ends of two strips: put together by Clipper, whatever the widths.
  test("any widths with corners cut off are cut round the piece with a strip beside each edge", () => {
    const widths = fc.array(fc.constantFrom(0, 4, 10, 15, 40), { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(fc.array(radius, { minLength: 3, maxLength: 12 }), widths, (radii, allowed) => {
        const points = around(radii);
        const edges = polygonEdges(points, 0, "cut").map((edge, i) => ({ ...edge, allow: allowed[i]! }));
        const strips = points.map((p, i) => {
          const next = points[(i + 1) % points.length]!;
          const out = times(quarterTurn(unit(minus(next, p))), -allowed[i]!);
          return [p, plus(p, out), plus(next, out), next];
        });
        const triangles = strips.map(([, , end, corner], i) => [end!, strips[(i + 1) % strips.length]![1]!, corner!]);
        const united = unitedByClipper([points, ...strips, ...triangles.filter(isClockwise)].filter(isClockwise));
        const { path } = cut(madePiece("piece", edges));
        expect(apart(bentLineOf(path), united)).toBeLessThan(0.01);
        expect(selfCrossingsOfLoop(path)).toEqual([]);
      }),
      { numRuns: 150, seed: 12 },
    );
  });
});

const isClockwise = (points: readonly Point[]): boolean => signedArea(through([...points, points[0]!])) > 1e-9;
