// lay: moves the whole piece so that a place of it lies on a given spot of the table.
import { optional, phrase } from "../../grammar/phrase.ts";
import { laidOn } from "../alter/brought-together.ts";
import { movedPiece } from "../alter/moved-piece.ts";
import { distance, sameSpot } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const lay = pieceStep({
  name: "lay",
  since: "0.2",
  summary: "Lays the whole piece so that one of its places comes on a given spot, and turns it there.",
  details:
    "The piece moves as one stiff sheet. With `turning PLACE toward PLACE` it is turned about that spot until its second place lies in the direction of the other; the words say how far that place is still off.",
  phrase: [
    phrase`lay ${slot.place("place", "the place of the piece")} on ${slot.place("spot", "where it comes to lie")}
      ${optional`turning ${slot.place("aim", "another place of the piece")} toward ${slot.place("toward", "what it is turned toward")}`}`,
  ],
  example: `chalkline 1
units cm
piece sleeve {
  point pitch = (10 cm, 8 cm)
  point crown = (20 cm, 0)
  curve cap    = (0, 14 cm) to (40 cm, 14 cm) through pitch, crown
  line wrist   = (0, 14 cm) to (40 cm, 14 cm)
  outline cap, wrist
}
piece shoulder-piece {
  point pitch = (0, 12 cm)
  point tip   = (4 cm, 0)
  line scye    = tip to pitch
  line raglan  = pitch to (-10 cm, 0)
  line top     = (-10 cm, 0) to tip
  outline scye, raglan, top
}
piece laid = shoulder-piece {
  lay pitch on sleeve.pitch turning tip toward sleeve.crown
}`,
  work({ place, spot, aim, toward }, piece, { units }) {
    if (aim && toward && (sameSpot(aim, place) || sameSpot(toward, spot))) {
      throw new Problem(
        "lay-nowhere",
        "The place to turn about and the place to turn are one, so there is no direction.",
        {
          hint: "Name two places that lie apart.",
        },
      );
    }
    const move = laidOn(place, spot, aim, toward);
    const off = aim && toward ? `, the other place ${lengthIn(distance(move(aim), toward), units)} off` : "";
    return { now: movedPiece(piece, move), words: `laid ${lengthIn(distance(place, spot), units)} away${off}` };
  },
});
