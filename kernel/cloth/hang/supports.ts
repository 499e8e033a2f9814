// What holds a piece up, and where on the body: what its `hang` line names; else neck, shoulder and underarm of a bodice, the
// waist of a skirt, the cap of a sleeve, told by how the edges lie between center, side and hem, and by no name.
import { downAt } from "../../alter/armhole.ts";
import { isMarkedCenter } from "../../alter/level-with.ts";
import { pathLength, pointAt } from "../../geometry/arc-length.ts";
import { flattened } from "../../geometry/area.ts";
import { nearest } from "../../geometry/nearest.ts";
import { endOf, startOf } from "../../geometry/path.ts";
import { distance, dot, minus, type Point, unit } from "../../geometry/point.ts";
import { boundary, outward, type Walked, walked } from "../../outline.ts";
import type { Edge, Hang, Piece } from "../../working.ts";
import { type BodyPlaces, flatness, levelPlaces, placesOn, rootOf, turnedBack } from "./body-places.ts";
import { type Held, type Sheet, type Support, seen } from "./exact.ts";

/** What holds a piece, and the hem that hangs from it. */
export interface Holding {
  readonly kind: "bodice" | "waist" | "cap";
  /** Edges that are held all along. */
  readonly edges: readonly string[];
  /** Single spots that are held besides: the underarms, or what the recipe says. */
  readonly spots: readonly Point[];
  readonly supports: readonly Support[];
  readonly hem: Walked;
  /** Where the body positions come from: the piece it was made of, its own lines turned back as drafted, or a level line. */
  readonly body: "source" | "drafted" | "level";
}

/** How a piece is held, by its `hang` line where it has one; undefined where it has no one hem with something above it. */
export const holdingOf = (piece: Piece, hang?: Hang): Holding | undefined => {
  const walk = walked(piece);
  const hems = walk.flatMap(({ edge }, index) => (edge.role === "hem" ? [index] : []));
  if (boundary(piece) === undefined || hems.length !== 1) return undefined;
  const lie = layOf(piece, [...walk.slice(hems[0]!), ...walk.slice(0, hems[0]!)]);
  const held = (hang && heldAsSaid(lie, hang)) ?? heldAsUsual(lie);
  if (!held) return undefined;
  const { edges, spots } = held;
  const parts = [...edges, ...spots].map(({ part }) => part);
  const source = rootOf(piece, parts);
  const root = source ?? piece;
  const hasDarts = piece.darts.size > 0 || root.darts.size > 0;
  const isLevel = lie.kind === "waist" && !hasDarts && parts.every((part) => part === lie.upper[0]);
  const place = isLevel
    ? levelPlaces(piece, parts[0]!, root)
    : source
      ? placesOn(source)
      : asDrafted(piece, lie, parts);
  return {
    kind: lie.kind,
    edges: edges.map(({ part }) => part.edge.name),
    spots: spots.map(({ part, at }) => pointAt(part.edge.path, at)),
    supports: [
      ...edges.flatMap((each) => supportsAlong(each, source?.edges.get(each.part.edge.name), place)),
      ...spots.map(({ part, at }) => heldAt(part.edge, at, place)).map((spot) => ({ from: spot, to: spot })),
    ],
    hem: lie.round[0]!,
    body: isLevel ? "level" : source ? "source" : "drafted",
  };
};

/** How the edges of a piece lie about its hem. */
interface Lie {
  readonly kind: Holding["kind"];
  /** All of them in outline order, the hem first. */
  readonly round: readonly Walked[];
  /** Those between the two beside the hem. */
  readonly upper: readonly Walked[];
  readonly armholes: readonly Walked[];
}

const layOf = (piece: Piece, round: readonly Walked[]): Lie => {
  const upper = round.slice(2, -1);
  const isCap = upper.length === 1 && bulges(piece, upper[0]!);
  const kind = upper.length > 1 ? "bodice" : isCap ? "cap" : "waist";
  return { kind, round, upper, armholes: armholesOf(piece, upper, round[1]!, round.at(-1)!) };
};

/** What holds a piece, mm along edges as drafted. */
interface HeldParts {
  readonly edges: readonly { readonly part: Walked; readonly from: number; readonly to: number }[];
  readonly spots: readonly { readonly part: Walked; readonly at: number }[];
}

/** All upper edges but the armholes, of which the lower ends are. */
const heldAsUsual = ({ round, upper, armholes }: Lie): HeldParts | undefined => {
  if (round.length < 4) return undefined;
  return {
    edges: upper
      .filter((part) => !armholes.includes(part))
      .map((part) => ({ part, from: 0, to: pathLength(part.edge.path) })),
    spots: armholes.map((part) => ({
      part,
      at: (part === upper[0]) === part.turned ? pathLength(part.edge.path) : 0,
    })),
  };
};

/** What a `hang` line says; undefined where the piece, which may be an older one, lacks an edge of those. */
const heldAsSaid = ({ round }: Lie, { edges, spots }: Hang): HeldParts | undefined => {
  const byName = new Map(round.map((part) => [part.edge.name, part]));
  if ([...edges, ...spots].some(({ edge }) => !byName.has(edge))) return undefined;
  const onEdge = (edge: string): { readonly part: Walked; readonly length: number } => {
    const part = byName.get(edge)!;
    return { part, length: pathLength(part.edge.path) };
  };
  return {
    edges: edges.map(({ edge, from, to }) => {
      const { part, length } = onEdge(edge);
      return { part, from: from * length, to: to * length };
    }),
    spots: spots.map(({ edge, at }) => {
      const { part, length } = onEdge(edge);
      return { part, at: at * length };
    }),
  };
};

/** Turned back from the top of the center on, which stays. */
const asDrafted = (piece: Piece, { round, upper, armholes }: Lie, parts: readonly Walked[]): BodyPlaces => {
  const run = parts.every((part) => upper.includes(part)) ? upper : round.slice(1);
  const isFromEnd = upper.length > 0 && armholes.includes(upper[0]!);
  const part = (isFromEnd ? upper.at(-1) : upper[0]) ?? run[0]!;
  return turnedBack(piece, run, { part, isAtEnd: isFromEnd });
};

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

const heldAt = (edge: Edge, at: number, place: BodyPlaces): Held => ({
  flat: pointAt(edge.path, at),
  body: place(edge, at),
});

/** A stretch of an edge as straight ones, cut wherever it bends now or bent on the body. */
const supportsAlong = (
  { part: { edge }, from, to }: HeldParts["edges"][number],
  was: Edge | undefined,
  place: BodyPlaces,
): Support[] => {
  const length = pathLength(edge.path);
  const ats = flattened(edge.path, flatness).map((point) => nearest(edge.path, point).at);
  const before = was
    ? flattened(was.path, flatness).map((point) => (nearest(was.path, point).at / pathLength(was.path)) * length)
    : [];
  const inside = [...ats, ...before].filter((at) => at > from && at < to);
  const stations = [...new Set([from, ...inside, to])].sort((a, b) => a - b);
  const spots = stations
    .filter((at, index) => index === 0 || at - stations[index - 1]! > shortest)
    .map((at) => heldAt(edge, at, place));
  return spots.slice(1).map((end, index) => ({ from: spots[index]!, to: end }));
};

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
