// forward-shoulder: moves the shoulder seam forward at its tip, from the front onto the back.
import { phrase } from "../../grammar/phrase.ts";
import { type Armhole, armholeBeside, lowerStretch, upperDrawn, withArmhole } from "../alter/armhole.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { angleToMove, hasRoom, slopeRoom, tipMoved } from "../alter/shoulder-slope.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { endDirection, endOf, joined, mapped, startOf } from "../geometry/path.ts";
import { cross } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { EdgeValue } from "../value.ts";
import type { Garment, Piece, Units } from "../working.ts";

export const forwardShoulder = garmentStep({
  name: "forward-shoulder",
  since: "0.2",
  summary: "Moves the shoulder seam forward at the tip: the front loses a wedge of cloth there, and the back gains it.",
  details: `Both shoulders turn about their neck points by the same angle, and keep their length; the front armhole gets shorter and the back armhole longer,
together hardly changed, so the sleeve still goes in: move the notch at its crown forward as far. A negative length moves the seam backward. Neither shoulder may come
to rise to its tip, or to slope by more than 45 deg. Write the line
above the seams.`,
  example: `chalkline 1
units cm
piece back {
  curve neck    = (0, 0) to (7.4 cm, -2.5 cm) handles (4.4 cm, 0), (6.9 cm, -1.1 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20.5 cm, 1.8 cm)
  curve armhole = (20.5 cm, 1.8 cm) to (27 cm, 24 cm) through (19 cm, 13 cm) heading down leaving square-to shoulder arriving right
  line side     = (27 cm, 24 cm) to (27 cm, 60 cm)
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, 0) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
}
piece front = back {
  draw-neck neck depth 8.4 cm
}
forward-shoulder front.shoulder onto back.shoulder by 1 cm
seam front.shoulder with back.shoulder`,
  phrase: [
    phrase`forward-shoulder ${slot.edge("front", "the front shoulder")}
      onto ${slot.edge("back", "the back shoulder")}
      by ${slot.length("forward", "how far the tip moves forward; negative moves it backward")}`,
  ],
  work({ front, back, forward }, garment, { units }) {
    const [frontPiece, frontEdge] = shoulderOf(front, garment);
    const [backPiece, backEdge] = shoulderOf(back, garment);
    if (frontPiece.name === backPiece.name) {
      throw new Problem(
        "shoulder-same",
        "Front and back are one piece here, and the seam moves from one onto another.",
        {
          hint: "Name the shoulders of two pieces.",
        },
      );
    }
    if (
      garment.seams.some((seam) =>
        [...seam.first, ...seam.second].some(({ piece }) => piece === frontPiece.name || piece === backPiece.name),
      )
    ) {
      throw new Problem("shoulder-sewn", "These pieces are sewn together above this line already.", {
        hint: "Write this line above the seams.",
      });
    }
    refuseUnlike("shoulder", frontPiece, { edge: frontEdge, slot: "front", prefix: `${frontPiece.name}.` }, units);
    refuseUnlike("shoulder", backPiece, { edge: backEdge, slot: "back", prefix: `${backPiece.name}.` }, units);
    if (forward === 0) return { now: garment, words: "" };
    const armholes = [armholeBeside(frontPiece, frontEdge, units), armholeBeside(backPiece, backEdge, units)] as const;
    const angle = turnWanted(armholes, forward, units);
    const [newFront, newBack] = [
      turnedBy(frontPiece, frontEdge, angle, units),
      turnedBy(backPiece, backEdge, -angle, units),
    ];
    const pieces = new Map(garment.pieces).set(frontPiece.name, newFront.piece).set(backPiece.name, newBack.piece);
    return {
      now: { ...garment, pieces },
      words:
        `moved the shoulder ${lengthIn(Math.abs(forward), units)} ${forward > 0 ? "forward" : "backward"} at the tip; ` +
        `the armhole of ${frontPiece.name} ${lengthIn(newFront.armhole, units)}, of ${backPiece.name} ${lengthIn(newBack.armhole, units)}`,
    };
  },
});

const shoulderOf = ({ of, whole }: EdgeValue, garment: Garment): readonly [Piece, string] => {
  const piece = of && garment.pieces.get(of.piece);
  if (of && piece && whole) return [piece, of.edge];
  throw new Problem("shoulder-foreign", "This is not a shoulder of a piece of this garment.", {
    hint: "Name a whole edge of a piece, as in front.shoulder; copy the piece in first if it is another recipe's.",
  });
};

/** Radians by which the front shoulder turns down and the back shoulder up; a Problem where one of them has no room to. */
const turnWanted = ([front, back]: readonly [Armhole, Armhole], forward: number, units: Units): number => {
  const angle = angleToMove(front, forward);
  const [inFront, behind] = [slopeRoom(front), slopeRoom(back)];
  const room = { up: Math.max(inFront.up, -behind.down), down: Math.min(inFront.down, -behind.up) };
  if (angle !== undefined && hasRoom(room, angle)) return angle;
  const way = forward > 0 ? "forward" : "backward";
  const most = Math.abs(tipMoved(front, forward > 0 ? room.down : room.up));
  const [rising, sloping] = forward > 0 ? ["back", "front"] : ["front", "back"];
  throw new Problem(
    "slope-too-much",
    `The tip can move ${lengthIn(most, units)} ${way} until the ${rising} shoulder lies level, or the ${sloping} one slopes by 45 deg; ${lengthIn(Math.abs(forward), units)} is further.`,
    {
      hint:
        most < least
          ? `Slope the ${rising} shoulder first, with slope-shoulder.`
          : `Take ${lengthIn(Math.sign(forward) * most, units)} or less.`,
      slot: "forward",
    },
  );
};

/** A piece with its shoulder turned about the neck point, the tip down by an angle in radians, and the length of its armhole. */
const turnedBy = (piece: Piece, shoulder: string, angle: number, units: Units): { piece: Piece; armhole: number } => {
  const armhole = armholeBeside(piece, shoulder, units);
  const { shoulderPath, shoulderWay, down, underarm, across } = armhole;
  const turn = cross(shoulderWay, down) > 0 ? angle : -angle;
  const line = mapped(shoulderPath, (point) => rotated(point, startOf(shoulderPath), turn));
  const upper = upperDrawn({ tip: endOf(line), across, underarm, shoulderWay: endDirection(line) }, down);
  const path = joined([upper, lowerStretch(armhole)]);
  return { piece: withArmhole(piece, armhole, path, { shoulder: line }), armhole: pathLength(path) };
};

// A length too small to move a seam by, in mm.
const least = 0.5;
