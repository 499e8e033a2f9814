// What an edge is made of, as a recipe can say it: the places and angles are rounded already, and drawn here as the kernel will
// draw them, so that whoever asks how near it comes asks about the written recipe.
import { arcBulging } from "../../kernel/geometry/arc.ts";
import { hobbyCurve } from "../../kernel/geometry/hobby.ts";
import { type CubicSpan, joined, type Path, through } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { toRadians } from "../../kernel/geometry/trig.ts";

/** A straight line, or a bent one. */
export interface LinePart {
  readonly kind: "line";
  readonly points: readonly Point[];
}

/** Part of a circle, less than half of it. */
export interface ArcPart {
  readonly kind: "arc";
  readonly points: readonly [Point, Point];
  readonly radius: number;
  readonly bulging: "left" | "right" | "up" | "down";
}

/** One cubic with its handles. */
export interface HandlesPart {
  readonly kind: "handles";
  readonly points: readonly [Point, Point];
  readonly handles: readonly [Point, Point];
}

/** The fair curve through points; directions in degrees. */
export interface FairPart {
  readonly kind: "fair";
  readonly points: readonly Point[];
  /** One for each point between the ends, where it has one. */
  readonly headings: readonly (number | undefined)[];
  readonly leaving: number | undefined;
  readonly arriving: number | undefined;
}

export type Part = LinePart | ArcPart | HandlesPart | FairPart;

/** The part as the kernel draws it. */
export const drawnPart = (part: Part): Path => {
  switch (part.kind) {
    case "line":
      return through(part.points);
    case "arc": {
      const [start, end] = part.points;
      return arcBulging(start, end, part.radius, sides.get(part.bulging)!)!.path;
    }
    case "handles": {
      const span: CubicSpan = {
        kind: "cubic",
        start: part.points[0],
        startHandle: part.handles[0],
        endHandle: part.handles[1],
        end: part.points[1],
      };
      return [span];
    }
    case "fair":
      return hobbyCurve(
        part.points.map((point, i) => {
          const heading = part.headings[i - 1];
          return {
            point,
            ...(heading !== undefined && { heading: toRadians(heading) }),
            ...(i === 0 && part.leaving !== undefined && { leaving: toRadians(part.leaving) }),
            ...(i === part.points.length - 1 && part.arriving !== undefined && { arriving: toRadians(part.arriving) }),
          };
        }),
      );
  }
};

/** All parts of an edge as one path. */
export const drawnEdge = (parts: readonly Part[]): Path => joined(parts.map(drawnPart));

/** The four sides that an arc may be said to bulge to. */
export const sides: ReadonlyMap<ArcPart["bulging"], Point> = new Map([
  ["left", { x: -1, y: 0 }],
  ["right", { x: 1, y: 0 }],
  ["up", { x: 0, y: -1 }],
  ["down", { x: 0, y: 1 }],
]);
