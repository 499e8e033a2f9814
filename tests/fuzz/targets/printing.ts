// PDF on tiles and on a roll: a file that begins and ends as one, with figures that are numbers inside its streams.
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { inflateSync } from "node:zlib";
import { faceFrom, type Lettering } from "../../../kernel/lettering/lettering.ts";
import { papers } from "../../../kernel/paper/papers.ts";
import { pdf } from "../../../kernel/paper/pdf.ts";
import { printOn } from "../../../kernel/paper/print.ts";
import { plainlyTold } from "../figures-told.ts";
import { holds, type Target } from "../target.ts";
import { drawnOnce } from "../worked-once.ts";

const faceIn = (file: string) => faceFrom(readFileSync(resolve("node_modules/dejavu-fonts-ttf/ttf", file)));

let read: Lettering | undefined;
const lettering = (): Lettering => {
  read ??= { plain: faceIn("DejaVuSans.ttf"), bold: faceIn("DejaVuSans-Bold.ttf") };
  return read;
};

/** The target of one paper. */
export const printing = (paperName: string): Target => ({
  name: `print on ${paperName}`,
  isDear: true,
  async run({ text }) {
    const paper = papers.find(({ name }) => name === paperName)!;
    const print = printOn(paper, drawnOnce(text));
    if ("tooLarge" in print) return;
    const written = Buffer.from(await pdf(print, lettering()));
    // ISO 32000-1, 7.5.2 and 7.5.5: the header and the last line of a file.
    holds(written.subarray(0, 5).toString("latin1") === "%PDF-", "the PDF does not begin");
    holds(written.toString("latin1").trimEnd().endsWith("%%EOF"), "the PDF does not end");
    for (const content of contentsOf(written)) plainlyTold(content, text, "pdf");
  },
});

/** The streams that hold drawing: those that are deflated text, which fonts are not. */
const contentsOf = (file: Buffer): string[] => {
  const found: string[] = [];
  for (let from = file.indexOf("stream\n"); from >= 0; from = file.indexOf("stream\n", from + 7)) {
    if (file.subarray(from - 3, from).toString("latin1") === "end") continue;
    const to = file.indexOf("endstream", from);
    const head = file.subarray(Math.max(0, from - 300), from).toString("latin1");
    // What a font is made of may hold any bytes.
    if (/Length1|FontFile|CIDFontType0C|OpenType/.test(head.slice(head.lastIndexOf("obj")))) continue;
    try {
      found.push(inflateSync(file.subarray(from + 7, to)).toString("latin1"));
    } catch {
      // Not deflated: nothing that this program draws.
    }
  }
  return found;
};
