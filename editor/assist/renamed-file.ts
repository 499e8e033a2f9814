// What has to be written in `use` lines when a recipe's file gets another name or another folder.
import { textWritten } from "../../grammar/line-parser.ts";
import { scan } from "../../grammar/tokens.ts";
import type { Source } from "../../kernel/sources.ts";
import { fileAt, pathTo } from "../files/use-path.ts";
import type { TextEdit } from "./text-edit.ts";

/** Edits for a file that is about to be moved; files are paths with / from one folder, texts are as they are before it. */
export const renamedFile = (from: string, to: string, texts: readonly Source[]): TextEdit[] =>
  renamedFiles(new Map([[from, to]]), texts);

/** The same for several files that are moved at once. */
export const renamedFiles = (moves: ReadonlyMap<string, string>, texts: readonly Source[]): TextEdit[] =>
  texts.flatMap(({ file, text }) => {
    const now = moves.get(file) ?? file;
    return pathsUsed(text).flatMap(({ from, to, path }): TextEdit[] => {
      const used = fileAt(file, path);
      if (used === undefined) return [];
      const usedNow = moves.get(used) ?? used;
      if (usedNow === used && now === file) return [];
      const written = pathTo(now, usedNow);
      // A path that still leads there stays as it was written.
      return fileAt(now, path) === usedNow ? [] : [{ file, from, to, text: quoted(written) }];
    });
  });

interface PathUsed {
  /** Quotes included. */
  readonly from: number;
  readonly to: number;
  readonly path: string;
}

const pathsUsed = (text: string): PathUsed[] => {
  const { tokens } = scan(text);
  return tokens.flatMap(({ image, startOffset: from }, at) => {
    const [verb, before] = [tokens[at - 1], tokens[at - 2]];
    const isFirst = before === undefined || /^[\n{}]$/.test(before.image);
    const isPath = verb?.image === "use" && isFirst && image.length > 1 && image.startsWith('"') && image.endsWith('"');
    return isPath ? [{ from, to: from + image.length, path: textWritten(image) }] : [];
  });
};

const quoted = (path: string): string => `"${path.replace(/[\\"]/g, "\\$&")}"`;
