// The label in the body of a piece: its name, the garment, what to cut, and what the recipe adds.
import type { Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import type { Garment, Piece } from "../working.ts";
import { inTurned, type Line } from "./box.ts";
import type { Text } from "./drawing.ts";
import { foldOf } from "./grain-line.ts";
import { ascent, textWidth, wrapped } from "./lettering.ts";
import { type Place, roomiestPlace } from "./roomiest-place.ts";

/** The label, where a piece has most room for it, level where it fits so and else along the grain. */
export const labelBlock = (
  garment: Garment,
  piece: Piece,
  loop: Path,
  lines: readonly Line[],
  grainTurn: number,
): Text[] => {
  let best: { block: Block; turn: number; place: Place } | undefined;
  for (const turn of new Set([0, grainTurn])) {
    for (const widest of widths) {
      const block = blockOf(linesOf(garment, piece), widest);
      const place = roomiestPlace(loop, lines, { ...block, turn });
      if (!best || place.room > best.place.room) best = { block, turn, place };
      if (place.room >= 1) return laidOut(block, turn, place);
    }
  }
  return best ? laidOut(best.block, best.turn, best.place) : [];
};

/** The label about a given middle, for a piece that has no closed outline yet. */
export const labelBlockAt = (garment: Garment, piece: Piece, center: Point): Text[] =>
  laidOut(blockOf(linesOf(garment, piece), widths[0]), 0, { center, room: 1 });

/** What to cut, in the words of an order: "CUT 1 SHELL ON FOLD". */
export const cutOrders = (garment: Garment, piece: Piece): string[] => {
  const onFold = foldOf(piece) !== undefined;
  return garment.cuts
    .filter((cut) => cut.piece === piece.name)
    .map(({ count, fabric }) => `CUT ${count} ${fabric.toUpperCase()}${onFold ? " ON FOLD" : `, ${inPairs(count)}`}`);
};

interface BlockLine {
  readonly text: string;
  readonly size: number;
  readonly weight: Text["weight"];
}

interface Block {
  readonly lines: readonly BlockLine[];
  /** With its margin, mm. */
  readonly width: number;
  readonly height: number;
}

// Common practice, no source: lettering 5 to 8 mm high, the piece's name first and largest.
const nameSize = 10;
const orderSize = 7;
const noteSize = 5.5;

// The label is wrapped to the first of these widths, mm, that fits the piece.
const widths = [110, 75, 50] as const;
const margin = 5;

// One line to the next as a ratio of the size.
const leading = 1.35;

// A small piece gets a small label, but nobody can read one smaller than this.
const leastShrinking = 0.45;

const linesOf = (garment: Garment, piece: Piece): BlockLine[] => [
  ...(piece.doubtful ? [{ text: "NOT FIT TO CUT", size: nameSize, weight: "bold" as const }] : []),
  { text: piece.name.toUpperCase(), size: nameSize, weight: "bold" },
  { text: garment.title, size: noteSize, weight: "plain" },
  ...(isNet(piece) ? [{ text: "NET PATTERN", size: orderSize, weight: "bold" as const }] : []),
  ...cutOrders(garment, piece).map((text) => ({ text, size: orderSize, weight: "bold" as const })),
  ...piece.labels.filter(({ at }) => !at).map(({ text }) => ({ text, size: noteSize, weight: "plain" as const })),
];

/** A net pattern has no allowance anywhere: what is drawn is the sewing line. */
export const isNet = (piece: Piece): boolean => ![...piece.allowances.values()].some(({ width }) => width > 0);

const inPairs = (count: number): string => {
  if (count === 1) return "SINGLE";
  const pairs = Math.floor(count / 2);
  const words = pairs === 1 ? "1 PAIR" : `${pairs} PAIRS`;
  return count % 2 === 0 ? words : `${words} + 1`;
};

const blockOf = (lines: readonly BlockLine[], widest: number): Block => {
  const broken = lines.flatMap(({ text, size, weight }) =>
    wrapped(text, size, weight, widest).map((line) => ({ text: line, size, weight })),
  );
  const width = Math.max(0, ...broken.map(({ text, size, weight }) => textWidth(text, size, weight)));
  const height = broken.reduce((sum, { size }) => sum + size * leading, 0);
  return { lines: broken, width: width + 2 * margin, height: height + 2 * margin };
};

const laidOut = ({ lines, height }: Block, turn: number, { center, room }: Place): Text[] => {
  const shrinking = Math.min(1, Math.max(room, leastShrinking));
  let down = (margin - height / 2) * shrinking;
  return lines.map(({ text, size, weight }) => {
    const small = size * shrinking;
    const at = inTurned(center, turn, { x: 0, y: down + small * ((leading - 1) / 2 + ascent) });
    down += small * leading;
    return { text, at, size: small, turn, align: "middle", weight };
  });
};
