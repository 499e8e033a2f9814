// The small names along the edges, written just inside the sewing line, each with the width of its allowance where that does
// not stand in the band beyond.
import { directionAt, pathLength, pointAt } from "../geometry/arc-length.ts";
import { flattened } from "../geometry/area.ts";
import type { Path } from "../geometry/path.ts";
import { dot, minus, type Point, quarterTurn, times } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { angleOf } from "../geometry/trig.ts";
import { outward, type Walked, walked } from "../outline.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import { baselineBeside, readable } from "./beside.ts";
import { type Box, type Line, rim, room } from "./box.ts";
import type { Text } from "./drawing.ts";
import { boxOf, textWidth } from "./lettering.ts";

/**
 * Names for the edges that have room for one: clear of the lines given and of each other, and of quiet lines if they can.
 * Of the edges in `told` the width of the allowance is told elsewhere.
 */
export const edgeNames = (
  piece: Piece,
  units: Units,
  lines: readonly Line[],
  quiet: readonly Line[],
  told: ReadonlySet<string> = new Set(),
): Text[] => {
  const placed: Text[] = [];
  const taken = [...lines];
  for (const { words, path, inward } of named(piece, units, told)) {
    const text = nameAlong(words, path, inward, taken, quiet);
    // An edge too short for its name goes without; the names beside it tell which it is.
    if (!text) continue;
    placed.push(text);
    taken.push(rim(boxOf(text)));
  }
  return placed;
};

interface Named {
  /** What is written, and what of it where that has no room. */
  readonly words: readonly string[];
  readonly path: Path;
  /** The direction, square to a direction of travel, on whose side the name stands. */
  readonly inward: (travel: Point) => Point;
}

const named = (piece: Piece, units: Units, told: ReadonlySet<string>): Named[] => {
  const walk = walked(piece);
  const outer = walk.map((part) => ({
    words: told.has(part.edge.name)
      ? [part.edge.name]
      : [...new Set([nameWithAllowance(piece, part, units), part.edge.name])],
    path: part.path,
    inward: (travel: Point) => times(outward(piece, travel), -1),
  }));
  const inner = [...piece.edges.values()]
    .filter((edge) => !walk.some((part) => part.edge === edge))
    .map(({ name, path }) => ({ words: [name], path, inward: quarterTurn }));
  return [...outer, ...inner];
};

const nameWithAllowance = (piece: Piece, { edge }: Walked, units: Units): string => {
  const allowance = piece.allowances.get(edge.name);
  if (!allowance || edge.role === "fold") return edge.name;
  return allowance.width === 0 ? `${edge.name}, no allowance` : `${edge.name} ${lengthIn(allowance.width, units)}`;
};

// Sizes tried, mm, and places along the edge; the middle is where one looks first. Smaller letters nobody can read.
const sizes = [4.5, 3.6];
const shares = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82];
const gap = 3;

// A name may stand this many sizes further in where its edge bulges into the piece; beyond that it has lost its edge.
const mostInset = 2;

// The white around letters reaches this far, mm; a line that it breaks is hard to follow.
const halo = 0.6;

const nameAlong = (
  words: readonly string[],
  path: Path,
  inward: Named["inward"],
  taken: readonly Line[],
  quiet: readonly Line[],
): Text | undefined => {
  const length = pathLength(path);
  for (const [said, size] of words.flatMap((said) => sizes.map((size) => [said, size] as const))) {
    const width = textWidth(said, size, "plain");
    let overQuiet: Text | undefined;
    for (const share of shares) {
      const at = share * length;
      if (at < width / 2 || at > length - width / 2) continue;
      const text = standingAt(said, size, path, at, inward);
      if (!text || room(withHalo(boxOf(text)), taken) <= 1) continue;
      if (room(boxOf(text), quiet) > 1) return text;
      overQuiet ??= text;
    }
    if (overQuiet) return overQuiet;
  }
  return undefined;
};

const withHalo = (box: Box): Box => ({
  ...box,
  halfWidth: box.halfWidth + halo,
  halfHeight: box.halfHeight + halo,
});

const standingAt = (words: string, size: number, path: Path, at: number, inward: Named["inward"]): Text | undefined => {
  const half = textWidth(words, size, "plain") / 2;
  const on = pointAt(path, at);
  const travel = directionAt(path, at);
  const side = inward(travel);
  const nearby = flattened(part(path, at - half, at + half), 0.1);
  const bulge = Math.max(...nearby.map((p) => dot(minus(p, on), side)));
  if (bulge > mostInset * size) return undefined;
  const turn = readable(angleOf(travel));
  return {
    text: words,
    at: baselineBeside(on, side, turn, size, gap + bulge),
    size,
    turn,
    align: "middle",
    weight: "plain",
  };
};
