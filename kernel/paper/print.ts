// A garment's drawings on paper of some kind: its pieces and the title block laid out, and the pages that show them.
import type { Drawings } from "../drawing/draw.ts";
import { type Block, blockOf } from "./block.ts";
import type { Print } from "./page.ts";
import type { PaperKind } from "./papers.ts";
import { tiledPages } from "./tiled.ts";
import { wholeSheets } from "./whole-sheets.ts";

/** The print, or the pieces that no sheet of this paper takes, or that would take hundreds of pages. */
export const printOn = (
  paper: PaperKind,
  { pieces, sheet, column }: Drawings,
): Print | { readonly tooLarge: readonly Block[] } => {
  const blocks = [...pieces].map(([name, { groups }]) =>
    // What the lines of the sizes mean is said once, and not beside every piece.
    blockOf(name, { groups: groups.filter(({ of }) => of !== "size-legend") }),
  );
  const { title, words } = sheet;
  const laid =
    paper.use === "tiles"
      ? tiledPages(blocks, paper, { title, column })
      : wholeSheets([...blocks, titleBlockOf(sheet)], paper, title);
  return "tooLarge" in laid ? laid : { title, words, ...laid };
};

const titleBlockOf = ({ groups }: Drawings["sheet"]): Block =>
  blockOf("title block", { groups: groups.filter(({ of }) => of === "title-block" || of === "size-legend") });
