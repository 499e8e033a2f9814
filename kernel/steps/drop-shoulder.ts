// drop-shoulder: carries the shoulder on beyond the shoulder point, and redraws a lower armhole below it.
import { optional, phrase } from "../../grammar/phrase.ts";
import { acrossMoved, armholeBeside, armholeDrawn, shoulderMoved, sideMoved, withArmhole } from "../alter/armhole.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { endOf } from "../geometry/path.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

// The across mark moves out by this share of the drop (trade handbook 4.12).
const acrossShare = 0.85;

export const dropShoulder = pieceStep({
  name: "drop-shoulder",
  since: "0.2",
  summary: "Carries the shoulder on straight beyond its tip, lowers the underarm, and redraws the armhole.",
  details: `The armhole is the edge at the lower end of the shoulder. The underarm goes down along the side by \`lowering\`, and out by \`out\`; the
side loses what the armhole takes, and keeps its lower end. The place where the armhole lies deepest in the cloth, the across mark, moves out by 85 percent
of the drop and keeps its share of the height. The armhole is drawn as the blocks draw it: square to the shoulder, upright at the across mark,
level at the underarm. Notches keep their share of the armhole. Cut the sleeve shorter by the drop, with a lower cap and hardly any ease.`,
  example: `chalkline 1
units cm
piece back {
  line neck     = (0, 0) to (7.4 cm, 0)
  line shoulder = (7.4 cm, 0) to (20.5 cm, 4.3 cm)
  curve armhole = (20.5 cm, 4.3 cm) to (27 cm, 27 cm) through (19 cm, 15 cm) heading down arriving right
  line side     = (27 cm, 27 cm) to (27 cm, 70 cm)
  line hem      = (0, 70 cm) to (27 cm, 70 cm)
  line center   = (0, 0) to (0, 70 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark center as fold
  drop-shoulder shoulder by 6 cm lowering 4 cm out 1 cm
}`,
  phrase: [
    phrase`drop-shoulder ${slot.ownEdge("shoulder", "the shoulder")}
      by ${slot.length("drop", "how far it is carried on")}
      lowering ${slot.length("lowering", "how far the underarm goes down")}
      ${optional`out ${slot.length("out", "how far the underarm moves out")}`}`,
  ],
  work({ shoulder, drop, lowering, out = 0 }, piece, { units }) {
    refuseUnlike("shoulder", piece, { edge: shoulder, slot: "shoulder" }, units);
    if (drop < 0 || lowering < 0) {
      throw new Problem("drop-negative", "A shoulder is dropped, and its underarm lowered, by lengths above 0.", {
        hint: "Use widen-shoulder to take cloth off a shoulder, and lower-armhole to raise an underarm.",
      });
    }
    if (drop === 0 && lowering === 0 && out === 0) return { now: piece, words: "" };
    const armhole = armholeBeside(piece, shoulder, units);
    const line = shoulderMoved(armhole, drop, units);
    const side = sideMoved(armhole, lowering, out, units);
    const [tip, underarm] = [endOf(line), endOf(side)];
    const across = acrossMoved(armhole, tip, underarm, acrossShare * drop);
    const { shoulderWay } = armhole;
    const path = armholeDrawn(armhole, { tip, across, underarm, shoulderWay }, units);
    const moved = out === 0 ? "" : ` and moved ${lengthIn(Math.abs(out), units)} ${out > 0 ? "out" : "in"}`;
    return {
      now: withArmhole(piece, armhole, path, { shoulder: line, side, across }),
      words: `dropped the ${shoulder} ${lengthIn(drop, units)}, the underarm lowered ${lengthIn(lowering, units)}${moved}`,
    };
  },
});
