// How long measuring a cubic takes, against bezier-js, at 1e-9 of its length; and how far off both are where a curve nearly stops.
import { Bezier } from "bezier-js";
import { spanLength } from "../../kernel/geometry/arc-length.ts";
import { type CubicSpan, cubic } from "../../kernel/geometry/path.ts";
import { between, distance } from "../../kernel/geometry/point.ts";
import { type Bench, type Row, sideBySide } from "./row.ts";

export const arcLengthBench: Bench = {
  name: "arc-length",
  rows: async (rounds) => [
    against("arc length of mild curves", curves(200, 0.35), rounds),
    against("arc length, half of the curves near-cusps", [...curves(100, 0.35), ...nearCusps(100)], rounds),
    mostOff([...curves(100, 0.35), ...nearCusps(100)]),
  ],
};

const against = (goal: string, spans: readonly CubicSpan[], rounds: number): Row => {
  const beziers = spans.map(bezierOf);
  const times = sideBySide(
    // What was measured of a span is remembered, so each is made anew: that is part of the price.
    () => {
      for (const { start, startHandle, endHandle, end } of spans) spanLength(cubic(start, startHandle, endHandle, end));
    },
    () => {
      for (const bezier of beziers) bezier.length();
    },
    rounds,
  );
  return {
    goal,
    ours: times.ours / spans.length,
    floor: { is: "bezier-js", figure: times.floor / spans.length },
    bound: 0.5,
  };
};

/** The greatest error as a share of 1e-9 of the length. */
const mostOff = (spans: readonly CubicSpan[]): Row => ({
  goal: "arc length, greatest relative error",
  unit: "x 1e-9",
  ours: Math.max(...spans.map((span) => Math.abs(spanLength(span) / settledLength(span) - 1) / 1e-9)),
  bound: 1,
});

/**
 * The length by halving: of a cubic's halves, halved on until chord and handles' way agree, (chord + way) / 2 is right to the square
 * of what they differ by (J. Gravesen, "Adaptive subdivision and the length and energy of Bezier curves", Computational Geometry 8,
 * 1997, theorem 1 for degree 3).
 */
const settledLength = ({ start, startHandle, endHandle, end }: CubicSpan, depth = 0): number => {
  const chord = distance(start, end);
  const way = distance(start, startHandle) + distance(startHandle, endHandle) + distance(endHandle, end);
  if (way - chord < 1e-8 * way || way < 1e-9 || depth === 40) return (chord + way) / 2;
  const [left, inner, right] = [
    between(start, startHandle, 0.5),
    between(startHandle, endHandle, 0.5),
    between(endHandle, end, 0.5),
  ];
  const [before, after] = [between(left, inner, 0.5), between(inner, right, 0.5)];
  const middle = between(before, after, 0.5);
  return (
    settledLength(cubic(start, left, before, middle), depth + 1) +
    settledLength(cubic(middle, after, right, end), depth + 1)
  );
};

/** Curves as edges of pieces are: 30 to 50 cm long, their handles so far to a side. */
const curves = (count: number, most: number): CubicSpan[] =>
  Array.from({ length: count }, (_, i) => {
    const length = 30 + ((i * 37) % 470);
    const [first, second] = [most * (((i * 13) % 21) / 10 - 1), most * (((i * 29) % 21) / 10 - 1)];
    return cubic(
      { x: 0, y: 0 },
      { x: length * 0.33, y: length * first },
      { x: length * 0.67, y: length * second },
      { x: length, y: 0 },
    );
  });

/** Curves with crossed handles, which nearly stop or do stop in their middle: a cusp stands where both reach as far again. */
const nearCusps = (count: number): CubicSpan[] =>
  Array.from({ length: count }, (_, i) => {
    const length = 30 + ((i * 37) % 470);
    // For handles this far to the side the cusp is at a reach of the whole length, since the ends then mirror the handles.
    const reach = 1 + (((i % 21) - 10) / 10) * 0.01;
    return cubic(
      { x: 0, y: 0 },
      { x: length * reach, y: length },
      { x: length * (1 - reach), y: length },
      { x: length, y: 0 },
    );
  });

const bezierOf = ({ start, startHandle, endHandle, end }: CubicSpan): Bezier =>
  new Bezier([start, startHandle, endHandle, end].map(({ x, y }) => ({ x, y })));
