// Tidying: what is tidy stays as it is, what a recipe says stays said, and no comment is lost.
import type { Parsed } from "../../../grammar/parse.ts";
import { tidy } from "../../../grammar/print.ts";
import { treeSays } from "../../language/without-places.ts";
import { holds, type Target } from "../target.ts";
import { chalkline } from "../worked-once.ts";

const read = (text: string): Parsed => chalkline.parse({ file: "fuzz.chalk", text });

/** The target, around a printer. */
export const tidyingBy = (printer: typeof tidy): Target => ({
  name: "tidy",
  run({ text }) {
    const before = read(text);
    // Only recipes that are read without a mistake are tidied.
    if (before.diagnostics.length > 0) return;
    const once = printer(before.tree, before.forms);
    const after = read(once);
    holds(after.diagnostics.length === 0, "tidy text cannot be read", after.diagnostics[0]?.message);
    holds(same(treeSays(before.tree), treeSays(after.tree)), "tidying changes what is said");
    holds(same(commentsOf(before), commentsOf(after)), "tidying loses or moves a comment");
    holds(printer(after.tree, after.forms) === once, "tidying twice changes more");
  },
});

export const tidying = tidyingBy(tidy);

const commentsOf = ({ tree }: Parsed): string[] => tree.comments.map(({ text }) => text.trimEnd());

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
