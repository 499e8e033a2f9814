// mirror: turns a piece over, so that a left one becomes a right one.
import { optional, phrase } from "../../grammar/phrase.ts";
import { movedPiece } from "../alter/moved-piece.ts";
import { bounds } from "../geometry/bounds.ts";
import { mirroredIn } from "../geometry/mirror.ts";
import { endOf, isStraight, startOf } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import type { Piece } from "../working.ts";

export const mirror = pieceStep({
  name: "mirror",
  since: "0.2",
  summary: "Turns the piece over, so that a left one becomes a right one.",
  details:
    "It is mirrored in the upright line through its middle, or in the straight line that `in` names. All names stay. Two or more of a piece are cut as mirrored pairs anyway; this is for sides that differ.",
  phrase: [phrase`mirror ${optional`in ${slot.edge("line", "the line it is mirrored in")}`}`],
  example: `chalkline 1
units cm
piece right-front {
  line opening = (0, 0) to (0, 60 cm)
  line top     = (0, 0) to (20 cm, 4 cm)
  line side    = (20 cm, 4 cm) to (25 cm, 60 cm)
  line hem     = (0, 60 cm) to (25 cm, 60 cm)
  outline opening, top, side, hem
}
piece left-front = right-front {
  mirror
}`,
  work({ line }, piece) {
    const [a, b] = line ? straightThrough(line.path) : uprightThrough(piece);
    return { now: movedPiece(piece, (point) => mirroredIn(point, a, b)), words: "turned over" };
  },
});

/** A line this bent, in mm, is no axis. */
const tolerance = 0.01;

const straightThrough = (path: Parameters<typeof startOf>[0]): [Point, Point] => {
  if (isStraight(path, tolerance)) return [startOf(path), endOf(path)];
  throw new Problem("mirror-bent", "A piece is mirrored in a straight line, and this one is bent.", {
    hint: "Name a straight edge, or two places with -- between them.",
  });
};

const uprightThrough = ({ edges, name }: Piece): [Point, Point] => {
  if (edges.size === 0) {
    throw new Problem("mirror-nothing", `${name} has no edges yet.`, { hint: "Draw the piece above this line." });
  }
  const { left, right, top } = bounds([...edges.values()].map(({ path }) => path));
  const x = (left + right) / 2;
  return [
    { x, y: top },
    { x, y: top + 1 },
  ];
};
