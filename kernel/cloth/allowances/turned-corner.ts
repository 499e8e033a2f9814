// The corner of a hem that is folded up: beyond the fold the neighbour's cutting line is its own mirror image,
// so that the turned-up cloth lies on the piece edge to edge.
import { pathLength } from "../../geometry/arc-length.ts";
import { crossings } from "../../geometry/intersect.ts";
import { mirroredIn } from "../../geometry/mirror.ts";
import { mapped, reversed } from "../../geometry/path.ts";
import { plus } from "../../geometry/point.ts";
import { part } from "../../geometry/split.ts";
import { carriedOnToCutting, type Flank, type Meeting } from "./flank.ts";

/** The neighbour's cutting line down to the hem's sewing line, then mirrored in it; undefined where it does not get there. */
export const turnedCorner = (own: Flank, other: Flank): Meeting | undefined => {
  const fold = carriedOnToCutting(own, other);
  if (!fold) return undefined;
  const above = part(other.cutting, fold.otherAt + other.carried, pathLength(other.cutting));
  // A curved hem is mirrored in its tangent at the corner: cloth folds along a straight line.
  const mirrored = mapped(above, (p) => mirroredIn(p, own.corner, plus(own.corner, own.away)));
  const edge = crossings(mirrored, own.cutting)[0];
  if (!edge) return undefined;
  return {
    ownAt: edge.onSecond - own.carried,
    otherAt: fold.otherAt,
    across: edge.onFirst === 0 ? [] : reversed(part(mirrored, 0, edge.onFirst)),
  };
};
