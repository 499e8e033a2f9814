// Pieces that are wider than the cloth, and what would help, in numbers.
import { lengthIn } from "../../units.ts";
import { capital } from "../../value.ts";
import type { Units } from "../../working.ts";
import type { ClothPiece } from "./cloth-pieces.ts";
import { give, widthAcross } from "./width-across.ts";

export interface TooWide {
  readonly piece: string;
  /** Across the cloth, on the grain, and what there is of it, mm. */
  readonly width: number;
  readonly usable: number;
  /** What is wrong, and what would help, each a sentence. */
  readonly message: string;
  readonly hint: string;
}

/** The pieces that fit the usable width of a cloth in none of their directions; a name stands there once. */
export const tooWideOf = (
  pieces: readonly ClothPiece[],
  turns: readonly number[],
  usable: number,
  units: Units,
): TooWide[] =>
  pieces
    .filter(({ mirrored }) => !mirrored)
    .flatMap((piece) => {
      const width = leastWidth(piece, turns);
      return width <= usable + give ? [] : [tooWide(piece, width, usable, units)];
    });

/** A piece and its width across the cloth, as it lies narrowest; from the fold where it lies on it, mm. */
export interface Widest {
  readonly piece: string;
  readonly width: number;
}

/** The piece that takes most of the width of its cloth, the first of several alike. */
export const widestOf = (pieces: readonly ClothPiece[], turns: readonly number[]): Widest | undefined =>
  pieces
    .filter(({ mirrored }) => !mirrored)
    .map((piece) => ({ piece: piece.piece, width: leastWidth(piece, turns) }))
    .reduce<Widest | undefined>((widest, each) => (widest && widest.width >= each.width ? widest : each), undefined);

const leastWidth = ({ rim, onFold }: ClothPiece, turns: readonly number[]): number =>
  Math.min(...(onFold ? [0] : turns).map((turn) => widthAcross(rim, turn)));

const tooWide = (piece: ClothPiece, width: number, usable: number, units: Units): TooWide => {
  const name = piece.piece;
  const message =
    `With its allowances ${name} is ${lengthIn(width, units)} wide across the grain${piece.onFold ? " from the fold" : ""}; ` +
    `the cloth has ${lengthIn(usable, units)} to lay it on.`;
  const ways = [...turnedAcross(piece, usable, units), ...openedOut(piece), ...seamed(width, usable, units)];
  const wider = `take cloth with ${lengthIn((piece.onFold ? 2 : 1) * width, units)} between its selvedges`;
  return { piece: name, width, usable, message, hint: `${capital([...ways, wider].join(", or "))}.` };
};

const turnedAcross = ({ rim, onFold }: ClothPiece, usable: number, units: Units): string[] => {
  const across = widthAcross(rim, Math.PI / 2);
  return !onFold && across <= usable + give
    ? [`turn its grain line across, when it is ${lengthIn(across, units)} wide`]
    : [];
};

// Opened out, a piece on the fold need not lie in the middle of the cloth.
const openedOut = ({ onFold }: ClothPiece): string[] => (onFold ? ["lay it on cloth opened flat"] : []);

// What a seam takes on either side, mm, where the recipe has not said: the usual 1.5 cm.
const seamAllowance = 15;

// A piece that needs more seams than this is no longer the piece that was meant.
const mostSeams = 7;

/** The fewest seams along the grain that bring each part within the width, every one with its allowance on both sides. */
const seamed = (width: number, usable: number, units: Units): string[] => {
  for (let seams = 1; seams <= mostSeams; seams += 1) {
    const part = (width + 2 * seamAllowance * seams) / (seams + 1);
    if (part > usable) continue;
    return [`sew it together of ${seams + 1} parts of ${lengthIn(part, units)} each, seams along the grain`];
  }
  return [];
};
