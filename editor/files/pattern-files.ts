// A garment's pieces as the files that cutters, plotters and cutting rooms load, the same for the command line and the page. Prints
// are made in paper-files.ts, because what writes PDF is large.
import type { Drawings } from "../../kernel/drawing/draw.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import type { Remarks } from "../../kernel/drawing/remarks.ts";
import { type CutIn, cuttingRoomDxf } from "../../kernel/exchange/cutting-room.ts";
import { type Format, formats } from "../../kernel/export/formats.ts";
import type { Lettering } from "../../kernel/lettering/lettering.ts";
import { drawnFiles } from "./drawn-files.ts";
import type { PrintedFile } from "./printed-file.ts";

/** What is to be drawn: the drawings, the garments behind them, one or one for each size, and what the drawings say of them. */
export interface Pattern {
  readonly drawings: Drawings;
  readonly garments: readonly CutIn[];
  readonly remarks: Remarks;
}

export interface PatternFile extends PrintedFile {
  /** What it shows; undefined for a cutting room's file, which holds pieces and no drawing. */
  readonly drawing: Drawing | undefined;
}

const cuttingRoom = { name: "dxf", title: "DXF after ASTM D6673, for cutting rooms" };

/** All formats by name and title: those of a drawing, and that of a whole garment. */
export const patternFormats: readonly Pick<Format, "name" | "title">[] = [...formats, cuttingRoom];

/** The files of a pattern in the formats of these names; those that `isLettered` says so of take a lettering. */
export const patternFiles = (
  { drawings, garments, remarks }: Pattern,
  as: readonly string[],
  lettering: Lettering | undefined,
): PatternFile[] => {
  const drawn = drawnFiles(drawings);
  const inFormats = formats
    .filter(({ name }) => as.includes(name))
    .flatMap(({ ending, type, write }) =>
      drawn.map(({ name, drawing }) => ({
        name: `${name}${ending}`,
        type,
        content: write(drawing, lettering),
        drawing,
      })),
    );
  if (!as.includes(cuttingRoom.name)) return inFormats;
  const content = cuttingRoomDxf(garments, remarks);
  return [...inFormats, { name: "cutting-room.dxf", type: "image/vnd.dxf", content, drawing: undefined }];
};

/** Whether one of these formats is lettered with the font of the program; the others have letters of their own. */
export const isLettered = (as: readonly string[]): boolean =>
  formats.some((format) => format.isLettered && as.includes(format.name));
