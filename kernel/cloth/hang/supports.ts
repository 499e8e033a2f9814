// What holds a piece up, and where on the body: neck, shoulder and underarm of a bodice, the waist of a skirt, the cap of a
// sleeve. Told by how the edges lie between center, side and hem, and by no name.
import { downAt } from "../../alter/armhole.ts";
import { isMarkedCenter } from "../../alter/level-with.ts";
import { turnAlong, turnsOf } from "../../alter/turned.ts";
import { pathLength, pointAt } from "../../geometry/arc-length.ts";
import { flattened } from "../../geometry/area.ts";
import { nearest } from "../../geometry/nearest.ts";
import { endOf, startOf } from "../../geometry/path.ts";
import { between, distance, dot, minus, type Point, plus, unit } from "../../geometry/point.ts";
import { rotated } from "../../geometry/rotate.ts";
import { boundary, outward, type Walked, walked } from "../../outline.ts";
import { sewnUpTo, takenAlong } from "../../sewn.ts";
import type { Edge, Piece } from "../../working.ts";
import { type Held, type Sheet, type Support, seen } from "./exact.ts";

/** What holds a piece, and the hem that hangs from it. */
export interface Holding {
  readonly kind: "bodice" | "waist" | "cap";
  /** Edges that are held all along, and those of which the lower end is. */
  readonly edges: readonly string[];
  readonly underarms: readonly Point[];
  readonly supports: readonly Support[];
  readonly hem: Walked;
  /** Where the body positions come from: the piece it was made of, its own lines turned back as drafted, or a level line. */
  readonly body: "source" | "drafted" | "level";
}

/** How a piece is held; undefined where it has no one hem with something above it. */
export const holdingOf = (piece: Piece): Holding | undefined => {
  const walk = walked(piece);
  const hems = walk.flatMap(({ edge }, index) => (edge.role === "hem" ? [index] : []));
  if (boundary(piece) === undefined || hems.length !== 1 || walk.length < 4) return undefined;
  const round = [...walk.slice(hems[0]!), ...walk.slice(0, hems[0]!)];
  const [hem, first, last, upper] = [round[0]!, round[1]!, round.at(-1)!, round.slice(2, -1)];
  const armholes = armholesOf(piece, upper, first, last);
  const held = upper.filter((part) => !armholes.includes(part));
  const kind = upper.length > 1 ? "bodice" : bulges(piece, upper[0]!) ? "cap" : "waist";
  const source = rootOf(piece, [...held, ...armholes]);
  const isShaped = piece.darts.size > 0;
  const body = source ? "source" : kind === "waist" && !isShaped ? "level" : "drafted";
  const isArmholeFirst = upper.length > 0 && armholes.includes(upper[0]!);
  const place = source
    ? placesOn(source)
    : body === "level"
      ? levelPlaces(piece, held)
      : turnedBack(piece, upper, isArmholeFirst);
  const underarms = armholes.map((part) => (part === upper[0] ? startOf(part.path) : endOf(part.path)));
  const spots = armholes.map(({ edge }, index) => heldAt(edge, underarms[index]!, place));
  return {
    kind,
    edges: held.map(({ edge }) => edge.name),
    underarms,
    supports: [
      ...held.flatMap(({ edge }) => supportsAlong(edge, source?.edges.get(edge.name), place)),
      ...spots.map((spot) => ({ from: spot, to: spot })),
    ],
    hem,
    body,
  };
};

type Places = (edge: Edge, at: number) => Point;

/** The outermost of three upper edges or more, where it runs down steeply beside a side and not beside the center. */
const armholesOf = (piece: Piece, upper: readonly Walked[], first: Walked, last: Walked): Walked[] => {
  if (upper.length < 3) return [];
  const ends = [
    { part: upper[0]!, beside: first.edge },
    { part: upper.at(-1)!, beside: last.edge },
  ].filter(({ part, beside }) => isSteep(piece, part) && !isMarkedCenter(beside));
  // Between the two armholes of a whole back lie both shoulders and the neck; a half has a neck at its other end.
  if (upper.length >= 5 || ends.length < 2) return ends.map(({ part }) => part);
  const [longer] = ends.map(({ part }) => part).sort((a, b) => pathLength(b.path) - pathLength(a.path));
  return [longer!];
};

const isSteep = (piece: Piece, { edge, path }: Walked): boolean =>
  Math.abs(dot(unit(minus(endOf(path), startOf(path))), downAt(piece, edge.name))) > Math.SQRT1_2;

/** A sleeve's cap rises out of the cloth, where a waist dips into it. */
const bulges = (piece: Piece, { path }: Walked): boolean => {
  const chord = minus(endOf(path), startOf(path));
  const rise = minus(pointAt(path, pathLength(path) / 2), startOf(path));
  return dot(rise, outward(piece, unit(chord))) > cap * distance(startOf(path), endOf(path));
};

// A cap rises by more than this share of its width; a shaped waist by less.
const cap = 0.1;

/** The first piece in its line that has all these edges, as long as they are now: there they lie as the body has them. */
const rootOf = (piece: Piece, parts: readonly Walked[]): Piece | undefined => {
  const isLike = ({ edges }: Piece): boolean =>
    parts.every(({ edge }) => {
      const was = edges.get(edge.name);
      return was !== undefined && Math.abs(pathLength(was.path) - pathLength(edge.path)) < alike;
    });
  let root = piece.kept && isLike(piece.kept) ? piece.kept : undefined;
  for (let each = piece.source; each && isLike(each); each = each.source) root = each;
  // One that slashes have turned already is not as the body has it; turning its edges back says more.
  return root?.turned?.length ? undefined : root;
};

// Truing changes a shoulder's length by less than this, mm.
const alike = 1.5;

/** By arc length on the same edge of a piece, y down. */
const placesOn =
  ({ edges }: Piece): Places =>
  (edge, at) => {
    const { path } = edges.get(edge.name)!;
    return pointAt(path, (at / pathLength(edge.path)) * pathLength(path));
  };

/**
 * Where a reshaped upper edge lay before slashes turned it: every bit of the edges above the hem turned back by as much as
 * its cloth has turned, from the center on, which stays.
 */
const turnedBack = (piece: Piece, upper: readonly Walked[], fromEnd: boolean): Places => {
  let at: Point = { x: 0, y: 0 };
  const tables = upper.map(({ edge, turned }) => {
    const turns = turnsOf(piece, edge.name);
    const drafted = flattened(edge.path, flatness).map((point) => nearest(edge.path, point).at);
    const bends = [...new Set([...drafted, ...turns.map((turn) => turn.at)])].sort((a, b) => a - b);
    const stations = turned ? bends.reverse() : bends;
    const spots = stations.map((station, index) => {
      const before = stations[index - 1];
      if (before === undefined) return { station, spot: at };
      const chord = minus(pointAt(edge.path, station), pointAt(edge.path, before));
      at = plus(at, rotated(chord, origin, -turnAlong(turns, (station + before) / 2)));
      return { station, spot: at };
    });
    return [edge.name, turned ? spots.reverse() : spots] as const;
  });
  const shift = fromEnd ? minus(endOf(upper.at(-1)!.path), at) : startOf(upper[0]!.path);
  const byEdge = new Map(tables);
  return (edge, wanted) => {
    const spots = byEdge.get(edge.name)!;
    const index = Math.max(
      1,
      spots.findIndex(({ station }) => station >= wanted),
    );
    const [from, to] = [spots[index - 1]!, spots[index]!];
    return plus(shift, between(from.spot, to.spot, (wanted - from.station) / (to.station - from.station)));
  };
};

const origin: Point = { x: 0, y: 0 };

/** On a level line as long as the edges are once sewn; from where the leftmost of their ends lies. */
const levelPlaces = (piece: Piece, held: readonly Walked[]): Places => {
  const { edge: only } = held[0]!;
  const taken = takenAlong(piece, only.name);
  const whole = sewnUpTo(only.path, taken, pathLength(only.path));
  const isRightward = endOf(only.path).x >= startOf(only.path).x;
  const left = Math.min(startOf(only.path).x, endOf(only.path).x);
  return (edge, at) => {
    const along = sewnUpTo(edge.path, taken, at);
    return { x: left + (isRightward ? along : whole - along), y: 0 };
  };
};

const heldAt = (edge: Edge, flat: Point, place: Places): Held => ({
  flat,
  body: place(edge, nearest(edge.path, flat).at),
});

/** An edge as straight stretches, cut wherever it bends now or bent on the body. */
const supportsAlong = (edge: Edge, was: Edge | undefined, place: Places): Support[] => {
  const length = pathLength(edge.path);
  const ats = flattened(edge.path, flatness).map((point) => nearest(edge.path, point).at);
  const before = was
    ? flattened(was.path, flatness).map((point) => (nearest(was.path, point).at / pathLength(was.path)) * length)
    : [];
  const stations = [...new Set([...ats, ...before])].sort((a, b) => a - b);
  const spots = stations
    .filter((at, index) => index === 0 || at - stations[index - 1]! > shortest)
    .map((at) => ({ flat: pointAt(edge.path, at), body: place(edge, at) }));
  return spots.slice(1).map((to, index) => ({ from: spots[index]!, to }));
};

/** How far a bent line may lie off the curve it stands for, mm. */
export const flatness = 0.2;

// Stretches shorter than this, in mm, are left to their neighbours.
const shortest = 0.05;

/** By how many mm two places that hold the piece lie further apart on the body than in the cloth; 0 where none do. */
export const widerBy = ({ outline, supports }: Sheet): number => {
  const spots = supports.flatMap(({ from, to }) => [from, to]);
  return spots.reduce((most, a, index) => {
    // Where something is cut out between the two, the cloth reaches further than the straight line says.
    const wider = spots.slice(index + 1).filter((b) => distance(a.body, b.body) - distance(a.flat, b.flat) > most);
    return wider.reduce(
      (far, b) =>
        seen(outline, a.flat, b.flat) ? Math.max(far, distance(a.body, b.body) - distance(a.flat, b.flat)) : far,
      most,
    );
  }, 0);
};
