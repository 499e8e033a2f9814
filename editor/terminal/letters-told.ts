// What a command that letters drawings says of letters that its font lacks: at the recipe's own lines, and of the rest in a note.
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { lettersMissing } from "../../kernel/lettering/letters-missing.ts";
import { lacking, numberOf } from "../../kernel/lettering/readable.ts";
import type { SaidLine } from "../../kernel/report/said.ts";
import { remarkLine } from "./told.ts";
import type { WorkedFile } from "./worked-file.ts";

/** All that is told of a recipe whose drawings are lettered: findings, remarks and verdict, with those on letters. */
export const lettersTold = async (file: WorkedFile, drawings: readonly Drawing[]): Promise<readonly SaidLine[]> => {
  if (drawings.length === 0) return file.told;
  const { shippedLettering } = await import("../files/shipped-lettering.ts");
  const characters = lacking(drawings, shippedLettering());
  const { findings, elsewhere } = lettersMissing(characters, file.outcome.garment, file.texts);
  const byNumber = elsewhere.map((each) => `The font has no ${each}, so that it is written as ${numberOf(each)}.`);
  return [...byNumber.map(remarkLine), ...file.toldWith(findings)];
};
