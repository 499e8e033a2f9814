// The documents of an editor, worked: each once for all questions that are asked of it until something changes.
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Kernel } from "../../kernel/kernel.ts";
import { type WorkedText, workedText } from "../assist/worked-text.ts";
import type { Place, Workroom } from "./workroom.ts";

/** A document with what came of working it. */
export interface WorkedDocument {
  readonly document: TextDocument;
  readonly place: Place;
  readonly worked: WorkedText;
}

export interface WorkedDocuments {
  /** Works a document where that has not been done since the last change. */
  of(document: TextDocument): WorkedDocument;
  /** Any text may have changed: what was worked out may no longer hold. */
  changed(): void;
  /** A file has gone, under this name at least: nothing that was read of it is kept. */
  gone(): void;
}

/**
 * Works documents with a kernel of its own. A kernel remembers every file that it has read by its name, so that it is given up
 * when one goes: names that come and go all day would fill the memory.
 */
export const workedDocuments = (newKernel: () => Kernel, room: Workroom): WorkedDocuments => {
  const kept = new Map<string, WorkedDocument>();
  let kernel = newKernel();
  return {
    of(document) {
      const known = kept.get(document.uri);
      if (known) return known;
      const place = room.placeOf(document.uri);
      const source = { file: place.file, text: document.getText() };
      const made = { document, place, worked: workedText(kernel, source, { sources: room.sourcesFor(place.root) }) };
      kept.set(document.uri, made);
      return made;
    },
    changed: () => kept.clear(),
    gone() {
      kept.clear();
      kernel = newKernel();
    },
  };
};
