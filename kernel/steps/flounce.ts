// flounce: a curved strip made to be sewn to edges, fuller at its hem than at its top.
import { optional, phrase } from "../../grammar/phrase.ts";
import { amountOfPieces } from "../alter/amount-of-pieces.ts";
import { sectorInWords } from "../alter/sector-in-words.ts";
import { sectorPiece } from "../alter/sector-piece.ts";
import { sewnLength } from "../sewn.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";

export const flounce = garmentStep({
  name: "flounce",
  since: "0.2",
  summary: "Makes a flounce: a new piece, cut in a curve, whose top fits the edges that it is sewn to.",
  details: `Its top is as long as the edges named are together, as sewn; an edge that comes twice in the garment is named twice. Its hem is as long
as said, or so many times the top. It is equally deep everywhere. Cut in a curve it falls in waves without being gathered. Where it would go
round by more than a full turn, \`in 2\` divides it: the piece is then one of two equal ones. \`seams\` and \`turned-up\` give it its allowances.`,
  example: `chalkline 1
units cm
piece sleeve {
  line top   = (0, 0) to (36 cm, 0)
  line over  = (36 cm, 0) to (36 cm, 30 cm)
  line wrist = (0, 30 cm) to (36 cm, 30 cm)
  line under = (0, 0) to (0, 30 cm)
  outline top, over, wrist, under
}
flounce frill = sleeve.wrist deep 8 cm full 2 seams 1 cm turned-up 0.3 cm
seam frill.top with sleeve.wrist
seam frill.left-side with frill.right-side`,
  phrase: [
    phrase`flounce ${slot.name("name", "what the new piece is called")} = ${slot.edges("edges", "the edges that its top is sewn to")}
      deep ${slot.length("depth", "how deep it is")}
      hem ${slot.length("hem", "how long its hem is all in all")}
      ${optional`in ${slot.number("count", "how many pieces it is made of")}`}
      ${optional`seams ${slot.length("seams", "the allowance of its sides and its top")}`}
      ${optional`turned-up ${slot.length("turnUp", "its hem allowance")}`}`,
    phrase`flounce ${slot.name("name", "what the new piece is called")} = ${slot.edges("edges", "the edges that its top is sewn to")}
      deep ${slot.length("depth", "how deep it is")}
      full ${slot.number("fullness", "how many times as long as its top its hem is")}
      ${optional`in ${slot.number("count", "how many pieces it is made of")}`}
      ${optional`seams ${slot.length("seams", "the allowance of its sides and its top")}`}
      ${optional`turned-up ${slot.length("turnUp", "its hem allowance")}`}`,
  ],
  work(fill, garment, { where }) {
    const { name, edges, depth, count = 1, seams, turnUp } = fill;
    const pieces = amountOfPieces(count);
    const whole = edges.reduce((sum, { path, taken }) => sum + sewnLength(path, taken), 0);
    const hem = "hem" in fill ? fill.hem : whole * fill.fullness;
    const sector = { top: whole / pieces, hem: hem / pieces, depth };
    const piece = sectorPiece(name, sector, { seams, hem: turnUp }, where);
    return {
      now: { ...garment, pieces: new Map(garment.pieces).set(name, piece) },
      words: sectorInWords("flounce", name, sector, garment.units),
    };
  },
});
