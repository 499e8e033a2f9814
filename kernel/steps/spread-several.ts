// spread-several: opens slashes at several named places in one line.
import { optional, phrase } from "../../grammar/phrase.ts";
import { amountEach } from "../alter/amount-each.ts";
import { slashedDown } from "../alter/several-slashes.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const spreadSeveral = pieceStep({
  name: "spread-several",
  since: "0.2",
  summary: "Slashes the piece at several places and opens every slash at the same edge.",
  details: `Each slash is the one that \`spread-from\` would make, and the piece comes out as from so many lines of \`spread-from\`, in whatever order
the places are named: all slashes are laid out on the piece as it stands before the line. The amount is that of each slash, or with
\`total\` what all of them add up to.`,
  example: `chalkline 1
units cm
piece panel {
  line waist  = (0, 0) to (30 cm, 0)
  line side   = (30 cm, 0) to (30 cm, 60 cm)
  line hem    = (0, 60 cm) to (30 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline waist, side, hem, center
  mark center as fold
  mark hem as hem
  spread-several waist at 25%, waist at 75% to hem by 12 cm total
  true-seam hem, waist
  allow waist, side by 1.5 cm
  allow hem by 2 cm
}`,
  phrase: [
    phrase`spread-several ${slot.placesOnPiece("hinges", "the places on the outline that the slashes are hinged at")}
      to ${slot.ownEdge("edge", "the edge that opens")}
      by ${slot.length("amount", "how far each slash opens there, or all in all")}
      ${optional`each`} ${optional`total`}`,
  ],
  work(fill, piece, line) {
    const { hinges, edge, amount } = fill;
    const each = amountEach(amount, hinges.length, { each: "each" in fill, total: "total" in fill });
    return slashedDown(piece, { hinges, edge, each }, line);
  },
});
