// A hanging piece as particles and links. Columns run where the cloth hangs, from the support down to the hem, and rows lie
// level once it does: across any other mesh the cloth would hang in steps, and come out by centimeters at the hem.
import { distance, type Point, plus, times } from "../../geometry/point.ts";
import { type Hanging, seen } from "./exact.ts";

/** Particles that resist being pulled apart along their links, and nothing else; mm, y down. */
export interface Mesh {
  /** Where each particle lies in the flat piece. */
  readonly flat: readonly Point[];
  /** Particles that the body holds, and where. */
  readonly pins: readonly { readonly particle: number; readonly body: Point }[];
  /** Pairs of particles; each keeps at most its flat distance. */
  readonly links: readonly (readonly [number, number])[];
  /** The particles of each column from the support down; the last ones make the hem. */
  readonly columns: readonly (readonly number[])[];
}

/** The mesh between hanging points that follow one another along a hem, its rows so many mm apart. */
export const meshOf = (outline: readonly Point[], hem: readonly Hanging[], apart: number): Mesh => {
  const flat: Point[] = [];
  const pins: { particle: number; body: Point }[] = [];
  const links = new Map<string, readonly [number, number]>();
  const pinned = (spot: Point, body: Point): number => {
    const known = pins.find(({ particle }) => distance(flat[particle]!, spot) < samePin);
    if (known) return known.particle;
    pins.push({ particle: flat.push(spot) - 1, body });
    return flat.length - 1;
  };
  // Columns that go round the same corner meet there.
  const shared = (spot: Point): number => {
    const known = flat.findIndex((other) => distance(other, spot) < samePin);
    return known >= 0 ? known : flat.push(spot) - 1;
  };
  const link = (a: number, b: number): void => {
    if (a === b || !seen(outline, flat[a]!, flat[b]!)) return;
    links.set(`${Math.min(a, b)} ${Math.max(a, b)}`, [a, b]);
  };
  const columns = hem.map((hanging) => {
    const knots = knotsOf(hanging, apart);
    const { hung, way } = hanging;
    const top = hung.y - wayLength(way);
    return knots.map(({ spot, y }, index) => ({
      y,
      particle: index === 0 ? pinned(spot, { x: hung.x, y: top }) : shared(spot),
    }));
  });
  for (const column of columns) {
    for (let index = 1; index < column.length; index += 1) link(column[index - 1]!.particle, column[index]!.particle);
  }
  for (let index = 1; index < columns.length; index += 1) zipped(columns[index - 1]!, columns[index]!, apart, link);
  return {
    flat,
    pins,
    links: [...links.values()],
    columns: columns.map((each) => each.map(({ particle }) => particle)),
  };
};

interface Knot {
  readonly y: number;
  readonly particle: number;
}

/** Links between two neighbouring columns, both diagonals of every quad among them. */
const zipped = (
  left: readonly Knot[],
  right: readonly Knot[],
  apart: number,
  link: (a: number, b: number) => void,
): void => {
  let [i, j] = [0, 0];
  while (true) {
    link(left[i]!.particle, right[j]!.particle);
    const [a, b] = [left[i + 1], right[j + 1]];
    if (!a && !b) return;
    if (a && b && Math.abs(a.y - b.y) < apart / 2) {
      link(left[i]!.particle, b.particle);
      link(a.particle, right[j]!.particle);
      i += 1;
      j += 1;
    } else if (a && (!b || a.y < b.y)) i += 1;
    else j += 1;
  }
};

/** The spots of a column: its support, every row that it passes, the corners it goes round, and the hem. */
const knotsOf = ({ hung, way }: Hanging, apart: number): { spot: Point; y: number }[] => {
  let y = hung.y - wayLength(way);
  const knots = [{ spot: way[0]!, y }];
  way.slice(1).forEach((end, index) => {
    const start = way[index]!;
    const length = distance(start, end);
    const bottom = y + length;
    for (let row = Math.ceil((y + leastLink) / apart) * apart; row < bottom - leastLink; row += apart) {
      const share = (row - y) / length;
      knots.push({ spot: plus(times(start, 1 - share), times(end, share)), y: row });
    }
    if (length > leastLink || index === way.length - 2) knots.push({ spot: end, y: bottom });
    y = bottom;
  });
  return knots;
};

/** How long the cloth hangs from its support to the hem, mm. */
export const wayLength = (way: readonly Point[]): number =>
  way.slice(1).reduce((sum, point, index) => sum + distance(way[index]!, point), 0);

/** Height of a row, mm; with stations 40 mm apart at the hem a half back has some 300 particles. */
export const rowHeight = 60;

// The shortest link in a column, mm.
const leastLink = 15;

// Supports nearer than this, in mm, are one particle.
const samePin = 0.5;
