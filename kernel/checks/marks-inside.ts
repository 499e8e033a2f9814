// What is marked on a piece lies on its cloth.
import type { Where } from "../../grammar/diagnostic.ts";
import { buttonholeNumber } from "../buttonhole-number.ts";
import { defineCheck } from "../check.ts";
import { contains } from "../geometry/area.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { sameSpot } from "../geometry/point.ts";
import { boundary } from "../outline.ts";
import { outsideBy, pointOutsideBy } from "../outside-by.ts";
import { lengthIn } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Drill, Edge, Garment, Judgement, Piece } from "../working.ts";

export const marksInside = defineCheck({
  name: "marks-inside",
  since: "0.1",
  title: "Drill holes, labels, buttonholes and placed pockets lie inside the sewing line of their piece.",
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

/** Something marked on a piece, and how far outside the sewing line it lies, mm. */
interface Mark {
  readonly on: string;
  /** How a sentence begins that says it lies inside, and one that says it does not. */
  readonly called: string;
  readonly calledOutside: string;
  readonly off: number;
  readonly drawnBy: Where;
}

function* marksOf(piece: Piece, loop: Path, garment: Garment): Iterable<Judgement> {
  const pockets = pocketsOn(piece);
  const isCorner = (drill: Drill): boolean => pockets.some((pocket) => isDrilledFor(pocket, drill));
  const holes = [...piece.edges.values()].filter(({ name }) => buttonholeNumber(name) !== undefined);
  const marks: Mark[] = [
    // A pocket is judged whole, and not corner by corner besides.
    ...piece.drills
      .filter((drill) => !isCorner(drill))
      .map(({ point, drawnBy }) => spotMark(piece, "drill hole", pointOutsideBy(loop, point), drawnBy)),
    ...piece.labels.flatMap(({ at, drawnBy }) =>
      at ? [spotMark(piece, "label", pointOutsideBy(loop, at), drawnBy)] : [],
    ),
    ...[...holes, ...pockets].map(({ name, path, drawnBy }) => ({
      on: `${piece.name}.${name}`,
      called: `The ${name} of ${piece.name}`,
      calledOutside: `Part of the ${name} of ${piece.name}`,
      off: outsideBy(loop, path),
      drawnBy,
    })),
  ];
  for (const { on, called, calledOutside, off, drawnBy } of marks) {
    const about = { on, where: whereToMend(piece, { drawnBy }), found: off, wanted: 0 };
    if (off === 0) {
      yield { ...about, verdict: "pass", message: `${called} lies inside it.` };
    } else {
      yield {
        ...about,
        verdict: "warning",
        message: `${calledOutside} lies ${lengthIn(off, garment.units)} outside its sewing line.`,
        hint: "Move it inside, or see which measure has grown too large.",
      };
    }
  }
}

const spotMark = (piece: Piece, what: string, off: number, drawnBy: Where): Mark => ({
  on: piece.name,
  called: `A ${what} of ${piece.name}`,
  calledOutside: `A ${what} of ${piece.name}`,
  off,
  drawnBy,
});

/** The pockets placed on a piece: closed lines inside it whose corners were drilled by the line that drew them. */
const pocketsOn = (piece: Piece): Edge[] =>
  [...piece.edges.values()].filter(
    (edge) =>
      sameSpot(startOf(edge.path), endOf(edge.path)) &&
      !piece.outline.some((part) => part.edge === edge.name) &&
      piece.drills.some((drill) => isDrilledFor(edge, drill)),
  );

const isDrilledFor = ({ path, drawnBy }: Edge, drill: Drill): boolean =>
  drill.drawnBy.file === drawnBy.file && drill.drawnBy.line === drawnBy.line && contains(path, drill.point);
