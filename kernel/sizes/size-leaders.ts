// The names of sizes whose lines run too close together for a name between them: in a column outside the piece, each with a
// thin line that leads to the line it names.
import { arrowhead } from "../drawing/arrowhead.ts";
import { type Box, type Line, rim, room } from "../drawing/box.ts";
import type { Stroke, Text } from "../drawing/drawing.ts";
import { ascent, boxOf, textWidth } from "../drawing/lettering.ts";
import { directionAt, pathLength, pointAt } from "../geometry/arc-length.ts";
import { crossings } from "../geometry/intersect.ts";
import { endOf, type Path, startOf, straight } from "../geometry/path.ts";
import { between, distance, dot, minus, type Point, plus, quarterTurn, times, unit } from "../geometry/point.ts";
import { angleOf } from "../geometry/trig.ts";
import type { SizeToName } from "./size-labels.ts";

/** A name outside the piece and what leads from it to its line. */
export interface Led {
  readonly text: Text;
  readonly strokes: readonly Stroke[];
}

/**
 * The names of these sizes in a column that is clear of all lines and of what is written; leaders cross lines where they must,
 * and nothing that is written. Undefined where there is no such place.
 */
export const ledNames = (
  sizes: readonly SizeToName[],
  all: readonly SizeToName[],
  written: readonly Line[],
): Led[] | undefined => {
  const lines = all.flatMap((each) => each.lines);
  for (const spots of spotsToLeadTo(sizes, all)) {
    for (const column of columnsBeside(sizes, spots)) {
      if (room(column.box, lines) <= 1 || room(column.box, written) <= 1) continue;
      const led = leadersFrom(sizes, spots, column, written);
      if (led) return led;
    }
  }
  return undefined;
};

const textSize = 4.2;
const rowHeight = 5.4;

/** One spot on each size's line, and the way out of the piece there. */
interface Spots {
  readonly on: readonly Point[];
  readonly out: Point;
  /** How near a line of another size comes to one of them, mm. */
  readonly apart: number;
}

const shares = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

/** Spots at the same share of the same stretch in every size, those first where the lines of all sizes lie farthest apart. */
const spotsToLeadTo = (sizes: readonly SizeToName[], all: readonly SizeToName[]): Spots[] => {
  const count = Math.min(...sizes.map(({ stretches }) => stretches.length));
  const others = sizes.map((size) => all.filter((each) => each !== size).flatMap(({ lines }) => lines));
  return Array.from({ length: count }, (_, stretch) => shares.map((share) => spotsAt(sizes, others, stretch, share)))
    .flat()
    .sort((a, b) => b.apart - a.apart);
};

const spotsAt = (
  sizes: readonly SizeToName[],
  others: readonly (readonly Line[])[],
  stretch: number,
  share: number,
): Spots => {
  const on = sizes.map(({ stretches }) => pointAt(stretches[stretch]!, share * pathLength(stretches[stretch]!)));
  const [first] = sizes as readonly [SizeToName];
  const path = first.stretches[stretch]!;
  const out = first.outward(directionAt(path, share * pathLength(path)));
  const away = on.map((center, index) => room({ center, turn: 0, halfWidth: 1, halfHeight: 1 }, others[index]!));
  return { on, out, apart: Math.min(...away) };
};

/** A column of rows of text, its names beginning at the left or, where it stands to the left of the piece, ending at the right. */
interface Column {
  readonly box: Box;
  readonly align: "start" | "end";
}

// How far outside the outermost line the column may stand, mm, and how far along the line it may be moved.
const distances = [8, 14, 22, 32];

const columnsBeside = (sizes: readonly SizeToName[], { on, out }: Spots): Column[] => {
  const halfWidth = Math.max(...sizes.map(({ size }) => textWidth(size, textSize, "plain"))) / 2 + 1;
  const halfHeight = (sizes.length * rowHeight) / 2;
  const outermost = on.reduce((best, spot) => (dot(spot, out) > dot(best, out) ? spot : best));
  const reach = Math.abs(out.x) * halfWidth + Math.abs(out.y) * halfHeight;
  const along = quarterTurn(out);
  const aside = Math.abs(along.x) * halfWidth + Math.abs(along.y) * halfHeight + 4;
  return distances.flatMap((away) =>
    [0, aside, -aside].map((by): Column => {
      const center = plus(plus(outermost, times(out, away + reach)), times(along, by));
      return {
        box: { center, turn: 0, halfWidth, halfHeight },
        align: center.x >= outermost.x ? "start" : "end",
      };
    }),
  );
};

/** The names in the rows of a column, in the order in which no leader crosses another; undefined where there is none. */
const leadersFrom = (
  sizes: readonly SizeToName[],
  { on, out }: Spots,
  { box, align }: Column,
  written: readonly Line[],
): Led[] | undefined => {
  const inward = sizes.map((_, index) => index).sort((a, b) => dot(on[b]!, out) - dot(on[a]!, out));
  const side = box.center.x + (align === "start" ? -box.halfWidth : box.halfWidth);
  for (const order of [inward, [...inward].reverse()]) {
    const texts = sizes.map(({ size }, index): Text => {
      const middle = box.center.y - box.halfHeight + (order.indexOf(index) + 0.5) * rowHeight;
      const at = { x: side + (align === "start" ? 1 : -1), y: middle + (ascent / 2) * textSize };
      return { text: size, at, size: textSize, turn: 0, align, weight: "plain" };
    });
    const starts = texts.map(({ at }) => ({ x: side, y: at.y - (ascent / 2) * textSize }));
    const ways = starts.map((start, index) => straight(start, on[index]!));
    const cross = ways.some((way, i) => ways.slice(i + 1).some((other) => crossings(way, other).length > 0));
    const rims = [...written, ...texts.map((text) => rim(boxOf(text)))];
    if (cross || ways.some((way) => room(bandOf(way), rims) <= 1)) continue;
    return texts.map((text, index) => ({ text, strokes: leader(starts[index]!, on[index]!) }));
  }
  return undefined;
};

const leader = (start: Point, end: Point): Stroke[] => {
  const direction = unit(minus(end, start));
  return [
    { kind: "frame", path: straight(start, minus(end, times(direction, tip))) },
    { kind: "arrowhead", path: arrowhead(end, direction, tip) },
  ];
};

const tip = 1.6;

/** A straight way with the white on both sides of it. */
const bandOf = (way: Path): Box => {
  const [start, end] = [startOf(way), endOf(way)];
  return {
    center: between(start, end, 0.5),
    turn: angleOf(minus(end, start)),
    halfWidth: distance(start, end) / 2,
    halfHeight: 0.4,
  };
};
