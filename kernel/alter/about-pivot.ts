// A dart drawn out to the place it is turned about: the leg ends stay, and the angle is the one between them there.
import { dartMeasures } from "../dart-measures.ts";
import type { Point } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { Dart, Units } from "../working.ts";

/** How far the legs of a dart may differ, mm, and still be sewn to one another (handbook of the trade 5.1). */
export const legTolerance = 0.5;

/** The dart with its tip at the pivot; a Problem where its legs, drawn from there, differ by more than can be sewn. */
export const aboutPivot = (dart: Dart, pivot: Point | undefined, units: Units): Dart => {
  const now = pivot ? { ...dart, tip: pivot } : dart;
  const [first, second] = dartMeasures(now).legs;
  const difference = Math.abs(first - second);
  if (difference <= legTolerance) return now;
  const where = pivot ? ", drawn from that place," : "";
  throw new Problem(
    "dart-legs-differ",
    `The legs of ${dart.name}${where} differ by ${lengthIn(difference, units)}, so it cannot close.`,
    {
      hint: pivot
        ? "Turn it about a place on its center line."
        : `Make them equal with \`true-seam ${dart.edge}\` above this line.`,
      slot: "about",
    },
  );
};
