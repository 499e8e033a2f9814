// Where a slash runs: from its hinge on the outline to a point of another edge, straight through the cloth or along an edge.
import { pathLength } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossings, crossingsWithRay } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, type Path, reversed, startOf, straight } from "../geometry/path.ts";
import { between, cross, distance, dot, minus, type Point, sameSpot, sameSpotTolerance } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { bearing } from "../geometry/trig.ts";
import { type Walked, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { PlaceOnPiece } from "../value.ts";
import type { Piece, Units } from "../working.ts";
import { closedBoundary, onward, pointAtSpot, type Spot, settled, spotsAt, turnInOutline } from "./outline-spot.ts";
import { turnAt } from "./turned.ts";

/** What a recipe says of a slash. */
export interface SlashAsked {
  readonly hinge: PlaceOnPiece;
  readonly target: { readonly edge: string } | { readonly place: Point };
  readonly along: string | undefined;
}

export interface Slash {
  readonly hinge: Point;
  readonly hingeAt: Spot;
  /** The edge that the hinge lies on, and what the recipe calls the hinge if it is a named place. */
  readonly hingeEdge: string;
  /** The spot on that edge, where what opens at the hinge belongs; `hingeAt` where not said. */
  readonly hingeOpensAt?: Spot;
  readonly hingeName: string | undefined;
  readonly target: Point;
  /** The spot on the edge that opens; at a corner, one on each of the edges that might: first the one that ends there. */
  readonly targetsAt: readonly [Spot, ...Spot[]];
  /** The cut, from the hinge to the target. */
  readonly path: Path;
  /** The turn in the outline of the edge that the cut runs along. */
  readonly along: number | undefined;
  /** Whether the outline walks that edge from the hinge to the target. */
  readonly alongAhead?: boolean;
}

/** Finds a slash on the piece; a Problem where it cannot be cut. */
export const slashOn = (piece: Piece, asked: SlashAsked, units: Units): Slash => {
  const whole = closedBoundary(piece, units);
  const found = spotsAt(piece, asked.hinge.point);
  if (found.length === 0) throw hingeOffOutline(piece, asked.hinge.point, units);
  if (asked.along !== undefined) return slashAlong(piece, asked, asked.along, found);
  const hingeAt = onward(piece, found[0]!);
  const hinge = pointAtSpot(piece, hingeAt);
  const own = ownSpot(piece, found, asked);
  const targetsAt =
    "edge" in asked.target
      ? [spotBelow(piece, asked.target.edge, own, hinge)]
      : spotsOfPlace(piece, asked.target.place, hinge, units);
  const target = pointAtSpot(piece, targetsAt[0]!);
  const path = straight(hinge, target);
  refuseBadCut(piece, whole, path, asked, units);
  return {
    hinge,
    hingeAt,
    hingeEdge: walked(piece)[own.index]!.edge.name,
    hingeOpensAt: own,
    hingeName: asked.hinge.name,
    target,
    targetsAt: targetsAt as [Spot, ...Spot[]],
    path,
    along: undefined,
  };
};

const hingeOffOutline = (piece: Piece, hinge: Point, units: Units): Problem => {
  const [near] = walked(piece)
    .map(({ edge, path }) => ({ name: edge.name, ...nearest(path, hinge) }))
    .sort((a, b) => a.distance - b.distance);
  return new Problem(
    "hinge-off-outline",
    `The hinge lies ${lengthIn(near!.distance, units)} off the outline of ${piece.name}; the nearest edge is ${near!.name}.`,
    { hint: `Hinge the slash on an edge, as in \`${near!.name} at 50%\`.` },
  );
};

// At a corner the hinge lies on two edges; the one that it was found on counts, else one that does not touch the target.
const ownSpot = (piece: Piece, found: readonly Spot[], { hinge, target }: SlashAsked): Spot => {
  const walk = walked(piece);
  const named = found.find(({ index }) => walk[index]!.edge.name === hinge.on);
  if (named || found.length === 1 || !("edge" in target)) return named ?? found[0]!;
  const opened = turnInOutline(piece, target.edge);
  const isApart = ({ index }: Spot): boolean => ![1, walk.length - 1].includes(Math.abs(index - opened));
  return (
    found.find((spot) => spot.index !== opened && isApart(spot)) ??
    found.find(({ index }) => index !== opened) ??
    found[0]!
  );
};

/** Where the down line of the hinge meets an edge; where it misses, at the ratio that the hinge divides its own edge in. */
const spotBelow = (piece: Piece, edge: string, own: Spot, hinge: Point): Spot => {
  const index = turnInOutline(piece, edge);
  const walk = walked(piece);
  const { path } = walk[index]!;
  if (nearest(path, hinge).distance <= sameSpotTolerance) throw hingeOnTarget(edge);
  // Down is a quarter turn from the right.
  const down = bearing(Math.PI / 2 + turnAt(piece, walk[own.index]!.edge.name, hinge));
  const met = metBy(path, hinge, down);
  if (met !== undefined) return { index, at: settled(path, met) };
  // The stretch of its own edge that follows the hinge lies on the same side of the slash as the stretch before the target.
  const length = pathLength(walk[own.index]!.path);
  return { index, at: settled(path, pathLength(path) * (1 - own.at / length)) };
};

const metBy = (path: Path, from: Point, direction: Point): number | undefined => {
  const [hit] = crossingsWithRay(path, from, direction).filter(({ ahead }) => ahead > sameSpotTolerance);
  if (hit) return hit.at;
  const isMet = (end: Point): boolean => {
    const way = minus(end, from);
    return Math.abs(cross(direction, way)) <= sameSpotTolerance && dot(direction, way) > 0;
  };
  if (isMet(startOf(path))) return 0;
  return isMet(endOf(path)) ? pathLength(path) : undefined;
};

const hingeOnTarget = (edge: string): Problem =>
  new Problem("hinge-on-target", `The hinge lies on ${edge}, the edge that is to open.`, {
    hint: "Name another edge to open, or hinge the slash elsewhere.",
  });

const spotsOfPlace = (piece: Piece, place: Point, hinge: Point, units: Units): Spot[] => {
  const walk = walked(piece);
  const found = spotsAt(piece, place);
  if (found.length === 0) {
    const off = Math.min(...walk.map(({ path }) => nearest(path, place).distance));
    throw new Problem(
      "target-off-outline",
      `The place that the slash runs to lies ${lengthIn(off, units)} off the outline.`,
      {
        hint: "Let it run to an edge, or to a place on one.",
      },
    );
  }
  const others = found.filter(({ index }) => nearest(walk[index]!.path, hinge).distance > sameSpotTolerance);
  if (others.length === 0) {
    const { name } = walk[found[0]!.index]!.edge;
    throw new Problem(
      "target-on-hinge-edge",
      `The slash would run from ${name} to ${name}: hinge and target lie on one edge.`,
      {
        hint: "Let it run to a place on another edge.",
      },
    );
  }
  const hems = others.filter(({ index }) => walk[index]!.edge.role === "hem");
  if (others.length < 2 || hems.length === 1) return hems.length === 1 ? hems : others;
  // In the order of the outline: first the edge that ends at the corner.
  return [...others].sort((a, b) => (a.at > 0 ? 0 : 1) - (b.at > 0 ? 0 : 1));
};

const refuseBadCut = (piece: Piece, whole: Path, cut: Path, { hinge }: SlashAsked, units: Units): void => {
  const [from, to] = [startOf(cut), endOf(cut)];
  if (sameSpot(from, to)) {
    throw new Problem("slash-too-short", "The hinge and the place that the slash runs to are one.", {
      hint: "Let the slash run to another edge.",
    });
  }
  const middle = between(from, to, 0.5);
  const beside = walked(piece).find(({ path }) => runsAlong(path, from, to));
  if (beside) {
    throw new Problem("slash-on-outline", `The slash would run along ${beside.edge.name}, and cut nothing.`, {
      hint: `Add \`along ${beside.edge.name}\` to open the piece there, or let the slash run elsewhere.`,
    });
  }
  const crossed = crossings(whole, cut).find(({ point }) => !sameSpot(point, from) && !sameSpot(point, to));
  if (crossed) {
    throw new Problem(
      "slash-crosses-outline",
      `The slash crosses ${edgeAt(piece, crossed.point).edge.name}, ${lengthIn(distance(from, crossed.point), units)} from its hinge.`,
      { hint: "Let it run to a place that it reaches inside the piece." },
    );
  }
  if (!contains(whole, middle)) {
    throw new Problem("slash-leaves-piece", `The slash runs outside of ${piece.name}.`, {
      hint:
        hinge.name === undefined
          ? "Hinge it elsewhere, or let it run to another place."
          : `Hinge it elsewhere than at ${hinge.name}, or let it run to another place.`,
    });
  }
};

const runsAlong = (path: Path, from: Point, to: Point): boolean =>
  [0.25, 0.5, 0.75].every((share) => nearest(path, between(from, to, share)).distance <= sameSpotTolerance);

const edgeAt = (piece: Piece, point: Point): Walked =>
  [...walked(piece)].sort((a, b) => nearest(a.path, point).distance - nearest(b.path, point).distance)[0]!;

/** The slash that runs on an edge itself, from one of its ends, or from a place on it, to an end. */
const slashAlong = (
  piece: Piece,
  { hinge: { name }, target }: SlashAsked,
  along: string,
  found: readonly Spot[],
): Slash => {
  const index = turnInOutline(piece, along);
  const walk = walked(piece);
  const { path } = walk[index]!;
  const length = pathLength(path);
  const own = found.find((spot) => spot.index === index);
  if (!own) {
    throw new Problem("along-from-end", `A slash along ${along} is hinged on it, and the hinge lies elsewhere.`, {
      hint: `Hinge it at ${along}.start or ${along}.end.`,
    });
  }
  const isNext =
    "edge" in target ? target.edge === walk[(index + 1) % walk.length]!.edge.name : sameSpot(target.place, endOf(path));
  const forward = own.at === 0 || (own.at < length && isNext);
  const next = (index + (forward ? 1 : walk.length - 1)) % walk.length;
  const far = forward ? endOf(path) : startOf(path);
  const opened = walk[next]!;
  const isThere = "edge" in target ? target.edge === opened.edge.name : sameSpot(target.place, far);
  if (!isThere || next === index) {
    throw new Problem(
      "along-away-from-target",
      `A slash along ${along} from this hinge ends at ${opened.edge.name}, and not where it is to run to.`,
      { hint: `Write \`to ${opened.edge.name}\`, or hinge it at the other end of ${along}.` },
    );
  }
  const targetAt: Spot = { index: next, at: forward ? 0 : pathLength(opened.path) };
  const other = found.find((spot) => spot.index !== index);
  const way = forward ? part(path, own.at, length) : reversed(part(path, 0, own.at));
  return {
    hinge: startOf(way),
    hingeAt: onward(piece, own),
    hingeEdge: other ? walk[other.index]!.edge.name : along,
    hingeOpensAt: other ?? own,
    hingeName: name,
    target: far,
    targetsAt: [targetAt],
    path: way,
    along: index,
    alongAhead: forward,
  };
};
