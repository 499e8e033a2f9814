// Drawings as PDF files, one for each kind of paper. A file of its own, because what writes PDF and reads fonts is large, and no other
// command waits for it.
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import type { Drawings } from "../../kernel/drawing/draw.ts";
import { faceFrom, type Lettering } from "../../kernel/lettering/lettering.ts";
import { lacking } from "../../kernel/lettering/readable.ts";
import { type PaperKind, papers } from "../../kernel/paper/papers.ts";
import { pdf } from "../../kernel/paper/pdf.ts";
import { printOn } from "../../kernel/paper/print.ts";

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

export interface PaperFiles {
  readonly prints: readonly (PaperFile | TooLarge)[];
  /** Characters that cannot be set; they are written as their numbers. */
  readonly lacking: readonly string[];
}

/** The drawings on each of these papers. */
export const paperFiles = async (drawings: Drawings, kinds: readonly PaperKind[]): Promise<PaperFiles> => {
  const lettering = shippedLettering();
  const prints: (PaperFile | TooLarge)[] = [];
  for (const paper of kinds) {
    const print = printOn(paper, drawings);
    if ("tooLarge" in print) prints.push({ paper, tooLarge: print.tooLarge, others: papersFor(drawings) });
    else prints.push({ paper, pages: print.pages.length, content: await pdf(print, lettering) });
  }
  return { prints, lacking: lacking([drawings.sheet], lettering) };
};

const papersFor = (drawings: Drawings): PaperKind[] =>
  papers.filter((paper) => !("tooLarge" in printOn(paper, drawings)));

/** The font that comes with the program. */
export const shippedLettering = (): Lettering => ({
  plain: faceIn("DejaVuSans.ttf"),
  bold: faceIn("DejaVuSans-Bold.ttf"),
});

/** Beside the built program, or in the package that the build takes it from. */
const faceIn = (file: string) => {
  const beside = fileURLToPath(new URL(file, import.meta.url));
  const path = existsSync(beside) ? beside : createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${file}`);
  return faceFrom(readFileSync(path));
};
