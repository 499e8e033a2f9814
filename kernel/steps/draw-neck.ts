// draw-neck: draws a neck anew as the blocks draw theirs; a front out of a back.
import { optional, phrase } from "../../grammar/phrase.ts";
import { neckDrawn, neckNamed, neckSize, shoulderFrom, withNeck } from "../alter/neck.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { startDirection, startOf } from "../geometry/path.ts";
import { dot } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const drawNeck = pieceStep({
  name: "draw-neck",
  since: "0.2",
  summary:
    "Draws a neck anew to a depth, level at the center and square to the shoulder, as for a front cut from its back.",
  details: `The depth is measured from the neck point straight down; the usual front neck is a fifth of the neck girth and 1 cm deep, and lies 5 to 7.5 cm lower
than the nape. The width is measured level from the center to the neck point, which moves along the shoulder; it stays where it is not
said. The curve is a quarter of an ellipse. A straight stretch across a lap goes with it.`,
  example: `chalkline 1
units cm
piece back {
  curve neck    = (0, 0) to (7.4 cm, -2.5 cm) handles (4.4 cm, 0), (6.9 cm, -1.1 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20.5 cm, 1.8 cm)
  curve armhole = (20.5 cm, 1.8 cm) to (27 cm, 24 cm) through (19 cm, 13 cm) heading down arriving right
  line side     = (27 cm, 24 cm) to (27 cm, 60 cm)
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, 0) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark center as fold
}
piece front = back {
  draw-neck neck depth 8.4 cm
  keep shoulder, armhole, side
}`,
  phrase: [
    phrase`draw-neck ${slot.ownEdge("neck", "the neck")}
      depth ${slot.length("depth", "how far its center lies below the neck point")}
      ${optional`width ${slot.length("width", "from the center to the neck point, level")}`}`,
  ],
  work({ neck: name, depth, width }, piece, { units }) {
    refuseUnlike("neck at a shoulder", piece, { edge: name, slot: "neck" }, units);
    if (depth <= 0 || (width !== undefined && width <= 0)) {
      throw new Problem("neck-used-up", "Depth and width of a neck are above 0.", { hint: "Write lengths above 0." });
    }
    const neck = neckNamed(piece, name, units);
    const size = neckSize(neck);
    const wider = width === undefined ? 0 : width - size.width;
    const along = wider === 0 ? 0 : wider / dot(startDirection(neck.shoulderPath), neck.out);
    const shoulder = shoulderFrom(neck, along, units);
    const path = neckDrawn(neck, depth, startOf(shoulder));
    return {
      now: withNeck(piece, neck, path, shoulder, units),
      words: `drew the ${name} ${lengthIn(depth, units)} deep and ${lengthIn(width ?? size.width, units)} wide`,
    };
  },
});
