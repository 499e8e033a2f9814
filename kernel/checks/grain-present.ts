// A piece that is cut says how it lies on the cloth.
import { defineCheck } from "../check.ts";
import { cross, dot } from "../geometry/point.ts";
import { atan2, toDegrees } from "../geometry/trig.ts";
import { alongEdge, foldOf, grainDirection } from "../grain-direction.ts";
import { plainNumber } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Cut, Garment, Judgement, Piece } from "../working.ts";

// 3 mm in a metre is what a grain line may be off (handbook of the trade 5.6, common practice).
const tolerance = 0.003;

// More than this many degrees off is no slip but meant: cloth folded across (90), or on the bias (45).
const meant = 15;

// A grain line just at the tolerance is within it, whatever its last digits.
const rounding = 1e-9;

export const grainPresent = defineCheck({
  name: "grain-present",
  since: "0.1",
  title: "Every piece that is cut has a grain line; on a piece with a fold it does not lie a little off the fold.",
  why: "Cloth hangs and stretches differently across its threads, so the cutter must know which way to lay the piece.",
  passes: `chalkline 1
recipe "Belt loop"
units cm

fabric shell "gabardine" width 150 cm weight 260 gsm

piece loop {
  point A = (0, 0)
  point B = A right 4 cm
  point C = B down 12 cm
  point D = A down 12 cm
  line upper = A to B
  line front-edge = B to C
  line lower = D to C
  line back-edge = A to D
  outline upper, front-edge, lower, back-edge
  grain along back-edge
  allow upper, front-edge, lower, back-edge by 1 cm
}

cut loop 4 from shell
`,
  fails: `chalkline 1
recipe "Belt loop without a grain line"
units cm

fabric shell "gabardine" width 150 cm weight 260 gsm

piece loop {
  point A = (0, 0)
  point B = A right 4 cm
  point C = B down 12 cm
  point D = A down 12 cm
  line upper = A to B
  line front-edge = B to C
  line lower = D to C
  line back-edge = A to D
  outline upper, front-edge, lower, back-edge
  allow upper, front-edge, lower, back-edge by 1 cm
}

cut loop 4 from shell
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      const cut = firstCutOf(piece, garment);
      if (cut && !piece.doubtful) yield hasGrain(piece, cut);
    }
  },
});

const firstCutOf = (piece: Piece, garment: Garment): Cut | undefined =>
  garment.cuts.find((cut) => cut.piece === piece.name);

const hasGrain = (piece: Piece, cut: Cut): Judgement => {
  const direction = grainDirection(piece);
  const fold = foldOf(piece);
  const about = { on: piece.name, where: piece.grain ? whereToMend(piece, piece.grain) : piece.drawnBy };
  if (direction === undefined) {
    return {
      ...about,
      verdict: "warning",
      found: "no grain line",
      wanted: "a grain line",
      message: `${piece.name} is cut from ${cut.fabric} but has no grain line.`,
      hint: "Add `grain PLACE to PLACE` or `grain along EDGE` to the piece.",
      related: [{ where: cut.drawnBy, message: "It is cut here." }],
    };
  }
  const along = fold && alongEdge(fold);
  if (!fold || !along) {
    const message = `${piece.name} has a grain line.`;
    return { ...about, verdict: "pass", found: "a grain line", wanted: "a grain line", message };
  }
  const slant = Math.abs(cross(direction, along));
  const angle = toDegrees(atan2(slant, Math.abs(dot(direction, along))));
  const grain = { ...about, found: angle, wanted: 0 };
  if (slant <= tolerance + rounding) {
    return { ...grain, verdict: "pass", message: `The grain of ${piece.name} runs along its fold ${fold.name}.` };
  }
  if (angle > meant) {
    const message = `The grain of ${piece.name} lies ${plainNumber(angle, 1)} deg off its fold ${fold.name}, as on cloth folded another way.`;
    return { ...grain, verdict: "pass", message };
  }
  return {
    ...grain,
    verdict: "warning",
    message: `The grain of ${piece.name} is ${plainNumber(angle, 1)} deg off its fold ${fold.name}.`,
    hint: `Write \`grain along ${fold.name}\`; accept it with a reason where the cloth is folded across.`,
    related: [{ where: whereToMend(piece, fold), message: `${fold.name} is drawn here.` }],
  };
};
