// Saves a written sheet in the formats that were asked for, and says what it wrote; for commands that make one.
import { join } from "node:path";
import { didYouMean } from "../../grammar/nearest.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { numberOf } from "../../kernel/lettering/readable.ts";
import { blank, lettersOf, plain, type SaidLine, strong } from "../../kernel/report/said.ts";
import { makeFolder, saveAll } from "../files/save.ts";
import { type WrittenFile, writtenPdf, writtenSvg } from "../files/written-files.ts";
import { cannotWrite } from "./cannot-write.ts";
import { remarkLine } from "./told.ts";

/** A sheet to be saved: its pages, and what else is written of it as text. */
export interface Sheet {
  /** What its files are called, without an ending. */
  readonly name: string;
  readonly pages: () => readonly Drawing[];
  /** Text by format; the format's name is the file's ending. */
  readonly texts: ReadonlyMap<string, () => string>;
}

/** What a command was asked to make of its sheet. */
export interface Asked {
  /** Formats by name; none for text, or for all of them where there is a folder. */
  readonly as: readonly string[];
  /** The folder that the files go to; nothing is written where it is not given. */
  readonly out?: string;
}

/** Why what was asked for cannot be had; undefined when it can. A screen shows one text, and no page. */
export const cannotBeHad = ({ as, out }: Asked, formats: readonly string[]): string | undefined => {
  const stranger = as.find((each) => !formats.includes(each));
  if (stranger !== undefined)
    return `There is no format ${stranger}. ${didYouMean(stranger, formats) ?? `There is ${formats.join(", ")}.`}`;
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
  /** What the font lacked. */
  readonly notes: readonly SaidLine[];
}

/** Saves a sheet into a folder, in all its formats where none are named; the sentence that says why where it cannot be written. */
export const saveSheet = async (
  sheet: Sheet,
  as: readonly string[],
  folder: string,
): Promise<Saved | { readonly problem: string }> => {
  const files: WrittenFile[] = [];
  const notes: SaidLine[] = [];
  for (const format of [...sheet.texts.keys(), ...pageFormats]) {
    if (as.length > 0 && !as.includes(format)) continue;
    const text = sheet.texts.get(format);
    if (text) files.push({ name: `${sheet.name}.${endings.get(format) ?? format}`, content: text() });
    else if (format === "svg") files.push(...writtenSvg(sheet.name, sheet.pages()));
    else {
      const { file, lacking } = await writtenPdf(sheet.name, sheet.pages());
      files.push(file);
      notes.push(
        ...lacking.map((each) => remarkLine(`The font has no ${each}, so that it is printed as ${numberOf(each)}.`)),
      );
    }
  }
  try {
    makeFolder(folder);
    saveAll(files.map(({ name, content }) => ({ path: join(folder, name), content })));
  } catch (error) {
    return { problem: cannotWrite(error, folder) };
  }
  return { said: [blank, [plain(`Wrote ${files.map(({ name }) => name).join(", ")} into `), strong(folder)]], notes };
};

const endings = new Map([["text", "txt"]]);
