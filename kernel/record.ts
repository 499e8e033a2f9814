// The record of a garment's making: one entry a step, with the pieces before and after, and one line in words. That a piece
// is begun is an entry too, and says nothing in words.
import type { Where } from "../grammar/diagnostic.ts";
import { sewnLengthOf } from "./sewn.ts";
import { lengthIn } from "./units.ts";
import type { Garment, Piece } from "./working.ts";

export interface StepRecord {
  readonly where: Where;
  /** The piece it worked on or began; empty for a step of the garment. */
  readonly piece: string;
  /** The step's name; `piece` for the line that begins a piece. */
  readonly step: string;
  /** The pieces that it made or changed: one, or for a step of the garment any number. */
  readonly changed: readonly ChangedPiece[];
  readonly words: string;
  /** An amount in mm that stands once for each time the piece comes in the garment. */
  readonly amount?: number;
}

/** A piece as a step found it and as it left it; they share all that the step left alone. */
export interface ChangedPiece {
  /** Not there where the step made the piece. */
  readonly before?: Piece;
  readonly after: Piece;
}

/** What a step made of the piece of this name, if it touched it. */
export const changedIn = ({ changed }: StepRecord, piece: string): ChangedPiece | undefined =>
  changed.find(({ after }) => after.name === piece);

/** Lengths that differ by less than this many mm read the same. */
const tellable = 0.005;

/** A step in one line: "opened 9 cm at the hem, 5.2 deg about the shoulder: 18 cm in the garment; hem 31.5 cm to 40.5 cm". */
export const tellStep = (record: StepRecord, garment: Garment): string => {
  const times = timesOfAmount(record, garment);
  const inGarment =
    record.amount !== undefined && times > 1
      ? `: ${lengthIn(record.amount * times, garment.units)} in the garment`
      : "";
  // A step of the garment tells by itself what it did to its pieces.
  const changes = record.piece === "" ? [] : record.changed.flatMap((piece) => changedLengths(piece, garment));
  return [`${record.words}${inGarment}`, ...changes].filter((part) => part !== "").join("; ");
};

const timesOfAmount = ({ changed }: StepRecord, garment: Garment): number => {
  const [piece, another] = changed;
  return piece && !another ? timesInGarment(piece.after.name, garment) : 1;
};

/** How many times a piece's cloth comes in the finished garment: its count, twice that on the fold. */
export const timesInGarment = (name: string, garment: Garment): number => {
  const piece = garment.pieces.get(name);
  const onFold = piece?.outline.some(({ edge }) => piece.edges.get(edge)?.role === "fold") ?? false;
  const count = garment.cuts.filter((cut) => cut.piece === name).reduce((sum, cut) => sum + cut.count, 0);
  return Math.max(1, count) * (onFold ? 2 : 1);
};

/** "hem 31.5 cm to 40.5 cm" for each outline edge that a step made longer or shorter, as sewn. */
const changedLengths = ({ before, after }: ChangedPiece, garment: Garment): string[] =>
  after.outline.flatMap(({ edge: name }) => {
    const [was, is] = [before?.edges.get(name), after.edges.get(name)];
    if (!before || !was || !is || before.outline.length === 0) return [];
    if (was.path === is.path && before.darts === after.darts && before.takeUps === after.takeUps) return [];
    const [old, now] = [sewnLengthOf(before, name), sewnLengthOf(after, name)];
    const [oldWords, nowWords] = [lengthIn(old, garment.units), lengthIn(now, garment.units)];
    return Math.abs(old - now) < tellable || oldWords === nowWords ? [] : [`${name} ${oldWords} to ${nowWords}`];
  });
