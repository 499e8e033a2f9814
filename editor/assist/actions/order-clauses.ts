// The clauses of a line in the order in which its step declares them, as tidy would write them.
import type { Line } from "../../../grammar/tree.ts";
import { spotAt } from "../line-at.ts";
import { edited, type TextEdit } from "../text-edit.ts";
import { treeLine } from "../tree-line.ts";
import type { WorkedText } from "../worked-text.ts";
import { written } from "../written.ts";
import type { CodeAction } from "./code-action.ts";

/** The line at the cursor with its clauses put in order, where they are not. */
export const orderClauses = (worked: WorkedText, from: number, _to: number): CodeAction[] => {
  const { source, outcome } = worked;
  const spot = spotAt(source.text, written(worked).lines, from);
  const line = spot.line && treeLine(outcome.tree, spot.line.from);
  const edits = line && !line.broken && !holdsComment(worked, line) ? editsFor(worked, line) : [];
  if (edits.length === 0) return [];
  // A word that is a clause word only where it stood would make another line of it.
  const { diagnostics } = worked.kernel.parse({ ...source, text: edited(source.text, edits) });
  const isRead = diagnostics.length <= worked.kernel.parse(source).diagnostics.length;
  return isRead ? [{ title: "Put the clauses in order", kind: "refactor.rewrite", edits }] : [];
};

/** A comment stands between two clauses of a line that goes on. */
const holdsComment = ({ outcome }: WorkedText, line: Line): boolean =>
  outcome.tree.comments.some(({ from }) => line.from < from && from < (line.block?.from ?? line.to));

const editsFor = (worked: WorkedText, line: Line): TextEdit[] => {
  const { source } = worked;
  const forms = written(worked).forms.get(line.verb.text) ?? [];
  const form = forms.find(({ clauses }) =>
    line.clauses.every(({ word }) => clauses.some((each) => each.word === word.text)),
  );
  if (!form) return [];
  const rank = (word: string): number => form.clauses.findIndex((clause) => clause.word === word);
  const ordered = [...line.clauses].sort((a, b) => rank(a.word.text) - rank(b.word.text));
  return line.clauses.flatMap((clause, index): TextEdit[] => {
    const now = ordered[index]!;
    if (now === clause) return [];
    const { file, text } = source;
    return [{ file, from: clause.from, to: clause.to, text: text.slice(now.from, now.to) }];
  });
};
