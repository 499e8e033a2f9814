// lower-armhole: lowers or raises the underarm.
import { optional, phrase } from "../../grammar/phrase.ts";
import { armholeDrawn, armholeNamed, sideMoved, withArmhole } from "../alter/armhole.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, joined } from "../geometry/path.ts";
import { part } from "../geometry/split.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const lowerArmhole = pieceStep({
  name: "lower-armhole",
  since: "0.2",
  summary: "Lowers the underarm, or raises it by a negative length, and redraws the lower part of the armhole.",
  details: `The armhole keeps its line from the shoulder to its deepest place; from there it is drawn to the new underarm, upright first and level
at last. The side is cut off, or carried on, to the new underarm; \`out\` moves the underarm out as well, and the side follows, the less the
further down. A lower armhole holds the arm back unless the sleeve gets wider at the upper arm.`,
  example: `chalkline 1
units cm
piece vest {
  line neck     = (0, 0) to (7.4 cm, 0)
  line shoulder = (7.4 cm, 0) to (20.5 cm, 4.3 cm)
  curve armhole = (20.5 cm, 4.3 cm) to (27 cm, 27 cm) through (19 cm, 15 cm) heading down arriving right
  line side     = (27 cm, 27 cm) to (27 cm, 60 cm)
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, 0) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  lower-armhole armhole by 3 cm out 1 cm
}`,
  phrase: [
    phrase`lower-armhole ${slot.ownEdge("armhole", "the armhole")}
      by ${slot.length("lowering", "how far the underarm goes down; negative raises it")}
      ${optional`out ${slot.length("out", "how far the underarm moves out")}`}`,
  ],
  work({ armhole: name, lowering, out = 0 }, piece, { units }) {
    refuseUnlike("armhole", piece, { edge: name, slot: "armhole" }, units);
    if (lowering === 0 && out === 0) return { now: piece, words: "" };
    const armhole = armholeNamed(piece, name, units);
    const side = sideMoved(armhole, lowering, out, units);
    const { tip, across, shoulderWay } = armhole;
    const drawn = armholeDrawn(armhole, { tip, across, underarm: endOf(side), shoulderWay }, units);
    const upper = part(armhole.path, 0, nearest(armhole.path, across).at);
    const did = lowering < 0 ? "raised" : "lowered";
    const moved = out === 0 ? "" : ` and moved it ${lengthIn(Math.abs(out), units)} ${out > 0 ? "out" : "in"}`;
    return {
      now: withArmhole(piece, armhole, joined([upper, drawn.slice(-1)]), { side, across }),
      words: `${did} the underarm ${lengthIn(Math.abs(lowering), units)}${moved}`,
    };
  },
});
