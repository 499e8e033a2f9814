// A dart that points to the bust stops short of the bust point.
import { defineCheck } from "../check.ts";
import { dartHalves } from "../dart-halves.ts";
import { dartMeasures } from "../dart-measures.ts";
import { cross, distance, dot, minus, type Point } from "../geometry/point.ts";
import { withoutHidden } from "../hidden-names.ts";
import { lengthIn, plainNumber } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Dart, Judgement, Piece, Units } from "../working.ts";

// How far a sewn tip stays from the bust point at least, mm: side and waist darts end 20 to 30 short of it, others further
// (handbook of the trade 4.9, common practice).
const leastAway = 20;

// A tip further than this off, mm, or that points past it by more than this, has nothing to do with the bust point.
const farthest = 80;
const pastIt = 15;

// A tip just at the distance has it, whatever its last digits.
const rounding = 1e-6;

export const dartNearApex = defineCheck({
  name: "dart-near-apex",
  since: "0.1",
  title: "A dart that points to the place called bust-point ends 20 mm or more short of it.",
  why: "A dart shapes a point where it ends, and the body is round there: the cloth stands off in a peak over the bust.",
  passes: `chalkline 1
recipe "Usher's bodice, its bust dart taken back"
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
  dart bust = foot(bust-point, side) width 3 cm to bust-point
  shorten-dart bust by 2.5 cm
  true-seam side
}
`,
  fails: `chalkline 1
recipe "Usher's bodice, its bust dart sewn up to the bust point"
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
  dart bust = foot(bust-point, side) width 3 cm to bust-point
  true-seam side
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      const apex = piece.places.get("bust-point");
      if (piece.doubtful || !apex) continue;
      for (const dart of piece.darts.values()) {
        const half = dartHalves(dart).find((each) => pointsTo(each, apex.point));
        if (half) yield shortOf(piece, dart, half.tip, apex.point, garment.units);
      }
    }
  },
});

const pointsTo = (dart: Dart, apex: Point): boolean => {
  const { outward } = dartMeasures(dart);
  const way = minus(apex, dart.tip);
  return distance(apex, dart.tip) <= farthest && dot(outward, way) <= 0 && Math.abs(cross(outward, way)) <= pastIt;
};

const shortOf = (piece: Piece, dart: Dart, tip: Point, apex: Point, units: Units): Judgement => {
  const found = distance(tip, apex);
  const called = withoutHidden(dart.name);
  const about = { on: `${piece.name}.${called}`, found, wanted: leastAway, where: whereToMend(piece, dart) };
  const ends =
    found < 1
      ? `The dart ${called} of ${piece.name} ends at the bust point.`
      : `The dart ${called} of ${piece.name} ends ${lengthIn(found, units)} short of the bust point.`;
  if (found >= leastAway - rounding) return { ...about, verdict: "pass", message: ends };
  return {
    ...about,
    verdict: "warning",
    message: ends,
    hint: `Take its tip back with \`shorten-dart ${called} by ${plainNumber(Math.ceil(usual - found), 0)} mm${tip === dart.lower ? " lower" : ""}\`.`,
  };
};

// In the middle of what is usual, mm.
const usual = 25;
