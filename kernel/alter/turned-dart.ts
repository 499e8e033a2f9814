// A dart, or a share of it, goes to another place of the outline: the part between the old mouth and the new place turns
// about the tip as one stiff sheet, so that the angle is kept exactly. What opens there is a new mouth, or flare.
import { dartMeasures } from "../dart-measures.ts";
import { contains } from "../geometry/area.ts";
import { nearest } from "../geometry/nearest.ts";
import type { Path, Span } from "../geometry/path.ts";
import { distance, type Point, sameSpot } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { sin } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Line } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Dart, Piece, Units } from "../working.ts";
import { cutNames, cutOut, isOnMouth, sewnUp } from "./dart-cut-out.ts";
import { closedBoundary, spotsAt } from "./outline-spot.ts";
import { slashOn } from "./slash.ts";
import { stayingPart } from "./staying-part.ts";
import { withStraightFolds } from "./straight-folds.ts";
import { aboutHinge, laidTouching, turnAway, uncrossed } from "./turning-part.ts";
import { otherSide } from "./two-parts.ts";
import { withDart } from "./with-dart.ts";

/** The piece with the dart turned away, and the straight opening that came of it. */
export interface TurnedDart {
  readonly piece: Piece;
  /** The edge that opened, and the ends of the opening in the direction in which that edge was drafted. */
  readonly edge: string;
  readonly first: Point;
  readonly second: Point;
  /** From one to the other, mm. */
  readonly across: number;
}

/** Where a dart is to open, and the slot of the step's sentence that says so, which of its values if it takes several. */
export interface Opening {
  readonly point: Point;
  readonly slot: string;
  readonly value?: number;
}

/** Turns an angle, radians, of a dart to a place of the outline; the angle that is left, if any, stays a dart. */
export const turnedDart = (piece: Piece, dart: Dart, to: Opening, angle: number, line: Line): TurnedDart => {
  refuseBadPlace(piece, dart, to, line.units);
  const closes = dartMeasures(dart).angle - angle <= noAngle;
  const cut = cutOut(piece, dart);
  const names = cutNames(dart);
  const hinge = { kind: "place", point: dart.tip, on: names.first } as const;
  const found = slashOn(cut, { hinge, target: { place: to.point }, along: undefined }, line.units);
  const moving = otherSide(stayingPart(cut, found, undefined));
  const slash =
    moving === "behind" && found.targetsAt[1] ? { ...found, targetsAt: [found.targetsAt[1]] as const } : found;
  const turn = turnAway(cut, moving) * angle;
  const laying = {
    slash,
    moving,
    motion: aboutHinge(slash, turn),
    hinge: "stays",
    target: "opens",
    inside: 0,
  } as const;
  const laid = laidTouching(cut, laying, line);
  const target = walked(cut)[slash.targetsAt[0].index]!.edge.name;
  const ends = [slash.target, rotated(slash.target, slash.hinge, turn)] as const;
  const opening = laid.edges.get(target)!.path.find((span) => isBetween(span, ends))!;
  const now = sewnUp(laid, dart, closes);
  const recapped = closes ? now : withDart(now, now.darts.get(dart.name)!);
  const message = `Turned there, ${dart.name} makes the outline cross itself.`;
  return {
    piece: withStraightFolds(uncrossed(recapped, piece, message), piece),
    edge: target === names.beyond ? dart.edge : target,
    first: opening.start,
    second: opening.end,
    across: 2 * distance(slash.target, slash.hinge) * sin(angle / 2),
  };
};

/** What is left of a dart under this angle, radians, is nothing. */
const noAngle = 1e-9;

const isBetween = ({ start, end, kind }: Span, [one, other]: readonly [Point, Point]): boolean =>
  kind === "line" && ((isThere(start, one) && isThere(end, other)) || (isThere(start, other) && isThere(end, one)));

const isThere = (a: Point, b: Point): boolean => sameSpot(a, b, 1e-6);

const refuseBadPlace = (piece: Piece, dart: Dart, { point: to, ...blame }: Opening, units: Units): void => {
  const whole = closedBoundary(piece, units);
  if (!contains(whole, dart.tip)) {
    throw new Problem("dart-outside", `${dart.name} would turn about a place outside of ${piece.name}.`, {
      hint: "Turn it about a place inside the piece.",
      slot: "about",
    });
  }
  if (isOnMouth(piece, dart, to)) {
    throw new Problem("dart-onto-itself", `${dart.name} is there already: the place lies on its own mouth.`, {
      hint: "Name a place elsewhere on the outline.",
      ...blame,
    });
  }
  if (spotsAt(piece, to).length === 0) {
    const off = nearest(whole, to).distance;
    throw new Problem(
      "dart-off-outline",
      `A dart opens on the outline of ${piece.name}, and this place lies ${lengthIn(off, units)} off it.`,
      { hint: "Say where along an edge, as in `side at 6 cm`.", ...blame },
    );
  }
};

/** The piece with a dart in an opening that a turn has left, shaped so that it folds shut. */
export const withDartIn = (
  { piece, edge, first, second }: TurnedDart,
  dart: Omit<Dart, "edge" | "first" | "second">,
): Piece => {
  const own: Dart = { ...dart, edge, first, second };
  const was = piece.edges.get(edge)!;
  // The mouth is no flare: nothing swings about the tip once the dart is sewn.
  const path: Path = was.path.map((span) =>
    isBetween(span, [first, second]) && span.kind === "line"
      ? { kind: "line", start: span.start, end: span.end }
      : span,
  );
  return withDart({ ...piece, edges: new Map(piece.edges).set(edge, { ...was, path }) }, own);
};
