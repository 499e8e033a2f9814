// drill: a small hole that marks a spot inside the piece.
import { phrase } from "../../grammar/phrase.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const drill = pieceStep({
  name: "drill",
  since: "0.1",
  summary: "Marks a spot inside the piece, such as a pocket corner or a button.",
  phrase: [phrase`drill ${slot.place("place", "where")}`],
  example: `chalkline 1
units cm
piece front {
  line opening = (0, 0) to (0, 60 cm)
  line top     = (0, 0) to (30 cm, 0)
  line side    = (30 cm, 0) to (30 cm, 60 cm)
  line hem     = (30 cm, 60 cm) to (0, 60 cm)
  outline opening, top, side, hem
  drill (2 cm, 10 cm)
  drill (2 cm, 20 cm)
}`,
  work: ({ place }, piece, { where }) => ({
    now: { ...piece, drills: [...piece.drills, { point: place, drawnBy: where }] },
    words: "",
  }),
});
