// Allowances against figures of plain geometry that a pencil gives too.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CuttingLine, cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { flattened, signedArea } from "../../kernel/geometry/area.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { linesMeet, selfCrossingsOfLoop } from "../../kernel/geometry/intersect.ts";
import { mirroredIn } from "../../kernel/geometry/mirror.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import {
  cubic,
  endDirection,
  endOf,
  joined,
  type Path,
  reversed,
  startDirection,
  startOf,
  straight,
} from "../../kernel/geometry/path.ts";
import { distance, dot, minus, type Point, unit } from "../../kernel/geometry/point.ts";
import { tan, toRadians } from "../../kernel/geometry/trig.ts";
import type { Corners, Piece, Role } from "../../kernel/working.ts";
import { at, bent, type MadeEdge, madePiece, polygonEdges } from "./made-piece.ts";

const cut = (piece: Piece): CuttingLine => {
  const line = cuttingLine(piece);
  if (!line) throw new Error("the outline is open");
  return line;
};

const areaOf = (edges: readonly MadeEdge[]): number => Math.abs(signedArea(cut(madePiece("piece", edges)).path));

const square = [at(0, 0), at(100, 0), at(100, 100), at(0, 100)];

/** A triangle with this interior angle, in degrees, at its first corner, between two sides of 400. */
const wedge = (degrees: number, allow: number, corners: Corners = "point"): MadeEdge[] => {
  const angle = toRadians(degrees);
  return polygonEdges([at(0, 0), at(400, 0), at(400 * Math.cos(angle), 400 * Math.sin(angle))], allow, corners);
};

describe("corners carried on to a point", () => {
  // Trade handbook, check value 78: an allowance s meets at s / sin(half the interior angle) from the net corner.
  test.each([
    [90, 21.213],
    [60, 30.0],
  ])("15 mm at %d degrees meet %d mm from the net corner", (degrees, wanted) => {
    const [first] = cut(madePiece("piece", wedge(degrees, 15))).stretches;
    expect(distance(startOf(first!.path), at(0, 0))).toBeCloseTo(wanted, 3);
  });

  // Trade handbook, check value 78 (39.197 at 45 degrees), and section 6.4: cap acute corners at 2 to 2.5 allowances.
  test("15 mm at 45 degrees would meet at 39.197 mm and are cut off square to the bisector at 37.5 mm", () => {
    const { path, stretches } = cut(madePiece("piece", wedge(45, 15)));
    const [first, , last] = stretches;
    const along = first!.path[first!.path.length - 1]!;
    const back = last!.path[0]!;
    const tip = linesMeet(along.start, minus(along.end, along.start), back.end, minus(back.end, back.start));
    expect(distance(tip!, at(0, 0))).toBeCloseTo(39.197, 2);
    const bisector = unit(tip!);
    const outermost = path.map(({ start }) => dot(start, bisector)).sort((a, b) => b - a);
    expect(outermost[0]).toBeCloseTo(37.5, 6);
    expect(outermost[1]).toBeCloseTo(37.5, 6);
  });

  // Trade handbook, check value 79: the root of the two widths' squares.
  test("10 and 40 mm at a right angle meet 41.231 mm from the net corner", () => {
    const edges = polygonEdges(square, 10).map((edge) => (edge.name === "2" ? { ...edge, allow: 40 } : edge));
    const { stretches } = cut(madePiece("piece", edges));
    expect(distance(startOf(stretches[2]!.path), at(100, 100))).toBeCloseTo(41.231, 3);
    expect(distance(endOf(stretches[2]!.path), at(0, 100))).toBeCloseTo(41.231, 3);
  });

  test("a square of 100 with 15 all round is cut as a square of 130, whichever way it was drafted", () => {
    expect(areaOf(polygonEdges(square, 15))).toBeCloseTo(130 * 130, 6);
    expect(areaOf(polygonEdges([...square].reverse(), 15))).toBeCloseTo(130 * 130, 6);
  });

  test("an edge drafted against the outline is cut on the outside all the same", () => {
    const edges = polygonEdges(square, 15);
    const turned = edges.map((edge) => (edge.name === "1" ? { ...edge, path: reversed(edge.path) } : edge));
    const piece = madePiece("piece", turned);
    const outline = piece.outline.map((part) => ({ ...part, turned: part.edge === "1" }));
    expect(signedArea(cut({ ...piece, outline }).path)).toBeCloseTo(130 * 130, 6);
  });

  test("an inner corner is trimmed at the crossing", () => {
    const ell = [at(0, 0), at(200, 0), at(200, 100), at(100, 100), at(100, 200), at(0, 200)];
    // Area and allowance strips, a square of 15 more at each of five outer corners, one less at the inner corner.
    expect(areaOf(polygonEdges(ell, 15))).toBeCloseTo(30000 + 800 * 15 + (5 - 1) * 15 * 15, 6);
  });

  test("inner corners with 0 against 15 mm follow the edge that has none", () => {
    const ell = [at(0, 0), at(200, 0), at(200, 100), at(100, 100), at(100, 200), at(0, 200)];
    const edges = polygonEdges(ell, 0).map((edge) => (edge.name === "3" ? { ...edge, allow: 15 } : edge));
    // A strip of 15 x 100 beside the edge from (100, 100) to (100, 200); its neighbours at 200 carry on straight.
    expect(areaOf(edges)).toBeCloseTo(30000 + 15 * 100, 6);
  });

  test("two widths on one straight line step straight across", () => {
    const edges = [
      { name: "top", path: bent([0, 0], [100, 0]), allow: 10 },
      { name: "top-on", path: bent([100, 0], [200, 0]), allow: 40 },
      { name: "rest", path: bent([200, 0], [200, 100], [0, 100], [0, 0]) },
    ];
    expect(areaOf(edges)).toBeCloseTo(200 * 100 + 100 * 10 + 100 * 40, 6);
    const { stretches } = cut(madePiece("piece", edges));
    // The step belongs to the wider one.
    expect(startOf(stretches[1]!.path)).toEqual(at(100, -10));
  });
});

describe("no allowance", () => {
  test("without any the cutting line is the outline", () => {
    const edges = polygonEdges(square, 0);
    expect(cut(madePiece("piece", edges)).path).toEqual(joined(edges.map(({ path }) => path)));
  });

  test("one edge alone is cut between its neighbours carried on", () => {
    const edges = polygonEdges(square, 0).map((edge) => (edge.name === "2" ? { ...edge, allow: 40 } : edge));
    const { stretches, path } = cut(madePiece("piece", edges));
    expect(signedArea(path)).toBeCloseTo(100 * 140, 6);
    expect(stretches.map(({ width }) => width)).toEqual([0, 0, 40, 0]);
    expect(endOf(stretches[1]!.path)).toEqual(at(100, 140));
  });

  test("an outline that stands open, or is not drawn, has no cutting line", () => {
    expect(cuttingLine(madePiece("piece", polygonEdges(square, 15).slice(0, 3)))).toBeUndefined();
    expect(cuttingLine(madePiece("piece", []))).toBeUndefined();
  });

  test("it is worked out once for a piece", () => {
    const piece = madePiece("piece", polygonEdges(square, 15));
    expect(cuttingLine(piece)).toBe(cuttingLine(piece));
  });
});

describe("curves", () => {
  // Area of a circle, r squared times pi; the cubics are within a millionth of it.
  const circle = [0, 1, 2, 3].map((quarter) => ({
    name: String(quarter),
    path: arcSpans(at(0, 0), [at(100, 0), at(0, 100), at(-100, 0), at(0, -100)][quarter]!, Math.PI / 2),
    allow: 15,
  }));

  test("a circle of 100 with 15 is a circle of 115, in four edges or in one", () => {
    expect(areaOf(circle) / (Math.PI * 115 * 115)).toBeCloseTo(1, 6);
    const one = [{ name: "rim", path: joined(circle.map(({ path }) => path)), allow: 15 }];
    expect(areaOf(one) / (Math.PI * 115 * 115)).toBeCloseTo(1, 6);
  });

  test("a quarter of it with straight edges on the fold or without allowance is a quarter of a circle of 115", () => {
    for (const role of ["seam", "fold"] as const) {
      const edges: MadeEdge[] = [
        circle[0]!,
        { name: "left", path: straight(at(0, 100), at(0, 0)), role },
        { name: "top", path: straight(at(0, 0), at(100, 0)), role },
      ];
      expect(areaOf(edges) / ((Math.PI * 115 * 115) / 4)).toBeCloseTo(1, 6);
    }
  });

  test("a single edge with a corner meets itself", () => {
    const drop = joined([
      straight(at(0, -100 * Math.SQRT2), at(100 / Math.SQRT2, -100 / Math.SQRT2)),
      arcSpans(at(0, 0), at(100 / Math.SQRT2, -100 / Math.SQRT2), 1.5 * Math.PI),
      straight(at(-100 / Math.SQRT2, -100 / Math.SQRT2), at(0, -100 * Math.SQRT2)),
    ]);
    const line = cut(madePiece("piece", [{ name: "rim", path: drop, allow: 15 }]));
    // The tip lies at the radius times the root of two, for 100 as for 115.
    expect(bounds([line.path]).top).toBeCloseTo(-115 * Math.SQRT2, 4);
    expect(signedArea(line.path) / (115 * 115 * (1 + 0.75 * Math.PI))).toBeCloseTo(1, 6);
  });
});

describe("where allowances lie on one another", () => {
  const clean = (piece: Piece): CuttingLine => {
    const line = cut(piece);
    expect(selfCrossingsOfLoop(line.path)).toEqual([]);
    return line;
  };

  /** Whether a stretch has fallen away but for a spot. */
  const isSpot = (path: Path): boolean => path.length === 1 && distance(startOf(path), endOf(path)) === 0;

  test("a bite narrower than two allowances is filled, and nothing is left of its edge's stretch but a spot", () => {
    const edges = [
      { name: "bite", path: arcSpans(at(0, 0), at(5, 0), -Math.PI), allow: 15 },
      { name: "rest", path: bent([-5, 0], [-80, 0], [-80, -80], [80, -80], [80, 0], [5, 0]), allow: 15 },
    ];
    const { path, stretches } = clean(madePiece("piece", edges));
    // A rectangle of 160 x 80 with 15 all round.
    expect(Math.abs(signedArea(path))).toBeCloseTo(190 * 110, 6);
    expect(isSpot(stretches[0]!.path)).toBe(true);
    expect(stretches[0]).toMatchObject({ edge: "bite", width: 15, fold: false });
  });

  /** A block of 200 x 150 with a valley in its top: walls at 45 degrees, at the bottom whatever is given. */
  const valley = (floor: Path): Piece => {
    const [left, right] = [startOf(floor), endOf(floor)];
    const rim = 20;
    return madePiece("block", [
      { name: "left-wall", path: straight(at(left.x - (left.y - rim), rim), left), allow: 15 },
      { name: "floor", path: floor, allow: 15 },
      { name: "right-wall", path: straight(right, at(right.x + (right.y - rim), rim)), allow: 15 },
      {
        name: "rest",
        path: bent(
          [right.x + (right.y - rim), rim],
          [200, rim],
          [200, 170],
          [-200, 170],
          [-200, rim],
          [left.x - (left.y - rim), rim],
        ),
        allow: 15,
      },
    ]);
  };

  test("a round bottom tighter than the allowance comes to a point between the walls, which stay straight", () => {
    // The walls would meet at (0, 100); a circle of 10 touches both 10 from its middle at (0, 100 - 10 root 2).
    const touch = 10 / Math.SQRT2;
    const middle = at(0, 100 - 10 * Math.SQRT2);
    const floor = arcSpans(middle, at(-touch, middle.y + touch), -Math.PI / 2);
    const { stretches } = clean(valley(floor));
    // Two lines 15 from the walls meet 15 root 2 above where the walls do.
    expect(isSpot(stretches[1]!.path)).toBe(true);
    expect(startOf(stretches[1]!.path).x).toBeCloseTo(0, 6);
    expect(startOf(stretches[1]!.path).y).toBeCloseTo(100 - 15 * Math.SQRT2, 6);
    // Carried in from the mouth of the valley, where its point is cut: one straight line, as it was.
    expect(stretches[0]!.path).toHaveLength(1);
    expect(distance(endOf(stretches[0]!.path), startOf(stretches[2]!.path))).toBeLessThan(1e-6);
  });

  test("a round bottom wider than the allowance stays the arc it is", () => {
    const middle = at(0, 100 - 20 * Math.SQRT2);
    const touch = 20 / Math.SQRT2;
    const { stretches } = clean(valley(arcSpans(middle, at(-touch, middle.y + touch), -Math.PI / 2)));
    // 15 inside a circle of 20.
    for (const p of flattened(stretches[1]!.path, 0.001)) expect(distance(p, middle)).toBeCloseTo(5, 2);
    expect(stretches[1]!.path.every(({ kind }) => kind === "cubic")).toBe(true);
  });

  test("a floor between two walls falls away where they meet first, and stays as wide as they leave it else", () => {
    // The walls would meet 5 below a floor of 10; their lines meet 15 root 2 - 5 = 16.213 above it, the floor's lies at 15.
    const [narrow] = [valley(bent([-5, 95], [5, 95]))].map(clean);
    expect(isSpot(narrow!.stretches[1]!.path)).toBe(true);
    expect(startOf(narrow!.stretches[1]!.path).y).toBeCloseTo(100 - 15 * Math.SQRT2, 6);
    // On either side an inner corner of 135 degrees trims off 15 tan 22.5 degrees: 40 - 2 x 6.2132 = 27.5736.
    const wide = clean(valley(bent([-20, 80], [20, 80])));
    const { path } = wide.stretches[1]!;
    expect(distance(startOf(path), endOf(path))).toBeCloseTo(27.5736, 4);
    expect(startOf(path).y).toBeCloseTo(65, 9);
  });

  test("several slots are filled at once, and a wider one is left open", () => {
    // Slots of 20, 20 and 40 in the top of a block of 300 x 100, each 60 deep.
    const top = bent(
      [0, 0],
      [50, 0],
      [50, 60],
      [70, 60],
      [70, 0],
      [120, 0],
      [120, 60],
      [140, 60],
      [140, 0],
      [200, 0],
      [200, 60],
      [240, 60],
      [240, 0],
      [300, 0],
    );
    const edges = [
      { name: "top", path: top, allow: 15 },
      { name: "rest", path: bent([300, 0], [300, 100], [0, 100], [0, 0]), allow: 15 },
    ];
    const { path } = clean(madePiece("block", edges));
    // All of 330 x 130 but what is left of the wide slot: 10 x 60.
    expect(signedArea(path)).toBeCloseTo(330 * 130 - 10 * 60, 6);
  });

  test("a wide allowance across a narrow inlet stays on the side where it is", () => {
    // A slot of 30: 10 from its left wall and 40 from its right one, which so reaches 10 beyond the left wall's edge.
    const edges = polygonEdges(
      [at(0, 0), at(100, 0), at(100, 80), at(130, 80), at(130, 0), at(230, 0), at(230, 100), at(0, 100)],
      10,
    );
    const wide = edges.map((edge) => (edge.name === "3" ? { ...edge, allow: 40 } : edge));
    const { path, stretches } = clean(madePiece("block", wide));
    // 250 x 120 with the slot filled: nothing stands out above, as both are level there.
    expect(signedArea(path)).toBeCloseTo(250 * 120, 6);
    expect(stretches.map(({ edge }) => edge)).toEqual(["0", "1", "2", "3", "4", "5", "6", "7"]);
  });

  test("an outline that crosses itself is left with all its crossings, for whoever mends it", () => {
    const bow = polygonEdges([at(0, 0), at(100, 100), at(100, 0), at(0, 60)], 0);
    expect(cut(madePiece("piece", bow)).path).toEqual(joined(bow.map(({ path }) => path)));
  });

  test("a curve that folds over only in part keeps the rest of itself to the last bit", () => {
    const loose = [cubic(at(0, 0), at(60, -30), at(140, -30), at(200, 0))];
    const edges = [
      { name: "top", path: loose, allow: 15 },
      {
        name: "right",
        path: bent([200, 0], [200, 100], [110, 100], [110, 60], [90, 60], [90, 100], [0, 100]),
        allow: 15,
      },
      { name: "left", path: straight(at(0, 100), at(0, 0)), allow: 15 },
    ];
    const { stretches } = clean(madePiece("piece", edges));
    const alone = cut(
      madePiece("piece", [edges[0]!, { ...edges[1]!, path: bent([200, 0], [200, 100], [0, 100]) }, edges[2]!]),
    );
    expect(stretches[0]!.path).toEqual(alone.stretches[0]!.path);
  });

  test("an edge that ends in a curve tighter than its allowance meets its neighbour where both are carried on", () => {
    // A quarter of a circle of 10 down into a wall of 100: 15 out from it nothing of the quarter is left.
    const edges = [
      {
        name: "top",
        path: [...straight(at(-200, 0), at(-10, 0)), ...arcSpans(at(-10, -10), at(-10, 0), -Math.PI / 2)],
        allow: 15,
      },
      { name: "wall", path: straight(at(0, -10), at(0, -110)), allow: 15 },
      { name: "rest", path: bent([0, -110], [100, -110], [100, 100], [-200, 100], [-200, 0]), allow: 15 },
    ];
    const { stretches } = clean(madePiece("piece", edges));
    expect(endOf(stretches[0]!.path).x).toBeCloseTo(-15, 6);
    expect(endOf(stretches[0]!.path).y).toBeCloseTo(-15, 6);
  });
});

describe("a sharp point inside an edge", () => {
  test("is cut off at two and a half allowances like one between edges", () => {
    // 15 mm at 30 degrees would meet at 57.956 mm (trade handbook, section 6.4).
    const edges = wedge(30, 15);
    const [first, second, third] = edges.map(({ path }) => path);
    const one = [
      { name: "all-but-one", path: joined([third!, first!]), allow: 15 },
      { name: "second", path: second!, allow: 15 },
    ];
    const bisector = unit(at(Math.cos(toRadians(15)) * -1, Math.sin(toRadians(15)) * -1));
    const reach = (made: readonly MadeEdge[]): number =>
      Math.max(...cut(madePiece("piece", made)).path.map(({ start }) => dot(start, bisector)));
    expect(reach(edges)).toBeCloseTo(37.5, 6);
    expect(reach(one)).toBeCloseTo(37.5, 6);
  });
});

/** A hem of a width between two seams that lean outward by an angle in degrees, and a long way up. */
const leaningPanel = (width: number, degrees: number, hem: number, side: number, corners: Corners, role: Role) => {
  const lean = 600 * tan(toRadians(degrees));
  return madePiece("panel", [
    { name: "top", path: straight(at(lean, 0), at(width - lean, 0)), allow: 0 },
    { name: "right", path: straight(at(width - lean, 0), at(width, 600)), allow: side },
    { name: "hem", path: straight(at(width, 600), at(0, 600)), allow: hem, corners, role },
    { name: "left", path: straight(at(0, 600), at(lean, 0)), allow: side },
  ]);
};

/** The straight lower edge of a hem's stretch. */
const lowerEdge = (piece: Piece): { from: Point; to: Point } => {
  const stretch = cut(piece).stretches.find(({ edge }) => edge === "hem")!;
  const low = bounds([stretch.path]).bottom;
  const ends = stretch.path.flatMap(({ start, end }) => [start, end]).filter(({ y }) => Math.abs(y - low) < 1e-6);
  const sorted = ends.sort((a, b) => a.x - b.x);
  return { from: sorted[0]!, to: sorted[sorted.length - 1]! };
};

describe("corners of a turned hem", () => {
  // Trade handbook, check value 80 and section 6.4: h tan(lean) narrower at each side.
  test.each([
    [500, 10, 40, 485.89],
    [600, 15, 30, 583.92],
  ])("a hem of %d leaning %d degrees, turned up %d, is cut %d wide", (width, degrees, hem, wanted) => {
    const { from, to } = lowerEdge(leaningPanel(width, degrees, hem, 0, "turned", "hem"));
    expect(to.x - from.x).toBeCloseTo(wanted, 2);
    expect(from.y).toBeCloseTo(600 + hem, 6);
  });

  // Trade handbook, section 6.4: the R88 coat side of 4.544 degrees loses 3.179 at each side of a hem of 40.
  test("a coat side of 4.544 degrees loses 3.179 mm", () => {
    const { from } = lowerEdge(leaningPanel(500, 4.544, 40, 0, "turned", "hem"));
    expect(from.x).toBeCloseTo(3.179, 3);
  });

  test("turned up, the hem's raw ends lie on the side's own cutting line", () => {
    const panel = leaningPanel(500, 10, 40, 15, "turned", "hem");
    const { from, to } = lowerEdge(panel);
    const { stretches } = cut(panel);
    for (const [raw, side] of [
      [to, stretches[1]!],
      [from, stretches[3]!],
    ] as const) {
      const turnedUp = mirroredIn(raw, at(0, 600), at(500, 600));
      expect(nearest(side.path, turnedUp).distance).toBeCloseTo(0, 6);
    }
  });

  test("a curved side is mirrored as a curve", () => {
    const panel = madePiece("panel", [
      { name: "top", path: straight(at(0, 0), at(300, 0)) },
      { name: "right", path: [cubic(at(300, 0), at(300, 60), at(320, 90), at(380, 100))], allow: 10 },
      { name: "hem", path: straight(at(380, 100), at(0, 100)), allow: 30, corners: "turned", role: "hem" },
      { name: "left", path: straight(at(0, 100), at(0, 0)) },
    ]);
    const { stretches } = cut(panel);
    const beyond = flattened(stretches[2]!.path, 0.01).filter(({ x, y }) => x > 200 && y < 129.9);
    expect(beyond.length).toBeGreaterThan(5);
    for (const point of beyond) {
      const turnedUp = mirroredIn(point, at(0, 100), at(380, 100));
      expect(nearest(stretches[1]!.path, turnedUp).distance).toBeLessThan(0.01);
    }
  });

  test("a hem on the fold is carried on straight along the fold, also where the fold is not square to it", () => {
    const panel = madePiece("panel", [
      { name: "top", path: straight(at(0, 0), at(300, 0)), allow: 15 },
      { name: "right", path: straight(at(300, 0), at(300, 1000)), allow: 15 },
      { name: "hem", path: straight(at(300, 1000), at(0, 1030)), allow: 40, corners: "turned", role: "hem" },
      { name: "center", path: straight(at(0, 1030), at(0, 0)), role: "fold", allow: 15 },
    ]);
    const fold = cut(panel).stretches[3]!;
    expect(fold.width).toBe(0);
    expect(startOf(fold.path).x).toBeCloseTo(0, 9);
    // The hem line falls by one in ten, so its cutting line stands 40 times the secant lower at the fold.
    expect(startOf(fold.path).y).toBeCloseTo(1030 + 40 * Math.sqrt(1.01), 6);
    expect(endOf(fold.path)).toEqual(at(0, -15));
  });
});

describe("corners of a seam that is pressed open", () => {
  // Geometry as for the hem above: pressed open, the allowance lies on the piece, edge to edge with the neighbour's cutting line.
  test("turn back in its sewing line, as those of a hem do", () => {
    const { from, to } = lowerEdge(leaningPanel(500, 10, 40, 0, "turned", "seam"));
    expect(to.x - from.x).toBeCloseTo(485.89, 2);
  });

  test("of a shoulder lie on the neck's cutting line once pressed open", () => {
    const piece = madePiece("yoke", [
      { name: "shoulder", path: straight(at(60, 0), at(200, 50)), allow: 15, corners: "turned" },
      { name: "rest", path: bent([200, 50], [200, 200], [0, 200], [0, 60]), allow: 10 },
      { name: "neck", path: [cubic(at(0, 60), at(30, 60), at(55, 40), at(60, 0))], allow: 10 },
    ]);
    const [shoulder, , neck] = cut(piece).stretches;
    const beyond = flattened(shoulder!.path, 0.01).filter(({ x }) => x < 60);
    expect(beyond.length).toBeGreaterThan(2);
    for (const point of beyond.slice(0, -1)) {
      expect(nearest(neck!.path, mirroredIn(point, at(60, 0), at(200, 50))).distance).toBeLessThan(0.01);
    }
  });
});

describe("corners of a curved hem", () => {
  // Cloth folds along a straight line, and so at its corner a curved hem is folded in its tangent there.
  test("turn back in the tangent at the corner", () => {
    const hem = reversed(arcSpans(at(0, 0), at(600, 0), Math.PI / 4));
    const corner = startOf(hem);
    const inner = at(300 * Math.cos(0.6), 300 * Math.sin(0.6));
    const panel = madePiece("panel", [
      { name: "hem", path: reversed(hem), allow: 30, corners: "turned", role: "hem" },
      { name: "side", path: straight(corner, inner), allow: 10 },
      { name: "top", path: straight(inner, at(600, 0)), allow: 10 },
    ]);
    const { stretches } = cut(panel);
    const tangent = { x: -corner.y, y: corner.x };
    const beyond = flattened(stretches[0]!.path, 0.01).filter((p) => nearest(stretches[1]!.path, p).distance < 25);
    const along = endOf(stretches[0]!.path);
    const raw = stretches[0]!.path[stretches[0]!.path.length - 1]!;
    expect(beyond.length).toBeGreaterThan(0);
    expect(raw.end).toEqual(along);
    // Folded up, the last straight stretch of the hem's own lies on the side's cutting line.
    for (const p of [raw.start, raw.end]) {
      const turnedUp = mirroredIn(p, corner, { x: corner.x + tangent.x, y: corner.y + tangent.y });
      expect(nearest(stretches[1]!.path, turnedUp).distance).toBeLessThan(1e-6);
    }
    expect(distance(raw.start, raw.end)).toBeGreaterThan(25);
  });
});

describe("square and cut corners", () => {
  test("a square end stands square to its own seam at the neighbour's cutting line", () => {
    const edges = wedge(60, 15).map((edge) => (edge.name === "0" ? { ...edge, corners: "square" as const } : edge));
    const [first, , last] = cut(madePiece("piece", edges)).stretches;
    const end = first!.path[0]!;
    // The sewing line meets the neighbour's cutting line 15 / sin 60 beyond the net corner.
    expect(end.start.x).toBeCloseTo(-15 / Math.sin(Math.PI / 3), 6);
    expect(end.start.y).toBeCloseTo(0, 6);
    expect(end.end.x).toBeCloseTo(end.start.x, 6);
    expect(end.end.y).toBeCloseTo(-15, 6);
    expect(distance(endOf(last!.path), end.start)).toBeCloseTo(0, 9);
  });

  test("a square end against no allowance goes straight out at the net corner", () => {
    const edges = wedge(120, 0).map((edge) =>
      edge.name === "0" ? { ...edge, allow: 15, corners: "square" as const } : edge,
    );
    const [first] = cut(madePiece("piece", edges)).stretches;
    expect(first!.path[0]!.start.x).toBeCloseTo(0, 9);
    expect(first!.path[0]!.end.x).toBeCloseTo(0, 9);
    expect(first!.path[0]!.end.y).toBeCloseTo(-15, 9);
  });

  test("cut corners leave half a square of the allowance at a right angle", () => {
    expect(areaOf(polygonEdges(square, 15, "cut"))).toBeCloseTo(10000 + 4 * 1500 + (4 * 15 * 15) / 2, 6);
  });

  test("a corner that says otherwise wins over a point, and a hem over a seam", () => {
    const said = (corners: readonly Corners[], hem: number) =>
      areaOf(
        polygonEdges(square, 15).map((edge, index) => ({
          ...edge,
          corners: corners[index]!,
          role: index === hem ? ("hem" as const) : ("seam" as const),
        })),
      );
    const half = (15 * 15) / 2;
    expect(said(["point", "point", "cut", "point"], -1)).toBeCloseTo(130 * 130 - 2 * half, 6);
    // At a right angle `square` and `point` enclose the same cloth, so only the corners that `cut` wins lose any.
    expect(said(["square", "point", "square", "cut"], 3)).toBeCloseTo(130 * 130 - 2 * half, 6);
    // Of two seams the first in outline order wins: the hem's place is taken by nobody.
    expect(said(["square", "cut", "point", "point"], -1)).toBeCloseTo(130 * 130 - half, 6);
  });
});

describe("any polygon", () => {
  const convex = fc
    .array(fc.double({ min: 0.2, max: 1, noNaN: true }), { minLength: 3, maxLength: 8 })
    .map((shares) => {
      const whole = shares.reduce((sum, share) => sum + share, 0);
      let angle = 0;
      return shares.map((share) => {
        angle += (share / whole) * 2 * Math.PI;
        return at(300 * Math.cos(angle), 300 * Math.sin(angle));
      });
    });
  const cornerKinds = fc.constantFrom<Corners>("point", "square", "turned", "cut");

  test("stretches follow one another and close, and the cutting line holds outline and allowances", () => {
    fc.assert(
      fc.property(convex, fc.array(cornerKinds, { minLength: 8, maxLength: 8 }), (points, kinds) => {
        const edges = polygonEdges(points, 12).map((edge, index) => ({ ...edge, corners: kinds[index]! }));
        const { path, stretches } = cut(madePiece("piece", edges));
        stretches.forEach((stretch, index) => {
          const next = stretches[(index + 1) % stretches.length]!;
          expect(distance(endOf(stretch.path), startOf(next.path))).toBeLessThan(1e-6);
        });
        const around = edges.reduce((sum, edge) => sum + distance(startOf(edge.path), endOf(edge.path)), 0);
        const net = signedArea(joined(edges.map((edge) => edge.path)));
        // Of a convex piece no kind of corner but a turned one takes cloth away from the straight strips.
        if (!kinds.includes("turned")) expect(signedArea(path)).toBeGreaterThan(net + around * 12 - 1e-6);
        expect(endOf(path)).toEqual(startOf(path));
      }),
      { numRuns: 200, seed: 1 },
    );
  });

  test("outlines with deep inner corners and any widths give a closed line of real numbers", () => {
    const star = fc.array(fc.record({ reach: fc.double({ min: 20, max: 300, noNaN: true }), corners: cornerKinds }), {
      minLength: 3,
      maxLength: 9,
    });
    fc.assert(
      fc.property(star, fc.array(fc.constantFrom(0, 5, 15, 40), { minLength: 9, maxLength: 9 }), (spokes, widths) => {
        const points = spokes.map(({ reach }, i) => {
          const angle = (2 * Math.PI * i) / spokes.length;
          return at(reach * Math.cos(angle), reach * Math.sin(angle));
        });
        const edges = polygonEdges(points, 0).map((edge, i) => ({
          ...edge,
          allow: widths[i]!,
          corners: spokes[i]!.corners,
          role: i === 1 ? ("fold" as const) : ("seam" as const),
        }));
        const { path, stretches } = cut(madePiece("piece", edges));
        expect(stretches).toHaveLength(edges.length);
        expect(endOf(path)).toEqual(startOf(path));
        expect(selfCrossingsOfLoop(path)).toEqual([]);
        path.forEach((span, i) => {
          expect(span.start).toEqual(path[(i + path.length - 1) % path.length]!.end);
          expect(Number.isFinite(span.end.x + span.end.y)).toBe(true);
        });
      }),
      { numRuns: 300, seed: 4 },
    );
  });

  test("the ends of a stretch run as its edge does, at its distance", () => {
    fc.assert(
      fc.property(convex, (points) => {
        const edges = polygonEdges(points, 12);
        cut(madePiece("piece", edges)).stretches.forEach(({ path }, index) => {
          const along = startDirection(edges[index]!.path);
          const middle = path.find((span) => dot(unit(minus(span.end, span.start)), along) > 1 - 1e-9)!;
          expect(nearest(edges[index]!.path, middle.end).distance).toBeGreaterThan(12 - 1e-6);
          expect(dot(endDirection([middle]), along)).toBeCloseTo(1, 9);
        });
      }),
      { numRuns: 50, seed: 2 },
    );
  });
});
