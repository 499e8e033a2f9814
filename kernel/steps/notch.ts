// notch: a mark on an edge, for matching it to its partner.
import { optional, phrase } from "../../grammar/phrase.ts";
import { nearest } from "../geometry/nearest.ts";
import { sameSpotTolerance } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const notch = pieceStep({
  name: "notch",
  since: "0.1",
  summary: "Marks a spot of an edge that is matched to a spot of the edge it is sewn to.",
  details: "By custom a single notch stands at the front of an armhole, a double one at the back.",
  phrase: [phrase`notch ${slot.placeOnPiece("place", "where on an edge")} ${optional`double`}`],
  example: `chalkline 1
units cm
piece panel {
  line top  = (0, 0) to (30 cm, 0)
  line side = (30 cm, 0) to (30 cm, 60 cm)
  line hem  = (30 cm, 60 cm) to (0, 60 cm)
  line back = (0, 60 cm) to (0, 0)
  outline top, side, hem, back
  notch side at 20 cm
  notch back at end - 20 cm double
}`,
  work(fill, piece, { where, units }) {
    const { place } = fill;
    const double = "double" in fill;
    const candidates = [...piece.edges.values()]
      .map((edge) => ({ edge, ...nearest(edge.path, place.point) }))
      .filter(
        ({ distance, edge }) => distance <= sameSpotTolerance && (place.on === undefined || place.on === edge.name),
      );
    const inOutline = candidates.find(({ edge }) => piece.outline.some((part) => part.edge === edge.name));
    const found = inOutline ?? candidates[0];
    if (!found) {
      const off = Math.min(...[...piece.edges.values()].map(({ path }) => nearest(path, place.point).distance));
      throw new Problem(
        "notch-off-edge",
        Number.isFinite(off)
          ? `A notch stands on an edge, and this place lies ${lengthIn(off, units)} off the nearest.`
          : "A notch stands on an edge, and there is none yet.",
        {
          slot: "place",
          hint: "Say where along an edge: notch side at 20 cm.",
        },
      );
    }
    const { edge, point } = found;
    const notches = [...piece.notches, { edge: edge.name, point, double, drawnBy: where }];
    return { now: { ...piece, notches }, words: "" };
  },
});
