// The paths of `use` lines, as links to the files that they lead to.
import { pathWritten, recipesAround } from "./naming/recipes.ts";
import type { WorkedText } from "./worked-text.ts";

/** What stands between the quotes, and the file it means. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly file: string;
}

/** The links of the opened recipe; a path that leads nowhere is none. */
export const links = (worked: WorkedText): Link[] =>
  [...recipesAround(worked).opened.uses].flatMap(([line, file]) => {
    const path = pathWritten(line);
    return path && file !== undefined ? [{ from: path.from + 1, to: path.to - 1, file }] : [];
  });
