// hollow-back: shortens a back at the waist for a hollow back, or lengthens it there.
import { phrase } from "../../grammar/phrase.ts";
import { climbed, highest, isMarkedCenter, type LevelEdge, levelWith, runsUpright } from "../alter/level-with.ts";
import { closedBoundary, turnInOutline } from "../alter/outline-spot.ts";
import { acrossToward, downAtCenter, rayEnd, swung } from "../alter/swing-part.ts";
import { turnAt } from "../alter/turned.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { distance, dot, minus, type Point, plus, times } from "../geometry/point.ts";
import { bearing, turnBetween } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { Edge, Piece, Units } from "../working.ts";

export const hollowBack = pieceStep({
  name: "hollow-back",
  since: "0.2",
  summary: "Shortens a back at the center of the waist for a hollow back, tapering to nothing at the side.",
  details: `The place lies at the waist between center and side. A fold of the length is taken out level from the center to the place, and from
there to nothing at the side. The part below it at the center goes up straight, so that a fold stays a fold; the part at the side swings up about the side
seam, and laps over at the hem, which gets narrower. The side keeps its length, and so does everything above. A negative length lets in as
much, and the hem gets wider.`,
  example: `chalkline 1
units cm
piece back {
  point waist   = (12 cm, 41 cm)
  curve neck    = (0, 0) to (7.4 cm, -2.5 cm) handles (4.4 cm, 0), (6.9 cm, -1.1 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20.5 cm, 1.8 cm)
  curve armhole = (20.5 cm, 1.8 cm) to (27 cm, 24 cm) through (19 cm, 13 cm) heading down arriving right
  line side     = (27 cm, 24 cm) to (27 cm, 60 cm)
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, 0) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark center as fold
  mark hem as hem
  hollow-back waist by 1 cm about side
  true-seam hem
}`,
  phrase: [
    phrase`hollow-back ${slot.placeOnPiece("waist", "the place at the waist where the fold begins to taper")}
      by ${slot.length("shorter", "how much shorter the center gets; negative lengthens it")}
      about ${slot.ownEdge("side", "the side, where the fold ends")}`,
  ],
  work({ waist, shorter, side }, piece, { units }) {
    const whole = closedBoundary(piece, units);
    const { path } = piece.edges.get(side)!;
    turnInOutline(piece, side);
    if (!contains(whole, waist.point)) {
      throw new Problem("pivot-outside", `The place does not lie inside ${piece.name}.`, {
        hint: "Name a place inside the piece.",
      });
    }
    if (shorter === 0) return { now: piece, words: "" };
    const middle = pointAt(path, pathLength(path) / 2);
    const nearly = bearing(Math.PI / 2 + turnAt(piece, side, middle));
    const down = downAtCenter(piece, whole, waist.point, times(acrossToward(nearly, minus(middle, waist.point)), -1));
    const out = acrossToward(down, minus(middle, waist.point));
    refuseOtherEdges(piece, whole, waist.point, side, down, units);
    const level = plus(waist.point, times(down, -shorter / 2));
    const [hit] = crossingsWithRay(path, level, out)
      .filter(({ ahead }) => ahead > 0)
      .sort((a, b) => a.ahead - b.ahead);
    if (!hit || distance(hit.point, level) < least) {
      throw new Problem(
        "waist-off-side",
        `${side} does not lie level with the place, ${lengthIn(least, units)} or more away.`,
        {
          hint: "Choose a place at the waist, further from the side.",
        },
      );
    }
    const pivotTo = plus(waist.point, times(down, -shorter));
    const turn = turnBetween(minus(waist.point, hit.point), minus(pivotTo, hit.point));
    const result = swung(piece, {
      hinge: hit.point,
      pivot: waist.point,
      pivotTo,
      mouth: rayEnd(whole, waist.point, down),
      third: rayEnd(whole, waist.point, times(out, -1)),
      turn,
    });
    return {
      now: result.piece,
      words: `made the center ${lengthIn(Math.abs(shorter), units)} ${shorter > 0 ? "shorter" : "longer"} at the waist, ${angleInWords(Math.abs(turn))} about the ${side}`,
    };
  },
});

/** A Problem where what is named is the center or the armhole, or where what lies level with it on the other side cannot be the center. */
const refuseOtherEdges = (piece: Piece, whole: Path, waist: Point, side: string, down: Point, units: Units): void => {
  const level = levelWith(piece, whole, waist, down);
  const own = level.find(({ edge }) => edge.name === side);
  const center = level.find(({ edge }) => edge.name !== side);
  if (!own || !center) return;
  const below = edgeBelow(piece, own.edge, down);
  const isUnderShoulder =
    own.top - highest(whole, down) < armholeHigh && climbed(piece, own.edge, center.edge, down).length > 2;
  if (isUnderShoulder && below.bottom - own.bottom > armholeHigh) {
    throw new Problem(
      "side-is-armhole",
      `${side} reaches up to the shoulder, and ${below.edge.name} goes on below it: it is the armhole, and not the side.`,
      {
        hint: `Choose a place at the waist, and name the side: \`about ${below.edge.name}\`.`,
        slot: "side",
      },
    );
  }
  const higher = center.top - own.top;
  if (isMarkedCenter(own.edge) && !isMarkedCenter(center.edge)) {
    throw asSide(`${side} is marked as ${own.edge.role}, so it is the center, and not the side.`, center);
  }
  // From the side the outline goes over an armhole and a shoulder before it is as high as the center reaches.
  const reachesNeck = higher > armholeHigh && own.top - highest(whole, down) < armholeHigh;
  if (reachesNeck && !isMarkedCenter(center.edge)) {
    throw asSide(
      `${side} reaches ${lengthIn(higher, units)} higher than ${center.edge.name}, which lies level with the place on its other side: it is the center, and not the side.`,
      center,
    );
  }
  if (runsUpright(center.edge, center.point, down)) return;
  throw new Problem(
    "waist-off-center",
    `${center.edge.name} lies level with the place, and is no center: it does not run upright there.`,
    {
      hint: "Choose a place at the waist, between center and side.",
      slot: "waist",
    },
  );
};

/** The edge that the outline goes on with at the lower end of another, and how far down that reaches, mm. */
const edgeBelow = (piece: Piece, above: Edge, down: Point): { readonly edge: Edge; readonly bottom: number } => {
  const walk = walked(piece);
  const index = walk.findIndex(({ edge }) => edge === above);
  const { path } = walk[index]!;
  const step = dot(endOf(path), down) > dot(startOf(path), down) ? 1 : walk.length - 1;
  const next = walk[(index + step) % walk.length]!;
  return { edge: next.edge, bottom: Math.max(dot(startOf(next.path), down), dot(endOf(next.path), down)) };
};

const asSide = (message: string, { edge }: LevelEdge): Problem =>
  new Problem("side-is-center", message, { hint: `Name the side: \`about ${edge.name}\`.`, slot: "side" });

// From an underarm to the highest place of a piece it is further than this, in mm, down to the sizes of small children.
const armholeHigh = 100;

// The part that swings is at least this wide, in mm.
const least = 20;
