// The values that a recipe finds while it is worked and keeps to itself: what a `solve` sought, and what is named from it in
// a block. The recipe is worked once more with a check behind each such line, whose finding says what the name is worth.
import { edited } from "./text-edit.ts";
import { treeLine } from "./tree-line.ts";
import type { WorkedText } from "./worked-text.ts";
import { type WrittenLine, written } from "./written.ts";

/** The values in words, by the offset of the line that finds each; asked for once in a text. */
export const foundInWords = (worked: WorkedText): ReadonlyMap<number, string> => {
  const known = kept.get(worked);
  if (known) return known;
  const found = new Map<number, string>();
  kept.set(worked, found);
  const { source, kernel, circumstances } = worked;
  const asked = written(worked).lines.flatMap((line) => {
    const name = line.words.find(({ means }) => means === "NewName")?.text;
    const isRead = treeLine(worked.outcome.tree, line.from)?.broken === false;
    return name !== undefined && isRead && isOfBlock(line)
      ? [{ line, name, at: Math.max(line.to, line.block?.to ?? 0) }]
      : [];
  });
  if (asked.length === 0 || asked.some(({ at }) => at > source.text.length)) return found;
  // A name is never different from itself, so each of these checks fails and says what it is.
  const edits = asked.map(({ name, at }) => ({ from: at, to: at, text: `\ncheck ${name} <> ${name}\n` }));
  const { judged } = kernel.work({ ...source, text: edited(source.text, edits) }, circumstances);
  let moved = 0;
  asked.forEach(({ line, name, at }, index) => {
    const from = at + moved + "\ncheck ".length;
    const message = judged.find(({ where, check }) => check === "check" && where.from === from)?.message ?? "";
    const [, words] = /^.+? is (.+?), and has to be different from/.exec(message) ?? [];
    if (words !== undefined && message.startsWith(`${name} `)) found.set(line.from, words);
    moved += edits[index]!.text.length;
  });
  return found;
};

const kept = new WeakMap<WorkedText, Map<number, string>>();

/** A value that only the block knows; within a `solve` no check may stand. */
const isOfBlock = (line: WrittenLine): boolean => {
  if (line.verb !== "solve" && !(line.verb === "let" && line.around)) return false;
  for (let each = line.around; each; each = each.around) if (each.verb === "solve") return false;
  return true;
};
