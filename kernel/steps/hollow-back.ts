// hollow-back: shortens a back at the waist for a hollow back, or lengthens it there.
import { phrase } from "../../grammar/phrase.ts";
import { closedBoundary, turnInOutline } from "../alter/outline-spot.ts";
import { rayEnd, swung } from "../alter/swing-part.ts";
import { turnAt } from "../alter/turned.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { distance, dot, minus, plus, quarterTurn, times } from "../geometry/point.ts";
import { bearing, turnBetween } from "../geometry/trig.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";

export const hollowBack = pieceStep({
  name: "hollow-back",
  since: "0.2",
  summary: "Shortens a back at the center of the waist for a hollow back, tapering to nothing at the side.",
  details: `The place lies at the waist between center and side. A fold of the length is taken out level from the center to the place, and from
there to nothing at the side. The part below it at the center goes up straight, so that a fold stays a fold; the part at the side swings up about the side
seam, and laps over at the hem, which gets narrower. The side keeps its length, and so does everything above. A negative length lets in as
much, and the hem gets wider.`,
  example: `chalkline 1
units cm
piece back {
  point waist   = (12 cm, 41 cm)
  curve neck    = (0, 0) to (7.4 cm, -2.5 cm) handles (4.4 cm, 0), (6.9 cm, -1.1 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20.5 cm, 1.8 cm)
  curve armhole = (20.5 cm, 1.8 cm) to (27 cm, 24 cm) through (19 cm, 13 cm) heading down arriving right
  line side     = (27 cm, 24 cm) to (27 cm, 60 cm)
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, 0) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark center as fold
  mark hem as hem
  hollow-back waist by 1 cm about side
  true-seam hem
}`,
  phrase: [
    phrase`hollow-back ${slot.placeOnPiece("waist", "the place at the waist where the fold begins to taper")}
      by ${slot.length("shorter", "how much shorter the center gets; negative lengthens it")}
      about ${slot.ownEdge("side", "the side, where the fold ends")}`,
  ],
  work({ waist, shorter, side }, piece, { units }) {
    const whole = closedBoundary(piece, units);
    const { path } = piece.edges.get(side)!;
    turnInOutline(piece, side);
    if (!contains(whole, waist.point)) {
      throw new Problem("pivot-outside", `The place does not lie inside ${piece.name}.`, {
        hint: "Name a place inside the piece.",
      });
    }
    if (shorter === 0) return { now: piece, words: "" };
    const down = bearing(Math.PI / 2 + turnAt(piece, side, pointAt(path, pathLength(path) / 2)));
    const square = quarterTurn(down);
    const out = dot(minus(pointAt(path, pathLength(path) / 2), waist.point), square) >= 0 ? square : times(square, -1);
    const level = plus(waist.point, times(down, -shorter / 2));
    const [hit] = crossingsWithRay(path, level, out).filter(({ ahead }) => ahead > 0);
    if (!hit || distance(hit.point, level) < least) {
      throw new Problem(
        "waist-off-side",
        `${side} does not lie level with the place, ${lengthIn(least, units)} or more away.`,
        {
          hint: "Choose a place at the waist, further from the side.",
        },
      );
    }
    const pivot = plus(waist.point, times(down, -shorter));
    const turn = turnBetween(minus(waist.point, hit.point), minus(pivot, hit.point));
    const result = swung(piece, {
      hinge: hit.point,
      pivot: waist.point,
      mouth: rayEnd(whole, waist.point, down),
      third: rayEnd(whole, waist.point, times(out, -1)),
      turn,
    });
    return {
      now: result.piece,
      words: `made the center ${lengthIn(Math.abs(shorter), units)} ${shorter > 0 ? "shorter" : "longer"} at the waist, ${angleInWords(Math.abs(turn))} about the ${side}`,
    };
  },
});

// The part that swings is at least this wide, in mm.
const least = 20;
