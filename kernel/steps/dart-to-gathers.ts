// dart-to-gathers: a dart's cloth is gathered into the seam instead of being stitched into a wedge.
import { phrase } from "../../grammar/phrase.ts";
import { dartTakenUp } from "../alter/dart-taken-up.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const dartToGathers = pieceStep({
  name: "dart-to-gathers",
  since: "0.1",
  summary:
    "Turns a dart into gathers along its edge: the edge is cut with the cloth of the dart and drawn up to what it was sewn to.",
  details: `The gathers lie over a stretch of the edge, measured as cut, with the mouth of the dart in its middle. The edge keeps its sewn length.`,
  example: `chalkline 1
units cm
piece bodice {
  line neck     = (0, 0) to (7 cm, 0)
  line shoulder = (7 cm, 0) to (20 cm, 4 cm)
  line side     = (20 cm, 4 cm) to (22 cm, 40 cm)
  line waist    = (0, 40 cm) to (22 cm, 40 cm)
  line center   = (0, 0) to (0, 40 cm)
  outline center, neck, shoulder, side, waist
  mark center as fold
  dart waist-dart = waist at 9 cm width 3 cm long 14 cm
  dart-to-gathers waist-dart over 8 cm
}`,
  phrase: [
    phrase`dart-to-gathers ${slot.ownDart("name", "the dart")} over ${slot.length("over", "how much of the edge is gathered, as cut")}`,
  ],
  work: ({ name, over }, piece, line) => dartTakenUp(piece, name, "gather", over, line),
});
