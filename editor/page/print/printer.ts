// The program that writes drawings as files. What writes PDF, and the font that prints are lettered in, are larger than the rest of
// the page, so it is loaded when something is first downloaded.

import plain from "dejavu-fonts-ttf/ttf/DejaVuSans.ttf";
import bold from "dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf";
import { draw } from "../../../kernel/drawing/draw.ts";
import { faceFrom, type Lettering } from "../../../kernel/lettering/lettering.ts";
import { lacking } from "../../../kernel/lettering/readable.ts";
import { doesNotFit } from "../../../kernel/paper/does-not-fit.ts";
import { type PaperKind, papers } from "../../../kernel/paper/papers.ts";
import { layPdf } from "../../files/lay-files.ts";
import { paperFile } from "../../files/paper-files.ts";
import { isLettered, patternFiles } from "../../files/pattern-files.ts";
import { run } from "../worker/errand.ts";
import type { Printed, ToDraw, ToPrint } from "./spoken.ts";

const printed = async (asked: ToPrint): Promise<Printed> => {
  switch (asked.kind) {
    case "drawings":
      return inFormat(asked.format, asked.toDraw);
    case "paper":
      return onPaper(papers.find(({ name }) => name === asked.paper)!, asked.toDraw);
    case "lay":
      return layOnPaper(asked);
  }
};

const lettering = (): Lettering => ({ plain: faceFrom(plain), bold: faceFrom(bold) });

const inFormat = (format: string, { garment, remarks, size }: ToDraw): Printed => {
  const letters = isLettered([format]) ? lettering() : undefined;
  const garments = [{ base: true, garment, ...(size !== undefined && { size }) }];
  const files = patternFiles({ drawings: draw(garment, remarks), garments, remarks }, [format], letters);
  return { files, lacking: letters ? lacking(drawingsIn(files), letters) : [] };
};

const drawingsIn = (files: ReturnType<typeof patternFiles>) =>
  files.flatMap(({ drawing }) => (drawing ? [drawing] : []));

const onPaper = async (paper: PaperKind, { garment, remarks }: ToDraw): Promise<Printed> => {
  const drawn = draw(garment, remarks);
  const letters = lettering();
  const file = await paperFile(drawn, paper, letters);
  if ("tooLarge" in file) return { refused: doesNotFit(file, garment.units, titlesOf) };
  return { files: [file], lacking: lacking([drawn.sheet], letters) };
};

/** As the menu names them. */
const titlesOf = (others: readonly PaperKind[]): string => others.map(({ title }) => title).join(", ");

const layOnPaper = async ({ cloths, fabric, units, size }: Extract<ToPrint, { kind: "lay" }>): Promise<Printed> => {
  const letters = lettering();
  const cloth = cloths.find((each) => each.fabric === fabric)!;
  const file = await layPdf(cloths, cloth, size, units, letters);
  return { files: [file], lacking: lacking([file.drawing], letters) };
};

run(printed);
