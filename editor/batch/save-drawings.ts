// Saves the drawings of one row into its folder.
import { join } from "node:path";
import { type FileToSave, saveInto } from "../files/save.ts";
import { cannotWrite } from "../terminal/cannot-write.ts";
import { rowFolder } from "./row-folder.ts";

/** That drawings cannot be saved, in a sentence: then no more can be drafted. */
export class DrawingsNotSaved extends Error {}

/** Saves them into the folder of this row among those of all; throws DrawingsNotSaved. */
export const saveDrawings = (
  folder: string,
  row: number,
  name: string,
  files: readonly { readonly name: string; readonly content: FileToSave["content"] }[],
): void => {
  if (files.length === 0) return;
  const place = join(folder, rowFolder(row, name));
  try {
    saveInto(place, files);
  } catch (error) {
    throw new DrawingsNotSaved(cannotWrite(error, place));
  }
};
