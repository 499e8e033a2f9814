// pocket-place: marks where a patch pocket is sewn on.
import { optional, phrase } from "../../grammar/phrase.ts";
import { laidOn } from "../alter/brought-together.ts";
import { closedBoundary } from "../alter/outline-spot.ts";
import { withNewEdge } from "../drawn.ts";
import { bounds } from "../geometry/bounds.ts";
import { endDirection, mapped, startDirection } from "../geometry/path.ts";
import { minus, type Point, plus, times, unit } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { toRadians } from "../geometry/trig.ts";
import { cornersOf } from "../outline.ts";
import { outsideBy } from "../outside-by.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Drill } from "../working.ts";

/** How far, in mm, a drill hole lies inside a pocket's corner, so that the pocket covers it (trade handbook 5.5: 3 to 5). */
const insideCorner = 4;
/** What turns by less, in radians, is no corner. */
const leastTurn = toRadians(30);

export const pocketPlace = pieceStep({
  name: "pocket-place",
  since: "0.2",
  summary: "Marks where a patch pocket is sewn on: its sewing line, and a drill hole just inside each corner.",
  details:
    "The upper left end of the box around the pocket comes on the place, and `turned` turns the pocket about it, clockwise. The drill holes lie 4 mm inside its corners, so that the pocket covers them.",
  phrase: [
    phrase`pocket-place ${slot.name("name", "what the line is called")} = ${slot.piece("pocket", "the pocket")}
      at ${slot.place("place", "where its upper left end comes")} ${optional`turned ${slot.angle("turn", "how far it is turned, clockwise")}`}`,
  ],
  example: `chalkline 1
units cm
piece pocket {
  line top    = (0, 0) to (14 cm, 0)
  line front  = (14 cm, 0) to (14 cm, 16 cm)
  line bottom = (0, 16 cm) to (14 cm, 16 cm)
  line back   = (0, 0) to (0, 16 cm)
  outline top, front, bottom, back
}
piece front {
  line opening = (0, 0) to (0, 60 cm)
  line top     = (0, 0) to (30 cm, 0)
  line side    = (30 cm, 0) to (30 cm, 60 cm)
  line hem     = (0, 60 cm) to (30 cm, 60 cm)
  outline opening, top, side, hem
  pocket-place hip-pocket = pocket at (10 cm, 30 cm) turned 5 deg
}`,
  work({ name, pocket: { piece: pocket }, place, turn = 0 }, piece, { where, units }) {
    const whole = closedBoundary(piece, units);
    const line = closedBoundary(pocket, units);
    const { left, top } = bounds([line]);
    const shift = laidOn({ x: left, y: top }, place, undefined, undefined);
    const move = (point: Point): Point => rotated(shift(point), place, turn);
    const outline = mapped(line, move);
    const spots = cornersOf(pocket).filter(({ interior }) => Math.abs(Math.PI - interior) > leastTurn);
    const drills: Drill[] = spots.map(({ before, after, point }) => {
      const inward = unit(minus(startDirection(after.path), endDirection(before.path)));
      return {
        point: plus(move(point), minus(move(times(inward, insideCorner)), move({ x: 0, y: 0 }))),
        drawnBy: where,
      };
    });
    const off = outsideBy(whole, outline);
    if (off > 0) {
      throw new Problem(
        "pocket-off-piece",
        `Here ${pocket.name} would reach ${lengthIn(off, units)} beyond the edge of ${piece.name}.`,
        { hint: "Move the place further inside." },
      );
    }
    const drawn = withNewEdge(piece, name, outline, where);
    return {
      now: { ...drawn, drills: [...piece.drills, ...drills] },
      words: `${pocket.name} marked at ${lengthIn(place.x, units)}, ${lengthIn(place.y, units)}`,
    };
  },
});
