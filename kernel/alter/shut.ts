// An edge with its darts folded shut, as it is trued, and the same edge opened again. Folding a dart shut turns all that
// lies beyond it about the tip, so the folded edge is one line; each leg lies on it at one spot.
import { dartMeasures } from "../dart-measures.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { joined, mapped, type Path } from "../geometry/path.ts";
import { minus, type Point, unit } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { part } from "../geometry/split.ts";
import { turnBetween } from "../geometry/trig.ts";
import { Problem } from "../problem.ts";
import type { Dart, Piece } from "../working.ts";
import { followed } from "./followed.ts";
import { withDart } from "./with-dart.ts";

/** An edge folded shut; one without darts is itself. */
export interface Shut {
  readonly line: Path;
  /** Its sewn length as it was, mm: legs of unequal length are made equal in the line. */
  readonly length: number;
  /** How far its start and its end lie turned, radians, clockwise; the end that stays where it is lies as it does. */
  readonly turns: { readonly start: number; readonly end: number };
  /** The piece with its edge along another folded line: the darts opened again, their legs as long as the line asks. */
  readonly opened: (piece: Piece, line: Path) => Piece;
}

/** Folds the darts of an edge shut; all of it comes to the end that stays. */
export const shut = (piece: Piece, name: string, stays: "start" | "end" = "start"): Shut => {
  const { path } = piece.edges.get(name)!;
  const darts = dartsAlong(piece, name);
  const across = darts.find(({ lower }) => lower !== undefined);
  if (across) {
    throw new Problem("dart-double-ended", `The dart ${across.name} is double-ended, and does not fold ${name} shut.`, {
      hint: `True ${name} above the line that draws ${across.name}.`,
    });
  }
  const folds = foldsOf(darts, stays);
  const mouths = darts.map(({ first, second }) => [nearest(path, first).at, nearest(path, second).at] as const);
  const stretches = folds.map(({ move }, index): Path => {
    const from = mouths[index - 1]?.[1] ?? 0;
    const to = mouths[index]?.[0] ?? pathLength(path);
    return to - from > nothing ? mapped(part(path, from, to), move) : [];
  });
  return {
    length: stretches.reduce((sum, stretch) => sum + (stretch.length > 0 ? pathLength(stretch) : 0), 0),
    line: darts.length === 0 ? path : joined(evened(stretches, darts, folds)),
    turns: { start: folds[0]!.turn, end: folds.at(-1)!.turn },
    opened: (now, line) => (darts.length === 0 ? withPath(now, name, line) : opened(now, name, line, darts, folds)),
  };
};

/** The darts of an edge in the direction in which it was drafted. */
export const dartsAlong = ({ darts, edges }: Piece, name: string): Dart[] => {
  const own = [...darts.values()].filter(({ edge }) => edge === name);
  const at = ({ first }: Dart): number => nearest(edges.get(name)!.path, first).at;
  return own.length < 2 ? own : own.sort((a, b) => at(a) - at(b));
};

/** What folding does to one of the stretches between the darts. */
interface Fold {
  readonly move: (point: Point) => Point;
  readonly back: (point: Point) => Point;
  readonly turn: number;
}

/** One fold for each stretch, from the start of the edge to its end. */
const foldsOf = (darts: readonly Dart[], stays: "start" | "end"): Fold[] => {
  const still: Fold = { move: (point) => point, back: (point) => point, turn: 0 };
  if (stays === "end") {
    const turned = darts.map((dart): Dart => ({ ...dart, first: dart.second, second: dart.first })).reverse();
    return foldsOf(turned, "start").reverse();
  }
  const folds = [still];
  for (const { first, second, tip } of darts) {
    const before = folds.at(-1)!;
    const turn = turnBetween(minus(second, tip), minus(first, tip));
    folds.push({
      move: (point) => before.move(rotated(point, tip, turn)),
      back: (point) => rotated(before.back(point), tip, -turn),
      turn: before.turn + turn,
    });
  }
  return folds;
};

/** Legs of unequal length are made equal first: the shorter end moves out along its leg, and its stretch follows. */
const evened = (stretches: readonly Path[], darts: readonly Dart[], folds: readonly Fold[]): Path[] => {
  const even = [...stretches];
  darts.forEach((dart, index) => {
    const [before, after] = [even[index]!, even[index + 1]!];
    const [first, second] = dartMeasures(dart).legs;
    if (Math.abs(first - second) <= nothing) return;
    const end = first > second ? folds[index]!.move(dart.first) : folds[index + 1]!.move(dart.second);
    if (before.length > 0) even[index] = followed(before, "end", end);
    if (after.length > 0) even[index + 1] = followed(after, "start", end);
  });
  return even;
};

const nothing = 1e-9;

const opened = (piece: Piece, name: string, line: Path, darts: readonly Dart[], folds: readonly Fold[]): Piece => {
  const spots = darts.map((dart, index) => spotOnLeg(line, dart, folds[index]!));
  const stations = [0, ...spots.map(({ at }) => at), pathLength(line)];
  if (stations.some((at, index) => index > 0 && at < stations[index - 1]! - nothing)) throw crossedDarts(name);
  const stretches = folds.map(({ back }, index): Path => {
    const [from, to] = [stations[index]!, stations[index + 1]!];
    return to - from > nothing ? mapped(part(line, from, to), back) : [];
  });
  const now = darts.map(
    (dart, index): Dart => ({
      ...dart,
      first: folds[index]!.back(spots[index]!.point),
      second: folds[index + 1]!.back(spots[index]!.point),
    }),
  );
  const mouths = now.map(({ first, second }): Path => [{ kind: "line", start: first, end: second }]);
  const path = joined(stretches.flatMap((stretch, index) => [stretch, mouths[index] ?? []]));
  return now.reduce(withDart, withPath(piece, name, path));
};

const spotOnLeg = (line: Path, dart: Dart, { move }: Fold): { readonly at: number; readonly point: Point } => {
  const [tip, end] = [move(dart.tip), move(dart.first)];
  const [leg] = dartMeasures(dart).legs;
  const [found] = crossingsWithRay(line, tip, unit(minus(end, tip)))
    .filter(({ ahead }) => ahead > 0)
    .sort((a, b) => Math.abs(a.ahead - leg) - Math.abs(b.ahead - leg));
  if (found) return found;
  throw new Problem("dart-off-edge", `The legs of ${dart.name} would not reach ${dart.edge} any more.`, {
    hint: `Draw ${dart.name} below this line.`,
  });
};

const crossedDarts = (name: string): Problem =>
  new Problem("dart-overlaps", `The darts of ${name} would lie over one another.`, {
    hint: "Draw them further apart, or less wide.",
  });

const withPath = (piece: Piece, name: string, path: Path): Piece => ({
  ...piece,
  edges: new Map(piece.edges).set(name, { ...piece.edges.get(name)!, path }),
});
