// A dart with its cloth cut out of the piece: its legs become edges of the outline, and its tip a corner that a slash can
// be hinged at. Once the mouth has closed, all of it or in part, the piece is sewn up again.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { linesMeet } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, joined, type Path, startOf, straight } from "../geometry/path.ts";
import { between, distance, minus, type Point, sameSpot, sameSpotTolerance } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { hiddenName } from "../hidden-names.ts";
import { walked } from "../outline.ts";
import type { Dart, Edge, OutlinePart, Piece, Turned } from "../working.ts";
import { followed } from "./followed.ts";
import { spotsAt } from "./outline-spot.ts";
import { turnAlong, turnsOf, withoutRepeats } from "./turned.ts";

/** The names that the parts of the outline go by while a dart is cut out; names hidden in blocks count from 1. */
export interface CutNames {
  readonly first: string;
  readonly second: string;
  /** The stretch of the dart's edge beyond the mouth; the stretch before it keeps the name of the edge. */
  readonly beyond: string;
}

export const cutNames = ({ name, edge }: Dart): CutNames => ({
  first: hiddenName(name, 0),
  second: hiddenName(hiddenName(name, 0), 0),
  beyond: hiddenName(edge, 0),
});

/** The piece without the dart and its cloth; what lay on that cloth lies on the first leg, as far toward the edge as it was. */
export const cutOut = (piece: Piece, dart: Dart): Piece => {
  const edge = piece.edges.get(dart.edge)!;
  const { path } = edge;
  const length = pathLength(path);
  const [from, to] = [nearest(path, dart.first).at, nearest(path, dart.second).at];
  const names = cutNames(dart);
  const before = from > nothing ? part(path, 0, from) : undefined;
  const beyond = length - to > nothing ? part(path, to, length) : undefined;
  const legs: [string, Path][] = [
    [names.first, straight(before ? endOf(before) : dart.first, dart.tip)],
    [names.second, straight(dart.tip, beyond ? startOf(beyond) : dart.second)],
  ];
  const stretches: [string, Path][] = [
    ...(before ? [[edge.name, before] as [string, Path]] : []),
    ...legs,
    ...(beyond ? [[names.beyond, beyond] as [string, Path]] : []),
  ];
  const edges = new Map(piece.edges);
  for (const [name, along] of stretches) {
    const isLeg = name === names.first || name === names.second;
    edges.set(name, { ...edge, name, path: along, role: isLeg ? "seam" : edge.role });
  }
  const { darts, ...rest } = offTheCloth(piece, dart, part(path, from, to));
  return {
    ...rest,
    edges,
    outline: outlineWith(piece, edge.name, stretches),
    darts: new Map([...darts].filter(([name]) => name !== dart.name)),
    turned: turnedApart(piece, dart, from, to),
  };
};

const nothing = 1e-9;

// The outline still begins with the start of its first edge as drafted: that settles which part of a piece stays.
const outlineWith = (piece: Piece, name: string, stretches: readonly [string, Path][]): OutlinePart[] => {
  const parts = piece.outline.flatMap((each) => (each.edge === name ? inOrder(stretches, each) : [each]));
  const [first] = piece.outline;
  if (first?.edge !== name || !first.turned) return parts;
  const start = stretches.length - 1;
  return [...parts.slice(start), ...parts.slice(0, start)];
};

const inOrder = (stretches: readonly [string, Path][], { turned }: OutlinePart): OutlinePart[] => {
  const parts = stretches.map(([edge]) => ({ edge, turned }));
  return turned ? parts.reverse() : parts;
};

/** Places, notches, drill holes and labels that lie on the cloth of the dart, laid on its first leg. */
const offTheCloth = (piece: Piece, dart: Dart, mouth: Path): Piece => {
  const { first, second, tip } = dart;
  const cloth = joined([straight(tip, first), mouth, straight(second, tip)]);
  const legs = joined([straight(first, tip), straight(tip, second)]);
  const laid = (point: Point): Point => {
    if (nearest(legs, point).distance <= sameSpotTolerance) return point;
    const isOn = nearest(mouth, point).distance <= sameSpotTolerance || contains(cloth, point);
    if (!isOn) return point;
    const across = linesMeet(tip, minus(point, tip), first, minus(second, first));
    if (!across || distance(point, across) <= onEdge) return first;
    return between(tip, first, Math.min(1, distance(tip, point) / distance(tip, across)));
  };
  const carried = <T extends { readonly point: Point }>(thing: T): T => ({ ...thing, point: laid(thing.point) });
  return {
    ...piece,
    places: new Map([...piece.places].map(([name, place]) => [name, carried(place)])),
    notches: piece.notches.map(carried),
    drills: piece.drills.map(carried),
    labels: piece.labels.map((label) => (label.at ? { ...label, at: laid(label.at) } : label)),
    hinges: piece.hinges.map(carried),
    takeUps: piece.takeUps.map((takeUp) => ({ ...takeUp, from: laid(takeUp.from), to: laid(takeUp.to) })),
  };
};

// This near to the line between the leg ends, mm, a place is one of the edge, which may be curved.
const onEdge = 1;

// Each stretch has its own account of how far its cloth has turned, and so have the legs, that a slash may go down from.
const turnedApart = (piece: Piece, dart: Dart, from: number, to: number): Turned[] => {
  const names = cutNames(dart);
  const turns = turnsOf(piece, dart.edge);
  const at = (edge: string, spot: Point, angle: number): Turned => ({ edge, from: spot, angle, here: angle });
  const here = turnAlong(turns, from);
  const { path } = piece.edges.get(dart.edge)!;
  return (piece.turned ?? [])
    .flatMap((entry) => (entry.edge === dart.edge ? [] : [entry]))
    .concat(
      withoutRepeats(
        turns
          .filter((turn) => turn.at < from - sameSpotTolerance)
          .map((turn) => ({ ...turn, edge: dart.edge, from: pointAt(path, turn.at) })),
      ).map(plain),
      withoutRepeats([at(names.first, dart.first, here)]),
      withoutRepeats([at(names.second, dart.tip, here)]),
      withoutRepeats([
        at(names.beyond, dart.second, turnAlong(turns, to)),
        ...turns
          .filter((turn) => turn.at > to + sameSpotTolerance)
          .map((turn) => ({ ...turn, edge: names.beyond, from: pointAt(path, turn.at) })),
      ]).map(plain),
    );
};

const plain = ({ edge, from, angle, here }: Turned): Turned => ({ edge, from, angle, here });

/**
 * The piece sewn up again: the two stretches are one edge, and the legs are gone. Where the mouth has not closed wholly, the
 * dart is there still, its legs where the two parts have taken them.
 */
export const sewnUp = (piece: Piece, dart: Dart, closes: boolean): Piece => {
  const names = cutNames(dart);
  const [first, second] = [startOf(pathOf(piece, names.first)), endOf(pathOf(piece, names.second))];
  const [before, beyond] = [own(piece, dart.edge), own(piece, names.beyond)];
  const edge = piece.edges.get(before ? dart.edge : names.beyond)!;
  const path = closes
    ? joined(met(before?.path, beyond?.path))
    : joined([before?.path ?? [], straight(first, second), beyond?.path ?? []]);
  const edges = new Map([...piece.edges].filter(([name]) => !isTemporary(names, name)));
  edges.set(dart.edge, { ...edge, name: dart.edge, path });
  const kept = piece.outline.findIndex(({ edge: each }) => each === dart.edge || isTemporary(names, each));
  const outline = piece.outline.flatMap((each, index) => {
    if (index === kept) return [{ ...each, edge: dart.edge }];
    return each.edge === dart.edge || isTemporary(names, each.edge) ? [] : [each];
  });
  const rename = <T extends { readonly edge: string }>(thing: T): T =>
    thing.edge === names.beyond ? { ...thing, edge: dart.edge } : thing;
  const others = (piece.turned ?? []).filter(({ edge: each }) => each !== dart.edge && !isTemporary(names, each));
  const still: Dart = { ...dart, first, second };
  return {
    ...piece,
    edges,
    outline,
    hinges: piece.hinges.map(rename),
    darts: new Map([
      ...[...piece.darts].map(([name, each]) => [name, rename(each)] as const),
      ...(closes ? [] : [[dart.name, still] as const]),
    ]),
    turned: [...others, ...turnedTogether(piece, dart)],
  };
};

const pathOf = (piece: Piece, name: string): Path => piece.edges.get(name)!.path;

const isTemporary = ({ first, second, beyond }: CutNames, name: string): boolean =>
  name === first || name === second || name === beyond;

// A mouth at the very end of its edge leaves a stretch on one side only.
const own = (piece: Piece, name: string): Edge | undefined =>
  walked(piece).find(({ edge }) => edge.name === name)?.edge;

/** Leg ends that do not lie on one another meet halfway; the stretches follow, as the needle makes them. */
const met = (before: Path | undefined, beyond: Path | undefined): Path[] => {
  if (!before || !beyond) return [before ?? [], beyond ?? []];
  const [end, start] = [endOf(before), startOf(beyond)];
  if (sameSpot(end, start, nothing)) return [before, beyond];
  const spot = between(end, start, 0.5);
  return [followed(before, "end", spot), followed(beyond, "start", spot)];
};

const turnedTogether = (piece: Piece, dart: Dart): Turned[] => {
  const names = cutNames(dart);
  const of = (edge: string): Turned[] => (piece.turned ?? []).filter((entry) => entry.edge === edge);
  const beyond = own(piece, names.beyond);
  if (!beyond) return of(dart.edge);
  const [entry] = of(names.beyond);
  const start = startOf(beyond.path);
  const begins = entry !== undefined && sameSpot(entry.from, start);
  // The cloth beyond the mouth has its own turn, even where it lies as it was drafted.
  const first: Turned[] = begins ? [] : [{ edge: dart.edge, from: start, angle: 0, here: 0 }];
  const rest = of(names.beyond).map((each) => ({ ...each, edge: dart.edge }));
  return withoutRepeats([...of(dart.edge), ...first, ...rest]);
};

/** Whether a point lies on the mouth of a dart, its two ends counted. */
export const isOnMouth = (piece: Piece, dart: Dart, point: Point): boolean => {
  const { path } = piece.edges.get(dart.edge)!;
  const [from, to] = [nearest(path, dart.first).at, nearest(path, dart.second).at];
  const foot = nearest(path, point);
  const isNear = foot.distance <= sameSpotTolerance && spotsAt(piece, point).length > 0;
  return isNear && foot.at >= from - sameSpotTolerance && foot.at <= to + sameSpotTolerance;
};
