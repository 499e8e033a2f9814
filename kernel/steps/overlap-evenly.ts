// overlap-evenly: takes fullness out of a hem by so many even tucks in the pattern.
import { optional, phrase } from "../../grammar/phrase.ts";
import { amountEach, countOfSlashes } from "../alter/amount-each.ts";
import { slashedEvenly } from "../alter/several-slashes.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const overlapEvenly = pieceStep({
  name: "overlap-evenly",
  since: "0.2",
  summary: "Takes fullness out of an edge by so many tucks, evenly spaced and running to nothing at another edge.",
  details: `It undoes \`spread-evenly\`: name the edge where the tucks run out first, then the one that loses fullness. The amount is the total, or
with \`each\` that of each tuck. Taken out all over, fullness leaves no dip at the sides, which it would if the side seams alone were
taken in.`,
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
  overlap-evenly waist to hem by 6 cm in 3
  true-seam hem, waist
  allow waist, side by 1.5 cm
  allow hem by 2 cm
}`,
  phrase: [
    phrase`overlap-evenly ${slot.ownEdge("from", "the edge at which the tucks run out")}
      to ${slot.ownEdge("edge", "the edge that loses fullness")}
      by ${slot.length("amount", "how much all tucks take out there together, or each")}
      in ${slot.number("count", "how many tucks")}
      ${optional`each`}`,
  ],
  work(fill, piece, line) {
    const { from, edge, amount } = fill;
    const count = countOfSlashes(fill.count);
    const each = amountEach(amount, count, { each: false, total: !("each" in fill) });
    return slashedEvenly(piece, { from, edge, count, each: -each }, line);
  },
});
