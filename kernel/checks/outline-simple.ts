// No outline crosses or touches itself.
import { defineCheck } from "../check.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { selfCrossingsOfLoop } from "../geometry/intersect.ts";
import type { Point } from "../geometry/point.ts";
import { boundary, walked } from "../outline.ts";
import { lengthIn } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Edge, Judgement, Piece, Units } from "../working.ts";

export const outlineSimple = defineCheck({
  name: "outline-simple",
  since: "0.1",
  title: "No outline crosses itself.",
  why: "Where two edges of a piece run over each other there is no cloth between them, so it cannot be cut out.",
  passes: `chalkline 1
recipe "Cloak collar"
units cm

piece collar {
  point back-neck = (0, 0)
  point front-neck = back-neck right 20 cm
  point tip = front-neck right 3 cm up 8 cm
  point back-top = back-neck up 7 cm
  line neck-edge = back-neck to front-neck
  line front-end = front-neck to tip
  line fall = tip to back-top
  line center = back-top to back-neck
  outline neck-edge, front-end, fall, center
}
`,
  fails: `chalkline 1
recipe "Cloak collar, its tip turned the wrong way"
units cm

piece collar {
  point back-neck = (0, 0)
  point front-neck = back-neck right 20 cm
  point tip = back-neck left 3 cm up 8 cm
  point back-top = front-neck up 7 cm
  line neck-edge = back-neck to front-neck
  line front-end = front-neck to tip
  line fall = tip to back-top
  line center = back-top to back-neck
  outline neck-edge, front-end, fall, center
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      const judgement = piece.doubtful ? undefined : crossingItself(piece, garment.units);
      if (judgement) yield judgement;
    }
  },
});

// An outline that stands open is the business of outline-closed. One finding a piece: a misplaced point makes many crossings.
const crossingItself = (piece: Piece, units: Units): Judgement | undefined => {
  const loop = boundary(piece);
  if (loop === undefined) return undefined;
  const crossings = selfCrossingsOfLoop(loop);
  const [first] = crossings;
  const about = { on: piece.name, found: crossings.length, wanted: 0 };
  if (first === undefined) {
    return {
      ...about,
      verdict: "pass",
      where: piece.drawnBy,
      message: `The outline of ${piece.name} does not cross itself.`,
    };
  }
  const over = edgeAt(piece, first.onSecond);
  const under = edgeAt(piece, first.onFirst);
  return {
    ...about,
    verdict: "error",
    where: whereToMend(piece, over),
    message: `${crossing(piece, under, over)} at ${placeInWords(first.point, units)}${more(crossings.length)}.`,
    hint: "Look at the places these edges are drawn through, and at the order of the edges in `outline`.",
    ...(over === under
      ? {}
      : { related: [{ where: whereToMend(piece, under), message: `${under.name} is drawn here.` }] }),
  };
};

const crossing = (piece: Piece, under: Edge, over: Edge): string =>
  over === under
    ? `The ${over.name} of ${piece.name} runs over itself`
    : `The ${over.name} of ${piece.name} runs over its ${under.name}`;

const more = (crossings: number): string =>
  crossings === 1
    ? ""
    : crossings === 2
      ? ", and there is one more crossing"
      : `, and there are ${crossings - 1} more crossings`;

const placeInWords = (point: Point, units: Units): string =>
  `(${lengthIn(point.x, units)}, ${lengthIn(point.y, units)})`;

const edgeAt = (piece: Piece, along: number): Edge => {
  const walk = walked(piece);
  let left = along;
  for (const { edge, path } of walk) {
    left -= pathLength(path);
    if (left <= 0) return edge;
  }
  return walk[walk.length - 1]!.edge;
};
