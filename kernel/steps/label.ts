// label: words that are printed on the piece.
import { optional, phrase } from "../../grammar/phrase.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const label = pieceStep({
  name: "label",
  since: "0.1",
  summary: "Prints words of your own on the piece.",
  details: "Where no place is said they stand under the piece's name.",
  phrase: [phrase`label ${slot.text("text", "the words")} ${optional`at ${slot.place("at", "where they stand")}`}`],
  example: `chalkline 1
units cm
piece pocket {
  line top   = (0, 0) to (15 cm, 0)
  line round = (15 cm, 0) to (0, 0) through (15 cm, 18 cm), (0, 18 cm)
  outline top, round
  label "right side only"
}`,
  work({ text, at }, piece, { where }) {
    const labels = [...piece.labels, { text, ...(at && { at }), drawnBy: where }];
    return { now: { ...piece, labels }, words: "" };
  },
});
