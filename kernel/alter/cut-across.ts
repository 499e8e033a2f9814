// A cut right through a piece, from one spot of its outline to another, along any line.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossings } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, type Path, reversed, startOf } from "../geometry/path.ts";
import { sameSpotTolerance } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import { startingAt } from "./moved-edge.ts";
import { closedBoundary, onward, pointAtSpot, spotsAt } from "./outline-spot.ts";
import type { Slash } from "./slash.ts";

/** The cut along a line, called so in messages; what of the line lies outside of the piece is left off. */
export const cutAlong = (piece: Piece, line: Path, called: string, units: Units): Slash => {
  const inside = stretchesInside(piece, line, units);
  if (inside.length > 1) {
    throw new Problem(
      "split-several",
      `${called} runs through ${piece.name} ${inside.length} times, so it does not part it in two.`,
      { hint: "Name the stretch that is to be cut with `part`." },
    );
  }
  const [stretch] = inside;
  if (stretch) return cutOn(piece, stretch);
  const short = [startOf(line), endOf(line)]
    .map((end) => nearest(closedBoundary(piece, units), end).distance)
    .filter((off) => off > sameSpotTolerance);
  const reaches =
    short.length === 0
      ? "runs along its outline, and cuts nothing"
      : `ends ${short.map((off) => lengthIn(off, units)).join(" and ")} away from it`;
  throw new Problem(
    "split-misses",
    `The line has to run from outline to outline through ${piece.name}, and ${called} ${reaches}.`,
    { hint: "Draw the line from one edge of the piece to another; it may run on beyond them." },
  );
};

/** The cut along the stretch of a line that a spot of the line, mm from its start, lies in; undefined where it is outside. */
export const cutThrough = (piece: Piece, line: Path, at: number, units: Units): Slash | undefined => {
  const stretch = stretchesInside(piece, line, units).find(({ from, to }) => from <= at && at <= to);
  return stretch && cutOn(piece, stretch);
};

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly path: Path;
}

/** The stretches of a line that cross the cloth from outline to outline. */
const stretchesInside = (piece: Piece, line: Path, units: Units): Stretch[] => {
  const whole = closedBoundary(piece, units);
  const length = pathLength(line);
  const onOutline = (at: number): boolean => nearest(whole, pointAt(line, at)).distance <= sameSpotTolerance;
  const stations = [...[0, length].filter(onOutline), ...crossings(line, whole).map(({ onFirst }) => onFirst)].sort(
    (a, b) => a - b,
  );
  const apart = stations.filter((at, index) => index === 0 || at - stations[index - 1]! > sameSpotTolerance);
  return apart.slice(1).flatMap((to, index) => {
    const from = apart[index]!;
    const middle = (from + to) / 2;
    return contains(whole, pointAt(line, middle)) && !onOutline(middle)
      ? [{ from, to, path: part(line, from, to) }]
      : [];
  });
};

const cutOn = (piece: Piece, { path }: Stretch): Slash => {
  const [start, end] = [spotsAt(piece, startOf(path))[0]!, spotsAt(piece, endOf(path))[0]!];
  const [hingeAt, targetAt] = [onward(piece, start), onward(piece, end)];
  const [hinge, target] = [pointAtSpot(piece, hingeAt), pointAtSpot(piece, targetAt)];
  return {
    hinge,
    hingeAt,
    hingeEdge: walked(piece)[start.index]!.edge.name,
    hingeOpensAt: start,
    hingeName: undefined,
    target,
    targetsAt: [targetAt],
    path: reversed(startingAt(reversed(startingAt(path, hinge)), target)),
    along: undefined,
  };
};
