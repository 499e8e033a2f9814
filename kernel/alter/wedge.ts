// The wedge of cloth that is taken out beside a slash when the slash is folded together.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossings } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { carriedOn } from "../geometry/offset.ts";
import { joined, mapped, type Path, reversed } from "../geometry/path.ts";
import { distance, type Point, sameSpotTolerance } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { part } from "../geometry/split.ts";
import { sin } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import { pointAtSpot, settled, spotsAt } from "./outline-spot.ts";
import { reachOf } from "./reach-of.ts";
import type { Slash } from "./slash.ts";
import { clothSide, outlineOf, type Side, type Stretch, stretchesOf } from "./two-parts.ts";

export interface Wedge {
  /** The part that loses the cloth. */
  readonly side: Side;
  /** Its other cut, from the hinge to the edge that opens, and where that ends. */
  readonly cut: Path;
  readonly corner: Point;
  /** The outline from the hinge round, without the stretch that is lost. */
  readonly left: readonly Stretch[];
  /** Whether a point lies in the wedge, its two cuts not counted. */
  readonly holds: (point: Point) => boolean;
}

/** The wedge beside a slash; `away` is the turn, radians clockwise on the page, that leads off the part that moves. */
export const wedgeOf = (piece: Piece, slash: Slash, moving: Side, away: number, units: Units): Wedge => {
  const side = clothSide(slash) ?? moving;
  const stretches = stretchesOf(piece, slash);
  const turn = side === moving ? away : -away;
  const ray = carriedOn(
    mapped(slash.path, (point) => rotated(point, slash.hinge, turn)),
    "end",
    reachOf(piece),
  );
  const opened = slash.targetsAt[0];
  const hits = stretches
    .filter((stretch) => stretch.side === side)
    .flatMap((stretch) =>
      crossings(stretch.path, ray).map(({ onFirst, onSecond, point }) => ({
        stretch,
        at: stretch.from + onFirst,
        out: onSecond,
        point,
      })),
    )
    .filter(({ point, out }) => out > sameSpotTolerance && distance(point, slash.hinge) > sameSpotTolerance)
    .sort((a, b) => a.out - b.out);
  const [first] = hits;
  const hit = hits.find(({ stretch, out }) => stretch.index === opened.index && out <= first!.out + sameSpotTolerance);
  const { edge, path } = walked(piece)[opened.index]!;
  if (!hit || !contains(outlineOf(stretches, side), pointAt(ray, hit.out / 2))) {
    const width = 2 * distance(slash.hinge, slash.target) * sin(Math.abs(away) / 2);
    throw new Problem(
      "cloth-too-narrow",
      `The wedge is ${lengthIn(width, units)} wide at ${edge.name}, and the cloth beside the slash is narrower.`,
      { hint: "Fold less away, or slash further from the end." },
    );
  }
  const at = settled(path, hit.at);
  const left = stretches.flatMap((stretch) => (stretch === hit.stretch ? shortened(path, stretch, at) : [stretch]));
  const cut = part(ray, 0, hit.out);
  const [low, high] = at < opened.at ? [at, opened.at] : [opened.at, at];
  const lost = part(path, low, high);
  const loop = joined([slash.path, at < opened.at ? reversed(lost) : lost, reversed(cut)]);
  const holds = (point: Point): boolean => {
    const spots = spotsAt(piece, point);
    if (spots.length > 0) return spots.some((spot) => spot.index === opened.index && spot.at > low && spot.at < high);
    if (nearest(cut, point).distance <= sameSpotTolerance) return false;
    return contains(loop, point);
  };
  return { side, cut, corner: pointAtSpot(piece, { index: opened.index, at }), left, holds };
};

const shortened = (path: Path, stretch: Stretch, at: number): Stretch[] => {
  const [from, to] = stretch.side === "ahead" ? [stretch.from, at] : [at, stretch.to];
  return to - from > nothing ? [{ ...stretch, from, to, path: part(path, from, Math.min(to, pathLength(path))) }] : [];
};

// A stretch shorter than this, in mm, is none.
const nothing = 1e-9;
