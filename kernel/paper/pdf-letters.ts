// Letters in a PDF: fonts whose glyphs are the outlines themselves (ISO 32000-1, 9.6.5, Type 3), with a table that tells readers
// which character each one is, so that what is printed the same everywhere can still be searched and read out.
import { type PDFContext, PDFName, type PDFRef } from "@cantoo/pdf-lib";
import type { Text } from "../drawing/drawing.ts";
import type { Glyph, Lettering } from "../lettering/lettering.ts";
import { written } from "../lettering/readable.ts";

/** A stretch of a text in one font: its name in the resources, and its letters as hexadecimal codes. */
export interface LetteredRun {
  readonly font: string;
  readonly codes: string;
}

/** The letters of a print. */
export interface PdfLetters {
  /** Fonts by their names in the resources. */
  readonly fonts: ReadonlyMap<string, PDFRef>;
  runs(text: string, weight: Text["weight"]): readonly LetteredRun[];
  /** How wide a text is at size 1. */
  width(text: string, weight: Text["weight"]): number;
}

/** Puts the letters of these texts into a document. */
export const pdfLetters = (context: PDFContext, texts: readonly Text[], lettering: Lettering): PdfLetters => {
  const fonts = new Map<string, PDFRef>();
  const places = new Map<Text["weight"], ReadonlyMap<string, { readonly font: string; readonly code: number }>>();
  for (const weight of ["plain", "bold"] as const) {
    const used = texts.filter((text) => text.weight === weight).map(({ text }) => written(text, weight, lettering));
    const characters = [...new Set(used.join(""))].sort(byNumber);
    const own = new Map<string, { font: string; code: number }>();
    for (let from = 0; from < characters.length; from += mostInFont) {
      const name = `${weight === "bold" ? "B" : "T"}${from / mostInFont + 1}`;
      const part = characters.slice(from, from + mostInFont);
      for (const [index, character] of part.entries()) own.set(character, { font: name, code: index + 1 });
      fonts.set(
        name,
        fontOf(
          context,
          part.map((character) => ({ character, glyph: lettering[weight].glyph(character)! })),
        ),
      );
    }
    places.set(weight, own);
  }
  return {
    fonts,
    runs: (text, weight) => {
      const runs: { font: string; codes: string }[] = [];
      for (const character of written(text, weight, lettering)) {
        const { font, code } = places.get(weight)!.get(character)!;
        const last = runs.at(-1);
        const hex = code.toString(16).toUpperCase().padStart(2, "0");
        if (last?.font === font) last.codes += hex;
        else runs.push({ font, codes: hex });
      }
      return runs;
    },
    width: (text, weight) =>
      [...written(text, weight, lettering)].reduce(
        (sum, character) => sum + lettering[weight].glyph(character)!.width / 1000,
        0,
      ),
  };
};

// Codes are one byte, and 0 stays free.
const mostInFont = 255;

const byNumber = (a: string, b: string): number => a.codePointAt(0)! - b.codePointAt(0)!;

interface Letter {
  readonly character: string;
  readonly glyph: Glyph;
}

const fontOf = (context: PDFContext, letters: readonly Letter[]): PDFRef => {
  const names = letters.map((_, index) => `g${index + 1}`);
  const procedures = context.obj({});
  for (const [index, { glyph }] of letters.entries())
    procedures.set(PDFName.of(names[index]!), context.register(context.flateStream(procedureOf(glyph))));
  return context.register(
    context.obj({
      Type: "Font",
      Subtype: "Type3",
      FontBBox: [0, 0, 0, 0],
      FontMatrix: [0.001, 0, 0, 0.001, 0, 0],
      CharProcs: procedures,
      Encoding: { Type: "Encoding", Differences: [1, ...names.map((name) => PDFName.of(name))] },
      FirstChar: 1,
      LastChar: letters.length,
      Widths: letters.map(({ glyph }) => glyph.width),
      Resources: {},
      ToUnicode: context.register(context.flateStream(characterTable(letters))),
    }),
  );
};

/** A glyph as PDF draws it: its width and box, then its outline, filled. */
const procedureOf = ({ width, outline }: Glyph): string => {
  const spots = outline.flatMap((part): (readonly [number, number])[] => {
    if (part.kind === "curve") return [...part.handles, part.to];
    return part.kind === "bend" ? [part.handle, part.to] : [part.to];
  });
  const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
  const box = spots.length === 0 ? [0, 0, 0, 0] : [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  let from: readonly [number, number] = [0, 0];
  const lines = outline.map((part) => {
    const before = from;
    from = part.to;
    if (part.kind === "curve") return `${[...part.handles, part.to].flat().join(" ")} c`;
    if (part.kind === "bend") return `${[...handlesOf(before, part.handle, part.to), part.to].flat().join(" ")} c`;
    return `${part.to.join(" ")} ${part.kind === "move" ? "m" : "l"}`;
  });
  return [`${width} 0 ${box.join(" ")} d1`, ...lines, ...(lines.length > 0 ? ["f"] : [])].join("\n");
};

/** PDF knows no curve with one handle: both of a cubic one lie two thirds of the way to it. */
const handlesOf = (
  from: readonly [number, number],
  [x, y]: readonly [number, number],
  to: readonly [number, number],
): (readonly [number, number])[] =>
  [from, to].map(([endX, endY]) => [Math.round(endX + ((x - endX) * 2) / 3), Math.round(endY + ((y - endY) * 2) / 3)]);

/** Which character each code is (ISO 32000-1, 9.10.3); UTF-16, as the format asks. */
const characterTable = (letters: readonly Letter[]): string => {
  const entries = letters.map(({ character }, index) => {
    const units = [...Array(character.length).keys()].map((at) => hex(character.charCodeAt(at), 4)).join("");
    return `<${hex(index + 1, 2)}> <${units}>`;
  });
  const blocks: string[] = [];
  for (let from = 0; from < entries.length; from += 100) {
    const part = entries.slice(from, from + 100);
    blocks.push(`${part.length} beginbfchar`, ...part, "endbfchar");
  }
  return [
    "/CIDInit /ProcSet findresource begin",
    "12 dict begin",
    "begincmap",
    "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def",
    "/CMapName /Adobe-Identity-UCS def",
    "/CMapType 2 def",
    "1 begincodespacerange",
    "<00> <FF>",
    "endcodespacerange",
    ...blocks,
    "endcmap",
    "CMapName currentdict /CMap defineresource pop",
    "end",
    "end",
  ].join("\n");
};

const hex = (value: number, digits: number): string => value.toString(16).toUpperCase().padStart(digits, "0");
