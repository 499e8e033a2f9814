// The cloth that is taken out beside a slash when the slash is closed: a wedge, or a strip where both ends close.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossings } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { carriedOn } from "../geometry/offset.ts";
import { joined, mapped, type Path, reversed } from "../geometry/path.ts";
import { distance, type Point, sameSpotTolerance } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import { type Motion, taken, undone } from "./motion.ts";
import { pointAtSpot, settled, spotsAt } from "./outline-spot.ts";
import { reachOf } from "./reach-of.ts";
import type { Slash } from "./slash.ts";
import { clothSide, outlineOf, type Side, type Stretch, stretchesOf } from "./two-parts.ts";

/** How a slash is closed: the motion that the moving part makes, and the ends that lose cloth. */
export interface Closing {
  readonly motion: Motion;
  readonly atHinge: boolean;
  readonly atTarget: boolean;
  /** How far along the slash, mm, the wedge begins, from there to the end that closes; the middle where both ends do. */
  readonly inside: number;
}

export interface Wedge {
  /** The part that loses the cloth. */
  readonly side: Side;
  /** Its other cut, and where that ends at the target and at the hinge; these are the slash's own where nothing is lost. */
  readonly cut: Path;
  readonly corner: Point;
  readonly hingeCorner: Point;
  /** The outline from the hinge round, without the stretches that are lost. */
  readonly left: readonly Stretch[];
  /** Whether a point lies in the cloth that is lost, its two cuts not counted. */
  readonly holds: (point: Point) => boolean;
}

/** The cloth beside a slash that is lost; a Problem where there is not as much of it. */
export const wedgeOf = (piece: Piece, slash: Slash, moving: Side, closing: Closing, units: Units): Wedge => {
  const { atHinge, atTarget, inside } = closing;
  const side = clothSide(slash) ?? moving;
  const stretches = stretchesOf(piece, slash);
  const back = side === moving ? undone(closing.motion) : closing.motion;
  const reach = reachOf(piece);
  const laidOn = mapped(slash.path, (point) => taken(point, back));
  const toTarget = atTarget ? carriedOn(laidOn, "end", reach) : laidOn;
  const ray = atHinge ? carriedOn(toTarget, "start", reach) : toTarget;
  const base = (atHinge ? reach : 0) + inside;
  const lostAt = (end: "hinge" | "target"): Lost =>
    lost(piece, { slash, side, stretches, ray, base, end, motion: closing.motion, units });
  const target = atTarget ? lostAt("target") : undefined;
  const hinge = atHinge ? lostAt("hinge") : undefined;
  const cut = part(ray, hinge?.out ?? base, target?.out ?? base);
  const slashed = part(slash.path, atHinge ? 0 : inside, atTarget ? pathLength(slash.path) : inside);
  const loop = joined([slashed, target?.along ?? [], reversed(cut), hinge ? reversed(hinge.along) : []]);
  const losses = [hinge, target].filter((each) => each !== undefined);
  const holds = (point: Point): boolean => {
    const spots = spotsAt(piece, point);
    if (spots.length > 0)
      return spots.some(({ index, at }) =>
        losses.some((each) => each.index === index && at > each.low && at < each.high),
      );
    if (nearest(cut, point).distance <= sameSpotTolerance) return false;
    return contains(loop, point);
  };
  const left = losses.reduce<readonly Stretch[]>(
    (kept, each) => kept.flatMap((stretch) => (stretch === each.stretch ? each.left : [stretch])),
    stretches,
  );
  return { side, cut, corner: target?.corner ?? slash.target, hingeCorner: hinge?.corner ?? slash.hinge, left, holds };
};

/** What the outline loses at one end of the slash. */
interface Lost {
  readonly index: number;
  readonly stretch: Stretch;
  /** What stays of that stretch. */
  readonly left: readonly Stretch[];
  /** The stretch that is lost, from the slash on. */
  readonly along: Path;
  readonly low: number;
  readonly high: number;
  /** Where the other cut ends, and how far along it that is. */
  readonly corner: Point;
  readonly out: number;
}

interface Losing {
  readonly slash: Slash;
  readonly side: Side;
  readonly stretches: readonly Stretch[];
  /** The other cut, carried on beyond the piece, and the place on it from which both its ends are looked for. */
  readonly ray: Path;
  readonly base: number;
  readonly end: "hinge" | "target";
  readonly motion: Motion;
  readonly units: Units;
}

const lost = (piece: Piece, losing: Losing): Lost => {
  const { slash, side, stretches, ray, base, end } = losing;
  const way = end === "target" ? 1 : -1;
  const own = stretches.filter((stretch) => stretch.side === side);
  const opened =
    end === "target"
      ? slash.targetsAt[0]
      : {
          index: (side === "ahead" ? own[0] : own.at(-1))!.index,
          at: side === "ahead" ? own[0]!.from : own.at(-1)!.to,
        };
  const hits = own
    .flatMap((stretch) =>
      crossings(stretch.path, ray).map(({ onFirst, onSecond, point }) => ({
        stretch,
        at: stretch.from + onFirst,
        out: onSecond,
        far: (onSecond - base) * way,
        point,
      })),
    )
    .filter(
      ({ point, far }) =>
        far > sameSpotTolerance && (end === "hinge" || distance(point, slash.hinge) > sameSpotTolerance),
    )
    .sort((a, b) => a.far - b.far);
  const [first] = hits;
  const hit = hits.find(({ stretch, far }) => stretch.index === opened.index && far <= first!.far + sameSpotTolerance);
  const { path } = walked(piece)[opened.index]!;
  if (!hit || !contains(outlineOf(stretches, side), pointAt(ray, (base + hit.out) / 2)))
    throw tooNarrow(piece, losing, opened.index);
  const at = settled(path, hit.at);
  const [low, high] = at < opened.at ? [at, opened.at] : [opened.at, at];
  const between = part(path, low, high);
  return {
    index: opened.index,
    stretch: hit.stretch,
    left: shortened(path, hit.stretch, at, (hit.stretch.side === "ahead") === (end === "target")),
    along: at < opened.at ? reversed(between) : between,
    low,
    high,
    corner: pointAtSpot(piece, { index: opened.index, at }),
    out: hit.out,
  };
};

const tooNarrow = (piece: Piece, { slash, end, motion, units }: Losing, index: number): Problem => {
  const point = slash[end];
  const width = lengthIn(distance(point, taken(point, motion)), units);
  return new Problem(
    "cloth-too-narrow",
    `The cloth to be taken out is ${width} wide at ${walked(piece)[index]!.edge.name}, and the cloth beside the slash is narrower.`,
    { hint: "Fold less away, or slash further from the end." },
  );
};

/** A stretch up to a place of it, or from there on. */
const shortened = (path: Path, stretch: Stretch, at: number, upTo: boolean): Stretch[] => {
  const [from, to] = upTo ? [stretch.from, at] : [at, stretch.to];
  return to - from > nothing ? [{ ...stretch, from, to, path: part(path, from, Math.min(to, pathLength(path))) }] : [];
};

// A stretch shorter than this, in mm, is none.
const nothing = 1e-9;
