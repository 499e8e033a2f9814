// How the pieces lie on each cloth as files, the same for the command line and the page. A file of its own, because what writes PDF
// is large, and few lays are drawn.
import { layDrawing, lifeSize, tenth } from "../../kernel/cloth/lay/lay-drawing.ts";
import type { LaidCloth } from "../../kernel/cloth/lay/lay-of.ts";
import { layPrint } from "../../kernel/cloth/lay/lay-print.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { svg } from "../../kernel/export/svg.ts";
import type { Lettering } from "../../kernel/lettering/lettering.ts";
import { pdf } from "../../kernel/paper/pdf.ts";
import type { Units } from "../../kernel/working.ts";
import { drawingNames } from "./drawing-names.ts";
import { type PrintedFile, pdfType } from "./printed-file.ts";

/** A lay as it is wanted: to look at and to cut by. */
export type LaySize = "tenth" | "life-size";

export interface LayFile extends PrintedFile {
  readonly drawing: Drawing;
}

/** Every cloth as SVG and PDF at a tenth of the size and as PDF at life size. */
export const layFiles = async (
  cloths: readonly LaidCloth[],
  units: Units,
  lettering: Lettering,
): Promise<PrintedFile[]> => {
  const files: PrintedFile[] = [];
  for (const cloth of cloths) {
    const small = layDrawing(cloth, units, tenth);
    files.push({ name: `${nameIn(cloths, cloth)}.svg`, type: "image/svg+xml", content: svg(small, lettering) });
    files.push(await layPdf(cloths, cloth, "tenth", units, lettering));
    files.push(await layPdf(cloths, cloth, "life-size", units, lettering));
  }
  return files;
};

/** One of the cloths of a lay as PDF. */
export const layPdf = async (
  cloths: readonly LaidCloth[],
  cloth: LaidCloth,
  size: LaySize,
  units: Units,
  lettering: Lettering,
): Promise<LayFile> => {
  const drawing = layDrawing(cloth, units, size === "tenth" ? tenth : lifeSize);
  const name = `${nameIn(cloths, cloth)}${size === "tenth" ? "" : "-life-size"}.pdf`;
  return { name, type: pdfType, content: await pdf(layPrint(drawing), lettering), drawing };
};

/** What a cloth's files are called, without the ending: it depends on the other cloths, whose names may differ in capitals only. */
const nameIn = (cloths: readonly LaidCloth[], { fabric }: LaidCloth): string =>
  `lay-${drawingNames(cloths.map((each) => each.fabric)).get(fabric)!}`;
