// B-splines, as DXF has them, as cubics: a stretch between two knots by its polar form (L. Ramshaw, "Blossoms are polar forms",
// Computer Aided Geometric Design 6, 1989), exact up to degree 3 without weights; any other in short
// cubics.
import { cubic, type Path } from "../../kernel/geometry/path.ts";
import { between, distance, minus, type Point, plus, times } from "../../kernel/geometry/point.ts";

export interface Spline {
  readonly degree: number;
  /** Ascending, as many as there are control points and the degree and one more. */
  readonly knots: readonly number[];
  readonly controls: readonly Point[];
  /** One for each control point, all above 0; none where all are alike. */
  readonly weights: readonly number[];
}

/** The whole spline. */
export const splinePath = (spline: Spline): Path => {
  const { degree, knots, controls } = spline;
  const stretches: [number, number, number][] = [];
  for (let k = degree; k < controls.length; k += 1)
    if (knots[k + 1]! > knots[k]!) stretches.push([k, knots[k]!, knots[k + 1]!]);
  const isExact = degree <= 3 && spline.weights.length === 0;
  return stretches.flatMap(([k, from, to]) => (isExact ? [exact(spline, k, from, to)] : close(spline, k, from, to)));
};

/** The cubic that a stretch of degree 1, 2 or 3 is. */
const exact = ({ degree, knots, controls }: Spline, k: number, from: number, to: number): Path[number] => {
  const local = controls.slice(k - degree, k + 1);
  const polar = (values: readonly number[]): Point => blossom(local, knots, k, degree, values);
  const bezier = Array.from({ length: degree + 1 }, (_, i) =>
    polar([...new Array<number>(degree - i).fill(from), ...new Array<number>(i).fill(to)]),
  );
  const [a, b, c] = bezier as [Point, Point, Point];
  if (degree === 1) return cubic(a, between(a, b, 1 / 3), between(a, b, 2 / 3), b);
  if (degree === 2) return cubic(a, between(a, b, 2 / 3), between(c, b, 2 / 3), c);
  return cubic(a, b, c, bezier[3]!);
};

/** De Boor's scheme with a parameter of its own in each round. */
const blossom = (
  local: readonly Point[],
  knots: readonly number[],
  k: number,
  degree: number,
  values: readonly number[],
): Point => {
  let row = [...local];
  for (let round = 1; round <= degree; round += 1) {
    row = row.slice(1).map((point, i) => {
      const index = k - degree + round + i;
      const [low, high] = [knots[index]!, knots[index + degree + 1 - round]!];
      return between(row[i]!, point, high === low ? 0 : (values[round - 1]! - low) / (high - low));
    });
  }
  return row[0]!;
};

/** A stretch of any degree, with weights, in short cubics that have its places and its speeds at their ends (Hermite). */
const close = (spline: Spline, k: number, from: number, to: number): Path => {
  const step = (to - from) / parts;
  const place = (t: number): Point => weighed(spline, k, t);
  // A third of the way that the speed makes in one part; the formula of a stretch holds a little beyond its ends too.
  const third = (t: number): Point =>
    times(minus(place(t + step * little), place(t - step * little)), 1 / (6 * little));
  return Array.from({ length: parts }, (_, i) => {
    const [low, high] = [from + step * i, i === parts - 1 ? to : from + step * (i + 1)];
    const [start, end] = [place(low), place(high)];
    return cubic(start, plus(start, third(low)), minus(end, third(high)), end);
  }).filter(({ start, end }) => distance(start, end) > 0);
};

// Cubics in a stretch between two knots; they are off by the fourth power of their length.
const parts = 24;
// The share of a part over which its speed is taken.
const little = 1e-3;

const weighed = ({ degree, knots, controls, weights }: Spline, k: number, at: number): Point => {
  const first = k - degree;
  const weight = (i: number): number => weights[first + i] ?? 1;
  const local = controls.slice(first, k + 1);
  const values = new Array<number>(degree).fill(at);
  const over = blossom(
    local.map(({ x, y }, i) => ({ x: x * weight(i), y: y * weight(i) })),
    knots,
    k,
    degree,
    values,
  );
  const under = blossom(
    local.map((_, i) => ({ x: weight(i), y: 0 })),
    knots,
    k,
    degree,
    values,
  ).x;
  return { x: over.x / under, y: over.y / under };
};
