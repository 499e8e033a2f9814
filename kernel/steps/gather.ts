// gather: draws an edge up to a shorter length.
import { optional, phrase } from "../../grammar/phrase.ts";
import { stretchTaken } from "../alter/stretch-taken.ts";
import { pointAt } from "../geometry/arc-length.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn, plainNumber } from "../units.ts";
import type { TakeUp } from "../working.ts";

export const gather = pieceStep({
  name: "gather",
  since: "0.2",
  summary: "Says that an edge, or a stretch of it, is gathered up to a length before it is sewn.",
  details: `The cloth stays as it is cut; seams and \`length(EDGE)\` reckon with the gathered length. The line tells how full it is, cloth to
finished length. By custom 1.25 to 1.5 to 1 for heavy cloth, 1.5 to 2 for medium, 2 to 2.5 for light, 2.5 to 3 for sheer.
Where cloth is wanting, add it first with \`spread-apart\`.`,
  example: `chalkline 1
units cm
piece sleeve {
  line cuff-edge = (0, 40 cm) to (36 cm, 40 cm)
  line under     = (0, 0) to (0, 40 cm)
  line over      = (36 cm, 0) to (36 cm, 40 cm)
  line top       = (0, 0) to (36 cm, 0)
  outline top, over, cuff-edge, under
  gather cuff-edge into 20 cm
}`,
  phrase: [
    phrase`gather ${slot.ownEdge("edge", "the edge that is gathered")}
      into ${slot.length("length", "what it measures when it is gathered")}
      ${optional`from ${slot.place("from", "where the gathers begin, if not at the end of the edge")}`}
      ${optional`until ${slot.place("until", "where they end, if not at the end of the edge")}`}`,
  ],
  work({ edge, length, from, until }, piece, { units, where }) {
    const stretch = stretchTaken(piece, edge, { from, until }, units);
    const cloth = stretch.to - stretch.from;
    if (length <= 0 || length > cloth) {
      throw new Problem(
        "gather-length",
        `${lengthIn(cloth, units)} of cloth cannot be gathered into ${lengthIn(length, units)}.`,
        {
          hint:
            length > cloth
              ? "Add cloth first with `spread-apart`, or name a shorter length."
              : "Name a length above 0.",
        },
      );
    }
    if (length === cloth) return { now: piece, words: "" };
    const takeUp: TakeUp = {
      kind: "gather",
      edge,
      from: pointAt(stretch.path, stretch.from),
      to: pointAt(stretch.path, stretch.to),
      amount: cloth - length,
      drawnBy: where,
    };
    return {
      now: { ...piece, takeUps: [...piece.takeUps, takeUp] },
      words: `gathered ${lengthIn(cloth, units)} of ${edge} into ${lengthIn(length, units)}, ${plainNumber(cloth / length, 2)} : 1`,
    };
  },
});
