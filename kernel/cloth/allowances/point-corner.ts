// The plain corner: both cutting lines are carried on along their directions until they meet.
// Inner corners and corners at a fold are made this way too, whatever the edges say. At an inner corner that is not simply
// trimmed both lines run into the net corner, and the outer rim of all allowances tells what is left of them.
import { crossings, linesMeet } from "../../geometry/intersect.ts";
import { joined } from "../../geometry/path.ts";
import { distance, dot, minus, type Point, plus, times, unit } from "../../geometry/point.ts";
import { type Flank, type Meeting, reachOf, wayAcross } from "./flank.ts";

/** Both cutting lines carried on, or trimmed, to where they meet; an outer corner too sharp for that is cut off. */
export const pointCorner = (own: Flank, other: Flank, inner: boolean): Meeting => {
  if (wayAcross(own.end, other.end).length === 0) return { ownAt: 0, otherAt: 0, across: [] };
  const met = pointed(own, other) ?? crossed(own, other, inner);
  return met ?? (inner ? byWayOfCorner(own, other) : stepped(own, other));
};

// Where the net corner itself counts as carried on, in spite of rounding, mm.
const atCorner = 1e-9;

/** The meeting of the two lines carried on straight; undefined where one of them would have to be trimmed instead. */
const pointed = (own: Flank, other: Flank): Meeting | undefined => {
  const tip = linesMeet(own.end, own.away, other.end, other.away);
  if (!tip) return undefined;
  const ownAt = dot(minus(tip, own.end), own.away);
  const otherAt = dot(minus(tip, other.end), other.away);
  if (ownAt > atCorner || otherAt > atCorner) return undefined;
  const reach = reachAt(own, other);
  if (distance(tip, own.corner) <= reach) return { ownAt, otherAt, across: [] };
  return cutOff(own, other, reach);
};

/** A sharp point cut off square to the bisector at a distance in mm from the net corner. */
const cutOff = (own: Flank, other: Flank, reach: number): Meeting => {
  const bisector = times(unit(plus(own.away, other.away)), -1);
  const stop = (flank: Flank): number => {
    const start = dot(minus(flank.end, flank.corner), bisector);
    return (reach - start) / dot(flank.away, bisector);
  };
  const [ownAt, otherAt] = [stop(own), stop(other)];
  const place = (flank: Flank, at: number): Point => plus(flank.end, times(flank.away, at));
  return { ownAt, otherAt, across: wayAcross(place(own, ownAt), place(other, otherAt)) };
};

/** The meeting of the two cutting lines as they run, the one nearest the corner. */
const crossed = (own: Flank, other: Flank, inner: boolean): Meeting | undefined => {
  const reach = reachAt(own, other);
  const found = crossings(own.cutting, other.cutting)
    .map(({ point, onFirst, onSecond }) => ({
      ownAt: onFirst - own.carried,
      otherAt: onSecond - other.carried,
      away: distance(point, own.corner),
    }))
    // Anywhere else than at an inner corner a crossing far off belongs to some other corner, or would carry one allowance on
    // along the whole of its neighbour.
    .filter(({ ownAt, otherAt, away }) => (inner ? trims(own, ownAt) && trims(other, otherAt) : away <= reach))
    .sort((a, b) => Math.abs(a.ownAt) + Math.abs(a.otherAt) - Math.abs(b.ownAt) - Math.abs(b.otherAt));
  const nearest = found[0];
  return nearest && { ownAt: nearest.ownAt, otherAt: nearest.otherAt, across: [] };
};

const trims = ({ trimmable }: Flank, at: number): boolean => at >= -atCorner && at <= trimmable;

const byWayOfCorner = (own: Flank, other: Flank): Meeting => ({
  ownAt: 0,
  otherAt: 0,
  across: joined([wayAcross(own.end, own.corner), wayAcross(own.corner, other.end)]),
});

/** Straight across from one allowance to the other: two widths on one smooth line never meet. */
const stepped = (own: Flank, other: Flank): Meeting => ({
  ownAt: 0,
  otherAt: 0,
  across: wayAcross(own.end, other.end),
});

// The fold is the middle of the cloth and not a cut: there the neighbour goes on to it, however slanting.
const reachAt = (own: Flank, other: Flank): number =>
  own.fold || other.fold ? Math.max(own.carried, other.carried) : reachOf(own, other);
