// A line's sentence as a snippet: its words as they are written, its slots as holes to fill.
import { type Form, type Part, type Slot, signature } from "../../../grammar/phrase.ts";
import { hole } from "./suggested.ts";

/** The shortest line of this form; what is optional is left out. */
export const lineSnippet = ({ verb, parts, block, blockOptional, parameters }: Form): string => {
  const holes = { count: 0 };
  const words = parts ? written(parts, holes) : verb;
  const brackets = parameters ? " ()" : "";
  if (!block || blockOptional) return `${words}${brackets}`;
  return block === "lines" ? `${words}${brackets} {\n  $0\n}` : `${words} { $0 }`;
};

/** A clause word with a hole behind it. */
export const clauseSnippet = (word: string, slot: Slot | undefined): string =>
  slot ? `${word} ${hole(1, holeName(slot))}` : word;

const written = (parts: readonly Part[], holes: { count: number }): string =>
  parts
    .flatMap((part): string[] => {
      if (part.kind === "words") return [part.words.join(" ")];
      if (part.kind === "optional") return [];
      holes.count += 1;
      const text = hole(holes.count, holeName(part.slot));
      return [isText(part.slot) ? `"${text}"` : text];
    })
    .join(" ");

const isText = ({ wanted }: Slot): boolean => wanted === "a text";

/** "an edge of this piece or a place" in a few letters: "edge-or-place". */
const holeName = (slot: Slot): string =>
  slot.choices?.[0] ??
  signature([{ kind: "slot", slot: { ...slot, many: false } }])
    .split(" [")[0]!
    .toLowerCase();
