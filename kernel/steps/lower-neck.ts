// lower-neck: makes a neck deeper or higher at the center.
import { phrase } from "../../grammar/phrase.ts";
import { neckNamed, neckStretched, withNeck } from "../alter/neck.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { endOf } from "../geometry/path.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const lowerNeck = pieceStep({
  name: "lower-neck",
  since: "0.2",
  summary: "Makes a neck deeper at the center, or raises it by a negative length.",
  details: `The center end of the neck moves down along the center; the neck point stays, and so does the shoulder. The curve stretches in depth
and keeps its directions at both ends, as if it had been drafted deeper. A straight stretch across a lap goes down as it is. Collar and facing
need the new length.`,
  example: `chalkline 1
units cm
piece front {
  curve neck    = (0, 6 cm) to (7.4 cm, -2.5 cm) handles (4 cm, 6 cm), (5.6 cm, 1.8 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20 cm, 2.7 cm)
  curve armhole = (20 cm, 2.7 cm) to (27 cm, 24 cm) through (17.5 cm, 13 cm) heading down arriving right
  line side     = (27 cm, 24 cm) to (27 cm, 60 cm)
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, 6 cm) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  lower-neck neck by 3 cm
}`,
  phrase: [
    phrase`lower-neck ${slot.ownEdge("neck", "the neck")} by ${slot.length("lowering", "how far it goes down; negative raises it")}`,
  ],
  work({ neck: name, lowering }, piece, { units }) {
    refuseUnlike("neck", piece, { edge: name, slot: "neck" }, units);
    if (lowering === 0) return { now: piece, words: "" };
    const neck = neckNamed(piece, name, units);
    const path = neckStretched(neck, lowering, endOf(neck.path), units);
    return {
      now: withNeck(piece, neck, path, neck.shoulderPath, units),
      words: `${lowering > 0 ? "lowered" : "raised"} the ${name} ${lengthIn(Math.abs(lowering), units)}`,
    };
  },
});
