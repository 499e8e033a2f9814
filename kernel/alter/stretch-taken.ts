// A stretch of an outline edge that sewing is to take up: where it lies, and how long it is as things stand.
import { pathLength } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import type { Path } from "../geometry/path.ts";
import { type Point, sameSpotTolerance } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import { takenAlong } from "../sewn.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import { turnInOutline } from "./outline-spot.ts";

export interface StretchTaken {
  readonly path: Path;
  /** Its two ends along the edge as drafted, mm. */
  readonly from: number;
  readonly to: number;
}

/** The stretch between two places of an edge, or all of it; a Problem where something is taken up there already. */
export const stretchTaken = (
  piece: Piece,
  edge: string,
  ends: { readonly from: Point | undefined; readonly until: Point | undefined },
  units: Units,
): StretchTaken => {
  turnInOutline(piece, edge);
  const { path } = piece.edges.get(edge)!;
  const along = (place: Point | undefined, otherwise: number): number => {
    if (!place) return otherwise;
    const foot = nearest(path, place);
    if (foot.distance <= sameSpotTolerance) return foot.at;
    throw new Problem("take-up-off-edge", `This place lies ${lengthIn(foot.distance, units)} off ${edge}.`, {
      hint: `Say where along it: \`${edge} at 5 cm\`.`,
    });
  };
  const [one, other] = [along(ends.from, 0), along(ends.until, pathLength(path))];
  const [from, to] = one < other ? [one, other] : [other, one];
  if (to - from <= sameSpotTolerance) {
    throw new Problem("take-up-empty", "The stretch begins and ends at one place.", {
      hint: "Name two places of the edge.",
    });
  }
  const isInWay = takenAlong(piece, edge).some((each) => {
    const spots = [nearest(path, each.from).at, nearest(path, each.to).at];
    return Math.min(...spots) < to - sameSpotTolerance && Math.max(...spots) > from + sameSpotTolerance;
  });
  if (isInWay) {
    throw new Problem(
      "taken-up-twice",
      `Something is taken up along this stretch of ${edge} already: a dart, pleats or gathers.`,
      {
        hint: "Name a stretch beside it with `from` and `until`.",
      },
    );
  }
  return { path, from, to };
};
