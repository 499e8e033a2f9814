// An edge moves square to itself, out or in, and its two neighbours are carried on or trimmed to meet it.
import { pathLength } from "../geometry/arc-length.ts";
import { crossings } from "../geometry/intersect.ts";
import { carriedOn, offsetPath } from "../geometry/offset.ts";
import { type Path, reversed, startOf } from "../geometry/path.ts";
import { minus, type Point, plus, sameSpotTolerance } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { sense, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Piece } from "../working.ts";
import { turnInOutline } from "./outline-spot.ts";
import { reachOf } from "./reach-of.ts";
import { reshaped } from "./reshaped.ts";

/** The piece with an edge moved out by so many mm, in where negative; a Problem where it finds no neighbour to meet. */
export const movedEdge = (piece: Piece, name: string, out: number): Piece => {
  const index = turnInOutline(piece, name);
  const walk = walked(piece);
  if (walk.length < 2) {
    throw new Problem("edge-alone", `${name} is all of the outline, so it has no neighbours to meet.`, {
      hint: "Draw the outline of two edges or more.",
    });
  }
  const before = walk[(index + walk.length - 1) % walk.length]!.edge.name;
  const after = walk[(index + 1) % walk.length]!.edge.name;
  const reach = reachOf(piece) + 10 * Math.abs(out);
  const paths = new Map(walk.map(({ edge, path }) => [edge.name, path]));
  const moved = offsetPath(paths.get(name)!, out * sense(piece));
  const first = meeting(paths.get(before)!, moved, reach, before, name);
  paths.set(before, first.neighbour);
  const second = meeting(reversed(paths.get(after)!), reversed(first.moved), reach, after, name);
  paths.set(after, reversed(second.neighbour));
  paths.set(name, reversed(second.moved));
  const changed = [before, name, after].map((edge): [string, Path] => {
    const { turned } = walk.find((each) => each.edge.name === edge)!;
    return [edge, turned ? reversed(paths.get(edge)!) : paths.get(edge)!];
  });
  return reshaped(piece, new Map(changed));
};

/** A neighbour that ends at the corner and the moved edge that starts there, both changed so that they meet. */
const meeting = (
  neighbour: Path,
  moved: Path,
  reach: number,
  neighbourName: string,
  name: string,
): { neighbour: Path; moved: Path } => {
  const length = pathLength(neighbour);
  const [longNeighbour, longMoved] = [carriedOn(neighbour, "end", reach), carriedOn(moved, "start", reach)];
  const away = ({ onFirst, onSecond }: { onFirst: number; onSecond: number }): number =>
    Math.abs(onFirst - length) + Math.abs(onSecond - reach);
  // Of several meetings the one nearest to the corner, measured along both, is the corner's own.
  const [met] = crossings(longNeighbour, longMoved).sort((a, b) => away(a) - away(b));
  if (!met) {
    throw new Problem("neighbour-missed", `${neighbourName} and ${name} would not meet any more.`, {
      hint: `Take a smaller length, or draw ${neighbourName} anew.`,
    });
  }
  const left = pathLength(longMoved) - met.onSecond;
  if (met.onFirst <= sameSpotTolerance || left <= sameSpotTolerance) {
    const used = left <= sameSpotTolerance ? name : neighbourName;
    throw new Problem("edge-used-up", `Nothing of ${used} would be left.`, { hint: "Take a smaller length." });
  }
  const corner = met.point;
  const kept =
    met.onFirst > length ? carriedOn(neighbour, "end", met.onFirst - length) : part(neighbour, 0, met.onFirst);
  return {
    neighbour: reversed(startingAt(reversed(kept), corner)),
    moved: startingAt(part(longMoved, met.onSecond, met.onSecond + left), corner),
  };
};

/** The path with its start moved a little, by rounding or a hair's breadth, so that two edges share their corner to the last bit. */
export const startingAt = (path: Path, corner: Point): Path => {
  const [first, ...others] = path;
  const by = minus(corner, startOf(path));
  if (first!.kind === "line") return [{ ...first!, start: corner }, ...others];
  return [{ ...first!, start: corner, startHandle: plus(first!.startHandle, by) }, ...others];
};
