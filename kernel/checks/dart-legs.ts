// The two legs of a dart are sewn to one another, so they are of one length.
import { legTolerance } from "../alter/about-pivot.ts";
import { defineCheck } from "../check.ts";
import { dartHalves } from "../dart-halves.ts";
import { dartMeasures } from "../dart-measures.ts";
import { withoutHidden } from "../hidden-names.ts";
import { lengthIn } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Dart, Judgement, Piece, Units } from "../working.ts";

// A difference just at the tolerance is within it, whatever its last digits.
const rounding = 1e-6;

export const dartLegs = defineCheck({
  name: "dart-legs",
  since: "0.1",
  title: "The two legs of a dart are of one length, within 0.5 mm.",
  why: "The legs are sewn to each other, so the longer one leaves a step at the edge, or the sewer stretches the other to meet it.",
  passes: `chalkline 1
recipe "Usher's bodice, its bust dart square to the side"
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
recipe "Usher's bodice, its bust dart slanted and left as drawn"
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
  dart bust = side at 12 cm width 3 cm to bust-point
  shorten-dart bust by 2.5 cm
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      if (piece.doubtful) continue;
      for (const dart of piece.darts.values()) yield legsOf(piece, dart, garment.units);
    }
  },
});

const legsOf = (piece: Piece, dart: Dart, units: Units): Judgement => {
  const [worst] = dartHalves(dart)
    .map((half) => {
      const [first, second] = dartMeasures(half).legs;
      return { first, second, found: Math.abs(first - second) };
    })
    .sort((a, b) => b.found - a.found);
  const { first, second, found } = worst!;
  const called = withoutHidden(dart.name);
  const about = { on: `${piece.name}.${called}`, found, wanted: 0, where: whereToMend(piece, dart) };
  if (found <= legTolerance + rounding) {
    const message = `The legs of the dart ${called} of ${piece.name} measure ${lengthIn(first, units)}.`;
    return { ...about, verdict: "pass", message };
  }
  return {
    ...about,
    verdict: "warning",
    message: `The legs of the dart ${called} of ${piece.name} measure ${lengthIn(first, units)} and ${lengthIn(second, units)}.`,
    hint: dart.lower
      ? "Let its line run square to its fold line, and put both tips square to the middle of the width."
      : `Make them equal with \`true-seam ${dart.edge}\`, or put the tip square to the middle of the mouth.`,
  };
};
