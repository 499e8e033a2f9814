// square-armhole: the armhole of a straight dropped sleeve, straight down and then level.
import { phrase } from "../../grammar/phrase.ts";
import { armholeNamed, withArmhole } from "../alter/armhole.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { withPlace } from "../drawn.ts";
import { straight, through } from "../geometry/path.ts";
import { distance, dot, minus, plus, times } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const squareArmhole = pieceStep({
  name: "square-armhole",
  since: "0.2",
  summary: "Cuts an armhole square, for a straight sleeve: straight down from the shoulder, then level to the side.",
  details: `The name stands for the corner, the place where the straight line down from the tip meets the level of the underarm. Where the tip
already lies straight above the underarm the armhole is one straight line, and the corner is the underarm. The top of the sleeve is sewn to
the upright part, and the first part of its underarm seam, as long as the level part, to that: notch the corner. Drop the shoulder first.`,
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
  square-armhole pit = armhole
  notch pit
}`,
  phrase: [
    phrase`square-armhole ${slot.name("corner", "what its corner is called")} = ${slot.ownEdge("armhole", "the armhole")}`,
  ],
  work({ corner: name, armhole: edge }, piece, { where, units }) {
    refuseUnlike("armhole", piece, { edge, slot: "armhole" }, units);
    const armhole = armholeNamed(piece, edge, units);
    const { tip, underarm, down, out } = armhole;
    const run = dot(minus(underarm, tip), out);
    if (run < -sameLine) {
      throw new Problem(
        "armhole-turns-out",
        `The shoulder tip lies ${lengthIn(-run, units)} further out than the underarm, so a line straight down from it misses the piece.`,
        { hint: "Move the underarm out with lower-armhole, or drop the shoulder less." },
      );
    }
    const corner = run <= sameLine ? underarm : plus(tip, times(down, dot(minus(underarm, tip), down)));
    const path = run <= sameLine ? straight(tip, underarm) : through([tip, corner, underarm]);
    const squared = withArmhole(piece, armhole, path, {});
    const level = run <= sameLine ? "" : ` and ${lengthIn(distance(corner, underarm), units)} level`;
    return {
      now: withPlace(squared, name, corner, where),
      words: `cut ${edge} square, ${lengthIn(distance(tip, corner), units)} down${level}`,
    };
  },
});

// A tip this near, in mm, to straight above the underarm is above it.
const sameLine = 0.01;
