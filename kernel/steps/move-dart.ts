// move-dart: a dart goes to another place of the outline, its angle kept.
import { optional, phrase } from "../../grammar/phrase.ts";
import { aboutPivot } from "../alter/about-pivot.ts";
import { turnedDart, withDartIn } from "../alter/turned-dart.ts";
import { dartMeasures } from "../dart-measures.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";

export const moveDart = pieceStep({
  name: "move-dart",
  since: "0.1",
  summary: "Moves a dart to another place of the outline: it closes where it was and opens there, by the same angle.",
  details: `The part between the old mouth and the new place turns about the tip as one stiff sheet, with all that is on it; the part with the
fold stays, else the part with the grain line. The angle is kept exactly, and every edge keeps its sewn length. \`about\` turns it about
another place, the bust point say: the legs are drawn from there, and the dart points there afterward. \`shorten-dart\` then takes the
tip back.`,
  example: `chalkline 1
units cm
piece bodice {
  point bust-point = (9 cm, 22 cm)
  line neck     = (0, 0) to (7 cm, 0)
  line shoulder = (7 cm, 0) to (20 cm, 4 cm)
  line side     = (20 cm, 4 cm) to (22 cm, 40 cm)
  line waist    = (0, 40 cm) to (22 cm, 40 cm)
  line center   = (0, 0) to (0, 40 cm)
  outline center, neck, shoulder, side, waist
  mark center as fold
  dart bust = waist at 9 cm width 3 cm to bust-point
  move-dart bust to side at 25 cm
  shorten-dart bust by 2.5 cm
  true-seam side, waist
}`,
  phrase: [
    phrase`move-dart ${slot.ownDart("name", "the dart")} to ${slot.place("to", "where it opens, on the outline")}
      ${optional`about ${slot.place("about", "what it turns about; its tip where not said")}`}
      ${optional`folded ${slot.towardEdge("folded", "the side it is pressed to")}`}`,
  ],
  work({ name, to, about, folded }, piece, line) {
    const dart = aboutPivot(piece.darts.get(name)!, about, line.units);
    const { angle } = dartMeasures(dart);
    const turned = turnedDart(piece, dart, { point: to, slot: "to" }, angle, line);
    const moved = { name, tip: dart.tip, ...(folded !== undefined && { folded }), drawnBy: dart.drawnBy };
    const width = lengthIn(turned.across, line.units);
    return {
      now: withDartIn(turned, moved),
      words: `moved ${name} from the ${dart.edge} to the ${turned.edge}, ${angleInWords(angle)}, ${width} wide there`,
    };
  },
});
