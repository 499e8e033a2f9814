// What comes through standard input.
import { fstatSync } from "node:fs";
import type { Unreadable } from "../../kernel/sources.ts";
import { cannotRead } from "../files/read-text.ts";
import { unreadable } from "../files/unreadable.ts";

/** Its bytes, as far as one byte beyond so many, which is enough to say that there are too many; or why it cannot be read. */
export const inputBytes = async (most: number): Promise<{ readonly bytes: Uint8Array } | Unreadable> => {
  try {
    // Node would take a folder for an input with nothing in it.
    if (fstatSync(0).isDirectory()) return unreadable("file-is-folder", "Standard input is a folder, not a file.");
    const chunks: Buffer[] = [];
    let length = 0;
    for await (const chunk of process.stdin) {
      chunks.push(chunk);
      length += chunk.length;
      if (length > most) break;
    }
    return { bytes: Buffer.concat(chunks) };
  } catch (error) {
    return cannotRead(error, "Standard input");
  }
};
