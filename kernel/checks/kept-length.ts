// An edge that was promised to keep its length has kept it.
import { defineCheck } from "../check.ts";
import { sewnLengthOf } from "../sewn.ts";
import { lengthIn } from "../units.ts";
import type { Judgement, Keep, Piece, Units } from "../working.ts";

// Half a millimetre is what side, shoulder and panel seams may differ in a computed pattern (handbook of the trade 5.1,
// common practice).
const tolerance = 0.5;

// Sums of many stretches end in the last digits; a length just at the tolerance is within it.
const rounding = 1e-6;

export const keptLength = defineCheck({
  name: "kept-length",
  since: "0.1",
  title: "An edge named by `keep` measures what it measured before the alteration, within 0.5 mm.",
  why: "Other pieces were drafted to fit this edge, so a change of its length shows as a pucker or a gap in their seam.",
  passes: `chalkline 1
recipe "Usher's vest back, wider at the hem"
units cm

piece back {
  point nape = (0, 0)
  point top = nape right 25 cm
  point side-hem = top down 60 cm
  point center-hem = nape down 60 cm
  line yoke-edge = nape to top
  line side = top to side-hem
  line hem = center-hem to side-hem
  line center = nape to center-hem
  outline yoke-edge, side, hem, center
}

piece wide-back = back {
  move side-hem to side-hem right 2 cm
  keep yoke-edge, center
}
`,
  fails: `chalkline 1
recipe "Usher's vest back, wider all the way"
units cm

piece back {
  point nape = (0, 0)
  point top = nape right 25 cm
  point side-hem = top down 60 cm
  point center-hem = nape down 60 cm
  line yoke-edge = nape to top
  line side = top to side-hem
  line hem = center-hem to side-hem
  line center = nape to center-hem
  outline yoke-edge, side, hem, center
}

piece wide-back = back {
  move side-hem to side-hem right 2 cm
  move top to top right 2 cm
  keep yoke-edge, center
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      if (piece.doubtful) continue;
      for (const keep of piece.keeps) yield keptOrNot(piece, keep, garment.units);
    }
  },
});

const keptOrNot = (piece: Piece, keep: Keep, units: Units): Judgement => {
  const on = `${piece.name}.${keep.edge}`;
  const edge = piece.edges.get(keep.edge);
  if (edge === undefined) {
    return {
      on,
      verdict: "error",
      found: "no such edge",
      wanted: keep.wanted,
      where: keep.drawnBy,
      message: `${piece.name} no longer has the edge ${keep.edge}, which was to keep ${lengthIn(keep.wanted, units)}.`,
      hint: "Name the edge that took its place.",
    };
  }
  const found = sewnLengthOf(piece, edge.name);
  const excess = found - keep.wanted;
  const about = { on, found, wanted: keep.wanted, where: keep.drawnBy };
  const measures = `The ${keep.edge} of ${piece.name} measures ${lengthIn(found, units)}`;
  if (Math.abs(excess) <= tolerance + rounding) {
    return { ...about, verdict: "pass", message: `${measures}, as that of ${keep.of} does.` };
  }
  const comparison = `${lengthIn(Math.abs(excess), units)} ${excess > 0 ? "longer" : "shorter"}`;
  return {
    ...about,
    verdict: "error",
    message: `${measures}, ${comparison} than that of ${keep.of}.`,
    hint: `Write \`true-seam ${keep.edge} holding length\` where trueing changed it; else alter its partner as well, and take this promise out.`,
    related: [{ where: edge.drawnBy, message: `${keep.edge} is drawn here.` }],
  };
};
