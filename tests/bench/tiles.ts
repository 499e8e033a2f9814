// A coat on forty and more A4 pages as PDF, against the same lines put into a bare form that a library shows on as many pages.
import { PDFDocument, PDFName } from "@cantoo/pdf-lib";
import { shippedLettering } from "../../editor/files/shipped-lettering.ts";
import { draw } from "../../kernel/drawing/draw.ts";
import { number, place } from "../../kernel/export/path-data.ts";
import type { Print } from "../../kernel/paper/page.ts";
import { papers } from "../../kernel/paper/papers.ts";
import { pdf } from "../../kernel/paper/pdf.ts";
import { printOn } from "../../kernel/paper/print.ts";
import { recipeIn } from "./recipe-in.ts";
import { type Bench, median } from "./row.ts";

export const tilesBench: Bench = {
  name: "tiles",
  rows: async (rounds) => {
    const { garment } = recipeIn("lobby-coat-swing.chalk");
    const paper = papers.find(({ name }) => name === "a4")!;
    const laid = (): Print => {
      const print = printOn(paper, draw(garment));
      if ("tooLarge" in print) throw new Error("the coat does not go on A4");
      return print;
    };
    const print = laid();
    const lettering = shippedLettering();
    const [ours, floor]: [number[], number[]] = [[], []];
    const bytes = { ours: (await pdf(print, lettering)).length, floor: (await bare(print)).length };
    for (let round = 0; round < rounds; round += 1) {
      ours.push(await timed(() => pdf(print, lettering)));
      floor.push(await timed(() => bare(print)));
    }
    const pages = `${print.pages.length} pages`;
    const is = "pdf-lib's bare form";
    return [
      { goal: `PDF of ${pages}`, ours: median(ours), floor: { is, figure: median(floor) }, bound: 1.5 },
      {
        goal: `size of that PDF`,
        unit: "KiB",
        ours: bytes.ours / 1024,
        floor: { is, figure: bytes.floor / 1024 },
        bound: 1.5,
      },
    ];
  },
};

const timed = async (run: () => Promise<unknown>): Promise<number> => {
  const began = performance.now();
  await run();
  return performance.now() - began;
};

/** The pattern's lines once, in one colour, and pages that each show their part of it: no lettering, no layers, nothing else. */
const bare = async ({ groups, pages }: Print): Promise<Uint8Array> => {
  const file = await PDFDocument.create({ updateMetadata: false });
  const { context } = file;
  const lines = groups.flatMap(({ strokes }) =>
    strokes.map(({ path }) =>
      [
        `${place(path[0]!.start)} m`,
        ...path.map((span) =>
          span.kind === "line"
            ? `${place(span.end)} l`
            : `${place(span.startHandle)} ${place(span.endHandle)} ${place(span.end)} c`,
        ),
        "S",
      ].join(" "),
    ),
  );
  const box = [-10_000, -10_000, 10_000, 10_000];
  const form = context.register(context.flateStream(lines.join("\n"), { Type: "XObject", Subtype: "Form", BBox: box }));
  const unit = 72 / 25.4;
  for (const { width, height, window: part } of pages) {
    const leaf = file.addPage([width * unit, height * unit]).node;
    const shift = part ? `${number(part.at.x - part.of.left)} ${number(part.at.y - part.of.top)}` : "0 0";
    const content = `${number(unit)} 0 0 ${number(-unit)} 0 ${number(height * unit)} cm 10 10 ${number(width - 20)} ${number(height - 20)} re W n 1 0 0 1 ${shift} cm /F Do`;
    leaf.set(PDFName.of("Contents"), context.register(context.flateStream(content)));
    leaf.set(PDFName.of("Resources"), context.obj({ XObject: { F: form } }));
  }
  return file.save({ addDefaultPage: false, updateFieldAppearances: false });
};
