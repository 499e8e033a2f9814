// A standing garment as someone sees it: shapes in the order in which they are laid on the paper, the farthest first, so that a
// fold hides what is behind it.
import { cross, minus, type Point, size } from "../../geometry/point.ts";
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
  const { right, left } = reachOf(seen);
  return [
    ...strips
      .map((strip, index) => ({ strip, before: strips.at(index - 1)!, after: strips[(index + 1) % strips.length]! }))
      .filter(({ strip }) => strip.near > 0)
      // To a micrometer: of two that mirror each other the first stays first, however their sums were rounded.
      .sort((a, b) => Math.round(1000 * a.strip.near) - Math.round(1000 * b.strip.near))
      .flatMap(({ strip, before, after }) => [...clothOf(strip), ...linesOf(strip, before, after)]),
    { kind: "rim", along: lean(right) },
    { kind: "rim", along: lean(left) },
  ];
};

/** A standing garment in outline, from its upper rim on the side that one sees down to the hem. */
export const silhouette = (lines: readonly Line[], from: "front" | "behind"): Point[] => {
  const { rim, right, left } = reachOf(from === "front" ? lines : lines.map(fromBehind));
  return [...rim, ...right, ...[...left].reverse()];
};

/** The upper rim from left to right, and from its ends down how far the garment reaches to both sides. */
const reachOf = (seen: readonly Line[]): Record<"rim" | "right" | "left", readonly Point[]> => {
  const rim = seen
    .filter(({ spots }) => spots.at(-1)!.z > 0)
    .map(({ spots }) => onPaper(spots[0]!))
    .sort((a, b) => a.x - b.x);
  const bottom = Math.max(...seen.map(({ spots }) => spots.at(-1)!.y));
  const down = (from: Point | undefined, outermost: (xs: readonly number[]) => number): Point[] => {
    if (!from) return [];
    const count = Math.max(1, Math.ceil((bottom - from.y) / level));
    const across = seen.map(acrossDown);
    return Array.from({ length: count + 1 }, (_, index) => {
      const y = from.y + ((bottom - from.y) * index) / count;
      const there = across.filter((_, line) => seen[line]!.spots.at(-1)!.y > y - level / 2);
      return index === 0 ? from : { x: outermost(there.map((at) => at(y))), y };
    });
  };
  return { rim, right: down(rim.at(-1), (xs) => Math.max(...xs)), left: down(rim[0], (xs) => Math.min(...xs)) };
};

/**
 * How far across a column is at one height after another, each below the one before; at its end where it does not reach so far.
 * A column as long as a street has thousands of spots, so that none is looked at again.
 */
const acrossDown = ({ spots }: Line): ((y: number) => number) => {
  let below = 0;
  return (y) => {
    while (below < spots.length && spots[below]!.y < y) below += 1;
    const [a, b] = [spots[below - 1], spots[below]];
    if (!a || !b) return (b ?? spots.at(-1)!).x;
    return a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
  };
};

const fromBehind = (line: Line): Line => ({ ...line, spots: line.spots.map(({ x, y, z }) => ({ x: -x, y, z: -z })) });

const onPaper = ({ x, y }: Spot): Point => ({ x, y });

/** The cloth between two neighbouring columns. */
interface Strip {
  readonly left: Line;
  readonly right: Line;
  /** Spots at the same levels on both. */
  readonly rungs: readonly Rung[];
  /** How near it is to whoever looks, mm. */
  readonly near: number;
}

interface Rung {
  readonly a: Spot;
  readonly b: Spot;
  readonly depth: number;
}

const stripOf = (left: Line, right: Line): Strip => {
  const count = Math.min(left.spots.length, right.spots.length);
  const [a, b] = [left.spots.slice(-count), right.spots.slice(-count)];
  const rungs = a.map((spot, index) => ({
    a: spot,
    b: b[index]!,
    depth: Math.min(left.depths.at(index - count)!, right.depths.at(index - count)!),
  }));
  return { left, right, rungs, near: (a.at(-1)!.z + b.at(-1)!.z) / 2 };
};

/** The strip cut level by level where its tone changes, and the corner between columns that do not begin at one height. */
const clothOf = (strip: Strip): Shape[] => {
  const { rungs } = strip;
  const { above } = rimOf(strip);
  const shapes: Shape[] = above.length > 2 ? [{ kind: "cloth", tone: 0, outline: above }] : [];
  let from = 0;
  for (let index = 1; index < rungs.length; index += 1) {
    const tone = toneOf(rungs[index]!);
    if (index + 1 < rungs.length && toneOf(rungs[index + 1]!) === tone) continue;
    const part = rungs.slice(from, index + 1);
    const [left, right] = [part.map(({ a }) => onPaper(a)), part.map(({ b }) => onPaper(b))];
    shapes.push({ kind: "cloth", tone, outline: [...lean(left), ...lean(right).reverse()] });
    from = index;
  }
  return shapes;
};

/** The upper rim of a strip, and the cloth between it and the first rung. */
const rimOf = ({ left, right, rungs }: Strip): { readonly rim: readonly Point[]; readonly above: readonly Point[] } => {
  const [a, b] = [onPaper(left.spots[0]!), onPaper(right.spots[0]!)];
  const [longer, shorter, low] = left.spots.length > right.spots.length ? [left, right, b] : [right, left, a];
  const beyond = longer.spots.slice(0, longer.spots.length - shorter.spots.length + 1).map(onPaper);
  // Where the next column hangs from far below, the cloth ends along this one: the armhole.
  if (Math.abs(a.y - b.y) > steep) return { rim: lean([...beyond, low]), above: [] };
  return { rim: [a, b], above: rungs.length > 0 && beyond.length > 1 ? [...beyond, low] : [] };
};

/** Light comes from the upper left; cloth that only follows the body has none of its own shade. */
const toneOf = ({ a, b, depth }: Rung): Tone => {
  const [dx, dz] = [b.x - a.x, b.z - a.z];
  const length = Math.sqrt(dx * dx + dz * dz);
  if (length < 1e-9 || depth < flatter) return 0;
  // The way the body itself runs there.
  const middle = { x: (a.x + b.x) / 2, z: (a.z + b.z) / 2 };
  const reach = Math.sqrt(middle.x * middle.x + middle.z * middle.z) || 1;
  const [bx, bz] = [middle.z / reach, -middle.x / reach];
  const turn = (dx * bz - dz * bx) / length;
  const shade = Math.min(1, Math.abs(turn)) * Math.min(1, depth / deep);
  return Math.round(shade * (turn < 0 ? 3 : 7)) as Tone;
};

const linesOf = (strip: Strip, before: Strip, after: Strip): Shape[] => {
  const { left, rungs } = strip;
  const bottom = rungs.at(-1)!;
  const shapes: Shape[] = [
    { kind: "rim", along: rimOf(strip).rim },
    { kind: "rim", along: [onPaper(bottom.a), onPaper(bottom.b)] },
    ...turnsOf(strip, before, ({ a }) => a),
    ...turnsOf(strip, after, ({ b }) => b),
  ];
  if (left.panel !== before.left.panel) shapes.push({ kind: "seam", along: lean(left.spots.map(onPaper)) });
  const depth = left.depths.at(-1)!;
  if (left.isCrest && depth >= flatter) {
    const from = left.depths.findIndex((each) => each >= flatter);
    shapes.push({ kind: "crest", along: lean(left.spots.slice(from).map(onPaper)), depth });
  }
  return shapes;
};

/** Where a strip shows its outside and its neighbour its inside: there the cloth turns away. */
const turnsOf = (strip: Strip, neighbour: Strip, side: (rung: Rung) => Spot): Shape[] => {
  const count = Math.min(strip.rungs.length, neighbour.rungs.length);
  const shapes: Shape[] = [];
  let along: Point[] = [];
  for (let index = -count; index < 0; index += 1) {
    const rung = strip.rungs.at(index)!;
    if (rung.depth >= flatter && isOutside(rung) !== isOutside(neighbour.rungs.at(index)!))
      along.push(onPaper(side(rung)));
    else {
      if (along.length > 1) shapes.push({ kind: "turn", along: lean(along) });
      along = [];
    }
  }
  if (along.length > 1) shapes.push({ kind: "turn", along: lean(along) });
  return shapes;
};

const isOutside = ({ a, b }: Rung): boolean => b.x >= a.x;

/** A bent line without the points that lie straight between others. */
const lean = (line: readonly Point[]): Point[] => {
  const kept = line.slice(0, 1);
  for (let index = 1; index < line.length - 1; index += 1) {
    const [last, here, next] = [kept.at(-1)!, line[index]!, line[index + 1]!];
    const way = minus(next, last);
    const off = Math.abs(cross(way, minus(here, last)));
    if (off > straight * size(way)) kept.push(here);
  }
  return line.length > 1 ? [...kept, line.at(-1)!] : kept;
};

// Less depth than this is no fold to be drawn; so much, the deepest tone. mm.
const flatter = 6;
const deep = 60;

// Where neighbouring columns begin further apart in height than this, mm, there is an edge between them and no slope.
const steep = 100;

// A point this near to the line between its neighbours, mm, draws nothing.
const straight = 0.3;

// Height of a level of the silhouette, mm.
const level = 20;
