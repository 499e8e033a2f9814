// The label in the body of a piece: its name, the garment, what to cut, and what the recipe adds; less of it where there
// is no room for letters that one can read.
import { signedArea } from "../geometry/area.ts";
import type { Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import type { Garment, Piece } from "../working.ts";
import { inTurned, type Line } from "./box.ts";
import type { Text } from "./drawing.ts";
import { foldOf } from "./grain-line.ts";
import { ascent, textWidth, wrapped } from "./lettering.ts";
import { noRemarks, type Remarks } from "./remarks.ts";
import { type Place, placeWithRoom, roomiestPlace } from "./roomiest-place.ts";

/** The whole label, level, in letters of the usual size or little smaller; undefined where a piece has no room for that. */
export const wholeLabel = (
  garment: Garment,
  piece: Piece,
  loop: Path,
  lines: readonly Line[],
  remarks: Remarks = noRemarks,
): Text[] | undefined => {
  const said = linesOf(garment, piece, remarks);
  return isOutOfTheQuestion(said, loop) ? undefined : fitting(loop, lines, 0, usualBlocks(said), leastShrinking);
};

/** As much of the label as a piece has room for: level rather than along the grain, and along it rather than shortened. */
export const fittedLabel = (
  garment: Garment,
  piece: Piece,
  loop: Path,
  lines: readonly Line[],
  grainTurn: number,
  remarks: Remarks = noRemarks,
): Text[] => {
  const whole = linesOf(garment, piece, remarks);
  const turns = new Set([0, grainTurn]);
  for (const said of shorterAndShorter(whole)) {
    if (isOutOfTheQuestion(said, loop)) continue;
    const [usual, small] = [usualBlocks(said), smallBlocks(said)];
    for (const turn of turns) {
      const texts = fitting(loop, lines, turn, usual, leastShrinking) ?? fitting(loop, lines, turn, small, 1);
      if (texts) return texts;
    }
  }
  // Something has to be said, if over a line: its name, as far as possible from the lines.
  const name = rowOf(whole.filter(({ part }) => part === "name"));
  return laidOut(name, grainTurn, { ...roomiestPlace(loop, lines, { ...name, turn: grainTurn }), room: 1 });
};

/** The label about a given middle, for a piece that has no closed outline yet. */
export const labelBlockAt = (garment: Garment, piece: Piece, center: Point, remarks: Remarks = noRemarks): Text[] =>
  laidOut(blockOf(linesOf(garment, piece, remarks), widths[0]), 0, { center, room: 1 });

/** What to cut, in the words of an order: "CUT 1 SHELL ON FOLD". */
export const cutOrders = (garment: Garment, piece: Piece): string[] => {
  const onFold = foldOf(piece) !== undefined;
  return garment.cuts
    .filter((cut) => cut.piece === piece.name)
    .map(({ count, fabric }) => `CUT ${count} ${fabric.toUpperCase()}${onFold ? " ON FOLD" : `, ${inPairs(count)}`}`);
};

/** A line of a label, and what it is about. */
interface LabelLine {
  readonly part: "warning" | "name" | "garment" | "size" | "order" | "note" | "version";
  readonly text: string;
  readonly size: number;
  readonly weight: Text["weight"];
}

interface Block {
  /** From the top; what stands in one row is told apart by a gap. */
  readonly rows: readonly (readonly LabelLine[])[];
  /** With its margin, mm. */
  readonly width: number;
  readonly height: number;
  readonly margin: number;
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

// Nobody can read capitals lower than 3 mm, which are 0.73 of the size, as of most sans-serif letters.
const leastSize = 4.2;
const leastShrinking = leastSize / noteSize;

// In a small piece all is as small as can be read, but for the name, which is still told by its size.
const smallNameSize = 6;
const smallMargin = 1.5;
const smallWidths = [90, 55, 30] as const;

const linesOf = (garment: Garment, piece: Piece, { size, version }: Remarks): LabelLine[] => [
  ...(piece.doubtful ? [bold("warning", "NOT FIT TO CUT", nameSize)] : []),
  bold("name", piece.name.toUpperCase(), nameSize),
  plain("garment", garment.title),
  ...(size === undefined ? [] : [bold("size", `SIZE ${size.toUpperCase()}`, orderSize)]),
  ...(isNet(piece) ? [bold("order", "NET PATTERN", orderSize)] : []),
  ...cutOrders(garment, piece).map((text) => bold("order", text, orderSize)),
  ...piece.labels.filter(({ at }) => !at).map(({ text }) => plain("note", text)),
  ...(version === undefined ? [] : [plain("version", `version ${version}`)]),
];

const bold = (part: LabelLine["part"], text: string, size: number): LabelLine => ({ part, text, size, weight: "bold" });
const plain = (part: LabelLine["part"], text: string): LabelLine => ({ part, text, size: noteSize, weight: "plain" });

// What a small piece can do without, first what the sheet tells too: the name is the last to go.
const inOrderOfGoing: readonly LabelLine["part"][] = ["garment", "version", "note", "size", "order"];

/** The whole label, and then less and less of it. */
const shorterAndShorter = (lines: readonly LabelLine[]): LabelLine[][] => {
  const all = Array.from({ length: inOrderOfGoing.length + 1 }, (_, gone) =>
    lines.filter(({ part }) => !inOrderOfGoing.slice(0, gone).includes(part)),
  );
  return all.filter((said, index) => index === 0 || said.length < all[index - 1]!.length);
};

/** A net pattern has no allowance anywhere: what is drawn is the sewing line. */
export const isNet = (piece: Piece): boolean => ![...piece.allowances.values()].some(({ width }) => width > 0);

const inPairs = (count: number): string => {
  if (count === 1) return "SINGLE";
  const pairs = Math.floor(count / 2);
  const words = pairs === 1 ? "1 PAIR" : `${pairs} PAIRS`;
  return count % 2 === 0 ? words : `${words} + 1`;
};

/** Whether even the smallest letters would take more than the whole piece, so that no place need be looked for. */
const isOutOfTheQuestion = (lines: readonly LabelLine[], loop: Path): boolean =>
  lines.reduce((sum, { text, weight }) => sum + textWidth(text, leastSize, weight), 0) * leastSize >
  Math.abs(signedArea(loop));

const usualBlocks = (lines: readonly LabelLine[]): Block[] => widths.map((widest) => blockOf(lines, widest));

const smallBlocks = (lines: readonly LabelLine[]): Block[] => [
  ...smallWidths.map((widest) => smallBlockOf(lines, widest)),
  ...fewRows.map((count) => rowsOf(lines, count)),
  rowOf(lines),
];

/** The first of some blocks that has its full size, or else the one that has to shrink least and not too far. */
const fitting = (
  loop: Path,
  lines: readonly Line[],
  turn: number,
  blocks: readonly Block[],
  least: number,
): Text[] | undefined => {
  let best: { block: Block; place: Place } | undefined;
  for (const block of blocks) {
    const place = placeWithRoom(loop, lines, { ...block, turn }, best?.place.room ?? least);
    if (place) best = { block, place };
    if (place && place.room >= 1) break;
  }
  return best && laidOut(best.block, turn, best.place);
};

const blockOf = (lines: readonly LabelLine[], widest: number): Block => {
  const rows = lines.flatMap((line) =>
    wrapped(line.text, line.size, line.weight, widest).map((text) => [{ ...line, text }]),
  );
  return blockWith(rows, margin);
};

const smallBlockOf = (lines: readonly LabelLine[], widest: number): Block =>
  blockWith(blockOf(lines.map(smaller), widest).rows, smallMargin);

/** A block of a few rows with several lines in each, for a long and low piece. */
const rowsOf = (lines: readonly LabelLine[], count: number): Block => {
  const whole = inOneRow(lines);
  const share = rowWidth(whole) / count;
  const rows = Array.from({ length: count }, (): LabelLine[] => []);
  let before = 0;
  for (const line of whole) {
    const width = rowWidth([line]);
    // A line stands in the row that most of it would lie in if all rows were one.
    rows[Math.min(count - 1, Math.floor((before + width / 2) / share))]!.push(line);
    before += width + partGap;
  }
  return blockWith(
    rows.filter((row) => row.length > 0),
    smallMargin,
  );
};

const fewRows = [3, 2] as const;

/** A block of one row, for a narrow piece. */
const rowOf = (lines: readonly LabelLine[]): Block => blockWith([inOneRow(lines)], rowMargin);

const inOneRow = (lines: readonly LabelLine[]): LabelLine[] =>
  lines.map((line) => ({ ...smaller(line), size: leastSize, text: line.text.replace(/\s+/g, " ") }));

const rowMargin = 0.8;

const smaller = (line: LabelLine): LabelLine => ({
  ...line,
  size: line.size === nameSize ? smallNameSize : leastSize,
});

const blockWith = (rows: readonly (readonly LabelLine[])[], around: number): Block => ({
  rows,
  width: Math.max(0, ...rows.map(rowWidth)) + 2 * around,
  height: rows.reduce((sum, row) => sum + rowSize(row) * leadingOf(rows), 0) + 2 * around,
  margin: around,
});

// A single row needs no room for a next one.
const leadingOf = (rows: readonly unknown[]): number => (rows.length === 1 ? 1 : leading);

const rowSize = (row: readonly LabelLine[]): number => Math.max(...row.map(({ size }) => size));

const rowWidth = (row: readonly LabelLine[]): number =>
  row.reduce((sum, { text, size, weight }) => sum + textWidth(text, size, weight), 0) + (row.length - 1) * partGap;

// Between what stands in one row, mm.
const partGap = 5;

const laidOut = (block: Block, turn: number, { center, room }: Place): Text[] => {
  const shrinking = Math.min(1, room);
  const apart = leadingOf(block.rows);
  let down = (block.margin - block.height / 2) * shrinking;
  return block.rows.flatMap((row) => {
    const baseline = down + rowSize(row) * shrinking * ((apart - 1) / 2 + ascent);
    down += rowSize(row) * shrinking * apart;
    let along = (-rowWidth(row) / 2) * shrinking;
    return row.map(({ text, size, weight }): Text => {
      const width = textWidth(text, size, weight) * shrinking;
      const at = inTurned(center, turn, { x: row.length === 1 ? 0 : along + width / 2, y: baseline });
      along += width + partGap * shrinking;
      return { text, at, size: size * shrinking, turn, align: "middle", weight };
    });
  });
};
