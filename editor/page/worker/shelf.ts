// The recipes that a `use` line may name, in the memory of the page: the paths mean what they mean on a disk, and nothing
// outside the shelf can be read.
import { didYouMean } from "../../../grammar/nearest.ts";
import type { Source, Sources, Unreadable } from "../../../kernel/sources.ts";
import { fileAt } from "../../files/use-path.ts";
import { refusedPath } from "../../files/written-path.ts";

/** The texts that lie on the shelf, by file name. */
export const shelved = new Map<string, string>();

/** Sources that read from these texts by file name. */
export const shelf = (texts: ReadonlyMap<string, string>): Sources => ({
  read(path, from): Source | Unreadable {
    const refused = refusedPath(path);
    if (refused) return refused;
    const file = fileAt(from, path);
    if (file === undefined)
      return { problem: { code: "use-outside", message: `${path} leads out of the folder that is open.` } };
    const text = texts.get(file);
    if (text !== undefined) return { file, text };
    const hint = didYouMean(file, texts.keys());
    return {
      problem: {
        code: "use-missing",
        message: `There is no recipe ${path} beside this one.`,
        ...(hint !== undefined && { hint }),
      },
    };
  },
});
