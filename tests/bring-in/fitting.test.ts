// How few lines and curves a drawing becomes, and that they keep within a tenth of a millimetre of it.
import fc from "fast-check";
import svgpath from "svgpath";
import { describe, expect, test } from "vitest";
import { fittedCubics } from "../../editor/bring-in/fitted-cubics.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { flattened, signedArea } from "../../kernel/geometry/area.ts";
import { cubic, endDirection, line, type Path, startDirection, through } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { farthest, howFar, inMillimetres, traced } from "./traced.ts";

const at = (x: number, y: number): Point => ({ x, y });
const written = (points: readonly Point[]): string =>
  points.map(({ x, y }) => `${x.toFixed(4)},${y.toFixed(4)}`).join(" ");
const polygon = (points: readonly Point[]): string => inMillimetres(`<polygon points="${written(points)}"/>`);
const lines = (recipe: string, verb: string): string[] =>
  recipe.split("\n").filter((each) => each.trim().startsWith(`${verb} `));

describe("few cubics through many points", () => {
  test("a quarter of a circle of 100 mm is one cubic within 0.05 mm: the best is off by 0.02", () => {
    // A cubic whose middle lies on the circle strays from a quarter of it by 0.027 % of the radius, and the best by less.
    const arc = arcSpans(at(0, 0), at(100, 0), Math.PI / 2);
    const points = flattened(arc, 0.001);
    const fitted = fittedCubics(points, startDirection(arc), endDirection(arc), 0.05);
    expect(fitted).toHaveLength(1);
    expect(farthest(points, fitted)).toBeLessThan(0.05);
  });

  test("points of one cubic give one cubic that is as good as the same", () => {
    const drawn = cubic(at(0, 0), at(60, 10), at(120, 90), at(100, 160));
    const points = flattened([drawn], 0.0005);
    const fitted = fittedCubics(points, startDirection([drawn]), endDirection([drawn]), 0.02);
    expect(fitted).toHaveLength(1);
    expect(howFar(fitted, [drawn])).toBeLessThan(0.02);
  });

  test("two points, and points that double back, still end", () => {
    expect(fittedCubics([at(0, 0), at(9, 0)], at(1, 0), at(1, 0), 0.1)).toHaveLength(1);
    const there = [at(0, 0), at(10, 0), at(0, 0), at(10, 0), at(0, 0)];
    expect(fittedCubics(there, at(1, 0), at(-1, 0), 0.1).length).toBeLessThanOrEqual(4);
  });
});

describe("a drawing is written as a person would write it", () => {
  test("a square stays four lines between four corners, clockwise from the top left, whichever way it was drawn", () => {
    for (const points of ["300,100 300,400 100,400 100,100", "100,400 300,400 300,100 100,100"]) {
      const { made } = traced(inMillimetres(`<polygon points="${points}"/>`), "svg");
      expect(made.recipe).toBe(`chalkline 1
recipe "Drawing"
units cm

# Traced from drawing.svg. Rename what has a number to what it is:
#   piece-1: edge-1 to edge-4

piece piece-1 {
  point corner-1 = (0, 0)
  point corner-2 = corner-1 right 20 cm
  point corner-3 = corner-2 down 30 cm
  point corner-4 = corner-3 left 20 cm
  line edge-1 = corner-1 to corner-2  # top, 20 cm
  line edge-2 = corner-2 to corner-3  # right, 30 cm
  line edge-3 = corner-3 to corner-4  # bottom, 20 cm
  line edge-4 = corner-4 to corner-1  # left, 30 cm
  outline edge-1, edge-2, edge-3, edge-4
}
`);
    }
  });

  test("one cubic between two lines keeps its handles to the digit", () => {
    const { made } = traced(inMillimetres('<path d="M0 0H80C90 60 130 100 200 110V300H0z"/>'), "svg");
    expect(lines(made.recipe, "curve")).toEqual([
      expect.stringContaining("edge-2 = corner-2 to corner-3 handles (9 cm, 6 cm), (13 cm, 10 cm)"),
    ]);
    expect(made.straying).toBeLessThan(1e-9);
  });

  test("arcs of circles are arcs with their radius", () => {
    const { made } = traced(inMillimetres('<path d="M0 0H200V100A100 100 0 0 1 100 200H0z"/>'), "svg");
    expect(lines(made.recipe, "arc")).toHaveLength(1);
    expect(lines(made.recipe, "arc")[0]).toContain("radius 10 cm bulging");
    expect(lines(made.recipe, "line")).toHaveLength(4);
  });

  test("a side seam with a slight bend at the waist is one edge, and a shoulder is another", () => {
    // Turns of 8 degrees at the waist, of 90 at the hem and of about 70 at the shoulder.
    const { made } = traced(polygon([at(0, 0), at(150, 40), at(150, 300), at(190, 600), at(0, 600)]), "svg");
    expect(made.pieces[0]!.edges).toHaveLength(4);
    expect(made.recipe).toContain("through (15 cm, 30 cm)");
  });

  test("a flattened armhole becomes one edge of few curves between its true corners", () => {
    // The coat block's armhole (handbook of the trade 3.2, R88), bent within 0.05 mm as exchange files have it.
    const armhole: Path = [
      cubic(at(205.2, 18), at(193.4, 54.3), at(190, 93.3), at(190, 131.5)),
      cubic(at(190, 131.5), at(190, 194.2), at(225.8, 245), at(270, 245)),
    ];
    const points = [at(74, -24.7), ...flattened(armhole, 0.05), at(270, 600), at(74, 600)];
    expect(points.length).toBeGreaterThan(25);
    const { made, outlines } = traced(polygon(points), "svg");
    expect(made.pieces[0]!.edges).toHaveLength(5);
    expect(lines(made.recipe, "line")).toHaveLength(4);
    // Two cubics were drawn, and no more than three are wanted within a tenth.
    expect(lines(made.recipe, "curve").length).toBeLessThanOrEqual(3);
    expect(howFar(outlines[0]!, [...through(points), line(points.at(-1)!, points[0]!)])).toBeLessThan(0.1);
  });

  test("a circle of many short lines is one curve all round", () => {
    const points = Array.from({ length: 200 }, (_, i) =>
      at(300 + 200 * Math.cos((i * Math.PI) / 100), 300 + 200 * Math.sin((i * Math.PI) / 100)),
    );
    const { made, outlines } = traced(polygon(points), "svg");
    expect(made.pieces[0]!.edges).toEqual(["edge-1"]);
    expect(made.recipe.length).toBeLessThan(900);
    // Between the polygon and its circle: pi 200^2 less at most 0.1 mm all round.
    expect(Math.abs(signedArea(outlines[0]!) - Math.PI * 200 ** 2)).toBeLessThan(0.1 * 2 * Math.PI * 200);
  });

  test("a dozen sides are a dozen edges, for no curve was meant", () => {
    const points = Array.from({ length: 12 }, (_, i) =>
      at(300 + 200 * Math.cos((i * Math.PI) / 6), 300 + 200 * Math.sin((i * Math.PI) / 6)),
    );
    expect(traced(polygon(points), "svg").made.pieces[0]!.edges).toHaveLength(12);
  });

  test("stretches too short to see are no lines, and a thousand of them are one", () => {
    const specks = "M0 0 h0.01 v0.01 h100 v0.01 h0.012 v100 l-0.012 0.012 H0 v-0.02 h0.005 v-0.005z";
    expect(traced(inMillimetres(`<path d="${specks}"/>`), "svg").made.pieces[0]!.edges).toHaveLength(4);
    // Steps of a hundredth along the diagonal of a square of 100 mm.
    const stairs = `M0 0${"h0.01v0.01".repeat(10_000)}H0z`;
    const { made, outlines } = traced(inMillimetres(`<path d="${stairs}"/>`), "svg");
    expect(made.pieces[0]!.edges).toHaveLength(3);
    expect(Math.abs(signedArea(outlines[0]!))).toBeCloseTo(5000, -1);
  });

  test("marks and texts stand where they were drawn, and names come from ids", () => {
    const { made, pieces } = traced(
      inMillimetres(
        '<g id="collar-stand"><path d="M100 100H400V200H100z"/>',
        '<path class="grain" d="M150 190V110"/><path class="notch" d="M250 100v5"/>',
        '<path class="notch" d="M400 146h-5"/><path class="notch" d="M400 154h-5"/>',
        '<path class="fold" d="M100 90V210"/><circle cx="300" cy="150" r="2"/>',
        '<path class="inner" d="M120 150H380"/><text x="200" y="160">cut "2" \\ of <tspan>shell</tspan></text></g>',
      ),
      "svg",
    );
    expect(made.pieces[0]!.name).toBe("collar-stand");
    const [piece] = pieces;
    expect(piece!.edges.get("edge-4")!.role).toBe("fold");
    expect(piece!.grain).toMatchObject({ from: at(50, 90), to: at(50, 10) });
    expect(piece!.notches.map(({ point, double }) => [point, double])).toEqual([
      [at(150, 0), false],
      [at(300, 50), true],
    ]);
    expect(piece!.drills.map(({ point }) => point)).toEqual([at(200, 50)]);
    expect(piece!.labels.map(({ text }) => text)).toEqual(['cut "2" \\ of shell']);
    expect(piece!.edges.has("inner-1")).toBe(true);
    expect(made.leftOut).toEqual([]);
  });
});

// Shapes with 3 to 9 corners about a middle, no two in one direction, so that no outline crosses itself.
const rays = fc.array(fc.tuple(fc.integer({ min: 90, max: 320 }), fc.integer({ min: 0, max: 60 })), {
  minLength: 3,
  maxLength: 9,
});
const cornersOf = (all: readonly (readonly [number, number])[]): Point[] =>
  all.map(([radius, off], i) => {
    const angle = ((i + off / 100) * 2 * Math.PI) / all.length;
    return at(radius * Math.cos(angle), radius * Math.sin(angle));
  });
const moves = fc
  .tuple(
    fc.integer({ min: -180, max: 180 }),
    fc.integer({ min: 6, max: 16 }),
    fc.integer({ min: 6, max: 16 }),
    fc.integer({ min: -30, max: 30 }),
  )
  .map(([angle, sx, sy, skew]) => `translate(500 400) rotate(${angle}) skewX(${skew}) scale(${sx / 10} ${sy / 10})`);

/** What svgpath makes of letters M, L, C and Z in absolute places, moved. */
const judged = (d: string, transform: string): Path => {
  const spans: Path[number][] = [];
  let pen = at(0, 0);
  svgpath(d)
    .transform(transform)
    .iterate((segment, _index, x, y) => {
      const [letter, ...v] = segment as [string, ...number[]];
      pen = at(x, y);
      if (letter === "L") spans.push(line(pen, at(v[0]!, v[1]!)));
      if (letter === "C") spans.push(cubic(pen, at(v[0]!, v[1]!), at(v[2]!, v[3]!), at(v[4]!, v[5]!)));
    });
  return spans;
};

describe("whatever is drawn, the recipe draws it again within 0.1 mm", () => {
  test("polygons", () => {
    fc.assert(
      fc.property(rays, moves, (all, transform) => {
        const points = cornersOf(all);
        const d = `M${written([...points, points[0]!]).replaceAll(" ", " L")}`;
        const { outlines } = traced(inMillimetres(`<path d="${d}z" transform="${transform}"/>`), "svg");
        expect(howFar(outlines[0]!, judged(d, transform))).toBeLessThan(0.1);
      }),
      { numRuns: 40 },
    );
  });

  test("smooth curves, as cubics and flattened", () => {
    fc.assert(
      fc.property(rays, moves, fc.boolean(), (all, transform, isFlattened) => {
        const points = cornersOf(all);
        const around = (i: number): Point => points[(i + points.length) % points.length]!;
        // A closed curve with a sixth of the way between the neighbours as handles (Catmull and Rom).
        const handle = (i: number, sign: number): Point =>
          at(
            around(i).x + (sign * (around(i + 1).x - around(i - 1).x)) / 6,
            around(i).y + (sign * (around(i + 1).y - around(i - 1).y)) / 6,
          );
        const smooth = points.map((p, i) => cubic(p, handle(i, 1), handle(i + 1, -1), around(i + 1)));
        const d = isFlattened
          ? `M${written(flattened(smooth, 0.02)).replaceAll(" ", " L")}`
          : `M${written([points[0]!])} ${smooth.map((span) => `C${written([span.startHandle, span.endHandle, span.end])}`).join(" ")}`;
        const { outlines, made } = traced(inMillimetres(`<path d="${d}z" transform="${transform}"/>`), "svg");
        const expected = judged(d, transform);
        expect(howFar(outlines[0]!, expected)).toBeLessThan(0.1);
        // Never much more text than what was drawn with: a cubic for each side, and at most three for a long one.
        expect(made.recipe.split(/\bhandles\b|heading/).length).toBeLessThan(3 * points.length + 6);
        expect(pathLength(outlines[0]!) / pathLength(expected)).toBeCloseTo(1, 2);
      }),
      { numRuns: 25 },
    );
  });
});
