// Saves a written sheet in the formats that were asked for, and says what it wrote; for commands that make one.
import { didYouMean } from "../../grammar/nearest.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { blank, lettersOf, plain, type SaidLine, strong } from "../../kernel/report/said.ts";
import type { Entry } from "../../kernel/written/entry.ts";
import { writtenPages, writtenPapers } from "../../kernel/written/written-pages.ts";
import { saveInto } from "../files/save.ts";
import { type WrittenFile, writtenPdf, writtenSvg } from "../files/written-files.ts";
import { cannotWrite } from "./cannot-write.ts";

/** A sheet to be saved: what its pages say, and what else is written of it as text. */
export interface Sheet {
  /** What its files are called, without an ending. */
  readonly name: string;
  /** What stands at the foot of its pages. */
  readonly title: string;
  readonly entries: readonly Entry[];
  /** Text by format; the format's name is the file's ending. */
  readonly texts: ReadonlyMap<string, () => string>;
}

/** What a command was asked to make of its sheet. */
export interface Asked {
  /** Formats by name; none for text, or for all of them where there is a folder. */
  readonly as: readonly string[];
  /** The folder that the files go to; nothing is written where it is not given. */
  readonly out?: string;
  /** The paper that pages are laid out on, by name; A4 where none is named. */
  readonly paper?: string;
}

/** Why what was asked for cannot be had; undefined when it can. A screen shows one text, and no page. */
export const cannotBeHad = ({ as, out, paper }: Asked, formats: readonly string[]): string | undefined => {
  const stranger = as.find((each) => !formats.includes(each));
  if (stranger !== undefined)
    return `There is no format ${stranger}. ${didYouMean(stranger, formats) ?? `There is ${formats.join(", ")}.`}`;
  if (paper !== undefined) {
    const known = writtenPapers.map(({ name }) => name);
    if (!known.includes(paper))
      return `There is no paper ${paper} for words. ${didYouMean(paper, known) ?? `There is ${known.join(", ")}.`}`;
    if (out === undefined) return `--paper ${paper} lays out pages, which need a folder: --out FOLDER.`;
    if (as.length > 0 && !pageFormats.some((each) => as.includes(each)))
      return `--paper is what pages are laid out on: write --as ${pageFormats.join(" or ")} as well.`;
  }
  if (out !== undefined || as.length === 0) return undefined;
  const isShown = as.length === 1 && !pageFormats.some((each) => as.includes(each));
  return isShown ? undefined : `--as ${as.join(",")} makes files, which need a folder: --out FOLDER.`;
};

const pageFormats = ["svg", "pdf"];

/** Lines as a file of text. */
export const asText = (lines: readonly SaidLine[]): string => lines.map((line) => `${lettersOf(line)}\n`).join("");

/** As wide as a printed page of typewriting is, in columns. */
export const typedWidth = 100;

export interface Saved {
  /** What was written where. */
  readonly said: readonly SaidLine[];
  /** The pages that were lettered. */
  readonly lettered: readonly Drawing[];
}

/** Saves a sheet into a folder, in all its formats where none are named; the sentence that says why where it cannot be written. */
export const saveSheet = async (
  sheet: Sheet,
  { as, paper }: Asked,
  folder: string,
): Promise<Saved | { readonly problem: string }> => {
  const files: WrittenFile[] = [];
  let lettered: readonly Drawing[] = [];
  for (const format of [...sheet.texts.keys(), ...pageFormats]) {
    if (as.length > 0 && !as.includes(format)) continue;
    const text = sheet.texts.get(format);
    if (text) files.push({ name: `${sheet.name}.${endings.get(format) ?? format}`, content: text() });
    else {
      lettered = writtenPages(
        sheet.title,
        sheet.entries,
        writtenPapers.find(({ name }) => name === paper),
      );
      if (format === "svg") files.push(...(await writtenSvg(sheet.name, lettered)));
      else files.push(await writtenPdf(sheet.name, lettered));
    }
  }
  try {
    saveInto(folder, files);
  } catch (error) {
    return { problem: cannotWrite(error, folder) };
  }
  return {
    said: [blank, [plain(`Wrote ${files.map(({ name }) => name).join(", ")} into `), strong(folder)]],
    lettered,
  };
};

const endings = new Map([["text", "txt"]]);
