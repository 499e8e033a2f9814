// The neck of a piece, found between its shoulder and its center, and redrawn for another depth or width.
import { pathLength } from "../geometry/arc-length.ts";
import { carriedOn } from "../geometry/offset.ts";
import {
  cubic,
  endOf,
  type Path,
  reversed,
  type Span,
  spanEndDirection,
  startDirection,
  startOf,
} from "../geometry/path.ts";
import { distance, dot, minus, type Point, plus, quarterTurn, sameSpot, times, unit } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { bearing, turnBetween } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import { downAt, kappa } from "./armhole.ts";
import { isMarkedCenter } from "./level-with.ts";
import { closedBoundary, turnInOutline } from "./outline-spot.ts";
import { reshaped } from "./reshaped.ts";
import { turnAt } from "./turned.ts";

export interface Neck {
  readonly name: string;
  /** The edges at its two ends. */
  readonly center: string;
  readonly shoulder: string;
  /** Directions of length 1: along the center down from the neck, and square to it toward the shoulder. */
  readonly down: Point;
  readonly out: Point;
  /** From the center to the shoulder. */
  readonly path: Path;
  /** How many spans at its start run straight across a lap, and stay as they are. */
  readonly lapSpans: number;
  /** Center and shoulder, both starting at the neck. */
  readonly centerPath: Path;
  readonly shoulderPath: Path;
}

/** The neck of this name; the center is the neighbour that is a fold or an opening, else the more upright one. */
export const neckNamed = (piece: Piece, name: string, units: Units): Neck => {
  closedBoundary(piece, units);
  turnInOutline(piece, name);
  if (piece.outline.length < 3) {
    throw new Problem("neck-alone", `${name} has no center and shoulder beside it.`, {
      hint: "Draw the outline of center, neck, shoulder and the rest.",
    });
  }
  return neckOf(piece, name);
};

/** An edge of a closed outline of three edges or more, read as a neck whether it can be one or not. */
export const neckOf = (piece: Piece, name: string): Neck => {
  const index = turnInOutline(piece, name);
  const walk = walked(piece);
  const { path: own } = walk[index]!;
  const [before, after] = [walk[(index + walk.length - 1) % walk.length]!, walk[(index + 1) % walk.length]!];
  const [leaving, going] = [reversed(before.path), after.path];
  const isCenterBefore = centerComesFirst(piece, before.edge.name, after.edge.name, leaving, going);
  const [center, shoulder] = isCenterBefore ? [before, after] : [after, before];
  const path = isCenterBefore ? own : reversed(own);
  const [centerPath, shoulderPath] = isCenterBefore ? [leaving, going] : [going, leaving];
  const down = startDirection(centerPath);
  const square = quarterTurn(down);
  const out = dot(square, minus(endOf(path), startOf(path))) >= 0 ? square : times(square, -1);
  const lap = path.findIndex(
    (span) => span.kind === "cubic" || Math.abs(turnBetween(spanEndDirection(span), out)) > level,
  );
  return {
    name,
    center: center.edge.name,
    shoulder: shoulder.edge.name,
    down,
    out,
    path,
    lapSpans: Math.max(0, lap),
    centerPath,
    shoulderPath,
  };
};

const centerComesFirst = (piece: Piece, before: string, after: string, leaving: Path, going: Path): boolean => {
  // A shoulder may lie on a fold as well, where front and back are cut in one; it lies more nearly level.
  const isCenter = (edge: string, path: Path): boolean =>
    isMarkedCenter(piece.edges.get(edge)!) &&
    Math.abs(dot(unit(minus(endOf(path), startOf(path))), downAt(piece, edge))) > half;
  const isBefore = isCenter(before, leaving);
  if (isBefore !== isCenter(after, going)) return isBefore;
  const down = bearing(Math.PI / 2 + turnAt(piece, before, startOf(leaving)));
  return Math.abs(dot(startDirection(leaving), down)) >= Math.abs(dot(startDirection(going), down));
};

/** How deep the neck lies below the neck point, and how wide it is between the lap and the neck point, mm. */
export const neckSize = ({ path, lapSpans, down, out }: Neck): { readonly depth: number; readonly width: number } => {
  const way = minus(endOf(path), curveStart({ path, lapSpans }));
  return { depth: -dot(way, down), width: dot(way, out) };
};

const curveStart = ({ path, lapSpans }: Pick<Neck, "path" | "lapSpans">): Point =>
  lapSpans < path.length ? path[lapSpans]!.start : startOf(path);

/**
 * The neck with its center end lower by so many mm and its neck point elsewhere: all of it stretches in depth and in
 * width, keeping its directions at both ends.
 */
export const neckStretched = (neck: Neck, lowering: number, neckPoint: Point, units: Units): Path => {
  const { path, lapSpans, down, out, name } = neck;
  const { depth, width } = neckSize(neck);
  const start = plus(curveStart(neck), times(down, lowering));
  const way = minus(neckPoint, start);
  const [newDepth, newWidth] = [-dot(way, down), dot(way, out)];
  if (newDepth < -level || (depth > least && newDepth <= least) || newWidth <= least) {
    throw new Problem("neck-used-up", `Nothing of the depth or the width of ${name} would be left.`, {
      hint: "Take a smaller length.",
    });
  }
  if (depth <= least || width <= least) {
    throw new Problem(
      "neck-flat",
      `${name} is ${lengthIn(depth, units)} deep and ${lengthIn(width, units)} wide, and a line without depth or width cannot be stretched.`,
      {
        hint: "Use draw-neck to draw it anew.",
      },
    );
  }
  const [tall, wide] = [newDepth / depth, newWidth / width];
  const stretched = (point: Point): Point => {
    const from = minus(point, curveStart(neck));
    return plus(plus(start, times(down, dot(from, down) * tall)), times(out, dot(from, out) * wide));
  };
  const lap = path.slice(0, lapSpans).map((span): Span => {
    const shift = (point: Point): Point => plus(point, times(down, lowering));
    return { kind: "line", start: shift(span.start), end: shift(span.end) };
  });
  const curve = path.slice(lapSpans).map((span): Span => {
    if (span.kind === "line") return { kind: "line", start: stretched(span.start), end: stretched(span.end) };
    return cubic(stretched(span.start), stretched(span.startHandle), stretched(span.endHandle), stretched(span.end));
  });
  return [...lap, ...endsKept(curve, path.slice(lapSpans), wide, tall)];
};

/** The stretched curve with its old directions at the ends; a handle at the center grows with the width, at the shoulder with the depth. */
const endsKept = (curve: Path, was: Path, wide: number, tall: number): Path => {
  const [first, last] = [was[0]!, was.at(-1)!];
  return curve.map((span, index): Span => {
    if (span.kind === "line") return span;
    const startHandle =
      index === 0 && first.kind === "cubic"
        ? plus(span.start, times(minus(first.startHandle, first.start), wide))
        : span.startHandle;
    const endHandle =
      index === curve.length - 1 && last.kind === "cubic"
        ? plus(span.end, times(minus(last.endHandle, last.end), tall))
        : span.endHandle;
    return { ...span, startHandle, endHandle };
  });
};

/** The neck of a block: level at the center, square to the shoulder, a quarter of an ellipse in between (trade handbook 3.2, rule 7). */
export const neckDrawn = (neck: Neck, depth: number, neckPoint: Point): Path => {
  const { down, out, path, lapSpans, shoulderPath } = neck;
  const { width } = neckSize(neck);
  const newWidth = width + dot(minus(neckPoint, endOf(path)), out);
  const start = plus(plus(neckPoint, times(down, depth)), times(out, -newWidth));
  const shift = minus(start, curveStart(neck));
  const lap = path.slice(0, lapSpans).map(
    (span): Span => ({
      kind: "line",
      start: plus(span.start, shift),
      end: plus(span.end, shift),
    }),
  );
  const square = quarterTurn(startDirection(shoulderPath));
  const inward = dot(square, down) >= 0 ? square : times(square, -1);
  const startHandle = plus(start, times(out, kappa * newWidth));
  return [...lap, cubic(start, startHandle, plus(neckPoint, times(inward, kappa * depth)), neckPoint)];
};

/** The shoulder with its start so many mm further along it, or carried on beyond its start where negative. */
export const shoulderFrom = ({ shoulderPath, shoulder }: Neck, by: number, units: Units): Path => {
  if (by <= 0) return by === 0 ? shoulderPath : carriedOn(shoulderPath, "start", -by);
  const length = pathLength(shoulderPath);
  if (by < length - least) return part(shoulderPath, by, length);
  throw new Problem(
    "shoulder-used-up",
    `${shoulder} is ${lengthIn(length, units)} long, and ${lengthIn(by, units)} of it would go.`,
    {
      hint: "Take a smaller length.",
    },
  );
};

/** The piece with a new neck; center and shoulder are carried on or cut off to meet it. */
export const withNeck = (piece: Piece, neck: Neck, path: Path, shoulder: Path, units: Units): Piece => {
  const { centerPath, down, center } = neck;
  const lowering = dot(minus(startOf(path), startOf(neck.path)), down);
  const length = pathLength(centerPath);
  if (lowering >= length - least) {
    throw new Problem(
      "neck-below-center",
      `${center} is ${lengthIn(length, units)} long, and the neck would end below it.`,
      {
        hint: "Take a smaller length.",
      },
    );
  }
  const newCenter = lowering > 0 ? part(centerPath, lowering, length) : carriedOn(centerPath, "start", -lowering);
  // Both ends of the neck are the corners that the neighbours now start at, to the last bit.
  const snapped = lowering === 0 ? centerPath : startingAt(newCenter, startOf(path));
  const paths = new Map([
    [neck.name, asDrafted(piece, neck.name, neck.path, path)],
    [center, asDrafted(piece, center, centerPath, snapped)],
    [neck.shoulder, asDrafted(piece, neck.shoulder, neck.shoulderPath, shoulder)],
  ]);
  return reshaped(piece, paths);
};

const startingAt = (path: Path, start: Point): Path => {
  const [first, ...others] = path;
  return distance(start, first!.start) < least ? [{ ...first!, start }, ...others] : path;
};

const asDrafted = (piece: Piece, name: string, was: Path, now: Path): Path =>
  sameSpot(startOf(was), startOf(piece.edges.get(name)!.path), 1e-9) ? now : reversed(now);

// A length, in mm, or a slope in radians, too small to count.
const least = 0.01;
const level = 0.001;

// The share of its straight length by which a center goes down: more than 30 degrees from level.
const half = 0.5;
