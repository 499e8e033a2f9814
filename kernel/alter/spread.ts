// One slash from its hinge: opened like a fan, or folded together where the amount is negative.
import { distance } from "../geometry/point.ts";
import { asin, sin } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Line, Worked } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import { bridgeStart } from "./bridge-start.ts";
import { type Slash, type SlashAsked, slashOn } from "./slash.ts";
import { stayingPart } from "./staying-part.ts";
import { withStraightFolds } from "./straight-folds.ts";
import { foldedAway, opened } from "./turning-part.ts";
import { otherSide, type Side } from "./two-parts.ts";

/** How far a slash opens at its target: straight across, mm, or by an angle in radians; negative folds cloth away. */
export type Opening = { readonly length: number } | { readonly angle: number };

/** A slash as a recipe asks for it; `moving` names an edge of the part that turns. */
export interface SpreadAsked extends SlashAsked {
  readonly opening: Opening;
  readonly moving: string | undefined;
}

/** The piece with the slash opened or folded together, and what was done in words; a Problem where it cannot be. */
export const spread = (piece: Piece, asked: SpreadAsked, line: Line): Worked<Piece> => {
  const { units } = line;
  const found = slashOn(piece, asked, units);
  const moving = otherSide(stayingPart(piece, found, asked.moving));
  const amount = "length" in asked.opening ? asked.opening.length : asked.opening.angle;
  const settled = opensBeside(found, moving);
  const slash = amount < 0 ? bridgeStart(piece, settled, moving) : settled;
  const radius = distance(slash.hinge, slash.target);
  const { opening } = asked;
  const angle = "length" in opening ? angleOver(Math.abs(opening.length), radius, units) : Math.abs(opening.angle);
  if (angle > Math.PI) {
    throw new Problem("opening-too-wide", `A slash opens by 180 deg at most, and this is ${angleInWords(angle)}.`, {
      hint: "Take a smaller angle.",
    });
  }
  if (angle === 0) return { now: piece, words: "" };
  const across = "length" in opening ? Math.abs(opening.length) : 2 * radius * sin(angle / 2);
  const turn = { slash, moving, angle };
  const now = withStraightFolds(amount > 0 ? opened(piece, turn, line) : foldedAway(piece, turn, line), piece);
  const edge = walked(piece)[slash.targetsAt[0].index]!.edge.name;
  const did = amount > 0 ? "opened" : "folded away";
  const about = slash.hingeName ?? `the ${slash.hingeEdge}`;
  return {
    now,
    words: `${did} ${lengthIn(across, units)} at the ${edge}, ${angleInWords(angle)} about ${about}`,
    amount: amount > 0 ? across : -across,
  };
};

/** At a corner with no hem the bridge goes to the edge on the side that moves. */
export const opensBeside = (slash: Slash, moving: Side): Slash =>
  moving === "behind" && slash.targetsAt[1] ? { ...slash, targetsAt: [slash.targetsAt[1]] } : slash;

/** The angle, radians, at which two points so far from the hinge are so far apart. */
const angleOver = (across: number, radius: number, units: Units): number => {
  if (across <= 2 * radius) return 2 * asin(across / (2 * radius));
  throw new Problem(
    "opening-too-wide",
    `The slash is ${lengthIn(radius, units)} long and opens by ${lengthIn(2 * radius, units)} at most; ${lengthIn(across, units)} is asked for.`,
    { hint: "Take a smaller length, or a longer slash." },
  );
};
