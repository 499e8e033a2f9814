// The program that writes drawings as files. What writes PDF, and the font that prints are lettered in, are larger than the rest of
// the page, so it is loaded when something is first downloaded.

import plain from "dejavu-fonts-ttf/ttf/DejaVuSans.ttf";
import bold from "dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf";
import { layDrawing, lifeSize, tenth } from "../../../kernel/cloth/lay/lay-drawing.ts";
import { layPrint } from "../../../kernel/cloth/lay/lay-print.ts";
import { draw } from "../../../kernel/drawing/draw.ts";
import type { Drawing } from "../../../kernel/drawing/drawing.ts";
import { cuttingRoomDxf } from "../../../kernel/exchange/cutting-room.ts";
import { formats } from "../../../kernel/export/formats.ts";
import { faceFrom, type Lettering } from "../../../kernel/lettering/lettering.ts";
import { lacking } from "../../../kernel/lettering/readable.ts";
import type { Block } from "../../../kernel/paper/block.ts";
import { type PaperKind, papers } from "../../../kernel/paper/papers.ts";
import { pdf } from "../../../kernel/paper/pdf.ts";
import { printOn } from "../../../kernel/paper/print.ts";
import { lengthIn } from "../../../kernel/units.ts";
import type { Units } from "../../../kernel/working.ts";
import { drawingNames } from "../../files/drawing-names.ts";
import { drawnFiles } from "../../files/drawn-files.ts";
import { run } from "../worker/errand.ts";
import type { Printed, ToDraw, ToPrint } from "./spoken.ts";

const printed = async (asked: ToPrint): Promise<Printed> => {
  switch (asked.kind) {
    case "drawings":
      return asked.format === "dxf" ? forCuttingRoom(asked.toDraw) : inFormat(asked.format, asked.toDraw);
    case "paper":
      return onPaper(papers.find(({ name }) => name === asked.paper)!, asked.toDraw);
    case "lay":
      return layOnPaper(asked);
  }
};

const lettering = (): Lettering => ({ plain: faceFrom(plain), bold: faceFrom(bold) });

const pdfType = "application/pdf";

const inFormat = (name: string, { garment, remarks }: ToDraw): Printed => {
  const { ending, type, isLettered, write } = formats.find((format) => format.name === name)!;
  const letters = isLettered ? lettering() : undefined;
  const drawn = drawnFiles(draw(garment, remarks));
  return {
    files: drawn.map((each) => ({ name: `${each.name}${ending}`, type, content: write(each.drawing, letters) })),
    lacking: letters ? lacking(drawings(drawn), letters) : [],
  };
};

const drawings = (drawn: readonly { readonly drawing: Drawing }[]): Drawing[] => drawn.map(({ drawing }) => drawing);

const forCuttingRoom = ({ garment, remarks, size }: ToDraw): Printed => {
  const sized = [{ base: true, garment, ...(size !== undefined && { size }) }];
  return {
    files: [{ name: "cutting-room.dxf", type: "image/vnd.dxf", content: cuttingRoomDxf(sized, remarks) }],
    lacking: [],
  };
};

const onPaper = async (paper: PaperKind, { garment, remarks }: ToDraw): Promise<Printed> => {
  const drawn = draw(garment, remarks);
  const print = printOn(paper, drawn);
  if ("tooLarge" in print) {
    const others = papers.filter((other) => !("tooLarge" in printOn(other, drawn)));
    return { refused: doesNotFit(paper, print.tooLarge, others, garment.units) };
  }
  const letters = lettering();
  const content = await pdf(print, letters);
  return {
    files: [{ name: `sheet-${paper.name}.pdf`, type: pdfType, content }],
    lacking: lacking([drawn.sheet], letters),
  };
};

const doesNotFit = (
  { title, use }: PaperKind,
  tooLarge: readonly Block[],
  others: readonly PaperKind[],
  units: Units,
): string => {
  const length = (mm: number): string => lengthIn(Math.ceil(mm), units);
  const pieces = tooLarge
    .map(({ name, width, height }) => `${name} (${length(width)} by ${length(height)})`)
    .join(", ");
  const why = use === "tiles" ? `would take hundreds of pages of ${title}` : `is larger than ${title} prints in one`;
  const instead =
    others.length > 0
      ? `Take another paper: ${others.map((other) => other.title).join(", ")}.`
      : "Split it into panels first.";
  return `${pieces} ${why}. ${instead}`;
};

const layOnPaper = async ({ cloth, units, size }: Extract<ToPrint, { kind: "lay" }>): Promise<Printed> => {
  const drawing = layDrawing(cloth, units, size === "tenth" ? tenth : lifeSize);
  const letters = lettering();
  const name = `lay-${drawingNames([cloth.fabric]).get(cloth.fabric)!}${size === "tenth" ? "" : "-life-size"}.pdf`;
  return {
    files: [{ name, type: pdfType, content: await pdf(layPrint(drawing), letters) }],
    lacking: lacking([drawing], letters),
  };
};

run(printed);
