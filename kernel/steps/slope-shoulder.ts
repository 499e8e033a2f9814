// slope-shoulder: makes a shoulder more sloping, or squarer.
import { phrase } from "../../grammar/phrase.ts";
import { type Armhole, acrossMoved, armholeBeside, armholeDrawn, sideMoved, withArmhole } from "../alter/armhole.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { angleToMove, hasRoom, shoulderSlope, slopeRoom, tipMoved } from "../alter/shoulder-slope.ts";
import { solved } from "../alter/trued.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { endDirection, endOf, mapped, type Path, startOf } from "../geometry/path.ts";
import { cross, distance } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { Units } from "../working.ts";

export const slopeShoulder = pieceStep({
  name: "slope-shoulder",
  since: "0.2",
  summary: "Makes a shoulder more sloping, or squarer by a negative amount, with the armhole as long as before.",
  details: `The shoulder turns about the neck point by the angle, or until its tip has moved by the length in a straight line; it keeps its
length, and stays between level and 45 deg. For a sloping
shoulder the underarm goes down with the tip, for a square one up, as far as it takes for the armhole to keep its length to a thousandth of a millimetre, so
that the sleeve still fits; the side gets shorter or longer by that. Do the same to back and front.`,
  example: `chalkline 1
units cm
piece back {
  line neck     = (0, 0) to (7.4 cm, 0)
  line shoulder = (7.4 cm, 0) to (20.5 cm, 4.3 cm)
  curve armhole = (20.5 cm, 4.3 cm) to (27 cm, 27 cm) through (19 cm, 15 cm) heading down arriving right
  line side     = (27 cm, 27 cm) to (27 cm, 70 cm)
  line hem      = (0, 70 cm) to (27 cm, 70 cm)
  line center   = (0, 0) to (0, 70 cm)
  outline center, neck, shoulder, armhole, side, hem
  slope-shoulder shoulder by 1 cm
}`,
  phrase: [
    phrase`slope-shoulder ${slot.ownEdge("shoulder", "the shoulder")} by ${slot.lengthOrAngle("amount", "how far the tip moves, or the angle; negative makes it squarer")}`,
  ],
  work({ shoulder, amount }, piece, { units }) {
    refuseUnlike("shoulder", piece, { edge: shoulder, slot: "shoulder" }, units);
    const armhole = armholeBeside(piece, shoulder, units);
    const angle = turnWanted(armhole, amount, units);
    if (angle === 0) return { now: piece, words: "" };
    const line = sloped(armhole, angle);
    const tip = endOf(line);
    const shape = (lowering: number): { path: Path; side: Path; across: ReturnType<typeof acrossMoved> } => {
      const side = sideMoved(armhole, lowering, 0, units);
      const underarm = endOf(side);
      const across = acrossMoved(armhole, tip, underarm, 0);
      const wanted = { tip, across, underarm, shoulderWay: endDirection(line) };
      return { path: armholeDrawn(armhole, wanted, units), side, across };
    };
    const length = pathLength(armhole.path);
    const moved = distance(tip, armhole.tip);
    const off = (lowering: number): number => pathLength(shape(lowering).path) - length;
    const lowering = solved(off, 0, -2 * moved - reserve, 2 * moved + reserve);
    if (lowering === undefined) {
      throw new Problem("armhole-not-kept", `${armhole.name} cannot keep its length with this shoulder.`, {
        hint: "Take a smaller amount.",
      });
    }
    const { path, side, across } = shape(lowering);
    const did = angle > 0 ? "more sloping" : "squarer";
    return {
      now: withArmhole(piece, armhole, path, { shoulder: line, side, across }),
      words:
        `made the ${shoulder} ${angleInWords(Math.abs(angle))} ${did}, its tip moved by ${lengthIn(moved, units)}, ` +
        `the underarm ${lowering >= 0 ? "lowered" : "raised"} by ${lengthIn(Math.abs(lowering), units)}`,
    };
  },
});

/** Radians through which the shoulder turns; a Problem where it would rise to its tip, or slope as no shoulder does. */
const turnWanted = (
  armhole: Armhole,
  amount: { readonly length: number } | { readonly angle: number },
  units: Units,
): number => {
  const angle = "angle" in amount ? amount.angle : angleToMove(armhole, amount.length);
  const room = slopeRoom(armhole);
  if (angle !== undefined && hasRoom(room, angle)) return angle;
  const inWords = (each: number): string =>
    "angle" in amount ? angleInWords(each) : lengthIn(tipMoved(armhole, each), units);
  const { shoulder, shoulderPath } = armhole;
  const slope = shoulderSlope(armhole);
  throw new Problem(
    "slope-too-much",
    angle === undefined
      ? `${shoulder} is ${lengthIn(distance(startOf(shoulderPath), endOf(shoulderPath)), units)} long, and its tip cannot move as far.`
      : `${shoulder} slopes by ${angleInWords(slope)} and would ${inSlope(slope + angle)}; a shoulder lies between level and 45 deg.`,
    { hint: `Take an amount between ${inWords(room.up)} and ${inWords(room.down)}.`, slot: "amount" },
  );
};

const inSlope = (slope: number): string =>
  slope < 0 ? `rise by ${angleInWords(-slope)} to its tip` : `slope by ${angleInWords(slope)}`;

/** The shoulder turned about the neck point, its tip down by an angle in radians. */
export const sloped = ({ shoulderPath, shoulderWay, down }: Armhole, angle: number): Path => {
  const turn = cross(shoulderWay, down) > 0 ? angle : -angle;
  return mapped(shoulderPath, (point) => rotated(point, startOf(shoulderPath), turn));
};

// An armhole that was drawn another way than the blocks draw theirs may need a little more, in mm.
const reserve = 30;
