// Random pieces and slashes for what must hold of any piece: star-shaped outlines of straight and curved edges.
import fc from "fast-check";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { cubic, type Path, reversed, straight } from "../../kernel/geometry/path.ts";
import { between, minus, type Point, plus, quarterTurn, times } from "../../kernel/geometry/point.ts";
import { bearing } from "../../kernel/geometry/trig.ts";
import type { Piece } from "../../kernel/working.ts";
import { at, type MadeEdge, madePiece } from "./made-piece.ts";

export interface AnySlash {
  readonly piece: Piece;
  /** Where the slash is hinged and where it runs to: an edge and a ratio of it. */
  readonly hinge: { readonly edge: string; readonly point: Point };
  readonly target: { readonly edge: string; readonly point: Point };
}

interface Drawn {
  readonly radii: readonly number[];
  readonly bulges: readonly number[];
  readonly turned: readonly boolean[];
  readonly clockwise: boolean;
  readonly from: number;
  readonly to: number;
  readonly hingeShare: number;
  readonly targetShare: number;
}

const share = fc.double({ min: 0.08, max: 0.92, noNaN: true });

const drawn: fc.Arbitrary<Drawn> = fc.integer({ min: 4, max: 7 }).chain((count) =>
  fc.record({
    radii: fc.array(fc.double({ min: 200, max: 500, noNaN: true }), { minLength: count, maxLength: count }),
    // No bulge is a straight edge.
    bulges: fc.array(fc.oneof(fc.constant(0), fc.double({ min: -0.12, max: 0.12, noNaN: true })), {
      minLength: count,
      maxLength: count,
    }),
    turned: fc.array(fc.boolean(), { minLength: count, maxLength: count }),
    clockwise: fc.boolean(),
    from: fc.integer({ min: 0, max: count - 1 }),
    to: fc.integer({ min: 1, max: count - 1 }),
    hingeShare: fc.oneof(share, share, share, fc.constant(0)),
    targetShare: share,
  }),
);

export const anySlash: fc.Arbitrary<AnySlash> = drawn.map(
  ({ radii, bulges, turned, clockwise, from, to, hingeShare, targetShare }) => {
    const count = radii.length;
    const corners = radii.map((radius, index) => {
      const angle = ((clockwise ? 1 : -1) * 2 * Math.PI * index) / count;
      return times(bearing(angle), radius);
    });
    const edges = corners.map((corner, index): MadeEdge => {
      const path = bulging(corner, corners[(index + 1) % count]!, bulges[index]!);
      return turned[index] ? { name: `e${index}`, path: reversed(path), turned: true } : { name: `e${index}`, path };
    });
    const inner: MadeEdge = { name: "level", path: straight(at(-60, 5), at(70, -10)), inner: true };
    const piece = madePiece([...edges, inner], { middle: at(3, 4), left: at(-80, 20), right: at(90, -30) });
    const spot = (index: number, ratio: number) => {
      const edge = edges[index]!;
      return { edge: edge.name, point: pointAt(edge.path, ratio * pathLength(edge.path)) };
    };
    return { piece, hinge: spot(from, hingeShare), target: spot((from + to) % count, targetShare) };
  },
);

const bulging = (from: Point, to: Point, bulge: number): Path => {
  if (bulge === 0) return straight(from, to);
  const out = times(quarterTurn(minus(to, from)), bulge);
  return [cubic(from, plus(between(from, to, 1 / 3), out), plus(between(from, to, 2 / 3), out), to)];
};
