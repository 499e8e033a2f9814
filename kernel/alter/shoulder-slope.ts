// How far a shoulder may turn about its neck point: from level, where its tip is still its lower end, to 45 degrees.
import { endOf, startOf } from "../geometry/path.ts";
import { distance, dot, minus, times } from "../geometry/point.ts";
import { asin, sin } from "../geometry/trig.ts";
import type { Armhole } from "./armhole.ts";

/** How far a shoulder slopes down to its tip, radians from level, in a straight line from the neck point. */
export const shoulderSlope = ({ shoulderPath, down }: Armhole): number => {
  const [start, end] = [startOf(shoulderPath), endOf(shoulderPath)];
  return asin(dot(times(minus(end, start), 1 / distance(start, end)), down));
};

/** Radians by which a shoulder may turn with its tip upward, 0 or less, and downward, 0 or more. */
export const slopeRoom = (armhole: Armhole): { readonly up: number; readonly down: number } => {
  const slope = shoulderSlope(armhole);
  return { up: Math.min(0, -slope), down: Math.max(0, steepest - slope) };
};

/** True where a shoulder has room to turn by so many radians, tip down. */
export const hasRoom = ({ up, down }: { readonly up: number; readonly down: number }, angle: number): boolean =>
  angle >= up - rounding && angle <= down + rounding;

/** How far, in mm, the tip of a shoulder moves in a straight line while the shoulder turns by an angle. */
export const tipMoved = ({ shoulderPath }: Armhole, angle: number): number =>
  2 * distance(startOf(shoulderPath), endOf(shoulderPath)) * sin(angle / 2);

/** The angle in radians that moves the tip of a shoulder so many mm in a straight line; undefined where that is as far as it is long. */
export const angleToMove = ({ shoulderPath }: Armhole, by: number): number | undefined => {
  const radius = distance(startOf(shoulderPath), endOf(shoulderPath));
  return Math.abs(by) < radius ? 2 * asin(by / (2 * radius)) : undefined;
};

// Half a right angle: steeper lines are sides (our own rule; measured shoulders slope by 21 degrees and a few more or
// less, trade handbook 1.2).
const steepest = Math.PI / 4;

// A limit stays a limit when it is written out to 0.1 deg or to a sixteenth of an inch; radians.
const rounding = 0.01;
