// widen-neck: moves the neck point along the shoulder.
import { phrase } from "../../grammar/phrase.ts";
import { neckNamed, neckStretched, shoulderFrom, withNeck } from "../alter/neck.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { startOf } from "../geometry/path.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const widenNeck = pieceStep({
  name: "widen-neck",
  since: "0.2",
  summary: "Makes a neck wider at the shoulder, or narrower by a negative length.",
  details: `The neck point moves along the line of the shoulder, which gets shorter by as much; the center stays. The curve stretches in width and
keeps its directions at both ends. Widen back and front alike, so that their shoulders stay equal.`,
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
  widen-neck neck by 2 cm
}`,
  phrase: [
    phrase`widen-neck ${slot.ownEdge("neck", "the neck")} by ${slot.length("widening", "how far the neck point moves along the shoulder; negative makes it narrower")}`,
  ],
  work({ neck: name, widening }, piece, { units }) {
    refuseUnlike("neck at a shoulder", piece, { edge: name, slot: "neck" }, units);
    if (widening === 0) return { now: piece, words: "" };
    const neck = neckNamed(piece, name, units);
    const shoulder = shoulderFrom(neck, widening, units);
    const path = neckStretched(neck, 0, startOf(shoulder), units);
    return {
      now: withNeck(piece, neck, path, shoulder, units),
      words: `made the ${name} ${lengthIn(Math.abs(widening), units)} ${widening > 0 ? "wider" : "narrower"} at the ${neck.shoulder}`,
    };
  },
});
