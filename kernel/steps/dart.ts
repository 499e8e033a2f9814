// dart: takes a wedge of cloth out of an edge, narrowing to a tip inside the piece.
import { optional, phrase } from "../../grammar/phrase.ts";
import { closedBoundary, spotsAt } from "../alter/outline-spot.ts";
import { withDart } from "../alter/with-dart.ts";
import { dartMeasures } from "../dart-measures.ts";
import { directionAt, pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossings } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { joined, type Path, straight } from "../geometry/path.ts";
import { between, distance, minus, type Point, plus, quarterTurn, sameSpot, times, unit } from "../geometry/point.ts";
import { outward, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { PlaceOnPiece } from "../value.ts";
import type { Dart, Edge, Piece, Units } from "../working.ts";

export const dart = pieceStep({
  name: "dart",
  since: "0.1",
  summary: "Draws a dart: a wedge of cloth that is folded shut and stitched, narrowing to a tip inside the piece.",
  details: `The place is the middle of the mouth, on an edge of the outline, and half the width lies on either side of it along the edge, so the
edge loses the width exactly once the dart is sewn. \`long\` puts the tip square to the mouth, \`to\` puts it at a place.

Upright darts are pressed toward the center (the fold, else the opening, else the grain line) and level ones down, unless
\`folded toward\` says otherwise. Across the mouth the edge gets the cap that meets the seam when the dart is folded so.
\`NAME.tip\`, \`NAME.first\` and \`NAME.second\` are places: the tip, and the leg ends in the direction in which the edge was drafted.
Everything that alters the piece takes its darts along; a slash through one is an error.`,
  example: `chalkline 1
units cm
piece skirt {
  line waist  = (0, 0) to (24 cm, 0)
  line side   = (24 cm, 0) to (24 cm, 60 cm)
  line hem    = (0, 60 cm) to (24 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline center, waist, side, hem
  mark hem as hem
  mark center as fold
  dart inner = waist at 8 cm width 2 cm long 12 cm folded toward center
  dart outer = waist at 16 cm width 2 cm to (16 cm, 10 cm) folded toward side
  true-seam waist
}`,
  phrase: [
    phrase`dart ${slot.name("name", "what the dart is called")} = ${slot.placeOnPiece("place", "the middle of its mouth, on an edge")}
      width ${slot.length("width", "how much of the edge it takes up")} long ${slot.length("long", "from the mouth to the tip")}
      ${optional`folded ${slot.towardEdge("folded", "the side it is pressed to")}`}`,
    phrase`dart ${slot.name("name", "what the dart is called")} = ${slot.placeOnPiece("place", "the middle of its mouth, on an edge")}
      width ${slot.length("width", "how much of the edge it takes up")} to ${slot.place("tip", "the tip")}
      ${optional`folded ${slot.towardEdge("folded", "the side it is pressed to")}`}`,
  ],
  work(fill, piece, { where, units }) {
    const { name, place, width, folded } = fill;
    const whole = closedBoundary(piece, units);
    const edge = edgeAt(piece, place, units);
    if (width <= 0) {
      throw new Problem("dart-without-width", "A dart takes up more than nothing of its edge.", {
        hint: "Take a larger width.",
        slot: "width",
      });
    }
    if ("long" in fill && fill.long <= 0) {
      throw new Problem("dart-without-length", "The tip of a dart lies inside the piece.", {
        hint: "Take a larger length.",
        slot: "long",
      });
    }
    const mouth = mouthAt(piece, edge, place.point, width, units);
    const tip = "long" in fill ? tipSquareTo(piece, edge, place.point, mouth, fill.long) : fill.tip;
    const drawn: Dart = {
      name,
      edge: edge.name,
      first: mouth[0],
      second: mouth[1],
      tip,
      ...(folded !== undefined && { folded }),
      drawnBy: where,
    };
    refuseOutside(piece, whole, drawn);
    const now = withDart(piece, drawn);
    const { angle } = dartMeasures(drawn);
    return { now, words: `took ${lengthIn(width, units)} out of the ${edge.name}, ${angleInWords(angle)}` };
  },
});

const edgeAt = (piece: Piece, { point, on }: PlaceOnPiece, units: Units): Edge => {
  const walk = walked(piece);
  const found = spotsAt(piece, point).map(({ index }) => walk[index]!.edge);
  const edge = found.find(({ name }) => name === on) ?? found[0];
  if (!edge) {
    const [near] = walk
      .map(({ edge: { name }, path }) => ({ name, off: nearest(path, point).distance }))
      .sort((a, b) => a.off - b.off);
    throw new Problem(
      "dart-off-outline",
      `The mouth of a dart lies on the outline of ${piece.name}, and this place lies ${lengthIn(near!.off, units)} off its ${near!.name}.`,
      { hint: `Say where along an edge, as in \`${near!.name} at 50%\`.`, slot: "place" },
    );
  }
  if (edge.role !== "fold") return edge;
  throw new Problem("dart-on-fold", `${edge.name} is a fold, and no dart opens there.`, {
    hint: "Draw the dart on another edge.",
    slot: "place",
  });
};

/** The leg ends, half the width along the edge on either side of a place. */
const mouthAt = (piece: Piece, edge: Edge, place: Point, width: number, units: Units): [Point, Point] => {
  const length = pathLength(edge.path);
  const at = nearest(edge.path, place).at;
  const [from, to] = [at - width / 2, at + width / 2];
  if (width >= length) {
    throw new Problem(
      "dart-wider-than-edge",
      `The dart takes up ${lengthIn(width, units)}, and ${edge.name} measures ${lengthIn(length, units)}.`,
      { hint: "Take a smaller width.", slot: "width" },
    );
  }
  if (from < -rounding || to > length + rounding) {
    const room = Math.min(at, length - at);
    throw new Problem(
      "dart-beyond-edge",
      `From here ${edge.name} goes on for ${lengthIn(room, units)}, and half of the dart takes up ${lengthIn(width / 2, units)}.`,
      { hint: "Draw the dart further from the end, or less wide.", slot: "place" },
    );
  }
  for (const { name, edge: on, first, second } of piece.darts.values()) {
    if (on !== edge.name) continue;
    const [start, end] = [nearest(edge.path, first).at, nearest(edge.path, second).at];
    if (to <= start + rounding || from >= end - rounding) continue;
    throw new Problem("dart-overlaps", `The dart would lie over the mouth of ${name}.`, {
      hint: "Draw them further apart, or less wide.",
      slot: "place",
    });
  }
  return [pointAt(edge.path, Math.max(from, 0)), pointAt(edge.path, Math.min(to, length))];
};

const rounding = 1e-6;

// Square to the line between the leg ends, and not to the edge at the place, so that the legs are equal on any curve.
const tipSquareTo = (
  piece: Piece,
  { name, path }: Edge,
  place: Point,
  [first, second]: [Point, Point],
  long: number,
): Point => {
  const along = unit(minus(second, first));
  const travel = directionAt(path, nearest(path, place).at);
  const isTurned = walked(piece).find(({ edge }) => edge.name === name)!.turned;
  const out = outward(piece, isTurned ? times(travel, -1) : travel);
  const square = quarterTurn(along);
  const inward = square.x * out.x + square.y * out.y > 0 ? times(square, -1) : square;
  const middle = between(first, second, 0.5);
  // The length is measured from the edge itself, which may bulge out of the line between the leg ends.
  const bulge = minus(place, middle);
  const above = bulge.x * inward.x + bulge.y * inward.y;
  return plus(middle, times(inward, long + above));
};

const refuseOutside = (piece: Piece, whole: Path, { first, second, tip }: Dart): void => {
  const legs = joined([straight(first, tip), straight(tip, second)]);
  const isInside =
    distance(first, tip) > rounding &&
    contains(whole, tip) &&
    crossings(whole, legs).every(({ point }) => sameSpot(point, first) || sameSpot(point, second));
  if (isInside) return;
  throw new Problem("dart-outside", `The dart would reach out of ${piece.name}.`, {
    hint: "Make it shorter, or put its tip further inside.",
  });
};
