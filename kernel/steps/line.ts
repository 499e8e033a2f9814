// line: a straight edge, or a bent one through places.
import { optional, phrase } from "../../grammar/phrase.ts";
import { withNewEdge } from "../drawn.ts";
import { through } from "../geometry/path.ts";
import { sameSpot } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const line = pieceStep({
  name: "line",
  since: "0.1",
  summary: "Draws a straight edge from one place to another, or a bent one through places on the way.",
  phrase: [
    phrase`line ${slot.name("name", "what the edge is called")} = ${slot.place("start", "where it starts")} to ${slot.place("end", "where it ends")} ${optional`through ${slot.places("through", "where it bends")}`}`,
  ],
  example: `chalkline 1
units cm
piece flap {
  line top    = (0, 0) to (14 cm, 0)
  line pointed = (14 cm, 0) to (0, 0) through (14 cm, 5 cm), (7 cm, 8 cm), (0, 5 cm)
  outline top, pointed
}`,
  work({ name, start, end, through: bends }, piece, { where }) {
    const points = [start, ...(bends ?? []), end];
    const doubled = points.findIndex((each, index) => index > 0 && sameSpot(each, points[index - 1]!));
    if (doubled > 0) {
      throw new Problem(
        "line-empty",
        bends ? "Two places that follow one another are the same spot." : "The line starts and ends at the same spot.",
        {
          hint: "Move one of them.",
        },
      );
    }
    return { now: withNewEdge(piece, name, through(points), where), words: "" };
  },
});
