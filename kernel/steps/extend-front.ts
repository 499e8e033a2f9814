// extend-front: a lap beyond the front edge, for buttons and buttonholes.
import { phrase } from "../../grammar/phrase.ts";
import { movedEdge } from "../alter/moved-edge.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { withNewEdge } from "../drawn.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const extendFront = pieceStep({
  name: "extend-front",
  since: "0.2",
  summary: "Moves the front edge out by a lap, and keeps the line it moved from as the center line inside the piece.",
  details: `Neck and hem are carried on along their own direction to meet the new edge. The name is that of the old line, on which buttons and
buttonholes are set. A lap is 1.5 to 2 cm for one row of buttons and 6 to 9 cm for two.`,
  example: `chalkline 1
units cm
piece front {
  curve neck    = (0, 6 cm) to (7.4 cm, -2.5 cm) handles (4 cm, 6 cm), (5.6 cm, 1.8 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20 cm, 2.7 cm)
  line side     = (20 cm, 2.7 cm) to (20 cm, 60 cm)
  line hem      = (0, 60 cm) to (20 cm, 60 cm)
  line opening  = (0, 6 cm) to (0, 60 cm)
  outline opening, neck, shoulder, side, hem
  mark opening as opening
  extend-front center = opening by 2 cm
}`,
  phrase: [
    phrase`extend-front ${slot.name("center", "what the old line is called")} = ${slot.ownEdge("edge", "the front edge")}
      by ${slot.length("lap", "how wide the lap is")}`,
  ],
  work({ center, edge: name, lap }, piece, { where, units }) {
    refuseUnlike("front edge", piece, { edge: name, slot: "edge" }, units);
    const edge = piece.edges.get(name)!;
    if (lap <= 0) {
      throw new Problem("lap-negative", "A lap is wider than 0.", {
        hint: "Leave the line out for a front without one.",
      });
    }
    if (edge.role === "fold") {
      throw new Problem("lap-at-fold", `${name} is a fold, and a fold has no lap.`, {
        hint: `Write mark ${name} as opening above this line.`,
      });
    }
    return {
      now: withNewEdge(movedEdge(piece, name, lap), center, edge.path, where),
      words: `moved ${name} out by a lap of ${lengthIn(lap, units)}`,
    };
  },
});
