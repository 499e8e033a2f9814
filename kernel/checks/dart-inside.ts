// A dart lies on the cloth of its piece, and no two darts lie over one another.
import { defineCheck } from "../check.ts";
import { dartHalves } from "../dart-halves.ts";
import { dartMeasures } from "../dart-measures.ts";
import { contains } from "../geometry/area.ts";
import { crossings } from "../geometry/intersect.ts";
import { joined, type Path, straight } from "../geometry/path.ts";
import { type Point, sameSpot } from "../geometry/point.ts";
import { toDegrees } from "../geometry/trig.ts";
import { withoutHidden } from "../hidden-names.ts";
import { boundary } from "../outline.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Dart, Judgement, Piece } from "../working.ts";

export const dartInside = defineCheck({
  name: "dart-inside",
  since: "0.1",
  title: "A dart lies inside its piece and crosses no other dart.",
  why: "Nobody can fold cloth that is not there, nor stitch through cloth that another dart has folded.",
  passes: `chalkline 1
recipe "Usher's bodice with two darts side by side"
units cm

piece bodice {
  point bust-point = (9 cm, 24 cm)
  point underarm = (23 cm, 20 cm)
  line neck = (0, 0) to (7 cm, 0)
  line shoulder = (7 cm, 0) to (19 cm, 4 cm)
  curve armscye = (19 cm, 4 cm) to underarm leaving down arriving right
  line side = underarm to (23 cm, 40 cm)
  line waist = (0, 40 cm) to (23 cm, 40 cm)
  line center = (0, 0) to (0, 40 cm)
  outline center, neck, shoulder, armscye, side, waist
  mark center as fold
  dart inner = waist at 7 cm width 2 cm long 12 cm
  dart outer = waist at 13 cm width 2 cm long 12 cm
  true-seam waist
}
`,
  fails: `chalkline 1
recipe "Usher's bodice with two darts that cross"
units cm

piece bodice {
  point bust-point = (9 cm, 24 cm)
  point underarm = (23 cm, 20 cm)
  line neck = (0, 0) to (7 cm, 0)
  line shoulder = (7 cm, 0) to (19 cm, 4 cm)
  curve armscye = (19 cm, 4 cm) to underarm leaving down arriving right
  line side = underarm to (23 cm, 40 cm)
  line waist = (0, 40 cm) to (23 cm, 40 cm)
  line center = (0, 0) to (0, 40 cm)
  outline center, neck, shoulder, armscye, side, waist
  mark center as fold
  dart waist-dart = waist at 14 cm width 3 cm long 16 cm
  dart bust = side at 14 cm width 3 cm long 12 cm
  true-seam waist, side
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      const whole = boundary(piece);
      if (piece.doubtful || !whole) continue;
      for (const dart of piece.darts.values()) yield placeOf(piece, whole, dart);
    }
  },
});

const placeOf = (piece: Piece, whole: Path, dart: Dart): Judgement => {
  const called = withoutHidden(dart.name);
  const about = { on: `${piece.name}.${called}`, where: whereToMend(piece, dart), wanted: "inside" } as const;
  const legs = legsOf(dart);
  // A dart that opens on an edge meets the outline at its leg ends; a double-ended one nowhere.
  const isOwn = (point: Point): boolean =>
    !dart.lower && (sameSpot(point, dart.first, nearby) || sameSpot(point, dart.second, nearby));
  const tips = dartHalves(dart).map(({ tip }) => tip);
  if (!tips.every((tip) => contains(whole, tip)) || crossings(whole, legs).some(({ point }) => !isOwn(point))) {
    return {
      ...about,
      verdict: "error",
      found: "outside",
      message: `The dart ${called} reaches out of ${piece.name}.`,
      hint: "Make it shorter, or draw it elsewhere.",
    };
  }
  const all = [...piece.darts.values()];
  // Of two that cross the later one is told.
  const other = all.slice(0, all.indexOf(dart)).find((each) => isCrossed(legs, dart, each));
  if (other) {
    return {
      ...about,
      verdict: "error",
      found: "crossed",
      message: `The dart ${called} of ${piece.name} crosses its dart ${withoutHidden(other.name)}.`,
      hint: "Make one of them shorter, or draw it elsewhere.",
      related: [{ where: whereToMend(piece, other), message: `${withoutHidden(other.name)} is drawn here.` }],
    };
  }
  const angle = Math.round(toDegrees(dartMeasures(dart).angle));
  return {
    ...about,
    verdict: "pass",
    found: "inside",
    message: `The dart ${called} of ${piece.name}, ${angle} deg, has its place.`,
  };
};

// Trueing moves an edge within rounding where a leg meets it, mm.
const nearby = 0.05;

const legsOf = ({ first, second, tip, lower }: Dart): Path =>
  joined([
    straight(first, tip),
    straight(tip, second),
    ...(lower ? [straight(second, lower), straight(lower, first)] : []),
  ]);

// Darts of one tip, as splitting leaves them, only touch there. A double-ended dart may also lie wholly inside another.
const isCrossed = (legs: Path, dart: Dart, other: Dart): boolean =>
  crossings(legs, legsOf(other)).some(({ point }) => !(sameSpot(point, dart.tip) && sameSpot(point, other.tip))) ||
  liesWithin(dart, other) ||
  liesWithin(other, dart);

const liesWithin = (dart: Dart, other: Dart): boolean =>
  dart.lower !== undefined &&
  contains(other.lower ? legsOf(other) : joined([legsOf(other), straight(other.second, other.first)]), dart.tip);
