// One slash with both its ends laid apart, or closed: the two sides meet at a pivot beyond the slash, or run level.
import { between, distance, minus, type Point, times, unit } from "../geometry/point.ts";
import { asin } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Line, Worked } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import type { Motion } from "./motion.ts";
import { type Slash, type SlashAsked, slashOn } from "./slash.ts";
import { opensBeside } from "./spread.ts";
import { stayingPart } from "./staying-part.ts";
import { withStraightFolds } from "./straight-folds.ts";
import { type EndOf, type Laying, laidAnew, turnAway } from "./turning-part.ts";
import { otherSide, type Side } from "./two-parts.ts";

/** A slash whose two ends open by so many mm each, straight across; negative closes, and takes cloth out. */
export interface ApartAsked extends Omit<SlashAsked, "along"> {
  readonly near: number;
  readonly far: number;
  readonly moving: string | undefined;
}

/** The piece with the slash laid apart at both ends, and what was done in words; a Problem where it cannot be. */
export const spreadApart = (piece: Piece, asked: ApartAsked, line: Line): Worked<Piece> => {
  const { near, far } = asked;
  const { units } = line;
  if (near === 0 && far === 0) return { now: piece, words: "" };
  const found = slashOn(piece, { ...asked, along: undefined }, units);
  const moving = otherSide(stayingPart(piece, found, asked.moving));
  const slash = opensBeside(found, moving);
  const laying: Laying = {
    slash,
    moving,
    ...laidBy(piece, slash, moving, near, far, units),
    hinge: endOf(near),
    target: endOf(far),
  };
  const now = withStraightFolds(laidAnew(piece, laying, line), piece);
  return { now, words: inWords(piece, laying, near, far, units), amount: far };
};

const endOf = (amount: number): EndOf => (amount > 0 ? "opens" : amount < 0 ? "closes" : "stays");

/** The motion that lays the ends so far apart, and the place on the slash, mm from its hinge, where its sides cross. */
const laidBy = (
  piece: Piece,
  slash: Slash,
  moving: Side,
  near: number,
  far: number,
  units: Units,
): { motion: Motion; inside: number } => {
  const { hinge, target } = slash;
  const length = distance(hinge, target);
  const along = unit(minus(target, hinge));
  const way = turnAway(piece, moving);
  if (Math.abs(far - near) <= level) {
    // Turned a quarter the way that the moving part turns off the slash, the slash points to that part.
    const out: Point = times({ x: -along.y, y: along.x }, way);
    return { motion: { kind: "shift", by: times(out, near) }, inside: length / 2 };
  }
  const sine = (far - near) / (2 * length);
  if (Math.abs(sine) > 1) {
    throw new Problem(
      "opening-too-wide",
      `The slash is ${lengthIn(length, units)} long, and its ends differ by ${lengthIn(2 * length, units)} at most; ${lengthIn(Math.abs(far - near), units)} is asked for.`,
      { hint: "Take amounts that differ less, or a longer slash." },
    );
  }
  // The handbook of the trade, 4.5: the two sides meet near x length / (far - near) before the hinge.
  const crossing = (-near * length) / (far - near);
  const inside = near < 0 && far < 0 ? length / 2 : Math.min(length, Math.max(0, crossing));
  const pivot = between(hinge, target, crossing / length);
  return { motion: { kind: "turn", pivot, angle: way * 2 * asin(sine) }, inside };
};

// Amounts that differ by less, in mm, are one: the pivot would lie further away than numbers reach.
const level = 1e-9;

const inWords = (piece: Piece, { slash, motion }: Laying, near: number, far: number, units: Units): string => {
  const edge = walked(piece)[slash.targetsAt[0].index]!.edge.name;
  const verb = (amount: number): string => (amount < 0 ? "folded away" : "opened");
  const at = (amount: number, place: string): string => `${lengthIn(Math.abs(amount), units)} at the ${place}`;
  const [first, second] = [at(near, slash.hingeEdge), at(far, edge)];
  const ends =
    near === 0
      ? `${verb(far)} ${second}`
      : far === 0
        ? `${verb(near)} ${first}`
        : `${verb(near)} ${first} and ${near * far < 0 ? `${verb(far)} ` : ""}${second}`;
  return motion.kind === "shift" ? `${ends}, level all along` : `${ends}, ${angleInWords(Math.abs(motion.angle))}`;
};
