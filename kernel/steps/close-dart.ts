// close-dart: a dart is closed, and its cloth becomes flare at another edge.
import { optional, phrase } from "../../grammar/phrase.ts";
import { aboutPivot } from "../alter/about-pivot.ts";
import { turnAt } from "../alter/turned.ts";
import { turnedDart } from "../alter/turned-dart.ts";
import { dartMeasures } from "../dart-measures.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import type { Point } from "../geometry/point.ts";
import { bearing } from "../geometry/trig.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { Dart, Piece } from "../working.ts";

export const closeDart = pieceStep({
  name: "close-dart",
  since: "0.1",
  summary: "Closes a dart and opens a slash from its tip to another edge by the same angle: the dart becomes flare.",
  details: `The slash runs down from the tip to the edge, or to a place that is named. The opening is as wide as the dart times the length of the
slash over the length of the leg; it is bridged straight, and \`true-seam\` makes a smooth edge of it. What turns, and what stays, is as
for \`move-dart\`.`,
  example: `chalkline 1
units cm
piece skirt {
  line waist  = (0, 0) to (24 cm, 0)
  line side   = (24 cm, 0) to (24 cm, 60 cm)
  line hem    = (0, 60 cm) to (24 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline center, waist, side, hem
  mark hem as hem
  mark center as fold
  dart back = waist at 10 cm width 2.5 cm long 14 cm
  close-dart back to hem
  true-seam hem, waist
}`,
  phrase: [
    phrase`close-dart ${slot.ownDart("name", "the dart")} to ${slot.ownEdgeOrPlace("target", "the edge that opens, or a place on it")}
      ${optional`about ${slot.place("about", "what it turns about; its tip where not said")}`}`,
  ],
  work({ name, target, about }, piece, line) {
    const dart = aboutPivot(piece.darts.get(name)!, about, line.units);
    const { angle } = dartMeasures(dart);
    const to = "place" in target ? target.place : below(piece, dart, target.edge);
    const { piece: now, edge, across } = turnedDart(piece, dart, { point: to, slot: "target" }, angle, line);
    const width = lengthIn(across, line.units);
    return { now, words: `closed ${name}, opened ${width} at the ${edge}, ${angleInWords(angle)}`, amount: across };
  },
});

/** Where the line down from the tip meets an edge; down turns with the cloth that the dart lies in. */
const below = (piece: Piece, dart: Dart, edge: string): Point => {
  const down = bearing(Math.PI / 2 + turnAt(piece, dart.edge, dart.first));
  const [met] = crossingsWithRay(piece.edges.get(edge)!.path, dart.tip, down).filter(({ ahead }) => ahead > 0);
  if (met) return met.point;
  throw new Problem("flare-misses", `Down from the tip of ${dart.name} one does not come to ${edge}.`, {
    hint: `Name a place on it, as in \`${edge} at 50%\`.`,
    slot: "target",
  });
};
