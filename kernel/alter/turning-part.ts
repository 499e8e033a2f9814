// One part of a slashed piece turns about the hinge as a stiff sheet, and the piece is put together again: with a bridge
// across the opening, or with the cloth of a wedge taken out.
import type { Where } from "../../grammar/diagnostic.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { crossings, selfCrossingsOfLoop } from "../geometry/intersect.ts";
import { endOf, joined, line, mapped, reversed, startOf } from "../geometry/path.ts";
import { between, distance, type Point, sameSpot } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { boundary, sense, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Line } from "../step.ts";
import type { Edge, Grain, Hinge, Label, Piece } from "../working.ts";
import { bridge, type Fate, laidOut, type Recut, turned, turnOf } from "./recut.ts";
import type { Slash } from "./slash.ts";
import { turnAlong, turnsOf } from "./turned.ts";
import { turnedParts } from "./turned-parts.ts";
import { isOnSlash, type Side, sideOfPoint, stretchesOf } from "./two-parts.ts";
import { type Wedge, wedgeOf } from "./wedge.ts";

/** Which way the piece is to turn about the slash. */
export interface Turning {
  readonly slash: Slash;
  readonly moving: Side;
  /** By how much, radians, always positive. */
  readonly angle: number;
}

/** The piece with the part turned away, and the opening bridged straight. */
export const opened = (piece: Piece, { slash, moving, angle }: Turning, { where }: Line): Piece => {
  const fateOf = (point: Point): Fate => {
    if (sameSpot(point, slash.hinge) || sameSpot(point, slash.target) || isOnSlashInside(slash, point)) return "stays";
    return sideOfPoint(piece, slash, point) === moving ? "turns" : "stays";
  };
  const now = putTogether({
    piece,
    slash,
    moving,
    turn: turnAway(piece, moving) * angle,
    stretches: stretchesOf(piece, slash),
    fateOf,
    aheadEnd: slash.target,
    behindStart: slash.target,
    between: (from, to) => bridge(slash.hinge, from, to),
    cuts: [slash.path],
  });
  return uncrossed(withHinge(now, slash, where), piece, "This opening makes the outline cross itself.");
};

/** The piece with a wedge beside the slash taken out, and the part turned in to close it. */
export const foldedAway = (piece: Piece, turning: Turning, { where, units }: Line): Piece => {
  const { slash, moving, angle } = turning;
  const away = turnAway(piece, moving) * angle;
  const wedge = wedgeOf(piece, slash, moving, away, units);
  const fateOf = fateBeside(piece, slash, moving, wedge);
  const now = putTogether({
    piece,
    slash,
    moving,
    turn: -away,
    stretches: wedge.left,
    fateOf,
    aheadEnd: wedge.side === "ahead" ? wedge.corner : slash.target,
    behindStart: wedge.side === "behind" ? wedge.corner : slash.target,
    // A step this small is rounding, and joining moves the ends onto each other.
    between: (from, to) => (distance(from, to) <= rounding ? [] : [line(from, to)]),
    cuts: [slash.path, wedge.cut],
  });
  refuseLoss(piece, fateOf);
  return uncrossed(withHinge(now, slash, where), piece, "Folding this away makes the outline cross itself.");
};

const rounding = 1e-6;

// Seen from the hinge the part ahead lies to the left of the slash when the outline runs clockwise: its way out is
// anticlockwise.
const turnAway = (piece: Piece, moving: Side): number => (moving === "ahead" ? -sense(piece) : sense(piece));

// A slash along an edge has that edge's places beside it, which go with the edge.
const isOnSlashInside = (slash: Slash, point: Point): boolean => slash.along === undefined && isOnSlash(slash, point);

const fateBeside = (piece: Piece, slash: Slash, moving: Side, wedge: Wedge): ((point: Point) => Fate) => {
  const fate = (side: Side | undefined): Fate => (side === moving ? "turns" : "stays");
  return (point) => {
    if (sameSpot(point, slash.hinge)) return "stays";
    if (sameSpot(point, wedge.corner)) return fate(wedge.side);
    // Where the piece loses cloth beside an edge that turns in, the corner goes with the edge.
    if (sameSpot(point, slash.target)) return wedge.side === moving ? "stays" : "turns";
    if (isOnSlashInside(slash, point)) return "stays";
    if (wedge.holds(point)) return "gone";
    return fate(sideOfPoint(piece, slash, point));
  };
};

const refuseLoss = (piece: Piece, fateOf: (point: Point) => Fate): void => {
  const place = [...piece.places.values()].find(({ point }) => fateOf(point) === "gone");
  const what = place
    ? place.name
    : piece.notches.some(({ point }) => fateOf(point) === "gone")
      ? "A notch"
      : piece.drills.some(({ point }) => fateOf(point) === "gone")
        ? "A drill hole"
        : undefined;
  if (what === undefined) return;
  throw new Problem("place-folded-away", `${what} lies in the cloth that would be taken out.`, {
    hint: "Fold less away, or slash on its other side.",
  });
};

const putTogether = (recut: Recut): Piece => {
  const { piece, fateOf } = recut;
  const moved = <T extends { readonly point: Point }>(thing: T): T =>
    fateOf(thing.point) === "turns" ? { ...thing, point: turned(recut, thing.point) } : thing;
  const grain = piece.grain && turnedGrain(recut, piece.grain);
  return {
    ...piece,
    edges: new Map([...piece.edges].map(([name, edge]) => [name, recutEdge(recut, edge)])),
    places: new Map([...piece.places].map(([name, place]) => [name, moved(place)])),
    notches: piece.notches.map(moved),
    drills: piece.drills.map(moved),
    labels: piece.labels.map((label) => turnedLabel(recut, label)),
    hinges: piece.hinges.filter(({ point }) => fateOf(point) !== "gone").map(moved),
    turned: turnedParts(recut),
    ...(grain && { grain }),
  };
};

const turnedGrain = (recut: Recut, grain: Grain): Grain => {
  if (grain.kind === "along" || recut.fateOf(between(grain.from, grain.to, 0.5)) === "stays") return grain;
  return { ...grain, from: turned(recut, grain.from), to: turned(recut, grain.to) };
};

// A label whose place is taken out stands wherever the drawing finds room.
const turnedLabel = (recut: Recut, label: Label): Label => {
  const { at, ...rest } = label;
  if (at === undefined || recut.fateOf(at) === "stays") return label;
  return recut.fateOf(at) === "turns" ? { ...rest, at: turned(recut, at) } : rest;
};

const recutEdge = (recut: Recut, edge: Edge): Edge => {
  const index = recut.piece.outline.findIndex((part) => part.edge === edge.name);
  return index < 0 ? recutInnerLine(recut, edge) : recutOutlineEdge(recut, edge, index);
};

const recutOutlineEdge = (recut: Recut, edge: Edge, index: number): Edge => {
  const laid = laidOut(recut, index);
  if (
    laid.every(
      ({ was }) => was !== undefined && was.path === walked(recut.piece)[index]!.path && turnOf(recut, was) === 0,
    )
  )
    return edge;
  const path = joined(laid.map((each) => each.path));
  if (path.length === 0) {
    throw new Problem("cloth-too-narrow", `Nothing of ${edge.name} would be left.`, { hint: "Fold less away." });
  }
  return { ...edge, path: recut.piece.outline[index]!.turned ? reversed(path) : path };
};

// A line inside the piece is cut where the slash crosses it, and each stretch goes with its part.
const recutInnerLine = (recut: Recut, edge: Edge): Edge => {
  const { fateOf, cuts, between: filling } = recut;
  const length = pathLength(edge.path);
  const crossed = cuts
    .flatMap((cut) => crossings(edge.path, cut).map(({ onFirst }) => onFirst))
    .filter((at) => at > rounding && at < length - rounding)
    .sort((a, b) => a - b);
  const ends = [0, ...crossed.filter((at, index) => index === 0 || at - crossed[index - 1]! > rounding), length];
  const stretches = ends.slice(1).map((to, index) => {
    const from = ends[index]!;
    return { path: part(edge.path, from, to), fate: fateOf(pointAt(edge.path, (from + to) / 2)) };
  });
  if (stretches.every(({ fate }) => fate === "stays")) return edge;
  const kept = stretches
    .filter(({ fate }) => fate !== "gone")
    .map(({ path, fate }) => (fate === "turns" ? mapped(path, (point) => turned(recut, point)) : path));
  if (kept.length === 0) {
    throw new Problem("place-folded-away", `The whole line ${edge.name} lies in the cloth that would be taken out.`, {
      hint: "Fold less away, or slash on its other side.",
    });
  }
  const paths = kept.flatMap((path, index) => {
    const before = kept[index - 1];
    const apart = before !== undefined && distance(endOf(before), startOf(path)) > rounding;
    return apart ? [filling(endOf(before), startOf(path)), path] : [path];
  });
  return { ...edge, path: joined(paths) };
};

// Inside an edge a hinge leaves a corner, for as long as the cloth on its two sides has turned by different amounts.
const withHinge = (piece: Piece, slash: Slash, drawnBy: Where): Piece => {
  const others = piece.hinges.filter(({ point }) => !sameSpot(point, slash.hinge));
  if (slash.hingeAt.at === 0) return { ...piece, hinges: others };
  const { edge } = walked(piece)[slash.hingeAt.index]!;
  const turns = turnsOf(piece, edge.name);
  const at = pathLength(edge.path) - slash.hingeAt.at;
  const hingeAt = piece.outline[slash.hingeAt.index]!.turned ? at : slash.hingeAt.at;
  const differs = Math.abs(turnAlong(turns, hingeAt + beside) - turnAlong(turns, hingeAt - beside)) > noTurn;
  const hinge: Hinge = { edge: edge.name, point: slash.hinge, drawnBy };
  return { ...piece, hinges: differs ? [...others, hinge] : others };
};

// Just beside a spot, in mm, and a turn too small to be one, in radians.
const beside = 0.005;
const noTurn = 1e-9;

const uncrossed = (now: Piece, before: Piece, message: string): Piece => {
  const crossed = (piece: Piece): boolean => selfCrossingsOfLoop(boundary(piece) ?? []).length > 0;
  if (!crossed(now) || crossed(before)) return now;
  throw new Problem("outline-crosses-itself", message, { hint: "Take a smaller amount, or move the slash." });
};
