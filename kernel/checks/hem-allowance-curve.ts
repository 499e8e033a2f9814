// A hem that curves is turned up no deeper than its cloth can be eased in.
import { defineCheck } from "../check.ts";
import { hemsOf, tightestRadius, turningOf } from "../hem-turning.ts";
import type { Walked } from "../outline.ts";
import { boundary } from "../outline.ts";
import { lengthIn, plainNumber } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Allowance, Fabric, Garment, Judgement, Piece } from "../working.ts";

// The share of a raw edge that its cloth lets itself be eased in by. Common practice, no source: 2 % crisp cotton or
// taffeta, 3 % medium cotton, 5 % soft wool. Bending lengths, mm, from memory: soft wools lie below 18, crisp cloth above 24.
const easing = { crisp: 0.02, medium: 0.03, soft: 0.05 } as const;
const crispFrom = 24;
const softUpTo = 18;

// A curve is judged over this many mm of hem: shorter bends are eased together with what lies beside them.
const window = 100;

// An allowance just as deep as may be is good, whatever its last digits.
const rounding = 1e-6;

/** The deepest turn-up, mm, of a hem with a radius in mm, for cloth that eases by a share: e R / (2 + e). */
export const deepestTurnUp = (radius: number, share: number): number => (share * radius) / (2 + share);

export const hemAllowanceCurve = defineCheck({
  name: "hem-allowance-curve",
  since: "0.2",
  title: "A curved hem is turned up no deeper than the cloth can be eased in.",
  why: "The raw edge of a hem that curves outward is longer than the cloth it is turned up onto; what cannot be eased in lies in pleats.",
  passes: `chalkline 1
recipe "Circle skirt, narrow hem"
units cm

fabric shell "wool crepe" width 150 cm weight 200 gsm bending-length 16 mm

piece skirt {
  point middle-point = (0, 0)
  arc waist   = (0, 20 cm) to (20 cm, 0) around middle-point
  arc hem     = (0, 70 cm) to (70 cm, 0) around middle-point
  line center = (0, 20 cm) to (0, 70 cm)
  line side   = (20 cm, 0) to (70 cm, 0)
  outline center, waist, side, hem
  mark hem as hem
  grain along center
  allow waist, side, center by 1 cm
  allow hem by 1.5 cm
}

cut skirt 4 from shell
`,
  fails: `chalkline 1
recipe "Circle skirt, deep hem"
units cm

fabric shell "wool crepe" width 150 cm weight 200 gsm bending-length 16 mm

piece skirt {
  point middle-point = (0, 0)
  arc waist   = (0, 20 cm) to (20 cm, 0) around middle-point
  arc hem     = (0, 70 cm) to (70 cm, 0) around middle-point
  line center = (0, 20 cm) to (0, 70 cm)
  line side   = (20 cm, 0) to (70 cm, 0)
  outline center, waist, side, hem
  mark hem as hem
  grain along center
  allow waist, side, center by 1 cm
  allow hem by 4 cm
}

cut skirt 4 from shell
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      if (piece.doubtful || boundary(piece) === undefined) continue;
      for (const hem of hemsOf(piece)) {
        const allowance = piece.allowances.get(hem.edge.name);
        if (allowance && allowance.width > 0) yield turnedUp(piece, hem, allowance, garment);
      }
    }
  },
});

const turnedUp = (piece: Piece, { edge, path }: Walked, { width, drawnBy }: Allowance, garment: Garment): Judgement => {
  const { units } = garment;
  const share = easingOf(fabricOf(piece, garment));
  const radius = tightestRadius(piece, path, window);
  const most = radius === undefined ? Number.POSITIVE_INFINITY : deepestTurnUp(radius, share);
  const about = {
    on: `${piece.name}.${edge.name}`,
    found: width,
    wanted: radius === undefined ? "any depth" : `at most ${lengthIn(most, "mm")}`,
    where: whereToMend(piece, { drawnBy }),
  };
  if (radius === undefined || width <= most + rounding) {
    const message = `The hem allowance of ${lengthIn(width, units)} at the ${edge.name} of ${piece.name} can be turned up.`;
    return { ...about, verdict: "pass", message };
  }
  const excess = 2 * width * Math.max(0, turningOf(piece, path));
  const eased = width < radius ? `${plainNumber((200 * width) / (radius - width), 1)} %` : "all";
  return {
    ...about,
    verdict: "warning",
    message:
      `At its tightest the ${edge.name} of ${piece.name} curves with a radius of ${lengthIn(radius, units)}: turned up by ${lengthIn(width, units)}, ` +
      `${eased} of its raw edge has to be eased in there, ${lengthIn(excess, units)} in all; the cloth takes ${plainNumber(share * 100, 0)} %.`,
    hint: `Allow at most ${lengthIn(most, units)}, or finish the hem with a facing cut to its shape.`,
    related: [{ where: whereToMend(piece, edge), message: `${edge.name} is drawn here.` }],
  };
};

const fabricOf = (piece: Piece, garment: Garment): Fabric | undefined => {
  const cut = garment.cuts.find((each) => each.piece === piece.name);
  return cut && garment.fabrics.get(cut.fabric);
};

// Where nothing is known of the cloth it is taken to be soft, so that what is told is sure.
const easingOf = (fabric: Fabric | undefined): number => {
  const bending = fabric?.bendingLength;
  if (bending === undefined || bending < softUpTo) return easing.soft;
  return bending < crispFrom ? easing.medium : easing.crisp;
};
