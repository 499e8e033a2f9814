// A written sheet before it has a place: titles, sentences and tables in order. Terminal and paper lay it out, each in its way.
import type { Stroke, Text } from "../drawing/drawing.ts";

export type Entry = Sentence | Table | Picture;

export interface Sentence {
  readonly kind: "title" | "heading" | "warning" | "sentence";
  readonly text: string;
}

export interface Table {
  readonly kind: "table";
  readonly columns: readonly Column[];
  /** As many cells in each as there are columns. */
  readonly rows: readonly (readonly string[])[];
}

/** A small drawing, for paper only; a terminal leaves it out. */
export interface Picture {
  readonly kind: "picture";
  /** From (0, 0) to the right and down, mm; no wider than a page's text. */
  readonly strokes: readonly Stroke[];
  readonly texts: readonly Text[];
  readonly height: number;
}

export interface Column {
  readonly head: string;
  /** Amounts stand under one another at their ends. */
  readonly amount: boolean;
}

export const title = (text: string): Entry => ({ kind: "title", text });
export const heading = (text: string): Entry => ({ kind: "heading", text });
export const caution = (text: string): Entry => ({ kind: "warning", text });
export const sentence = (text: string): Entry => ({ kind: "sentence", text });

export const wordsUnder = (head: string): Column => ({ head, amount: false });
export const amountsUnder = (head: string): Column => ({ head, amount: true });

/** A table; nothing where it would have no rows, and without the columns that have nothing in any row. */
export const table = (columns: readonly Column[], rows: readonly (readonly string[])[]): Entry[] => {
  if (rows.length === 0) return [];
  const isFilled = columns.map((_, index) => rows.some((row) => row[index] !== ""));
  const filled = <T>(cells: readonly T[]): T[] => cells.filter((_, index) => isFilled[index]);
  return [{ kind: "table", columns: filled(columns), rows: rows.map(filled) }];
};
