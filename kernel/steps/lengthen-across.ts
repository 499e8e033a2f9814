// lengthen-across: lengthens or shortens the piece on a line across it, so that hem and top stay as they are.
import { optional, phrase } from "../../grammar/phrase.ts";
import { cutThrough } from "../alter/cut-across.ts";
import { reachOf } from "../alter/reach-of.ts";
import { reshaped } from "../alter/reshaped.ts";
import type { Slash } from "../alter/slash.ts";
import { stayingPart } from "../alter/staying-part.ts";
import { withStraightFolds } from "../alter/straight-folds.ts";
import { greatestMove, trued } from "../alter/trued.ts";
import { laidAnew } from "../alter/turning-part.ts";
import { otherSide, type Side, sideOfPoint } from "../alter/two-parts.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { endOf, isStraight, type Path, startOf, straight } from "../geometry/path.ts";
import { between, type Point, plus, quarterTurn, sameSpotTolerance, times } from "../geometry/point.ts";
import { grainDirection } from "../grain-direction.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";

export const lengthenAcross = pieceStep({
  name: "lengthen-across",
  since: "0.2",
  summary: "Lengthens the piece inside: cuts it across, square to the grain, and moves the lower part down.",
  details: `Use it where the hem has to stay as it is: a cuff, a shaped hem, a pocket below the line. The cut runs through the place named,
square to the grain, or level where the piece has none. The part further down the grain moves; \`moving\` names an edge of the part that
is to move instead, and then that part moves away from the other. Straight edges that are cut are drawn straight again from end to
end; curved ones are smoothed over at the cut. A negative length shortens: the strip below the cut is taken out. Treat the pieces that
are sewn to this one alike.`,
  example: `chalkline 1
units cm
piece panel {
  line waist  = (0, 0) to (30 cm, 0)
  line side   = (30 cm, 0) to (34 cm, 60 cm)
  curve hem   = (0, 60.5 cm) to (34 cm, 60 cm) leaving right arriving square-to side
  line center = (0, 0) to (0, 60.5 cm)
  outline waist, side, hem, center
  mark hem as hem
  mark center as fold
  lengthen-across center at 25 cm by 6 cm
  allow waist, side by 1.5 cm
  allow hem by 2 cm
}`,
  phrase: [
    phrase`lengthen-across ${slot.place("place", "a place of the piece that the cut runs through")}
      by ${slot.length("length", "how much longer; negative shortens")}
      ${optional`moving ${slot.ownEdge("moving", "an edge of the part that moves")}`}`,
  ],
  work({ place, length, moving: movingEdge }, piece, line) {
    const { units, where } = line;
    const down = downward(piece);
    const slash = cutAcross(piece, place, down, units);
    if (length === 0) return { now: piece, words: "" };
    const lower = sideOfPoint(piece, slash, plus(between(slash.hinge, slash.target, 0.5), times(down, beside)))!;
    const moving: Side = movingEdge === undefined ? lower : otherSide(stayingPart(piece, slash, movingEdge));
    const by = times(down, moving === lower ? length : -length);
    const becomes = length > 0 ? "opens" : "closes";
    const laid = laidAnew(
      piece,
      {
        slash,
        moving,
        motion: { kind: "shift", by },
        hinge: becomes,
        target: becomes,
        inside: pathLength(slash.path) / 2,
      },
      line,
    );
    // What is drawn anew has no corner left where it was cut.
    const open = { ...laid, hinges: laid.hinges.filter(({ drawnBy }) => drawnBy !== where) };
    const cut = [slash.hingeAt, slash.targetsAt[0]].map(({ index }) => piece.outline[index]!.edge);
    const paths = new Map([...new Set(cut)].map((edge) => [edge, drawnAnew(piece, open, edge)]));
    const now = withStraightFolds(reshaped(open, paths), piece);
    const did = length > 0 ? "lengthened" : "shortened";
    return { now, words: `${did} ${lengthIn(Math.abs(length), units)} across${movedInWords(open, paths, units)}` };
  },
});

// So far below the cut, mm, a point lies in the lower part for certain.
const beside = 0.05;

/** The way down the grain; straight down where the piece has none, and to the right where it lies level. */
const downward = (piece: Piece): Point => {
  const grain = grainDirection(piece);
  if (!grain) return { x: 0, y: 1 };
  const isUp = Math.abs(grain.y) > level ? grain.y < 0 : grain.x < 0;
  return isUp ? times(grain, -1) : grain;
};

const level = 1e-9;

const cutAcross = (piece: Piece, place: Point, down: Point, units: Units): Slash => {
  const across = quarterTurn(down);
  const reach = 2 * reachOf(piece);
  const long = straight(plus(place, times(across, -reach)), plus(place, times(across, reach)));
  // A place on an edge lies at the end of its cut, where rounding may put it just outside.
  const slash = [0, within, -within]
    .map((off) => cutThrough(piece, long, reach + off, units))
    .find((found) => found !== undefined);
  if (slash) return slash;
  throw new Problem(
    "across-outside",
    `No line across ${piece.name} runs through this place: it lies outside of the piece.`,
    {
      hint: "Name a place inside the piece, or on an edge of it.",
    },
  );
};

const within = 2 * sameSpotTolerance;

/** A straight edge straight again from end to end, a curved one smoothed where it was cut. */
const drawnAnew = (before: Piece, now: Piece, edge: string): Path => {
  const path = now.edges.get(edge)!.path;
  if (isStraight(before.edges.get(edge)!.path, straightEnough)) return straight(startOf(path), endOf(path));
  return trued(path, { start: undefined, end: undefined });
};

// A curve this flat, in mm, is a straight line drawn as a curve.
const straightEnough = 0.01;

const movedInWords = (open: Piece, paths: ReadonlyMap<string, Path>, units: Units): string =>
  [...paths]
    .map(([edge, path]) => ({ edge, move: greatestMove(open.edges.get(edge)!.path, path) }))
    .filter(({ move }) => move > seen)
    .map(({ edge, move }) => `; ${edge} drawn anew, moved ${lengthIn(move, units)} at most`)
    .join("");

// Less than this, in mm, nobody sees.
const seen = 0.05;
