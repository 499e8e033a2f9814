// spread-evenly: opens so many slashes, spaced evenly along an edge.
import { optional, phrase } from "../../grammar/phrase.ts";
import { amountEach, countOfSlashes } from "../alter/amount-each.ts";
import { slashedEvenly } from "../alter/several-slashes.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const spreadEvenly = pieceStep({
  name: "spread-evenly",
  since: "0.2",
  summary: "Slashes the piece so many times, evenly spaced along an edge, and opens every slash at another edge.",
  details: `There is half a space before the first slash and behind the last, so that the two halves of a piece on the fold go on evenly, and so do
two pieces across their seam. The slashes divide both edges evenly; for slashes straight down name their places with
\`spread-several\`. The amount is the total, or with \`each\` that of each slash.`,
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
  spread-evenly waist to hem by 12 cm in 3
  true-seam hem, waist
  allow waist, side by 1.5 cm
  allow hem by 2 cm
}`,
  phrase: [
    phrase`spread-evenly ${slot.ownEdge("from", "the edge that the slashes are hinged along")}
      to ${slot.ownEdge("edge", "the edge that opens")}
      by ${slot.length("amount", "how far all slashes open there together, or each")}
      in ${slot.number("count", "how many slashes")}
      ${optional`each`}`,
  ],
  work(fill, piece, line) {
    const { from, edge, amount } = fill;
    const count = countOfSlashes(fill.count);
    const each = amountEach(amount, count, { each: false, total: !("each" in fill) });
    return slashedEvenly(piece, { from, edge, count, each }, line);
  },
});
