// Where an edge is pleated, the marks of its pleats; where it is gathered or eased, a notch at both ends of the stretch,
// and what becomes of it in words between them.
import { directionAt, pathLength, pointAt } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { times } from "../geometry/point.ts";
import { angleOf } from "../geometry/trig.ts";
import { outward, walked } from "../outline.ts";
import { lengthIn } from "../units.ts";
import type { Piece, TakeUp, Units } from "../working.ts";
import { baselineBeside, readable } from "./beside.ts";
import type { Stroke, Text } from "./drawing.ts";
import { textWidth } from "./lettering.ts";
import { notchMarks } from "./notch-marks.ts";
import { pleatMarks } from "./pleat-marks.ts";

/** The marks of what is gathered, eased or pleated. */
export const takeUpMarks = (piece: Piece, takeUp: TakeUp, units: Units): { strokes: Stroke[]; texts: Text[] } => {
  const path = walked(piece).find(({ edge }) => edge.name === takeUp.edge)?.path;
  if (takeUp.kind === "pleat") return { strokes: pleatMarks(piece, takeUp), texts: [] };
  if (!path) return { strokes: [], texts: [] };
  const [one, other] = [nearest(path, takeUp.from).at, nearest(path, takeUp.to).at];
  const over = Math.abs(other - one);
  const strokes = [takeUp.from, takeUp.to].flatMap((point) =>
    notchMarks(piece, { edge: takeUp.edge, point, double: false, drawnBy: takeUp.drawnBy }),
  );
  const at = Math.min((one + other) / 2, pathLength(path));
  const travel = directionAt(path, at);
  const turn = readable(angleOf(travel));
  const text = `${verbs.get(takeUp.kind)} ${lengthIn(over, units)} TO ${lengthIn(over - takeUp.amount, units)}`;
  const size = Math.min(usualSize, (usualSize * over) / textWidth(text, usualSize, "plain"));
  const side = times(outward(piece, travel), -1);
  return {
    strokes,
    texts: [
      {
        text,
        at: baselineBeside(pointAt(path, at), side, turn, size, gap),
        size,
        turn,
        align: "middle",
        weight: "plain",
      },
    ],
  };
};

const verbs = new Map([
  ["gather", "GATHER"],
  ["ease", "EASE"],
]);
const usualSize = 4.5;
const gap = 2.5;
