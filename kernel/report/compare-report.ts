// A comparison for the terminal.
import type { Section, Told } from "./compare-told.ts";
import { blank, plain, quiet, type SaidLine, strong, warning } from "./said.ts";
import { aligned } from "./table.ts";
import { wrapped } from "./wrapped.ts";

/** All that is told, its sentences broken at `width` columns. */
export const compareReport = (told: Told, width: number): SaidLine[] => [
  [strong(told.title), quiet(`  ${told.before}  ->  ${told.after}`)],
  ...wrapped(told.summary, width).map((line): SaidLine => [plain(line)]),
  ...told.remarks.flatMap((remark) => wrapped(remark, width - 2).map((line): SaidLine => [warning(`  ${line}`)])),
  ...told.sections.flatMap((section) => [blank, ...sectionLines(section, width)]),
];

const sectionLines = ({ heading, remark, rows, sentences }: Section, width: number): SaidLine[] => [
  [strong(heading), quiet(remark === "" ? "" : `  ${remark}`)],
  ...aligned(rows),
  ...sentences.flatMap(({ text, tone }) =>
    wrapped(text, width - 4).map((line, index): SaidLine => [{ text: `${index === 0 ? "  " : "    "}${line}`, tone }]),
  ),
];
