// How the moving part of a slashed piece is laid anew: turned about a pivot as a stiff sheet, or shifted without turning.
import { minus, type Point, plus, times } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";

export type Motion =
  | {
      readonly kind: "turn";
      readonly pivot: Point;
      /** Radians, clockwise on the page. */
      readonly angle: number;
    }
  | { readonly kind: "shift"; readonly by: Point };

/** Where a motion takes a point. */
export const taken = (point: Point, motion: Motion): Point =>
  motion.kind === "turn" ? rotated(point, motion.pivot, motion.angle) : plus(point, motion.by);

/** The motion back. */
export const undone = (motion: Motion): Motion =>
  motion.kind === "turn" ? { ...motion, angle: -motion.angle } : { kind: "shift", by: times(motion.by, -1) };

/** How far a motion turns the cloth, radians. */
export const turnIn = (motion: Motion): number => (motion.kind === "turn" ? motion.angle : 0);

/** The pivot of a motion; a shift has none. */
export const pivotOf = (motion: Motion): Point | undefined => (motion.kind === "turn" ? motion.pivot : undefined);

/** The shift that lays one point on another. */
export const shiftOnto = (from: Point, to: Point): Motion => ({ kind: "shift", by: minus(to, from) });
