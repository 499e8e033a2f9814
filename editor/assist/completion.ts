// What could stand at the cursor, likeliest first: the words of the line's sentence, the names that are known there, the
// beginnings of new lines. It asks the line's words rather than the tree, for a line that is being typed is seldom whole.
import { describeCheck } from "../../kernel/manual.ts";
import { readable } from "../../kernel/report/readable.ts";
import { entryNames } from "./completion/entry-names.ts";
import { filesHere } from "./completion/files-here.ts";
import { firstWords } from "./completion/first-words.ts";
import { memberWords } from "./completion/member-words.ts";
import { newNames } from "./completion/new-names.ts";
import { parameterKinds } from "./completion/parameter-kinds.ts";
import { seamsHere } from "./completion/seams-here.ts";
import type { CompletionKind, Suggested } from "./completion/suggested.ts";
import { checksHere, valuesHere } from "./completion/values-here.ts";
import { wordsBehind } from "./completion/words-behind.ts";
import { type Known, knownAt } from "./known-names.ts";
import { type Spot, spotAt } from "./line-at.ts";
import { pathTo, valueOfPath } from "./path-at.ts";
import { type SlotAt, slotAt } from "./slot-at.ts";
import { wantedHere } from "./wanted-kinds.ts";
import type { WorkedText } from "./worked-text.ts";
import { written } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

/** One thing to offer; it takes the place of the text between `from` and `to`. */
export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  /** What it is, in a few plain words. */
  readonly detail: string;
  /** What is written. */
  readonly insert: string;
  /** `insert` holds numbered placeholders, `${1:edge}`, as editors read them. */
  readonly isSnippet: boolean;
  readonly from: number;
  readonly to: number;
  /** More about it, in Markdown. */
  readonly documentation?: string;
}

/** What could stand at an offset; `files` are the recipes that a `use` line may name, called as the kernel calls them. */
export const completion = (worked: WorkedText, offset: number, files: readonly string[] = []): Completion[] => {
  const { text, file } = worked.source;
  const { lines, comments } = written(worked);
  if (comments.some(({ from, to }) => from < offset && offset <= to)) return [];
  const spot = spotAt(text, lines, offset);
  const { word, line } = spot;
  if (word?.text.startsWith('"')) return line?.verb === "use" ? filesHere(word, file, files, text) : [];
  if (word && /^\d/.test(word.text)) return [];
  const [from, to] = word ? [word.from, word.to] : [offset, offset];
  const known = knownHere(worked, spot);
  return suggestions(worked, spot, known)
    .sort((a, b) => a.rank - b.rank)
    .map(({ rank: _, insert, isSnippet, detail, ...rest }) => {
      const isBare = insert === undefined || (word !== undefined && isFollowed(spot, rest.kind));
      const written = isBare ? { insert: rest.label, isSnippet: false } : { insert, isSnippet: isSnippet ?? false };
      return { ...rest, detail: readable(detail), ...written, from, to };
    });
};

/** Where the rest of the line stands already, only the word itself is written anew. */
const isFollowed = ({ line, word }: Spot, kind: CompletionKind): boolean => {
  const next = line?.words.find(({ from }) => from >= word!.to);
  return kind === "function" ? next?.text === "(" : next !== undefined;
};

/** What a `solve` works toward is measured at the end of its block. */
const knownHere = (worked: WorkedText, { line, around, before, offset }: Spot): Known =>
  line?.verb === "solve" && line.block && before.some(({ text }) => text === "until")
    ? knownAt(worked, line.block.to, line)
    : knownAt(worked, line?.from ?? offset, around);

/** `A toward B` and then how far. */
const isAmountDue = (before: readonly WrittenWord[]): boolean => {
  const path = pathTo(before);
  return before[before.length - path.length - 1]?.text === "toward" && path.at(-1)?.means === "Name";
};

const suggestions = (worked: WorkedText, spot: Spot, known: Known): Suggested[] => {
  const { line, around, before } = spot;
  const { vocabulary } = worked.kernel;
  const { units } = worked.outcome.garment;
  const at = slotAt(line, before);
  const wanted = wantedHere(at);
  switch (at.due) {
    case "first word":
      return isEntryBlock(spot)
        ? entryNames(worked, around, spot.offset)
        : firstWords(worked, line?.from ?? spot.offset, around, known.piece);
    case "entry":
      return entryNames(worked, around, spot.offset);
    case "parameter kind":
      return parameterKinds;
    case "new name":
      return line?.verb === "base"
        ? sizesKnown(known)
        : [...newNames(worked, spot, known), ...nameless(spot, at, known, worked)];
    case "member":
      return memberWords(valueOfPath(pathTo(before.slice(0, -1)), known), wanted, units);
    case "value":
      if (line?.verb === "accept" && at.clause === undefined) return checksHere(vocabulary.checks, describeCheck);
      return [
        ...seamsHere(worked, spot, known, wanted),
        ...valuesHere(known, wanted, at.slot, units),
        ...(at.last?.text === "at" ? [end] : []),
        ...(at.last?.means === "Verb" && line?.forms.some(({ operand }) => !operand || operand.optional)
          ? more(worked, spot, at)
          : []),
      ];
    case "more":
      return [
        ...(isAmountDue(before) ? valuesHere(known, ["length", "number"], undefined, units) : []),
        ...more(worked, spot, at),
      ];
  }
};

const end: Suggested = { label: "end", kind: "word", detail: "back from the end of the edge", rank: 1 };

const isEntryBlock = ({ around }: Spot): boolean => {
  const block = around?.forms[0]?.block;
  return block === "entries" || block === "fields";
};

const more = (worked: WorkedText, { line, before, word, offset }: Spot, at: SlotAt): Suggested[] => {
  const from = word?.to ?? offset;
  const behind = (line?.words ?? []).filter((each) => each.from >= from);
  return wordsBehind(at, line?.forms ?? [], before, behind, wantedHere(at), worked.outcome.garment.units);
};

/** Behind a verb that may also be said without a name, its first value. */
const nameless = ({ line }: Spot, at: SlotAt, known: Known, worked: WorkedText): Suggested[] => {
  const operand = line?.forms.find((form) => !form.naming && form.operand)?.operand;
  if (!operand) return [];
  const slot = { ...at, slot: operand };
  return valuesHere(known, wantedHere(slot), operand, worked.outcome.garment.units);
};

const sizesKnown = ({ names }: Known): Suggested[] =>
  [...names.values()].flatMap(({ name, kind }, index) =>
    kind === "size" ? [{ label: name, kind, detail: "size", rank: index / 1000 }] : [],
  );
