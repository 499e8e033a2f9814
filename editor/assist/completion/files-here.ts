// The recipes that a `use` line may name, as they are written from where this recipe lies.
import { pathTo } from "../../files/use-path.ts";
import type { Completion } from "../completion.ts";
import type { WrittenWord } from "../written-word.ts";

/** Files for the text that is being typed; the recipe itself is not among them. */
export const filesHere = (word: WrittenWord, file: string, files: readonly string[], text: string): Completion[] => {
  const isClosed = word.means === "Text";
  const [from, to] = [word.from + 1, isClosed ? word.to - 1 : word.to];
  return files
    .filter((each) => each !== file && each.endsWith(".chalk"))
    .map((each) => ({ path: pathTo(file, each), each }))
    .sort((a, b) => steps(a.path) - steps(b.path) || (a.path < b.path ? -1 : 1))
    .map(({ path, each }) => ({
      label: path,
      kind: "file" as const,
      detail: each,
      insert: isClosed ? path : `${path}"`,
      isSnippet: false,
      from,
      to: Math.max(from, Math.min(to, text.length)),
    }));
};

const steps = (path: string): number => path.split("/").length;
