// Offsets as an editor counts them: lines and UTF-16 characters, both from 0.
import type { TextEdit as ProtocolEdit, Range, WorkspaceEdit } from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { TextEdit } from "../assist/text-edit.ts";
import type { WorkedDocument } from "./worked-documents.ts";
import type { Workroom } from "./workroom.ts";

/** A stretch of a document's text. */
export const rangeIn = (document: TextDocument, from: number, to: number): Range => ({
  start: document.positionAt(from),
  end: document.positionAt(to),
});

/** A file as a document, open or not; one that cannot be read has no text. */
export const documentAt = (room: Workroom, { document, place, worked }: WorkedDocument, file: string): TextDocument =>
  file === worked.source.file
    ? document
    : TextDocument.create(room.uriOf(place.root, file), "chalkline", 0, room.textOf(place.root, file) ?? "");

/** Edits of one document. */
export const editsIn = (document: TextDocument, edits: readonly Omit<TextEdit, "file">[]): ProtocolEdit[] =>
  edits.map(({ from, to, text }) => ({ range: rangeIn(document, from, to), newText: text }));

/** Edits of several files as one change. */
export const changeOf = (edits: readonly TextEdit[], documentOf: (file: string) => TextDocument): WorkspaceEdit => {
  const changes: Record<string, ProtocolEdit[]> = Object.create(null) as Record<string, ProtocolEdit[]>;
  for (const file of new Set(edits.map((edit) => edit.file))) {
    const document = documentOf(file);
    changes[document.uri] = editsIn(
      document,
      edits.filter((edit) => edit.file === file),
    );
  }
  return { changes };
};
