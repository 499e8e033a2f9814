// File names for the drawings of a garment, good on every system.
import { isDevice } from "./windows-names.ts";

/** The drawing with all pieces on it. */
export const sheetName = "sheet";

/** Longer names are cut, so that no system refuses them; a letter takes up to four of 255 bytes. */
const mostLetters = 48;

/** `back` for the piece back, by piece, without an ending; names that differ in capitals only, or that a system keeps for itself, get a number. */
export const drawingNames = (pieces: Iterable<string>): ReadonlyMap<string, string> => {
  const taken = new Set([sheetName]);
  const names = new Map<string, string>();
  for (const piece of pieces) {
    const short = [...piece].slice(0, mostLetters).join("");
    let [name, number] = [isDevice(short) ? `${short}-piece` : short, 1];
    while (taken.has(key(name))) {
      number += 1;
      name = `${short}-${number}`;
    }
    taken.add(key(name));
    names.set(piece, name);
  }
  return names;
};

// Some systems do not tell capitals, or two spellings of one accented letter, apart.
const key = (name: string): string => name.normalize("NFC").toLowerCase();
