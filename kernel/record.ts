// The record of a garment's making: one entry a step, with the piece before and after, and one line in words.
import type { Where } from "../grammar/diagnostic.ts";
import { sewnLengthOf } from "./sewn.ts";
import { lengthIn } from "./units.ts";
import type { Garment, Piece } from "./working.ts";

export interface StepRecord {
  readonly where: Where;
  /** The piece it worked on; empty for a step of the garment. */
  readonly piece: string;
  readonly step: string;
  /** They share all that the step left alone. */
  readonly before?: Piece;
  readonly after?: Piece;
  readonly words: string;
  /** An amount in mm that stands once for each time the piece comes in the garment. */
  readonly amount?: number;
}

/** Lengths that differ by less than this many mm read the same. */
const tellable = 0.005;

/** A step in one line: "opened 9 cm at the hem, 5.2 deg about the shoulder: 18 cm in the garment; hem 31.5 cm to 40.5 cm". */
export const tellStep = (record: StepRecord, garment: Garment): string => {
  const times = record.piece === "" ? 1 : timesInGarment(record.piece, garment);
  const inGarment =
    record.amount !== undefined && times > 1
      ? `: ${lengthIn(record.amount * times, garment.units)} in the garment`
      : "";
  const changes = record.before && record.after ? changedLengths(record.before, record.after, garment) : [];
  return [`${record.words}${inGarment}`, ...changes].filter((part) => part !== "").join("; ");
};

/** How many times a piece's cloth comes in the finished garment: its count, twice that on the fold. */
export const timesInGarment = (name: string, garment: Garment): number => {
  const piece = garment.pieces.get(name);
  const onFold = piece?.outline.some(({ edge }) => piece.edges.get(edge)?.role === "fold") ?? false;
  const count = garment.cuts.filter((cut) => cut.piece === name).reduce((sum, cut) => sum + cut.count, 0);
  return Math.max(1, count) * (onFold ? 2 : 1);
};

/** "hem 31.5 cm to 40.5 cm" for each outline edge that a step made longer or shorter, as sewn. */
const changedLengths = (before: Piece, after: Piece, garment: Garment): string[] =>
  after.outline.flatMap(({ edge: name }) => {
    const [was, is] = [before.edges.get(name), after.edges.get(name)];
    if (!was || !is || before.outline.length === 0) return [];
    if (was.path === is.path && before.darts === after.darts && before.takeUps === after.takeUps) return [];
    const [old, now] = [sewnLengthOf(before, name), sewnLengthOf(after, name)];
    const [oldWords, nowWords] = [lengthIn(old, garment.units), lengthIn(now, garment.units)];
    return Math.abs(old - now) < tellable || oldWords === nowWords ? [] : [`${name} ${oldWords} to ${nowWords}`];
  });
