// The record of a garment's alterations: every step that has something to tell, in the order of the recipe.
import type { Outcome } from "../kernel.ts";
import { tellStep } from "../record.ts";
import { columnsOf, readable } from "./readable.ts";
import { plain, type SaidLine, strong } from "./said.ts";
import { aligned, amount, type Cell, empty, words } from "./table.ts";
import { wrapped } from "./wrapped.ts";

/** The heading and one entry a step, its words broken at `width` columns; nothing where nothing was altered. */
export const stepReport = (outcome: Outcome, width: number): SaidLine[] => {
  const told = outcome.records
    .map((record) => ({ record, words: tellStep(record, outcome.garment) }))
    .filter(({ words: each }) => each !== "");
  if (told.length === 0) return [];
  const columns = [
    String(Math.max(...told.map(({ record }) => record.where.line))).length,
    Math.max(...told.map(({ record }) => columnsOf(readable(record.piece)))),
    Math.max(...told.map(({ record }) => columnsOf(record.step))),
  ];
  // Two blanks before, and behind each column.
  const room = Math.max(30, width - columns.reduce((sum, each) => sum + each, 0) - 8);
  const rows = told.flatMap(({ record, words: each }) =>
    wrapped(readable(each), room).map((text, index): Cell[] =>
      index > 0
        ? [empty, empty, empty, words(text)]
        : [amount(String(record.where.line), "quiet"), words(record.piece), words(record.step, "strong"), words(text)],
    ),
  );
  return [[strong("Steps"), plain(" that altered something, by line of the recipe")], ...aligned(rows)];
};
