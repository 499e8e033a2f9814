// What has to be written in recipes when files or folders are about to be moved in an editor.
import type { FileRename, WorkspaceEdit } from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { renamedFiles } from "../assist/renamed-file.ts";
import type { TextEdit } from "../assist/text-edit.ts";
import { changeOf } from "./stretches.ts";
import type { Place, Workroom } from "./workroom.ts";

/** The change of all `use` lines that these moves make necessary; null where they make none so. */
export const editsForMoves = (files: readonly FileRename[], room: Workroom): WorkspaceEdit | null => {
  const changes: NonNullable<WorkspaceEdit["changes"]> = {};
  const roots = new Map<string, { readonly place: Place; readonly moves: Map<string, string> }>();
  for (const { oldUri, newUri } of files) {
    const [old, now] = [room.placeOf(oldUri), room.placeOf(newUri)];
    // A recipe that leaves its folder is no longer used from it, and no path could lead there.
    if (old.root === undefined || old.root !== now.root) continue;
    const { moves } = roots.get(old.root) ?? { moves: new Map<string, string>() };
    roots.set(old.root, { place: old, moves });
    for (const name of room.namesAround(old)) {
      if (name === old.file) moves.set(name, now.file);
      else if (name.startsWith(`${old.file}/`)) moves.set(name, now.file + name.slice(old.file.length));
    }
  }
  for (const [root, { place, moves }] of roots) {
    const texts = room.recipesAround(place);
    const edits: TextEdit[] = renamedFiles(moves, texts);
    const textOf = new Map(texts.map(({ file, text }) => [file, text]));
    const documentOf = (file: string): TextDocument =>
      TextDocument.create(room.uriOf(root, file), "chalkline", 0, textOf.get(file) ?? "");
    Object.assign(changes, changeOf(edits, documentOf).changes);
  }
  return Object.keys(changes).length > 0 ? { changes } : null;
};
