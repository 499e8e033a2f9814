// cut: how many of a piece are cut, and from which cloth.
import { phrase } from "../../grammar/phrase.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";

/** More than this many of one piece is a slip of the finger. */
const mostCut = 1000;

export const cut = garmentStep({
  name: "cut",
  since: "0.1",
  summary: "Says how many of a piece are cut, and from which cloth.",
  details:
    "Two or more are cut in mirrored pairs. A piece with a fold edge is cut on the fold, so that one of it is a whole left and right.",
  phrase: [
    phrase`cut ${slot.piece("piece", "the piece")} ${slot.count("count", "how many")} from ${slot.fabric("fabric", "the cloth")}`,
  ],
  example: `chalkline 1
units cm
fabric shell "cotton drill" width 150 cm
piece pocket {
  line top   = (0, 0) to (15 cm, 0)
  line sides = (15 cm, 0) to (0, 0) through (15 cm, 18 cm), (0, 18 cm)
  outline top, sides
  grain (7 cm, 4 cm) to (7 cm, 14 cm)
  allow top by 3 cm
  allow sides by 1 cm
}
cut pocket 2 from shell`,
  work({ piece, count, fabric }, garment, { where }) {
    if (!Number.isInteger(count) || count < 1 || count > mostCut) {
      throw new Problem("cut-count", `A piece is cut a whole number of times, from 1 to ${mostCut}.`, {
        slot: "count",
      });
    }
    if (!garment.pieces.has(piece.called)) {
      throw new Problem("cut-foreign", `${piece.called} is not a piece of this garment.`, {
        slot: "piece",
        hint: `Copy it in first: piece ${piece.piece.name} = ${piece.called} { }.`,
      });
    }
    const cuts = [...garment.cuts, { piece: piece.called, count, fabric: fabric.name, drawnBy: where }];
    return { now: { ...garment, cuts }, words: "" };
  },
});
