// Darts ride on the part of a slashed piece that they lie in; a dart is one stiff thing, and no slash goes through it.
import { dartCorners } from "../dart-halves.ts";
import { nearest } from "../geometry/nearest.ts";
import { type Point, sameSpot, sameSpotTolerance } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import type { Dart } from "../working.ts";
import { moved, type Recut } from "./recut.ts";

/** The darts of a piece put together again; a Problem where the slash goes through one, or its cloth is taken out. */
export const movedDarts = (recut: Recut): ReadonlyMap<string, Dart> =>
  new Map([...recut.piece.darts].map(([name, dart]) => [name, movedDart(recut, dart)]));

const movedDart = (recut: Recut, dart: Dart): Dart => {
  const { first, second, tip, lower } = dart;
  const fates = new Set(
    dartCorners(dart)
      .filter((point) => !isOnCut(recut, point))
      .map((point) => recut.fateOf(point)),
  );
  if (fates.has("gone")) {
    throw new Problem("place-folded-away", `The dart ${dart.name} lies in the cloth that would be taken out.`, {
      hint: "Fold less away, or slash on its other side.",
    });
  }
  if (fates.size > 1) {
    throw new Problem("slash-through-dart", `The slash goes through the dart ${dart.name}.`, {
      hint: lower
        ? "Slash beside it, or draw it below this line."
        : `Slash beside it, or turn it into flare with \`close-dart ${dart.name} to\` the edge that opens.`,
    });
  }
  if (!fates.has("moves")) return dart;
  return {
    ...dart,
    first: moved(recut, first),
    second: moved(recut, second),
    tip: moved(recut, tip),
    ...(lower && { lower: moved(recut, lower) }),
  };
};

// What lies on the cut is on both parts, and goes with the rest of its dart. A cut along an edge leaves that edge's darts
// to the edge, but for its ends.
const isOnCut = ({ slash, cuts }: Recut, point: Point): boolean => {
  if (sameSpot(point, slash.hinge) || sameSpot(point, slash.target)) return true;
  return slash.along === undefined && cuts.some((cut) => nearest(cut, point).distance <= sameSpotTolerance);
};
