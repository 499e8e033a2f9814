// How a sheet hangs that neither stretches nor can be pushed, by formula: every point hangs straight below the support that
// holds it highest. No simulation here; it is what the first picture is made of, and what the simulation is tested against.
import { cross, distance, dot, minus, type Point, plus, times, unit } from "../../geometry/point.ts";

/** A spot of the cloth that the body holds: where it lies in the flat piece, and where on the unrolled body; mm, y down. */
export interface Held {
  readonly flat: Point;
  readonly body: Point;
}

/** A straight stretch of cloth that is held from end to end; a single spot where both ends are one. */
export interface Support {
  readonly from: Held;
  readonly to: Held;
}

/** One point of the cloth as it hangs. */
export interface Hanging {
  readonly flat: Point;
  readonly hung: Point;
  /** Through the flat cloth from the support to the point, round whatever is cut out in between. */
  readonly way: readonly Point[];
}

/** A flat piece: its outline as a bent line, and what holds it. */
export interface Sheet {
  readonly outline: readonly Point[];
  readonly supports: readonly Support[];
}

/**
 * Says of a point of the sheet where it hangs: y = min over supports of Y + d, and x that of the support (d the distance
 * inside the piece; trade handbook, the hang preview). Undefined where no support reaches it.
 */
export const hangingOn = (sheet: Sheet): ((flat: Point) => Hanging | undefined) => {
  let turns: readonly Anchor[] | undefined;
  return (flat) => {
    const direct = highest(
      sheet,
      flat,
      sheet.supports.map((support) => anchorOn(support, flat)),
      undefined,
    );
    if (direct?.isFirst) return direct.hanging;
    turns ??= turnsRound(sheet);
    return highest(sheet, flat, [...sheet.supports.map((support) => anchorOn(support, flat)), ...turns], undefined)
      ?.hanging;
  };
};

/** Whether the straight line between two points of a piece runs inside it, its outline included. */
export const seen = (outline: readonly Point[], a: Point, b: Point): boolean => {
  const way = minus(b, a);
  if (distance(a, b) < touching) return true;
  const across = unit(way);
  for (let index = 0; index < outline.length; index += 1) {
    const [from, to] = [outline[index]!, outline[(index + 1) % outline.length]!];
    const [start, end] = [cross(across, minus(from, a)), cross(across, minus(to, a))];
    if (Math.abs(start) < touching || Math.abs(end) < touching || start > 0 === end > 0) continue;
    const edge = unit(minus(to, from));
    const [first, last] = [cross(edge, minus(a, from)), cross(edge, minus(b, from))];
    if (Math.abs(first) > touching && Math.abs(last) > touching && first > 0 !== last > 0) return false;
  }
  return [0.02, 0.5, 0.98].every((share) => holds(outline, plus(a, times(way, share))));
};

/** A spot that cloth hangs from: a support, or a corner of the outline that the way to a support goes round. */
interface Anchor {
  readonly flat: Point;
  readonly hung: Point;
  /** From the support to this spot. */
  readonly way: readonly Point[];
}

const highest = (
  { outline }: Sheet,
  flat: Point,
  anchors: readonly Anchor[],
  limit: number | undefined,
): { readonly hanging: Hanging; readonly isFirst: boolean } | undefined => {
  const sorted = anchors
    .map((anchor) => ({ anchor, y: anchor.hung.y + distance(anchor.flat, flat) }))
    .filter(({ y }) => limit === undefined || y < limit)
    .sort((a, b) => a.y - b.y);
  const index = sorted.findIndex(({ anchor }) => seen(outline, anchor.flat, flat));
  const found = sorted[index];
  if (!found) return undefined;
  const { anchor, y } = found;
  return { hanging: { flat, hung: { x: anchor.hung.x, y }, way: [...anchor.way, flat] }, isFirst: index === 0 };
};

/** The spot of a support that holds a point highest: where the way to it leaves at the angle at which the body slopes. */
const anchorOn = ({ from, to }: Support, flat: Point): Anchor => {
  const length = distance(from.flat, to.flat);
  const slope = length < touching ? 0 : (to.body.y - from.body.y) / length;
  const along = unit(minus(to.flat, from.flat));
  const [foot, off] = [dot(minus(flat, from.flat), along), Math.abs(cross(minus(flat, from.flat), along))];
  const wanted = Math.abs(slope) < 1 ? foot - (off * slope) / Math.sqrt(1 - slope * slope) : slope > 0 ? 0 : length;
  const share = length < touching ? 0 : Math.max(0, Math.min(1, wanted / length));
  const at = (a: Point, b: Point): Point => plus(times(a, 1 - share), times(b, share));
  const spot = at(from.flat, to.flat);
  return { flat: spot, hung: at(from.body, to.body), way: [spot] };
};

/** The corners that a way may go round, each with how it hangs itself; found from the highest down (Dijkstra's way). */
const turnsRound = (sheet: Sheet): readonly Anchor[] => {
  const { outline, supports } = sheet;
  const corners = innerCorners(outline);
  const best = new Map<Point, Hanging>();
  for (const corner of corners) {
    const found = highest(
      sheet,
      corner,
      supports.map((support) => anchorOn(support, corner)),
      undefined,
    );
    if (found) best.set(corner, found.hanging);
  }
  const settled: Anchor[] = [];
  while (best.size > 0) {
    const [corner, hanging] = [...best].reduce((a, b) => (b[1].hung.y < a[1].hung.y ? b : a));
    best.delete(corner);
    const anchor: Anchor = { flat: corner, hung: hanging.hung, way: hanging.way };
    settled.push(anchor);
    for (const other of corners) {
      if (settled.some(({ flat }) => flat === other)) continue;
      const found = highest(sheet, other, [anchor], best.get(other)?.hung.y);
      if (found) best.set(other, found.hanging);
    }
  }
  return settled;
};

/** The corners at which the outline turns into the cloth. */
const innerCorners = (outline: readonly Point[]): Point[] => {
  const around = Math.sign(
    outline.reduce((sum, point, index) => sum + cross(point, outline[(index + 1) % outline.length]!), 0),
  );
  return outline.filter((point, index) => {
    const before = outline[(index + outline.length - 1) % outline.length]!;
    const after = outline[(index + 1) % outline.length]!;
    return cross(unit(minus(point, before)), unit(minus(after, point))) * around < -straight;
  });
};

const holds = (outline: readonly Point[], p: Point): boolean => {
  let inside = false;
  for (let index = 0; index < outline.length; index += 1) {
    const [a, b] = [outline[index]!, outline[(index + 1) % outline.length]!];
    const way = minus(b, a);
    const square = dot(way, way);
    const share = square === 0 ? 0 : Math.max(0, Math.min(1, dot(minus(p, a), way) / square));
    if (distance(p, plus(a, times(way, share))) < touching) return true;
    if (a.y > p.y !== b.y > p.y && a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x) > p.x) inside = !inside;
  }
  return inside;
};

// Nearer than this, in mm, a line touches the outline and does not cross it.
const touching = 0.05;

// A turn smaller than this, in radians, is none.
const straight = 1e-4;
