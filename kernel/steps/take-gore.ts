// take-gore: cuts a wedge out between two lines from a hinge, and closes the gap.
import { optional, phrase } from "../../grammar/phrase.ts";
import { slashOn } from "../alter/slash.ts";
import { stayingPart } from "../alter/staying-part.ts";
import { withStraightFolds } from "../alter/straight-folds.ts";
import { foldedAway } from "../alter/turning-part.ts";
import { otherSide, sideOfSpot } from "../alter/two-parts.ts";
import { distance, minus } from "../geometry/point.ts";
import { turnBetween } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";

export const takeGore = pieceStep({
  name: "take-gore",
  since: "0.2",
  summary:
    "Cuts a gore out of the piece: the wedge between two lines from a hinge to an edge; its two sides are brought together.",
  details: `Both places lie on one edge. The part of the piece that stays is the one that stays at \`spread-from\`; the other turns in about the
hinge. All edges but the one that loses the gore keep their length. If the two lines are unequally long, a step is left in the edge:
\`true-seam\` it.`,
  example: `chalkline 1
units cm
piece panel {
  line waist  = (0, 0) to (30 cm, 0)
  line side   = (30 cm, 0) to (34 cm, 60 cm)
  arc hem     = (0, 61 cm) to (34 cm, 60 cm) radius 400 cm bulging down
  line center = (0, 0) to (0, 61 cm)
  outline waist, side, hem, center
  mark hem as hem
  mark center as fold
  take-gore waist at 50% between hem at 15 cm, hem at 19 cm
  true-seam hem, waist
  allow waist, side by 1.5 cm
  allow hem by 2 cm
}`,
  phrase: [
    phrase`take-gore ${slot.placeOnPiece("hinge", "the place on the outline where the gore runs out")}
      between ${slot.places("sides", "the two places of one edge that it lies between")}
      ${optional`moving ${slot.ownEdge("moving", "an edge of the part that turns in")}`}`,
  ],
  work({ hinge, sides, moving: movingEdge }, piece, line) {
    const [first, second, third] = sides;
    if (!first || !second || third) {
      throw new Problem("gore-sides", `A gore lies between two places, and ${sides.length} are named.`, {
        hint: "Write for example `between hem at 10 cm, hem at 14 cm`.",
      });
    }
    const slashes = [first, second].map((place) =>
      slashOn(piece, { hinge, target: { place }, along: undefined }, line.units),
    );
    const [one, other] = [slashes[0]!, slashes[1]!];
    const [oneAt, otherAt] = one.targetsAt.flatMap((a) =>
      other.targetsAt.filter((b) => a.index === b.index).map((b) => [a, b] as const),
    )[0] ?? [undefined, undefined];
    if (!oneAt || !otherAt) {
      throw new Problem("gore-sides", "The two places do not lie on one edge.", {
        hint: "Name two places of the edge that loses the gore.",
      });
    }
    const moving = otherSide(stayingPart(piece, one, movingEdge));
    const isOnStaying = sideOfSpot(piece, { ...one, targetsAt: [oneAt] }, otherAt) === moving;
    const slash = isOnStaying ? { ...one, targetsAt: [oneAt] as const } : { ...other, targetsAt: [otherAt] as const };
    const angle = Math.abs(turnBetween(minus(first, one.hinge), minus(second, one.hinge)));
    const now = withStraightFolds(foldedAway(piece, { slash, moving, angle }, line), piece);
    const edge = walked(piece)[oneAt.index]!.edge.name;
    const across = distance(first, second);
    return {
      now,
      words: `took out a gore of ${lengthIn(across, line.units)} at the ${edge}, ${angleInWords(angle)} about ${one.hingeName ?? `the ${one.hingeEdge}`}`,
      amount: -across,
    };
  },
});
