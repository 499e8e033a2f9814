// The life of an edge as a table: the line that drafted it, those that changed it, and its length after each.
import type { EdgeStage } from "../compare/edge-life.ts";
import { tellableLength } from "../compare/rounding.ts";
import type { Garment, Units } from "../working.ts";
import { change, shortLength } from "./compare-words.ts";
import type { Json } from "./json.ts";
import { plain, quiet, type SaidLine, strong } from "./said.ts";
import { aligned, amount, type Cell, empty, words } from "./table.ts";
import { wrapped } from "./wrapped.ts";

/** A line of a recipe as it is written, and where. */
export type LineText = (file: string, from: number, to: number) => string;

/** The edge's heading and one row a line that touched it, the words of the step below. */
export const explainReport = (
  name: string,
  stages: readonly EdgeStage[],
  garment: Garment,
  textOf: LineText,
  width: number,
): SaidLine[] => {
  const rows = stages.map((stage) => rowOf(stage, garment));
  const table = aligned([["line", "piece", "step", "length", "change"].map((text) => words(text, "quiet")), ...rows]);
  return [
    [strong(name), quiet(`  ${summaryOf(stages, garment.units)}`)],
    table[0]!,
    ...stages.flatMap(({ record }, index) => [
      table[index + 1]!,
      ...wrapped(textOf(record.where.file, record.where.from, record.where.to), width - 8).map(
        (line): SaidLine => [quiet(`      ${line}`)],
      ),
      ...(record.words === ""
        ? []
        : wrapped(record.words, width - 8).map((line): SaidLine => [plain(`      ${line}`)])),
    ]),
  ];
};

const summaryOf = (stages: readonly EdgeStage[], units: Units): string => {
  const [first, last] = [stages[0]?.after, stages.at(-1)?.after];
  if (first === null || first === undefined || last === null || last === undefined) return "";
  return stages.length === 1
    ? `${shortLength(last, units)}, as it was drafted`
    : `${shortLength(first, units)} as drafted, ${shortLength(last, units)} in the end`;
};

const rowOf = ({ record, piece, before, after }: EdgeStage, { file, units }: Garment): Cell[] => [
  words(record.where.file === file ? `${record.where.line}` : `${record.where.file}:${record.where.line}`),
  words(piece),
  words(record.step, "strong"),
  after === null ? words("gone", "quiet") : amount(shortLength(after, units)),
  changeCell(before, after, units),
];

const changeCell = (before: number | null, after: number | null, units: Units): Cell => {
  if (before === null) return words("drafted", "quiet");
  if (after === null) return empty;
  return Math.abs(after - before) < tellableLength
    ? words("as long, elsewhere", "quiet")
    : amount(change(after - before, units), "strong");
};

/** The same as data, lengths in mm. */
export const explainJson = (piece: string, edge: string, stages: readonly EdgeStage[], textOf: LineText): Json => ({
  schema: 1,
  piece,
  edge,
  stages: stages.map((stage) => ({
    file: stage.record.where.file,
    line: stage.record.where.line,
    piece: stage.piece,
    step: stage.record.step,
    text: textOf(stage.record.where.file, stage.record.where.from, stage.record.where.to),
    words: stage.record.words,
    before: stage.before,
    after: stage.after,
    outside: stage.isOutside,
  })),
});
