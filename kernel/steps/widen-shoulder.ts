// widen-shoulder: makes a shoulder wider or narrower at its tip.
import { optional, phrase } from "../../grammar/phrase.ts";
import {
  acrossMoved,
  armholeBeside,
  armholeDrawn,
  lowerStretch,
  shoulderMoved,
  upperDrawn,
  withArmhole,
} from "../alter/armhole.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { endOf, joined } from "../geometry/path.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const widenShoulder = pieceStep({
  name: "widen-shoulder",
  since: "0.2",
  summary: "Makes a shoulder wider at its tip, or narrower by a negative length, and blends the armhole into it.",
  details: `The tip moves along the line of the shoulder. The armhole is redrawn from the tip, square to the shoulder, down to its deepest
place, and keeps its line below. With \`moving across\` that place moves straight out or in by the length as well, and all of the armhole is redrawn.
Side and underarm stay. The cap of a sleeve that is to keep its length along the arm gets lower by what the shoulder gained.`,
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
  widen-shoulder shoulder by -3 cm moving across
}`,
  phrase: [
    phrase`widen-shoulder ${slot.ownEdge("shoulder", "the shoulder")}
      by ${slot.length("width", "how much wider; negative narrows")}
      ${optional`moving ${slot.choice("moving", "moves the deepest place of the armhole as well", ["across"])}`}`,
  ],
  work({ shoulder, width, moving }, piece, { units }) {
    refuseUnlike("shoulder", piece, { edge: shoulder, slot: "shoulder" }, units);
    if (width === 0) return { now: piece, words: "" };
    const armhole = armholeBeside(piece, shoulder, units);
    const line = shoulderMoved(armhole, width, units);
    const tip = endOf(line);
    const { underarm, shoulderWay, down } = armhole;
    const across = moving === undefined ? armhole.across : acrossMoved(armhole, tip, underarm, width);
    const wanted = { tip, across, underarm, shoulderWay };
    const path =
      moving === undefined
        ? joined([upperDrawn(wanted, down), lowerStretch(armhole)])
        : armholeDrawn(armhole, wanted, units);
    return {
      now: withArmhole(piece, armhole, path, { shoulder: line, across }),
      words: `made the ${shoulder} ${lengthIn(Math.abs(width), units)} ${width > 0 ? "wider" : "narrower"}`,
    };
  },
});
