// A step, declared once: its sentence, its documentation, its example and its code.
import type { Where } from "../grammar/diagnostic.ts";
import type { Phrase } from "../grammar/phrase.ts";
import type { Garment, Piece, Units } from "./working.ts";

/** What a step knows besides the piece: where it stands in the recipe, and the units to speak in. */
export interface Line {
  readonly where: Where;
  readonly units: Units;
}

/** The piece as the step leaves it, and one line in words. */
export interface Worked<T> {
  readonly now: T;
  /** "opened 9 cm at the hem, 5.2 deg about the shoulder"; empty when nothing is worth telling. */
  readonly words: string;
  /** An amount in mm that a fold or a pair of pieces multiplies in the garment. */
  readonly amount?: number;
}

interface Declared<T> {
  readonly name: string;
  readonly since: string;
  /** One sentence. */
  readonly summary: string;
  /** More, where one sentence is not enough; Markdown. */
  readonly details?: string;
  /** A whole small recipe that comes out clean. */
  readonly example: string;
  readonly phrases: readonly Phrase[];
  readonly work: (fill: never, on: T, line: Line) => Worked<T>;
}

export interface PieceStep extends Declared<Piece> {
  readonly on: "piece";
  /** It may leave the outline open, for a later line to close; any other step that does has asked for the impossible. */
  readonly mayOpen: boolean;
}

export interface GarmentStep extends Declared<Garment> {
  readonly on: "garment";
}

export type Step = PieceStep | GarmentStep;

type FillOf<P> = P extends Phrase<infer F> ? F : never;

interface Declaration<T, P extends readonly Phrase[]> extends Omit<Declared<T>, "phrases" | "work"> {
  /** One form of the line, or several. */
  readonly phrase: P;
  readonly work: (fill: FillOf<P[number]>, on: T, line: Line) => Worked<T>;
}

/** Declares a step that stands inside a piece; see any file in `steps/`. */
export const pieceStep = <const P extends readonly Phrase[]>({
  phrase,
  work,
  mayOpen = false,
  ...rest
}: Declaration<Piece, P> & { readonly mayOpen?: boolean }): PieceStep => ({
  ...rest,
  mayOpen,
  on: "piece",
  phrases: phrase,
  // The one erasure: from here on a step is known by its phrase, and the evaluator fills the slots the phrase names.
  work: work as PieceStep["work"],
});

/** Declares a step that stands at the top level. */
export const garmentStep = <const P extends readonly Phrase[]>({
  phrase,
  work,
  ...rest
}: Declaration<Garment, P>): GarmentStep => ({
  ...rest,
  on: "garment",
  phrases: phrase,
  work: work as GarmentStep["work"],
});
