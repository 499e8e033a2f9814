// overlap-several: folds fullness away along slashes at several named places in one line.
import { optional, phrase } from "../../grammar/phrase.ts";
import { amountEach } from "../alter/amount-each.ts";
import { slashedDown } from "../alter/several-slashes.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const overlapSeveral = pieceStep({
  name: "overlap-several",
  since: "0.2",
  summary: "Slashes the piece at several places and laps every slash over at the same edge.",
  details: `It undoes \`spread-several\`. The amount is that of each slash, or with \`total\` what all of them add up to.`,
  example: `chalkline 1
units cm
piece panel {
  line waist  = (0, 0) to (30 cm, 0)
  line side   = (30 cm, 0) to (40 cm, 60 cm)
  curve hem   = (0, 62 cm) to (40 cm, 60 cm) leaving right arriving square-to side
  line center = (0, 0) to (0, 62 cm)
  outline waist, side, hem, center
  mark center as fold
  mark hem as hem
  overlap-several waist at 25%, waist at 75% to hem by 4 cm total
  true-seam hem, waist
  allow waist, side by 1.5 cm
  allow hem by 2 cm
}`,
  phrase: [
    phrase`overlap-several ${slot.placesOnPiece("hinges", "the places on the outline that the slashes are hinged at")}
      to ${slot.ownEdge("edge", "the edge that loses fullness")}
      by ${slot.length("amount", "how much each slash laps over there, or all in all")}
      ${optional`each`} ${optional`total`}`,
  ],
  work(fill, piece, line) {
    const { hinges, edge, amount } = fill;
    const each = amountEach(amount, hinges.length, { each: "each" in fill, total: "total" in fill });
    return slashedDown(piece, { hinges, edge, each: -each }, line);
  },
});
