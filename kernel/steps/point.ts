// point: names a place.
import { phrase } from "../../grammar/phrase.ts";
import { withPlace } from "../drawn.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const point = pieceStep({
  name: "point",
  since: "0.1",
  summary: "Names a place of the piece.",
  details: "The place rides along through every later alteration of the part it lies on, so the name stays good.",
  phrase: [phrase`point ${slot.name("name", "what the place is called")} = ${slot.place("place", "where it is")}`],
  example: `chalkline 1
units cm
piece pocket {
  point corner-1 = (0, 0)
  point corner-2 = corner-1 right 15 cm
  point corner-3 = corner-2 down 18 cm
  point corner-4 = corner-1 down 18 cm
  line top    = corner-1 to corner-2
  line sides  = corner-2 to corner-1 through corner-3, corner-4
  outline top, sides
}`,
  work: ({ name, place }, piece, { where }) => ({ now: withPlace(piece, name, place, where), words: "" }),
});
