// flare-side: adds flare at a side seam, which swings out and keeps its length.
import { optional, phrase } from "../../grammar/phrase.ts";
import { turnInOutline } from "../alter/outline-spot.ts";
import { spread } from "../alter/spread.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { distance, type Point, sameSpot, sameSpotTolerance } from "../geometry/point.ts";
import { atan } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { Piece } from "../working.ts";

export const flareSide = pieceStep({
  name: "flare-side",
  since: "0.2",
  summary: "Adds flare at a side seam: the seam swings out from its top, or from a place on it, and keeps its length.",
  details: `The amount is laid out square to the seam at the hem, as one does with a ruler: the seam turns by the angle whose tangent is amount /
length. Drawn straight to there the new seam would be longer than the old; it is trimmed to the old length, so that it still fits its
partner, and the hem rises to it: \`true-seam\` the hem. Flare all at the side hangs at the side, and front and back stay flat; more than
4 to 6 cm looks winged, and wants slashes inside the piece as well.`,
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
  flare-side side to hem by 5 cm
  true-seam hem
  allow waist, side by 1.5 cm
  allow hem by 2 cm
}`,
  phrase: [
    phrase`flare-side ${slot.ownEdge("edge", "the seam that swings out")}
      to ${slot.ownEdge("hem", "the hem that grows")}
      by ${slot.length("amount", "how far, square to the seam at the hem; negative takes flare away")}
      ${optional`from ${slot.placeOnPiece("from", "where on the seam the flare begins; its other end where not said")}`}`,
  ],
  work({ edge, hem, amount, from }, piece, line) {
    const { units } = line;
    const [top, end] = endsAt(piece, edge, hem);
    const { path } = piece.edges.get(edge)!;
    if (from && nearest(path, from.point).distance > sameSpotTolerance) {
      const off = lengthIn(nearest(path, from.point).distance, units);
      throw new Problem("flare-off-seam", `The flare begins on ${edge}, and this place lies ${off} off it.`, {
        hint: `Say where along it: \`from ${edge} at 20 cm\`.`,
      });
    }
    const hinge = from ? { ...from, on: edge } : { kind: "place" as const, point: top };
    const length = distance(hinge.point, end);
    if (sameSpot(hinge.point, end)) {
      throw new Problem("flare-at-hem", `The flare would begin at the ${hem} itself.`, {
        hint: "Let it begin further up.",
      });
    }
    if (amount === 0) return { now: piece, words: "" };
    const angle = atan(amount / length);
    const swung = spread(
      piece,
      { hinge, target: { edge: hem }, opening: { angle }, along: edge, moving: undefined },
      line,
    ).now;
    const now = withCornerCarried(piece, swung, edge, hem, end);
    const drawn = Math.sqrt(length * length + amount * amount);
    const did = amount > 0 ? "flared" : "took in";
    return {
      now,
      words: `${did} ${edge} by ${lengthIn(Math.abs(amount), units)} at the ${hem}, ${angleInWords(Math.abs(angle))}, trimmed ${lengthIn(drawn - length, units)} to keep its length`,
      amount,
    };
  },
});

/** The far end of the seam, and the one at the hem. */
const endsAt = (piece: Piece, edge: string, hem: string) => {
  const walk = walked(piece);
  const index = turnInOutline(piece, edge);
  const hemIndex = turnInOutline(piece, hem);
  const { path } = walk[index]!;
  if ((index + 1) % walk.length === hemIndex) return [startOf(path), endOf(path)] as const;
  if ((hemIndex + 1) % walk.length === index) return [endOf(path), startOf(path)] as const;
  throw new Problem("flare-apart", `${edge} and ${hem} do not meet in the outline of ${piece.name}.`, {
    hint: "Name the hem that the seam runs into.",
  });
};

// A slash leaves the places at its far end with the part that stays; here they name the corner, which swings out.
const withCornerCarried = (piece: Piece, swung: Piece, edge: string, hem: string, corner: Point): Piece => {
  const [, to] = endsAt(swung, edge, hem);
  const places = [...swung.places].map(([name, place]) => {
    const was = piece.places.get(name)!.point;
    return [name, sameSpot(was, corner) ? { ...place, point: to } : place] as const;
  });
  return { ...swung, places: new Map(places) };
};
