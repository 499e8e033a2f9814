// The judge of layouts: every copy laid, turned as it may be, inside the strip, and no two over one another. It knows nothing of
// how a layout was found; overlaps are cut out by Clipper2, Angus Johnson's library for cutting polygons with one another.
import { Clipper, FillRule } from "clipper2-ts";
import type { Point } from "../geometry/point.ts";
import { type Layout, type Placement, placedOutline, type Strip } from "./strip.ts";

/** What is wrong with a layout; placements and shapes by their numbers. */
export type Fault =
  | { readonly kind: "not a length" }
  | { readonly kind: "count"; readonly shape: number; readonly wanted: number; readonly found: number }
  | { readonly kind: "turn"; readonly placement: number }
  | { readonly kind: "outside"; readonly placement: number; readonly by: number }
  | { readonly kind: "overlap"; readonly first: number; readonly second: number; readonly area: number };

/** Whether a layout may be cut as it is: see `faultsOf`. */
export const isValidLayout = (strip: Strip, layout: Layout): boolean => faultsOf(strip, layout).length === 0;

/**
 * All that is wrong with a layout. Reckoned in whole steps, 2 to the 25 of them to the longer side of the strip, it lets two
 * shapes lie over one another and over the border by what rounding to two such steps can make, 0.0001 mm on 2 m of cloth.
 */
export const faultsOf = (strip: Strip, layout: Layout): Fault[] => {
  if (!(layout.length > 0 && Number.isFinite(layout.length))) return [{ kind: "not a length" }];
  return [...countFaults(strip, layout), ...turnFaults(strip, layout), ...placeFaults(strip, layout)];
};

const countFaults = ({ shapes }: Strip, { placements }: Layout): Fault[] => {
  const strange = placements.filter(({ shape }) => !shapes[shape]).map(({ shape }) => shape);
  const counted = shapes.flatMap(({ count: wanted }, shape): Fault[] => {
    const found = placements.filter((placement) => placement.shape === shape).length;
    return found === wanted ? [] : [{ kind: "count", shape, wanted, found }];
  });
  return [...counted, ...strange.map((shape): Fault => ({ kind: "count", shape, wanted: 0, found: 1 }))];
};

// Angles that differ by less, in radians, are the same: over 10 m of cloth that is 0.01 mm.
const sameTurn = 1e-6;

const turnFaults = ({ shapes }: Strip, { placements }: Layout): Fault[] =>
  placements.flatMap(({ shape, turn, by, flipped = false }, placement): Fault[] => {
    const wanted = shapes[shape];
    if (!wanted) return [];
    const isAllowed = wanted.turns.some((allowed) => Math.abs(allowed - turn) < sameTurn);
    const isAcross = wanted.across === undefined || Math.abs(wanted.across - by.y) <= sameTurn;
    const isFlippedAsAllowed = !flipped || wanted.flips === true;
    return isAllowed && isAcross && isFlippedAsAllowed ? [] : [{ kind: "turn", placement }];
  });

const stepsToLongerSide = 2 ** 25;

// A corner rounded to a whole step is off by half of one either way, and there are two corners to it.
const roundedBy = 2;

interface Laid {
  readonly placement: number;
  readonly ring: readonly Point[];
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const placeFaults = (strip: Strip, layout: Layout): Fault[] => {
  const steps = stepsToLongerSide / Math.max(layout.length, strip.width);
  const laid = layout.placements.flatMap((placement, at) => {
    const shape = strip.shapes[placement.shape];
    return shape ? [laidRing(shape.outline, placement, at, steps)] : [];
  });
  const outside = laid.flatMap(({ placement, left, right, top, bottom }): Fault[] => {
    const over = Math.max(-left, -top, right - layout.length * steps, bottom - strip.width * steps);
    return over > roundedBy ? [{ kind: "outside", placement, by: over / steps }] : [];
  });
  return [...outside, ...overlaps(laid, steps)];
};

const laidRing = (outline: readonly Point[], placement: Placement, at: number, steps: number): Laid => {
  const ring = placedOutline(outline, placement).map(({ x, y }) => ({
    x: Math.round(x * steps),
    y: Math.round(y * steps),
  }));
  const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
  return {
    placement: at,
    ring,
    left: Math.min(...xs),
    right: Math.max(...xs),
    top: Math.min(...ys),
    bottom: Math.max(...ys),
  };
};

/** Every two that lie over one another; only those are cut that begin before the other ends along the strip. */
const overlaps = (laid: readonly Laid[], steps: number): Fault[] => {
  const sorted = [...laid].sort((a, b) => a.left - b.left);
  const found: Fault[] = [];
  sorted.forEach((first, i) => {
    for (let j = i + 1; j < sorted.length && sorted[j]!.left < first.right; j += 1) {
      const second = sorted[j]!;
      if (second.top >= first.bottom || second.bottom <= first.top) continue;
      const common = Clipper.intersect([[...first.ring]], [[...second.ring]], FillRule.NonZero);
      const isOver = common.some((ring) => meanDepth(ring) > roundedBy);
      if (!isOver) continue;
      const area = Math.abs(Clipper.areaPaths(common)) / (steps * steps);
      found.push({ kind: "overlap", first: first.placement, second: second.placement, area });
    }
  });
  return found;
};

/** How wide a sliver is on the whole: its area over half its girth. */
const meanDepth = (ring: readonly Point[]): number => {
  const girth = ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return sum + Math.sqrt((q.x - p.x) ** 2 + (q.y - p.y) ** 2);
  }, 0);
  return girth === 0 ? 0 : (2 * Math.abs(Clipper.area([...ring]))) / girth;
};
