// The columns of a round made fine enough to draw, and where each of them is at a level.
import { between, distance } from "../../geometry/point.ts";
import type { HungPlace } from "./slack.ts";

/** A column of cloth, from its support to the hem, and which panel it is of, from 0. */
export interface Column {
  readonly panel: number;
  readonly places: readonly HungPlace[];
}

export const topOf = ({ places }: Column): number => places[0]!.hung.y;

/** Columns put in between, so that none are further apart at the hem than a fold is smooth, and some stand on every side of a body. */
export const finer = (columns: readonly Column[]): Column[] => {
  const hems = hemsOf(columns);
  const around = hems.reduce((sum, hem) => sum + hem, 0);
  const most = Math.min(smooth * coarserFor(columns), around / fewest);
  return columns.flatMap((column, index) => {
    const next = columns[index + 1];
    const hem = hems[index]!;
    if (next?.panel !== column.panel || hem === 0) return [column];
    const count = Math.ceil(hem / most);
    const ys = [...column.places, ...next.places].map(({ hung }) => hung.y).sort((a, b) => a - b);
    return [
      column,
      ...Array.from({ length: Math.max(0, count - 1) }, (_, step): Column => {
        const share = (step + 1) / count;
        const top = topOf(column) + (topOf(next) - topOf(column)) * share;
        const places = [top, ...ys.filter((y) => y > top)].map((y) => {
          const [a, b] = [placeAt(column, y), placeAt(next, y)];
          return { flat: between(a.flat, b.flat, share), hung: between(a.hung, b.hung, share) };
        });
        return { panel: column.panel, places };
      }),
    ];
  });
};

/** Levels from the highest support to the lowest spot of the hem, evenly. */
export const levelsOf = (columns: readonly Column[]): number[] => {
  const top = Math.min(...columns.map(topOf));
  const bottom = Math.max(...columns.map(({ places }) => places.at(-1)!.hung.y));
  const count = Math.max(2, Math.ceil((bottom - top) / (apart * coarserFor(columns))));
  return Array.from({ length: count + 1 }, (_, index) => top + ((bottom - top) * index) / count);
};

/** Length of the hem from each column to the next of its panel, mm; none from the last of a panel. */
const hemsOf = (columns: readonly Column[]): number[] =>
  columns.map((column, index) => {
    const next = columns[index + 1];
    return next?.panel === column.panel ? distance(column.places.at(-1)!.flat, next.places.at(-1)!.flat) : 0;
  });

/** How many times coarser a round is drawn than is smooth: once, unless it is larger than any garment. */
const coarserFor = (columns: readonly Column[]): number => {
  const around = hemsOf(columns).reduce((sum, hem) => sum + hem, 0);
  const spots = (around / smooth) * (heightOf(columns) / apart);
  return Math.max(1, Math.sqrt(spots / mostSpots));
};

const heightOf = (columns: readonly Column[]): number =>
  Math.max(...columns.map(({ places }) => places.at(-1)!.hung.y)) - Math.min(...columns.map(topOf));

/** Where a column is at a level; its end where it does not reach so high or so low. */
export const placeAt = ({ places }: Column, y: number): HungPlace => {
  let below = 0;
  while (below < places.length && places[below]!.hung.y < y) below += 1;
  if (below === 0) return places[0]!;
  if (below === places.length) return places[below - 1]!;
  const [a, b] = [places[below - 1]!, places[below]!];
  const share = (y - a.hung.y) / (b.hung.y - a.hung.y);
  return { flat: between(a.flat, b.flat, share), hung: between(a.hung, b.hung, share) };
};

// Columns nearer than this at the hem, and levels nearer than this, draw a fold smoothly, mm.
const smooth = 15;
const apart = 40;

// Spots of all columns together: those of a gown 2 m long and 25 m round its hem, which is drawn at once.
const mostSpots = 80_000;

// Fewer columns than this round a hem might all stand on one side, and the other side would have nothing to show.
const fewest = 12;
