// shorten-dart: the tip of a dart goes back along its center line.
import { optional, phrase } from "../../grammar/phrase.ts";
import { withDart } from "../alter/with-dart.ts";
import { dartMeasures } from "../dart-measures.ts";
import { distance, minus, plus, times, unit } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const shortenDart = pieceStep({
  name: "shorten-dart",
  since: "0.1",
  summary: "Takes the tip of a dart back along its center line; its leg ends stay.",
  details: `Darts point to the fullest place of the body but stop short of it: 2 to 3 cm at the bust. A negative length makes the dart longer.
Of a double-ended dart it is the upper tip that goes back, and with \`lower\` the lower one.`,
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
  dart bust = foot(bust-point, side) width 3 cm to bust-point
  shorten-dart bust by 2.5 cm
  true-seam side
}`,
  phrase: [
    phrase`shorten-dart ${slot.ownDartOfAnyForm("name", "the dart")} by ${slot.length("length", "how far the tip goes back; negative lengthens")} ${optional`lower`}`,
  ],
  work(fill, piece, { units }) {
    const { name, length } = fill;
    const dart = piece.darts.get(name)!;
    const takesLower = "lower" in fill;
    if (takesLower && !dart.lower) {
      throw new Problem("dart-one-tip", `${name} opens on the ${dart.edge}, and has one tip only.`, {
        hint: "Leave `lower` out.",
        slot: "lower",
      });
    }
    const old = (takesLower && dart.lower) || dart.tip;
    const { middle } = dartMeasures(dart);
    const long = distance(old, middle);
    if (length >= long) {
      throw new Problem("dart-used-up", `${name} is ${lengthIn(long, units)} long, so nothing of it would be left.`, {
        hint: "Take a smaller length.",
        slot: "length",
      });
    }
    if (length === 0) return { now: piece, words: "" };
    const tip = plus(old, times(unit(minus(middle, old)), length));
    const did = length > 0 ? "shortened" : "lengthened";
    const end = dart.lower ? ` at its ${takesLower ? "lower" : "upper"} tip` : "";
    return {
      now: withDart(piece, takesLower ? { ...dart, lower: tip } : { ...dart, tip }),
      words: `${did} ${name} by ${lengthIn(Math.abs(length), units)}${end}`,
    };
  },
});
