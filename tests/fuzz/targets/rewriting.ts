// Rewriting for a person: a name given anew and then its old name again is the text as it was, and what a finding proposes to write
// leaves fewer findings of its kind.
import { renamable, rename } from "../../../editor/assist/rename.ts";
import { edited, type TextPart } from "../../../editor/assist/text-edit.ts";
import { type WorkedText, workedText } from "../../../editor/assist/worked-text.ts";
import type { Diagnostic } from "../../../grammar/diagnostic.ts";
import { dice } from "../dice.ts";
import { sources } from "../seed-recipes.ts";
import { holds, type Target } from "../target.ts";
import { chalkline, textWorkedOnce, workedOnce } from "../worked-once.ts";

// A recipe is worked anew for every name and every mending that is tried.
const names = 2;
const fixes = 3;

/** The target of renaming, around what renames. */
export const renamingBy = (renamed: typeof rename): Target => ({
  name: "rename",
  run({ text }) {
    const worked = textWorkedOnce(text);
    const roll = dice(text);
    const words = [...text.matchAll(/[a-z][a-z0-9-]*/g)];
    for (let tried = 0; tried < names && words.length > 0; tried += 1) {
      const at = words[roll(words.length)]!.index;
      const found = renamable(worked, at);
      if ("refused" in found) continue;
      const there = anew(worked, at, "quite-new", renamed);
      if (there === undefined) continue;
      const again = workedText(chalkline, { file: "fuzz.chalk", text: there.text }, { sources });
      const back = anew(again, found.from + there.before(found.from), found.name, renamed)?.text;
      // The name that was freed may by now be hidden by another, and then it is refused in words.
      holds(back === undefined || back === text, "renaming and renaming back changes the text");
    }
  },
});

interface Anew {
  readonly text: string;
  /** By how much that moved what stands at an offset. */
  before(offset: number): number;
}

/** The text with the name at a place given anew, where that touches this recipe alone. */
const anew = (worked: WorkedText, at: number, name: string, renamed: typeof rename): Anew | undefined => {
  const { text } = worked.source;
  const done = renamed(worked, at, name);
  if ("refused" in done || done.edits.some(({ file }) => file !== "fuzz.chalk")) return undefined;
  const { edits } = done;
  const before = (offset: number): number =>
    edits.reduce((sum, { from, to, text: put }) => (from < offset ? sum + put.length - (to - from) : sum), 0);
  return { text: edited(text, edits), before };
};

export const renaming = renamingBy(rename);

/** The target of mending, around what puts a proposal into a text. */
export const mendingBy = (put: (text: string, edits: readonly TextPart[]) => string): Target => ({
  name: "mend",
  run({ text }) {
    const { findings, untold } = workedOnce(text);
    if (untold > 0) return;
    const proposed = findings.filter(
      ({ fix, where }) => fix?.where.file === "fuzz.chalk" && where.file === "fuzz.chalk",
    );
    const roll = dice(text);
    for (let tried = 0; tried < fixes && proposed.length > 0; tried += 1) {
      const [finding] = proposed.splice(roll(proposed.length), 1);
      const { where, text: written } = finding!.fix!;
      const mended = put(text, [{ from: where.from, to: where.to, text: written }]);
      const after = chalkline.work({ file: "fuzz.chalk", text: mended }, { sources });
      const [before, now] = [findings, after.findings].map((all) => all.filter((each) => isLike(each, finding!)));
      // Of several slips in one line only the first is told, so that where one is mended the next may come to be told.
      const hasMovedOn = written === "" || !now!.some((each) => each.where.from === finding!.where.from);
      holds(
        after.untold > 0 || timesIn(now!) < timesIn(before!) || hasMovedOn,
        "what a finding proposes does not mend it",
        `${finding!.code}: ${finding!.fix!.title}`,
      );
    }
  },
});

export const mending = mendingBy(edited);

/** What comes up several times in a repeat is told once. */
const timesIn = (findings: readonly Diagnostic[]): number => findings.reduce((sum, { times = 1 }) => sum + times, 0);

const isLike = (a: Diagnostic, b: Diagnostic): boolean => a.code === b.code && a.message === b.message;
