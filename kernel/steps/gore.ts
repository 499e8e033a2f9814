// gore: a panel of a skirt or a peplum from the lengths of its top and its hem.
import { optional, phrase } from "../../grammar/phrase.ts";
import { amountOfPieces } from "../alter/amount-of-pieces.ts";
import { sectorInWords } from "../alter/sector-in-words.ts";
import { sectorPiece } from "../alter/sector-piece.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";

export const gore = garmentStep({
  name: "gore",
  since: "0.2",
  summary: "Makes a gore: a new piece from the lengths of its top and its hem and its depth.",
  details: `Top and hem are arcs about one centre, so that the gore is equally deep everywhere and both its sides meet top and hem squarely: the
radius of the top is top x depth / (hem - top), the angle (hem - top) / depth. \`in 6\` makes one of six equal gores, and the lengths are
then those of the whole round. \`seams\` and \`turned-up\` give it its allowances.`,
  example: `chalkline 1
units cm
gore panel = 72 cm hem 240 cm deep 70 cm in 6 seams 1.5 cm turned-up 1 cm
seam panel.left-side with panel.right-side`,
  phrase: [
    phrase`gore ${slot.name("name", "what the new piece is called")} = ${slot.length("top", "the length of its top edge, or of all tops")}
      hem ${slot.length("hem", "the length of its hem, or of all hems")}
      deep ${slot.length("depth", "how deep it is")}
      ${optional`in ${slot.number("count", "how many gores there are")}`}
      ${optional`seams ${slot.length("seams", "the allowance of its sides and its top")}`}
      ${optional`turned-up ${slot.length("turnUp", "its hem allowance")}`}`,
  ],
  work({ name, top, hem, depth, count = 1, seams, turnUp }, garment, { where }) {
    const pieces = amountOfPieces(count);
    const sector = { top: top / pieces, hem: hem / pieces, depth };
    const piece = sectorPiece(name, sector, { seams, hem: turnUp }, where);
    return {
      now: { ...garment, pieces: new Map(garment.pieces).set(name, piece) },
      words: sectorInWords("gore", name, sector, garment.units),
    };
  },
});
