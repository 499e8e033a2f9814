// A standing garment as someone sees it: shapes in the order in which they are laid on the paper, the farthest first, so that a
// fold hides what is behind it.
import type { Point } from "../../geometry/point.ts";
import type { Line, Spot } from "./standing.ts";

/** How dark a shape of cloth is: 0 lies as flat as the body lets it, 7 is the flank of a deep fold. */
export type Tone = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** A thing on the paper; y down, mm. */
export type Shape =
  | { readonly kind: "cloth"; readonly tone: Tone; readonly outline: readonly Point[] }
  /** The rim of the cloth, the turn of a fold that hides what is behind it, or where two panels are sewn. */
  | { readonly kind: "rim" | "turn" | "seam"; readonly along: readonly Point[] }
  /** The crest of a fold from where it begins to the hem, and how far it stands out there, mm. */
  | { readonly kind: "crest"; readonly along: readonly Point[]; readonly depth: number };

/** The side of a garment that looks at one; seen from behind, right and left change places. */
export const elevation = (lines: readonly Line[], from: "front" | "behind"): Shape[] => {
  const seen = from === "front" ? lines : lines.map(fromBehind);
  const strips = seen.map((left, index) => stripOf(left, seen[(index + 1) % seen.length]!));
  return strips
    .map((strip, index) => ({ strip, before: strips[(index + strips.length - 1) % strips.length]! }))
    .filter(({ strip }) => strip.near > 0)
    .sort((a, b) => a.strip.near - b.strip.near)
    .flatMap(({ strip, before }) => [...clothOf(strip), ...linesOf(strip, before)]);
};

/** A standing garment in outline: its upper rim on the side that one sees, and how far it reaches to both sides down to the hem. */
export const silhouette = (lines: readonly Line[], from: "front" | "behind"): Point[] => {
  const seen = from === "front" ? lines : lines.map(fromBehind);
  const rim = seen
    .filter(({ spots }) => spots.at(-1)!.z > 0)
    .map(({ spots }) => onPaper(spots[0]!))
    .sort((a, b) => a.x - b.x);
  const [left, right] = [rim[0], rim.at(-1)];
  if (!left || !right) return [];
  const bottom = Math.max(...seen.map(({ spots }) => spots.at(-1)!.y));
  const reach = (top: number, outermost: (xs: readonly number[]) => number): Point[] => {
    const count = Math.max(1, Math.ceil((bottom - top) / level));
    return Array.from({ length: count }, (_, index) => {
      const y = top + ((bottom - top) * (index + 1)) / count;
      return { x: outermost(seen.map((line) => acrossAt(line, y))), y };
    });
  };
  return [...rim, ...reach(right.y, (xs) => Math.max(...xs)), ...reach(left.y, (xs) => Math.min(...xs)).reverse()];
};

/** How far across a column is at a height; at its end where it does not reach so far. */
const acrossAt = ({ spots }: Line, y: number): number => {
  const below = spots.findIndex((spot) => spot.y >= y);
  const [a, b] = [spots[below - 1], spots[below] ?? spots.at(-1)!];
  return a && below > 0 ? a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y) : b.x;
};

const fromBehind = (line: Line): Line => ({ ...line, spots: line.spots.map(({ x, y, z }) => ({ x: -x, y, z: -z })) });

const onPaper = ({ x, y }: Spot): Point => ({ x, y });

/** The cloth between two neighbouring columns. */
interface Strip {
  readonly left: Line;
  readonly right: Line;
  /** Spots at the same levels on both. */
  readonly rungs: readonly { readonly a: Spot; readonly b: Spot; readonly depth: number }[];
  /** How near it is to whoever looks, mm. */
  readonly near: number;
  /** Whether its outside is what one sees. */
  readonly isOutside: boolean;
}

const stripOf = (left: Line, right: Line): Strip => {
  const count = Math.min(left.spots.length, right.spots.length);
  const [a, b] = [left.spots.slice(-count), right.spots.slice(-count)];
  const rungs = a.map((spot, index) => ({
    a: spot,
    b: b[index]!,
    depth: Math.min(left.depths.at(index - count)!, right.depths.at(index - count)!),
  }));
  const [lowA, lowB] = [a.at(-1)!, b.at(-1)!];
  return { left, right, rungs, near: (lowA.z + lowB.z) / 2, isOutside: lowB.x >= lowA.x };
};

/** The strip cut level by level where its tone changes. */
const clothOf = ({ rungs }: Strip): Shape[] => {
  const shapes: Shape[] = [];
  let from = 0;
  for (let index = 1; index < rungs.length; index += 1) {
    const tone = toneOf(rungs[index]!);
    if (index + 1 < rungs.length && toneOf(rungs[index + 1]!) === tone) continue;
    const part = rungs.slice(from, index + 1);
    shapes.push({
      kind: "cloth",
      tone,
      outline: [...part.map(({ a }) => onPaper(a)), ...part.map(({ b }) => onPaper(b)).reverse()],
    });
    from = index;
  }
  return shapes;
};

/** Light comes from the upper left; cloth that only follows the body has none of its own shade. */
const toneOf = ({ a, b, depth }: Strip["rungs"][number]): Tone => {
  const [dx, dz] = [b.x - a.x, b.z - a.z];
  const length = Math.sqrt(dx * dx + dz * dz);
  if (length < 1e-9 || depth < flatter) return 0;
  // The way the body itself runs there.
  const middle = { x: (a.x + b.x) / 2, z: (a.z + b.z) / 2 };
  const reach = Math.sqrt(middle.x * middle.x + middle.z * middle.z) || 1;
  const [bx, bz] = [middle.z / reach, -middle.x / reach];
  const turn = (dx * bz - dz * bx) / length;
  const steep = Math.min(1, Math.abs(turn)) * Math.min(1, depth / deep);
  return Math.round(steep * (turn < 0 ? 3 : 7)) as Tone;
};

const linesOf = ({ left, right, rungs, isOutside }: Strip, before: Strip): Shape[] => {
  const [top, bottom] = [rungs[0]!, rungs.at(-1)!];
  const shapes: Shape[] = [
    { kind: "rim", along: [onPaper(top.a), onPaper(top.b)] },
    { kind: "rim", along: [onPaper(bottom.a), onPaper(bottom.b)] },
  ];
  const along = left.spots.map(onPaper);
  if (left.panel !== before.left.panel) shapes.push({ kind: "seam", along });
  if (before.isOutside !== isOutside) shapes.push({ kind: "turn", along: folded(left) });
  if (left.isCrest && left.depths.at(-1)! >= flatter)
    shapes.push({ kind: "crest", along: folded(left), depth: left.depths.at(-1)! });
  for (const [longer, shorter] of [
    [left, right],
    [right, left],
  ] as const) {
    const beyond = longer.spots.length - shorter.spots.length;
    // Where the next column hangs from far below, the cloth ends along this one: the armhole.
    if (beyond > 1)
      shapes.push({ kind: "rim", along: [...longer.spots.slice(0, beyond + 1), shorter.spots[0]!].map(onPaper) });
  }
  return shapes;
};

/** The part of a column in which the cloth stands out. */
const folded = ({ spots, depths }: Line): Point[] => {
  const from = depths.findIndex((depth) => depth >= flatter);
  return spots.slice(Math.max(0, from)).map(onPaper);
};

// Less depth than this is no fold to be drawn; so much, the deepest tone. mm.
const flatter = 6;
const deep = 60;

// Height of a level of the silhouette, mm.
const level = 20;
