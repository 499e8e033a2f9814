// One part of a slashed piece is laid anew as a stiff sheet, and the piece is put together again: with bridges across
// what opens, and without the cloth where it closes.
import type { Where } from "../../grammar/diagnostic.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { crossings, selfCrossingsOfLoop } from "../geometry/intersect.ts";
import { endOf, joined, line, mapped, type Path, reversed, startOf } from "../geometry/path.ts";
import { between, cross, distance, minus, type Point, sameSpot, size } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { boundary, sense, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Line } from "../step.ts";
import type { Edge, Grain, Hinge, Label, Piece } from "../working.ts";
import type { AllBut } from "./all-but.ts";
import { type Motion, pivotOf, taken } from "./motion.ts";
import { movedDarts } from "./moved-darts.ts";
import type { Spot } from "./outline-spot.ts";
import { bridge, type Fate, laidOut, moved, type Recut, type SlashEnd } from "./recut.ts";
import type { Slash } from "./slash.ts";
import { turnAlong, turnsOf } from "./turned.ts";
import { turnedParts } from "./turned-parts.ts";
import { isOnSlash, type Side, sideOfPoint, stretchesOf } from "./two-parts.ts";
import { type Wedge, wedgeOf } from "./wedge.ts";

/** What becomes of an end of the slash: its two sides part, or close over cloth that is taken out, or stay together. */
export type EndOf = "opens" | "closes" | "stays";

/** How the two parts of a slashed piece are laid anew. */
export interface Laying {
  readonly slash: Slash;
  readonly moving: Side;
  readonly motion: Motion;
  readonly hinge: EndOf;
  readonly target: EndOf;
  /** How far along the slash, mm, its two sides cross, where one end opens and the other closes; else anywhere inside. */
  readonly inside: number;
}

/** Which way the piece is to turn about the slash. */
export interface Turning {
  readonly slash: Slash;
  readonly moving: Side;
  /** By how much, radians, always positive. */
  readonly angle: number;
}

/** The piece with the part turned away, and the opening bridged straight. */
export const opened = (piece: Piece, { slash, moving, angle }: Turning, line: Line): Piece =>
  laidAnew(
    piece,
    {
      slash,
      moving,
      motion: aboutHinge(slash, turnAway(piece, moving) * angle),
      hinge: "stays",
      target: "opens",
      inside: 0,
    },
    line,
  );

/** The piece with a wedge beside the slash taken out, and the part turned in to close it. */
export const foldedAway = (piece: Piece, { slash, moving, angle }: Turning, line: Line): Piece =>
  laidAnew(
    piece,
    {
      slash,
      moving,
      motion: aboutHinge(slash, -turnAway(piece, moving) * angle),
      hinge: "stays",
      target: "closes",
      inside: 0,
    },
    line,
  );

/** The turn about the hinge of a slash, radians clockwise. */
export const aboutHinge = ({ hinge }: Slash, angle: number): Motion => ({ kind: "turn", pivot: hinge, angle });

/** The piece with the moving part laid anew; openings are bridged straight, and cloth where an end closes is taken out. */
export const laidAnew = (piece: Piece, laying: Laying, line: Line): Piece => {
  const closes = laying.hinge === "closes" || laying.target === "closes";
  const message = closes
    ? "Folding this away makes the outline cross itself."
    : "This opening makes the outline cross itself.";
  return uncrossed(laidTouching(piece, laying, line), piece, message);
};

/** The same where the outline may come to lie along itself, as the legs of a dart do that closes. */
export const laidTouching = (piece: Piece, laying: Laying, { where, units }: Line): Piece => {
  const { slash, moving, motion, hinge, target, inside } = laying;
  const closes = hinge === "closes" || target === "closes";
  const wedge = closes
    ? wedgeOf(
        piece,
        slash,
        moving,
        { motion, atHinge: hinge === "closes", atTarget: target === "closes", inside },
        units,
      )
    : undefined;
  const fateOf = fates(piece, slash, moving, wedge);
  const bridged = (from: Point, to: Point): Path => bridge(pivotOf(motion), from, to);
  const stepped = (from: Point, to: Point): Path => [line(from, to)];
  const end = (point: Point, at: Spot, corner: Point | undefined, becomes: EndOf): SlashEnd => ({
    point,
    at,
    ahead: wedge?.side === "ahead" ? corner! : point,
    behind: wedge?.side === "behind" ? corner! : point,
    between: becomes === "opens" ? bridged : stepped,
  });
  const now = putTogether({
    piece,
    slash,
    moving,
    motion,
    stretches: wedge ? wedge.left : stretchesOf(piece, slash),
    fateOf,
    atHinge: end(slash.hinge, slash.hingeOpensAt ?? slash.hingeAt, wedge?.hingeCorner, hinge),
    atTarget: end(slash.target, slash.targetsAt[0], wedge?.corner, target),
    between: hinge === "opens" || target === "opens" ? bridged : stepped,
    cuts: wedge ? [slash.path, wedge.cut] : [slash.path],
  });
  if (wedge) refuseLoss(piece, fateOf);
  return withHinge(now, laying, where);
};

const rounding = 1e-6;

// Seen from the hinge the part ahead lies to the left of the slash when the outline runs clockwise: its way out is
// anticlockwise.
/** Which way, 1 clockwise on the page and -1 anticlockwise, the moving part turns about the hinge to leave the slash. */
export const turnAway = (piece: Piece, moving: Side): number => (moving === "ahead" ? -sense(piece) : sense(piece));

// A slash along an edge has that edge's places beside it, which go with the edge.
const isOnSlashInside = (slash: Slash, point: Point): boolean => slash.along === undefined && isOnSlash(slash, point);

const fates = (piece: Piece, slash: Slash, moving: Side, wedge: Wedge | undefined): ((point: Point) => Fate) => {
  const fate = (side: Side | undefined): Fate => (side === moving ? "moves" : "stays");
  return (point) => {
    if (sameSpot(point, slash.hinge)) return "stays";
    if (wedge && !sameSpot(wedge.hingeCorner, slash.hinge) && sameSpot(point, wedge.hingeCorner))
      return fate(wedge.side);
    if (wedge && !sameSpot(wedge.corner, slash.target) && sameSpot(point, wedge.corner)) return fate(wedge.side);
    // Where the piece loses cloth beside an edge that turns in, the corner goes with the edge.
    if (sameSpot(point, slash.target)) return wedge && wedge.side !== moving ? "moves" : "stays";
    if (isOnSlashInside(slash, point)) return "stays";
    if (wedge?.holds(point)) return "gone";
    return fate(sideOfPoint(piece, slash, point));
  };
};

const refuseLoss = (piece: Piece, fateOf: (point: Point) => Fate): void => {
  const isGone = ({ point }: { readonly point: Point }): boolean => fateOf(point) === "gone";
  const place = [...piece.places.values()].find(isGone);
  const what = place
    ? place.name
    : piece.notches.some(isGone)
      ? "A notch"
      : piece.drills.some(isGone)
        ? "A drill hole"
        : piece.takeUps.some(({ from, to }) => isGone({ point: from }) || isGone({ point: to }))
          ? "A pleat, or what is gathered,"
          : undefined;
  if (what === undefined) return;
  throw new Problem("place-folded-away", `${what} lies in the cloth that would be taken out.`, {
    hint: "Fold less away, or slash on its other side.",
  });
};

const putTogether = (recut: Recut): Piece => {
  const { piece, fateOf } = recut;
  const carried = <T extends { readonly point: Point }>(thing: T): T =>
    fateOf(thing.point) === "moves" ? { ...thing, point: moved(recut, thing.point) } : thing;
  const grain = piece.grain && movedGrain(recut, piece.grain);
  const all: AllBut<WithoutPoints | "grain"> = {
    edges: new Map([...piece.edges].map(([name, edge]) => [name, recutEdge(recut, edge)])),
    places: new Map([...piece.places].map(([name, place]) => [name, carried(place)])),
    notches: piece.notches.map(carried),
    drills: piece.drills.map(carried),
    darts: movedDarts(recut),
    takeUps: piece.takeUps.map(({ from, to, ...rest }) => ({
      ...rest,
      from: carried({ point: from }).point,
      to: carried({ point: to }).point,
    })),
    labels: piece.labels.map((label) => movedLabel(recut, label)),
    hinges: piece.hinges.filter(({ point }) => fateOf(point) !== "gone").map(carried),
    turned: turnedParts(recut),
  };
  return { ...piece, ...all, ...(grain && { grain }) };
};

/** These speak of the piece by names and amounts. */
type WithoutPoints = "name" | "source" | "from" | "kept" | "outline" | "allowances" | "keeps" | "doubtful" | "drawnBy";

const movedGrain = (recut: Recut, grain: Grain): Grain => {
  if (grain.kind === "along") return grain;
  const { from, to } = grain;
  if (runsAlongGrain(recut.motion, minus(to, from))) {
    // Cloth that is parted along its grain makes the line longer: each end goes with its own part.
    const end = (point: Point): Point => (recut.fateOf(point) === "stays" ? point : moved(recut, point));
    return { ...grain, from: end(from), to: end(to) };
  }
  if (recut.fateOf(between(from, to, 0.5)) === "stays") return grain;
  return { ...grain, from: moved(recut, from), to: moved(recut, to) };
};

const runsAlongGrain = (motion: Motion, grain: Point): boolean =>
  motion.kind === "shift" && Math.abs(cross(motion.by, grain)) <= noTurn * size(motion.by) * size(grain);

// A label whose place is taken out stands wherever the drawing finds room.
const movedLabel = (recut: Recut, label: Label): Label => {
  const { at, ...rest } = label;
  if (at === undefined || recut.fateOf(at) === "stays") return label;
  return recut.fateOf(at) === "moves" ? { ...rest, at: moved(recut, at) } : rest;
};

const recutEdge = (recut: Recut, edge: Edge): Edge => {
  const index = recut.piece.outline.findIndex((part) => part.edge === edge.name);
  return index < 0 ? recutInnerLine(recut, edge) : recutOutlineEdge(recut, edge, index);
};

const recutOutlineEdge = (recut: Recut, edge: Edge, index: number): Edge => {
  const laid = laidOut(recut, index);
  const { path: whole } = walked(recut.piece)[index]!;
  if (laid.every(({ was }) => was !== undefined && was.path === whole && was.side !== recut.moving)) return edge;
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
    .map(({ path, fate }) => (fate === "moves" ? mapped(path, (point) => moved(recut, point)) : path));
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

// A slash leaves corners: inside the edge that it is hinged in, for as long as the cloth on its two sides has turned by
// different amounts, and at both ends of a bridge with no pivot of its own on that edge.
const withHinge = (piece: Piece, laying: Laying, drawnBy: Where): Piece => {
  const { slash, motion, hinge, target } = laying;
  const isLevel = motion.kind === "shift";
  const closed = isLevel && target === "closes" ? [slash.hinge, slash.target] : [slash.hinge];
  const others = piece.hinges.filter(({ point }) => !closed.some((each) => sameSpot(point, each)));
  const bothSides = (point: Point, spot: Spot): Hinge[] =>
    [point, taken(point, motion)].map((each) => ({ edge: piece.outline[spot.index]!.edge, point: each, drawnBy }));
  const opened = [
    ...(hinge === "opens" ? bothSides(slash.hinge, slash.hingeOpensAt ?? slash.hingeAt) : []),
    ...(target === "opens" && isLevel ? bothSides(slash.target, slash.targetsAt[0]) : []),
  ];
  if (opened.length > 0 || slash.hingeAt.at === 0) return { ...piece, hinges: [...others, ...opened] };
  const { edge } = walked(piece)[slash.hingeAt.index]!;
  const turns = turnsOf(piece, edge.name);
  const at = pathLength(edge.path) - slash.hingeAt.at;
  const hingeAt = piece.outline[slash.hingeAt.index]!.turned ? at : slash.hingeAt.at;
  const differs = Math.abs(turnAlong(turns, hingeAt + beside) - turnAlong(turns, hingeAt - beside)) > noTurn;
  const corner: Hinge = { edge: edge.name, point: slash.hinge, drawnBy };
  return { ...piece, hinges: differs ? [...others, corner] : others };
};

// Just beside a spot, in mm, and a turn too small to be one, in radians.
const beside = 0.005;
const noTurn = 1e-9;

/** The piece as it is now; a Problem with this message where its outline crosses itself and did not before. */
export const uncrossed = (now: Piece, before: Piece, message: string): Piece => {
  const crossed = (piece: Piece): boolean => selfCrossingsOfLoop(boundary(piece) ?? []).length > 0;
  if (!crossed(now) || crossed(before)) return now;
  throw new Problem("outline-crosses-itself", message, { hint: "Take a smaller amount, or move the slash." });
};
