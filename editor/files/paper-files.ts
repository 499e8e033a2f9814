// Drawings as PDF files, one for each kind of paper. A file of its own, because what writes PDF is large, and no other command waits
// for it.
import type { Drawings } from "../../kernel/drawing/draw.ts";
import type { Lettering } from "../../kernel/lettering/lettering.ts";
import type { TooLarge } from "../../kernel/paper/does-not-fit.ts";
import { type PaperKind, papers } from "../../kernel/paper/papers.ts";
import { pdf } from "../../kernel/paper/pdf.ts";
import { printOn } from "../../kernel/paper/print.ts";
import { type PrintedFile, pdfType } from "./printed-file.ts";

/** A print as a file. */
export interface PaperFile extends PrintedFile {
  readonly paper: PaperKind;
  readonly pages: number;
}

/** The drawings on a paper, or what it does not take. */
export const paperFile = async (
  drawings: Drawings,
  paper: PaperKind,
  lettering: Lettering,
): Promise<PaperFile | TooLarge> => {
  const print = printOn(paper, drawings);
  if ("tooLarge" in print) return { paper, tooLarge: print.tooLarge, others: papersFor(drawings) };
  const content = await pdf(print, lettering);
  return { name: `sheet-${paper.name}.pdf`, type: pdfType, content, paper, pages: print.pages.length };
};

const papersFor = (drawings: Drawings): PaperKind[] =>
  papers.filter((paper) => !("tooLarge" in printOn(paper, drawings)));
