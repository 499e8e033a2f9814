// Drawings as PDF files, one for each kind of paper. A file of its own, because what writes PDF is large, and no other command waits
// for it.
import type { Drawings } from "../../kernel/drawing/draw.ts";
import { type PaperKind, papers } from "../../kernel/paper/papers.ts";
import { pdf } from "../../kernel/paper/pdf.ts";
import { printOn } from "../../kernel/paper/print.ts";
import { shippedLettering } from "./shipped-lettering.ts";

/** A print as a file. */
export interface PaperFile {
  readonly paper: PaperKind;
  readonly pages: number;
  readonly content: Uint8Array;
}

/** What no sheet of a paper takes. */
export interface TooLarge {
  readonly paper: PaperKind;
  readonly tooLarge: readonly { readonly name: string; readonly width: number; readonly height: number }[];
  /** The papers that do take all of it. */
  readonly others: readonly PaperKind[];
}

/** The drawings on each of these papers. */
export const paperFiles = async (
  drawings: Drawings,
  kinds: readonly PaperKind[],
): Promise<(PaperFile | TooLarge)[]> => {
  const lettering = shippedLettering();
  const prints: (PaperFile | TooLarge)[] = [];
  for (const paper of kinds) {
    const print = printOn(paper, drawings);
    if ("tooLarge" in print) prints.push({ paper, tooLarge: print.tooLarge, others: papersFor(drawings) });
    else prints.push({ paper, pages: print.pages.length, content: await pdf(print, lettering) });
  }
  return prints;
};

const papersFor = (drawings: Drawings): PaperKind[] =>
  papers.filter((paper) => !("tooLarge" in printOn(paper, drawings)));
