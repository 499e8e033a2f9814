// What is marked on a piece lies on its cloth.
import { defineCheck } from "../check.ts";
import { contains } from "../geometry/area.ts";
import { nearest } from "../geometry/nearest.ts";
import type { Path } from "../geometry/path.ts";
import { type Point, sameSpotTolerance } from "../geometry/point.ts";
import { boundary } from "../outline.ts";
import { lengthIn } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Garment, Judgement, Piece } from "../working.ts";

export const marksInside = defineCheck({
  name: "marks-inside",
  since: "0.1",
  title: "Drill holes and labels lie inside the sewing line of their piece.",
  why: "A pocket corner marked beside the piece is a sign that two measures do not go together, and cannot be marked on the cloth.",
  passes: `chalkline 1
recipe "Apron with a pocket"
units cm

piece apron {
  line center = (0, 0) to (0, 60 cm)
  line top = (0, 0) to (18 cm, 0)
  line side = (18 cm, 0) to (18 cm, 60 cm)
  line hem = (0, 60 cm) to (18 cm, 60 cm)
  outline center, top, side, hem
  drill (3 cm, 20 cm)
  drill (15 cm, 20 cm)
}
`,
  fails: `chalkline 1
recipe "Apron with a pocket that is too wide"
units cm

piece apron {
  line center = (0, 0) to (0, 60 cm)
  line top = (0, 0) to (18 cm, 0)
  line side = (18 cm, 0) to (18 cm, 60 cm)
  line hem = (0, 60 cm) to (18 cm, 60 cm)
  outline center, top, side, hem
  drill (3 cm, 20 cm)
  drill (21 cm, 20 cm)
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      const loop = boundary(piece);
      if (loop && !piece.doubtful) yield* marksOf(piece, loop, garment);
    }
  },
});

function* marksOf(piece: Piece, loop: Path, garment: Garment): Iterable<Judgement> {
  const marks = [
    ...piece.drills.map(({ point, drawnBy }) => ({ what: "drill hole", point, drawnBy })),
    ...piece.labels.flatMap(({ at, drawnBy }) => (at ? [{ what: "label", point: at, drawnBy }] : [])),
  ];
  for (const { what, point, drawnBy } of marks) {
    const off = offBy(loop, point);
    const about = { on: piece.name, where: whereToMend(piece, { drawnBy }), found: off, wanted: 0 };
    if (off === 0) {
      yield { ...about, verdict: "pass", message: `A ${what} of ${piece.name} lies inside it.` };
    } else {
      yield {
        ...about,
        verdict: "warning",
        message: `A ${what} of ${piece.name} lies ${lengthIn(off, garment.units)} outside its sewing line.`,
        hint: "Move it inside, or see which measure has grown too large.",
      };
    }
  }
}

/** How far outside a closed line a point lies, in mm; 0 inside and on it. */
const offBy = (loop: Path, point: Point): number => {
  if (contains(loop, point)) return 0;
  const { distance } = nearest(loop, point);
  return distance <= sameSpotTolerance ? 0 : distance;
};
