// double-ended-dart: takes in a piece across its middle, narrowing to a tip above and to another below.
import { optional, phrase } from "../../grammar/phrase.ts";
import { closedBoundary } from "../alter/outline-spot.ts";
import { withDart } from "../alter/with-dart.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossings } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, joined, type Path, startOf, straight } from "../geometry/path.ts";
import { cross, minus, type Point, plus, sameSpotTolerance, size, times, unit } from "../geometry/point.ts";
import { grainDirection } from "../grain-direction.ts";
import { Problem } from "../problem.ts";
import { sewnLengthOf } from "../sewn.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Dart, Edge, Piece, Units } from "../working.ts";

export const doubleEndedDart = pieceStep({
  name: "double-ended-dart",
  since: "0.2",
  summary:
    "Draws a dart inside the piece that is widest across a line, such as the waist, and narrows to a tip above and one below.",
  details: `The line is drawn above this one and crosses the piece; it is no edge of the outline. Half the width lies on either side of the place along it, and
\`length\` of the line is its length as sewn, so it tells how wide the piece is there. The tips lie as far \`above\` and \`below\` as said, along the grain,
or along another line behind \`along\`; without either, straight up and down. \`from\` and \`to\` put the tips at places; \`through\` puts the two leg ends at places of the line instead of a width.
The legs meet in one length where the tips lie square to the middle of the width.

It is drawn with its fold line and its two stitch lines, and with drill holes 12 mm short of each tip and 3 mm inside the stitch lines at the widest,
so that the stitching covers them. \`NAME.upper\`, \`NAME.lower\`, \`NAME.first\` and \`NAME.second\` are places.
Everything that alters the piece takes it along; a slash through it is an error.`,
  example: `chalkline 1
units cm
piece back {
  line top    = (0, 0) to (24 cm, 0)
  line side   = (24 cm, 0) to (24 cm, 60 cm)
  line hem    = (0, 60 cm) to (24 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline center, top, side, hem
  mark hem as hem
  mark center as fold
  line waist = center at 25 cm to side at 25 cm
  double-ended-dart inner = waist at 8 cm width 2 cm above 15 cm below 12 cm
  double-ended-dart outer = waist at 16 cm width 1.5 cm from (16 cm, 13 cm) to (16 cm, 35 cm)
}`,
  phrase: [
    phrase`double-ended-dart ${slot.name("name", "what the dart is called")} = ${slot.placeOnPiece("place", "the middle of its width, on a line inside")}
      width ${slot.length("width", "what it takes up there")}
      above ${slot.length("above", "from the line to the upper tip")} below ${slot.length("below", "from the line to the lower tip")}
      ${optional`along ${slot.edge("along", "the line its fold runs along; the grain where not said")}`}`,
    phrase`double-ended-dart ${slot.name("name", "what the dart is called")} = ${slot.placeOnPiece("place", "the middle of its width, on a line inside")}
      width ${slot.length("width", "what it takes up there")}
      from ${slot.place("upper", "the upper tip")} to ${slot.place("lower", "the lower tip")}`,
    phrase`double-ended-dart ${slot.name("name", "what the dart is called")} = ${slot.place("upper", "the upper tip")}
      to ${slot.place("lower", "the lower tip")}
      through ${slot.placesOnPiece("ends", "the two leg ends, on a line inside")}`,
  ],
  work(fill, piece, { where, units }) {
    const { name } = fill;
    const whole = closedBoundary(piece, units);
    if ("ends" in fill) {
      const { ends } = fill;
      const [one, other] = ends;
      if (!one || !other || ends.length > 2) {
        throw new Problem("dart-two-legs", `A dart has two leg ends, and ${ends.length} stand here.`, {
          hint: "Name two places of the line.",
          slot: "ends",
        });
      }
      const line = lineAt(piece, one.point, one.on, "ends", units);
      if (nearest(line.path, other.point).distance > sameSpotTolerance)
        throw offLine(piece, other.point, "ends", units);
      const mouth = inOrder(line, [nearest(line.path, one.point).at, nearest(line.path, other.point).at]);
      return drawn(piece, whole, { name, line, mouth, tips: [fill.upper, fill.lower], blame: "ends" }, where, units);
    }
    const { place, width } = fill;
    const line = lineAt(piece, place.point, place.on, "place", units);
    refuseNothing(width, "width");
    const mouth = mouthAt(line, place.point, width, units);
    if ("upper" in fill) {
      return drawn(piece, whole, { name, line, mouth, tips: [fill.upper, fill.lower], blame: "place" }, where, units);
    }
    const { above, below } = fill;
    refuseNothing(above, "above");
    refuseNothing(below, "below");
    const down = downAlong(piece, fill.along?.path);
    const tips = [plus(place.point, times(down, -above)), plus(place.point, times(down, below))] as const;
    return drawn(piece, whole, { name, line, mouth, tips, blame: "place" }, where, units);
  },
});

interface Asked {
  readonly name: string;
  readonly line: Edge;
  /** How far along the line its leg ends lie, mm. */
  readonly mouth: readonly [number, number];
  readonly tips: readonly [Point, Point];
  readonly blame: string;
}

const drawn = (
  piece: Piece,
  whole: Path,
  { name, line, mouth: [from, to], tips: [tip, lower], blame }: Asked,
  drawnBy: Dart["drawnBy"],
  units: Units,
): { now: Piece; words: string } => {
  refuseOverlap(piece, line, [from, to], blame);
  const dart: Dart = {
    name,
    edge: line.name,
    first: pointAt(line.path, from),
    second: pointAt(line.path, to),
    tip,
    lower,
    drawnBy,
  };
  refuseOneSide(dart, lower);
  refuseOutside(piece, whole, dart, lower);
  const now = withDart(piece, dart);
  const [was, is] = [piece, now].map((each) => lengthIn(sewnLengthOf(each, line.name), units));
  const reach = [tip, lower].map((end) => lengthIn(nearest(line.path, end).distance, units));
  return {
    now,
    words: `takes up ${lengthIn(to - from, units)} at the ${line.name}, ${was} to ${is}; ends ${reach[0]} above and ${reach[1]} below`,
  };
};

const lineAt = (piece: Piece, place: Point, on: string | undefined, blame: string, units: Units): Edge => {
  const isThere = ({ path }: Edge): boolean => nearest(path, place).distance <= sameSpotTolerance;
  const inner = innerLines(piece).filter(isThere);
  const line = inner.find(({ name }) => name === on) ?? inner[0];
  if (line) return line;
  const outer = piece.outline.map(({ edge }) => piece.edges.get(edge)!).find(isThere);
  if (!outer) throw offLine(piece, place, blame, units);
  throw new Problem(
    "dart-on-outline",
    `${outer.name} is an edge of the outline, and a double-ended dart lies inside.`,
    {
      hint: "Draw a line across the piece and give a place on it, or write `dart` for one that opens on the edge.",
      slot: blame,
    },
  );
};

const innerLines = ({ edges, outline }: Piece): Edge[] =>
  [...edges.values()].filter(({ name }) => !outline.some(({ edge }) => edge === name));

const offLine = (piece: Piece, place: Point, blame: string, units: Units): Problem => {
  const [near] = innerLines(piece)
    .map(({ name, path }) => ({ name, off: nearest(path, place).distance }))
    .sort((a, b) => a.off - b.off);
  const message = near
    ? `A double-ended dart is widest on a line inside ${piece.name}, and this place lies ${lengthIn(near.off, units)} off its ${near.name}.`
    : `A double-ended dart is widest on a line inside ${piece.name}, and there is none.`;
  return new Problem("dart-off-line", message, {
    hint: near
      ? `Say where along it, as in \`${near.name} at 50%\`.`
      : "Draw one above, as in `line waist = center at 25 cm to side at 25 cm`.",
    slot: blame,
  });
};

const refuseNothing = (length: number, blame: "width" | "above" | "below"): void => {
  if (length > 0) return;
  throw blame === "width"
    ? new Problem("dart-without-width", "A dart takes up more than nothing.", {
        hint: "Take a larger width.",
        slot: blame,
      })
    : new Problem("dart-without-length", "Both tips of a double-ended dart lie away from its line.", {
        hint: "Take a larger length.",
        slot: blame,
      });
};

/** Half the width along the line on either side of a place. */
const mouthAt = ({ name, path }: Edge, place: Point, width: number, units: Units): [number, number] => {
  const length = pathLength(path);
  const { at } = nearest(path, place);
  const room = Math.min(at, length - at);
  if (width / 2 < room - rounding) return [at - width / 2, at + width / 2];
  throw new Problem(
    "dart-beyond-edge",
    `From here ${name} goes on for ${lengthIn(room, units)}, and half of the dart takes up ${lengthIn(width / 2, units)}.`,
    { hint: "Draw the dart further from the end, or less wide.", slot: "place" },
  );
};

const rounding = 1e-6;

const inOrder = ({ name }: Edge, [one, other]: readonly [number, number]): [number, number] => {
  if (Math.abs(one - other) > rounding) return one < other ? [one, other] : [other, one];
  throw new Problem("dart-without-width", `Both leg ends lie at one place of ${name}.`, {
    hint: "Put them further apart.",
    slot: "ends",
  });
};

const refuseOverlap = (piece: Piece, line: Edge, [from, to]: readonly [number, number], blame: string): void => {
  for (const { name, edge, first, second } of piece.darts.values()) {
    if (edge !== line.name) continue;
    const [start, end] = [nearest(line.path, first).at, nearest(line.path, second).at];
    if (to <= start + rounding || from >= end - rounding) continue;
    throw new Problem("dart-overlaps", `The dart would lie over ${name}.`, {
      hint: "Draw them further apart, or less wide.",
      slot: blame,
    });
  }
};

/** Down the cloth: along a line, else along the grain, else straight down the page. */
const downAlong = (piece: Piece, along: Path | undefined): Point => {
  const chord = along && minus(endOf(along), startOf(along));
  const way = chord && size(chord) > 0 ? unit(chord) : (grainDirection(piece) ?? { x: 0, y: 1 });
  return way.y < 0 || (way.y === 0 && way.x < 0) ? times(way, -1) : way;
};

const refuseOneSide = ({ first, second, tip }: Dart, lower: Point): void => {
  const side = (point: Point): number => cross(minus(second, first), minus(point, first));
  if (side(tip) * side(lower) < 0) return;
  throw new Problem("dart-tips-one-side", "One tip of a double-ended dart lies above its line, and the other below.", {
    hint: "Put the tips on either side of the line.",
    slot: "lower",
  });
};

const refuseOutside = (piece: Piece, whole: Path, { first, second, tip }: Dart, lower: Point): void => {
  const legs = joined([straight(first, tip), straight(tip, second), straight(second, lower), straight(lower, first)]);
  const isInside =
    [first, second, tip, lower].every(
      (corner) => contains(whole, corner) && nearest(whole, corner).distance > sameSpotTolerance,
    ) && crossings(whole, legs).length === 0;
  if (isInside) return;
  throw new Problem("dart-outside", `The dart would reach out of ${piece.name}.`, {
    hint: "Make it shorter, or put it further inside.",
  });
};
