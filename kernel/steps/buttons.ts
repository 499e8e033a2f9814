// buttons: a row of drill marks, evenly spaced.
import { phrase } from "../../grammar/phrase.ts";
import { evenly } from "../alter/evenly.ts";
import { distance } from "../geometry/point.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const buttons = pieceStep({
  name: "buttons",
  since: "0.2",
  summary: "Marks a row of buttons with drill holes, the first and the last on two places, the others evenly between.",
  details: "Snaps, hooks and the holes of a belt are marked in the same way.",
  phrase: [
    phrase`buttons ${slot.number("count", "how many")} from ${slot.place("first", "where the first is")} to ${slot.place("last", "where the last is")}`,
  ],
  example: `chalkline 1
units cm
piece front {
  line opening = (-2 cm, 0) to (-2 cm, 60 cm)
  line top     = (-2 cm, 0) to (30 cm, 0)
  line side    = (30 cm, 0) to (30 cm, 60 cm)
  line hem     = (-2 cm, 60 cm) to (30 cm, 60 cm)
  outline opening, top, side, hem
  buttons 5 from (0, 2 cm) to (0, 42 cm)
}`,
  work({ count, first, last }, piece, { where, units }) {
    const points = evenly(count, first, last);
    const apart = points.length > 1 ? `, ${lengthIn(distance(points[0]!, points[1]!), units)} apart` : "";
    return {
      now: { ...piece, drills: [...piece.drills, ...points.map((point) => ({ point, drawnBy: where }))] },
      words: `${points.length} buttons${apart}`,
    };
  },
});
