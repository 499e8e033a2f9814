// The judge of cutting lines: Clipper2 (Angus Johnson's polygon clipping and offsetting library, here compiled to WebAssembly),
// which knows nothing of our curves. It is given the outline as a fine bent line and moves it out with mitred joins.
import { createRequire } from "node:module";
import type { MainModule, PathD, PathsD } from "clipper2-wasm/dist/clipper2z";
import { derivativeOn, pointOn } from "../../kernel/geometry/arc-length.ts";
import { flattened } from "../../kernel/geometry/area.ts";
import type { Path, Span } from "../../kernel/geometry/path.ts";
import { distance, type Point } from "../../kernel/geometry/point.ts";
import { turnBetween } from "../../kernel/geometry/trig.ts";

// Its types do not cover its way in, which makes the module.
const load = createRequire(import.meta.url)("clipper2-wasm") as () => Promise<MainModule>;
const clipper = await load();

// Clipper works on whole numbers: this many decimals of a mm are kept.
const decimals = 8;

// What moves out by 40 mm at a corner goes by the directions there, so that a bent line has to begin and end in ever shorter
// stretches: these shares of a curve from either end.
const nearEnds = Array.from({ length: 8 }, (_, k) => 1e-5 * 4 ** k);

// Between two of its corners a bent line turns no more than this, radians: moved out by 40 mm its corners then stand out by
// 40 / 8 of the square of it, 0.0005 mm.
const leastTurn = 0.01;

/** The corners of a fine bent line round a closed path, those of the path among them. */
export const bentLineOf = (loop: Path): Point[] =>
  loop.flatMap((span) => {
    if (span.kind === "line") return [span.start];
    const count = flattened([span], 0.001).length - 1;
    const even = Array.from({ length: count + 1 }, (_, i) => i / count);
    const fine = even.slice(1).flatMap((to, i) => [even[i]!, ...sharesBetween(span, even[i]!, to)]);
    const shares = [...fine, ...nearEnds, ...nearEnds.map((share) => 1 - share)].sort((a, b) => a - b);
    return shares.map((share) => pointOn(span, share));
  });

const sharesBetween = (span: Span, from: number, to: number): number[] => {
  const turn = turnBetween(derivativeOn(span, from), derivativeOn(span, to));
  if (Math.abs(turn) < leastTurn || to - from < 1e-9) return [];
  const middle = (from + to) / 2;
  return [...sharesBetween(span, from, middle), middle, ...sharesBetween(span, middle, to)];
};

/** The closed bent lines that Clipper makes of an outline moved out by so many mm: the outer one first, then holes. */
export const movedOutByClipper = (outline: readonly Point[], by: number, mitreLimit: number): Point[][] => {
  const [path, paths] = [clippersOf(outline), new clipper.PathsD()];
  paths.push_back(path);
  const { Miter } = clipper.JoinType;
  const moved = clipper.InflatePathsD(paths, by, Miter, clipper.EndType.Polygon, mitreLimit, decimals, 0);
  const lines = oursOf(moved).sort((a, b) => Math.abs(areaOf(b)) - Math.abs(areaOf(a)));
  for (const each of [path, paths, moved]) each.delete();
  return lines;
};

/** The outer line of all that some closed bent lines go round, all of them the same way round. */
export const unitedByClipper = (all: readonly (readonly Point[])[]): Point[] => {
  const [paths, one] = [new clipper.PathsD(), all.map(clippersOf)];
  for (const path of one) paths.push_back(path);
  const united = clipper.UnionSelfD(paths, clipper.FillRule.NonZero, decimals);
  const lines = oursOf(united).sort((a, b) => Math.abs(areaOf(b)) - Math.abs(areaOf(a)));
  for (const each of [...one, paths, united]) each.delete();
  return lines[0]!;
};

/** How far two closed bent lines are apart at most, mm: from any corner of one to the other, both ways. */
export const apart = (one: readonly Point[], other: readonly Point[]): number => apartExcept(one, other, [], 0);

/** The same, but for what lies nearer to some spots than so many mm. */
export const apartExcept = (
  one: readonly Point[],
  other: readonly Point[],
  spots: readonly Point[],
  near: number,
): number => {
  const counts = (p: Point): boolean => spots.every((spot) => distance(spot, p) > near);
  return Math.max(farthest(one.filter(counts), other), farthest(other.filter(counts), one));
};

const farthest = (points: readonly Point[], line: readonly Point[]): number => {
  const [xs, ys] = [Float64Array.from(line, ({ x }) => x), Float64Array.from(line, ({ y }) => y)];
  return points.reduce((most, p) => Math.max(most, Math.sqrt(squareDistance(p, xs, ys))), 0);
};

const squareDistance = ({ x, y }: Point, xs: Float64Array, ys: Float64Array): number => {
  let least = Number.POSITIVE_INFINITY;
  let [ax, ay] = [xs[xs.length - 1]! - x, ys[ys.length - 1]! - y];
  for (let i = 0; i < xs.length; i += 1) {
    const [bx, by] = [xs[i]! - x, ys[i]! - y];
    const [dx, dy] = [bx - ax, by - ay];
    const square = dx * dx + dy * dy;
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, -(ax * dx + ay * dy) / square));
    const [nx, ny] = [ax + t * dx, ay + t * dy];
    least = Math.min(least, nx * nx + ny * ny);
    [ax, ay] = [bx, by];
  }
  return least;
};

const areaOf = (line: readonly Point[]): number =>
  line.reduce((sum, { x, y }, i) => {
    const next = line[(i + 1) % line.length]!;
    return sum + x * next.y - next.x * y;
  }, 0) / 2;

const clippersOf = (points: readonly Point[]): PathD => clipper.MakePathD(points.flatMap(({ x, y }) => [x, y]));

const oursOf = (paths: PathsD): Point[][] =>
  Array.from({ length: paths.size() }, (_, i) => {
    const path = paths.get(i);
    return Array.from({ length: path.size() }, (_, j) => {
      const { x, y } = path.get(j);
      return { x, y };
    });
  });
