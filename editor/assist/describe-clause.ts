// What stands behind a clause word, as the step's declaration says.
import type { Slot } from "../../grammar/phrase.ts";
import { asCode } from "./markdown.ts";
import type { WrittenLine } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

/** A clause word, or a word of its choice, with the note of its slot. */
export const describeClause = ({ forms, words }: WrittenLine, word: WrittenWord): string[] => {
  const opener = words.findLast(({ means, from }) => means === "ClauseWord" && from <= word.from);
  const clauses = forms.flatMap((form) => form.clauses);
  const clause =
    clauses.find(({ word: each, slot }) => each === opener?.text && slot) ??
    clauses.find((each) => each.word === opener?.text);
  const slot = opener ? clause?.slot : forms.find((form) => form.operand)?.operand;
  const suffix = word.means === "SuffixWord" ? slot?.suffix : undefined;
  const told = suffix?.slot ?? slot;
  if (!told) return clause ? [`${asCode(word.text)} stands by itself.`] : [];
  const said = suffix?.word ?? opener?.text;
  return [said === undefined ? slotInWords(told) : `${asCode(said)} ${slotInWords(told)}`];
};

/** "a length or an angle: how far it opens". */
export const slotInWords = (slot: Slot): string => {
  const kind = slot.choices ? slot.choices.map(asCode).join(" or ") : slot.wanted;
  return `${kind}${slot.many ? ", one or more" : ""}: ${slot.note}`;
};
