// dart-to-ease: a small dart is eased into the seam instead of being stitched.
import { phrase } from "../../grammar/phrase.ts";
import { dartTakenUp } from "../alter/dart-taken-up.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const dartToEase = pieceStep({
  name: "dart-to-ease",
  since: "0.1",
  summary: "Turns a small dart into ease along its edge: the cloth is shrunk or worked into the seam without a fold.",
  details: `The ease lies over a stretch of the edge, measured as cut, with the mouth of the dart in its middle. The edge keeps its sewn length.
What is left of a dart, up to 6 to 10 mm, is eased as a rule; more makes gathers.`,
  example: `chalkline 1
units cm
piece back {
  line neck     = (0, 0) to (7 cm, 0)
  line shoulder = (7 cm, 0) to (19 cm, 4 cm)
  line side     = (19 cm, 4 cm) to (22 cm, 40 cm)
  line waist    = (0, 40 cm) to (22 cm, 40 cm)
  line center   = (0, 0) to (0, 40 cm)
  outline center, neck, shoulder, side, waist
  mark center as fold
  dart blade = shoulder at 6 cm width 8 mm long 7 cm
  dart-to-ease blade over 10 cm
}`,
  phrase: [
    phrase`dart-to-ease ${slot.ownDart("name", "the dart")} over ${slot.length("over", "how much of the edge is eased, as cut")}`,
  ],
  work: ({ name, over }, piece, line) => dartTakenUp(piece, name, "ease", over, line),
});
