// What may follow a value on its line: units behind a number, clause words that are not written yet, and place words.
import type { Clause, Form, Slot } from "../../../grammar/phrase.ts";
import type { Units } from "../../../kernel/working.ts";
import type { SlotAt } from "../slot-at.ts";
import { type WantedKind, wantedHere } from "../wanted-kinds.ts";
import type { WrittenWord } from "../written-word.ts";
import { placeWordsHere } from "./place-words-here.ts";
import { clauseSnippet } from "./snippet.ts";
import type { Suggested } from "./suggested.ts";

/** What may follow; `behind` are the words of the line that stand after the place asked about. */
export const wordsBehind = (
  at: SlotAt,
  forms: readonly Form[],
  before: readonly WrittenWord[],
  behind: readonly WrittenWord[],
  wanted: readonly WantedKind[],
  units: Units,
): Suggested[] => [
  ...(at.last?.means === "Number" && !at.last.text.endsWith("%")
    ? unitsBehind(wantedHere({ ...at, last: before.at(-2) }), units)
    : []),
  ...countsHere(forms, before),
  ...(at.bracket ? [] : clausesHere(at.due === "value", forms, before, behind)),
  ...(at.slot?.suffix ? [suffix(at.slot.suffix)] : []),
  ...placeWordsHere(at, before, wanted),
];

const unitNames: readonly (readonly [string, WantedKind, string])[] = [
  ["cm", "length", "centimetres"],
  ["mm", "length", "millimetres"],
  ["in", "length", "inches"],
  ["m", "length", "metres"],
  ["ft", "length", "feet"],
  ["yd", "length", "yards"],
  ["deg", "angle", "degrees"],
  ["rad", "angle", "radians"],
  ["gsm", "weight", "grams per square metre"],
  ["osy", "weight", "ounces per square yard"],
];

const unitsBehind = (wanted: readonly WantedKind[], units: Units): Suggested[] =>
  unitNames.map(([label, kind, detail], index) => {
    const at = wanted.indexOf(kind);
    const own = label === units ? -0.5 : 0;
    return { label, kind: "unit", detail, rank: (at < 0 ? 60 : at) + own + index / 100 };
  });

/** `cut back 2`: the number behind the first value. */
const countsHere = (forms: readonly Form[], before: readonly WrittenWord[]): Suggested[] => {
  const count = forms.find((form) => form.count)?.count;
  const isDue = count && !before.some(({ means }) => means === "Count" || means === "ClauseWord");
  return isDue ? ["1", "2"].map((label, index) => ({ label, kind: "sign", detail: count.note, rank: index / 10 })) : [];
};

/** Clause words of the forms that the line can still have, the required ones first, in the declared order. */
const clausesHere = (
  isMissing: boolean,
  forms: readonly Form[],
  before: readonly WrittenWord[],
  behind: readonly WrittenWord[],
): Suggested[] => {
  const all = new Set(forms.flatMap(({ clauses }) => clauses.map(({ word }) => word)));
  const said = new Set(before.filter(({ means }) => means === "ClauseWord").map(({ text }) => text));
  // Right behind the place asked about, where a value may be missing, a clause word still looks like a name.
  const later = new Set(
    behind
      .filter(({ text, means }, index) => means === "ClauseWord" || (index === 0 && isMissing && all.has(text)))
      .map(({ text }) => text),
  );
  const fitting = forms.filter(({ clauses }) =>
    [...said].every((word) => clauses.some((clause) => clause.word === word)),
  );
  const rows = new Map<string, Suggested>();
  for (const { clauses } of fitting.length > 0 ? fitting : forms)
    clauses.forEach((clause, index) => {
      if (said.has(clause.word) || later.has(clause.word) || rows.has(clause.word)) return;
      rows.set(clause.word, clauseWord(clause, 10 + index / 10 + (clause.optional ? 5 : 0)));
    });
  return [...rows.values()];
};

const clauseWord = ({ word, slot }: Clause, rank: number): Suggested => ({
  label: word,
  kind: "clause",
  detail: slot ? `${slot.wanted}: ${slot.note}` : "by itself",
  insert: clauseSnippet(word, slot),
  isSnippet: true,
  rank,
});

const suffix = ({ word, slot }: NonNullable<Slot["suffix"]>): Suggested => ({
  label: word,
  kind: "clause",
  detail: `${slot.wanted}: ${slot.note}`,
  insert: clauseSnippet(word, slot),
  isSnippet: true,
  rank: 25,
});
