// forward-shoulder: moves the shoulder seam forward at its tip, from the front onto the back.
import { phrase } from "../../grammar/phrase.ts";
import { armholeBeside, lowerStretch, upperDrawn, withArmhole } from "../alter/armhole.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { endDirection, endOf, joined, mapped, startOf } from "../geometry/path.ts";
import { cross, distance } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { asin } from "../geometry/trig.ts";
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
together hardly changed, so the sleeve still goes in: move the notch at its crown forward as far. A negative length moves the seam backward. Write the line
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
    if (forward === 0) return { now: garment, words: "" };
    const length = pathLength(front.path);
    if (Math.abs(forward) >= length / 2) {
      throw new Problem(
        "slope-too-much",
        `The shoulder is ${lengthIn(length, units)} long, and its tip cannot move as far.`,
        {
          hint: "Take a smaller length.",
        },
      );
    }
    const angle = 2 * asin(forward / (2 * distance(startOf(front.path), endOf(front.path))));
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
