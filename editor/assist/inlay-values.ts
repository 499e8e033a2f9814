// What lines come out at, to be shown quietly behind them: the length of an edge, the value of a name, what a step did.
import { lineOf, lineStarts } from "../../grammar/source.ts";
import { plainName } from "../../kernel/hidden-names.ts";
import { changedIn } from "../../kernel/record.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import { lengthIn } from "../../kernel/units.ts";
import { recordsWithin } from "./as-of.ts";
import { foundInWords } from "./found-values.ts";
import { namesGivenBy } from "./giving.ts";
import { worthInWords } from "./in-words.ts";
import { knownAt } from "./known-names.ts";
import { treeLine } from "./tree-line.ts";
import type { WorkedText } from "./worked-text.ts";
import { type WrittenLine, written } from "./written.ts";

/** A few words at the end of a line. */
export interface InlayValue {
  /** The offset they stand at: behind the line's last word. */
  readonly at: number;
  /** From 1. */
  readonly line: number;
  readonly text: string;
}

/** The values of the lines from one to another, both counted from 1 and included. */
export const inlayValues = (worked: WorkedText, fromLine: number, toLine: number): InlayValue[] => {
  const starts = lineStarts(worked.source.text);
  return written(worked).lines.flatMap((line) => {
    const number = lineOf(starts, line.from);
    if (line.isEntry || number < fromLine || number > toLine) return [];
    const text = valueOfLine(worked, line);
    const at = line.block ? Math.max(line.to, line.block.from + 1) : line.to;
    return text === undefined || text === "" ? [] : [{ at, line: lineOf(starts, at), text }];
  });
};

const valueOfLine = (worked: WorkedText, line: WrittenLine): string | undefined => {
  const { units } = worked.outcome.garment;
  if (line.verb === "let" || line.verb === "measure" || line.verb === "param") {
    const name = namesGivenBy(line)[0]?.word.text ?? "";
    const value = knownAt(worked, line.to + 1, line.around).names.get(name)?.value;
    // A plain number is its own value.
    if (isPlain(worked, line)) return undefined;
    const worth = value ? worthInWords(value, units) : foundInWords(worked).get(line.from);
    return worth === undefined ? undefined : `= ${worth}`;
  }
  if (line.verb === "solve") {
    const worth = foundInWords(worked).get(line.from);
    return worth === undefined ? undefined : `= ${worth}`;
  }
  return drawnBy(worked, line);
};

/** Whether the line says its value in so many words. */
const isPlain = ({ outcome, circumstances }: WorkedText, line: WrittenLine): boolean => {
  const value = treeLine(outcome.tree, line.from)?.operands[0]?.value;
  const isTurned =
    (circumstances.measures?.size ?? 0) + (circumstances.params?.size ?? 0) > 0 || circumstances.size !== undefined;
  return value?.kind === "number" && !isTurned;
};

/** The lengths of the edges that a line drew or changed, in the piece that it stands in. */
const drawnBy = (worked: WorkedText, line: WrittenLine): string | undefined => {
  // A step of the recipe's own comes to another length in every piece that calls it.
  if (line.block || isInStep(line)) return undefined;
  const { units } = worked.outcome.garment;
  const records = recordsWithin(worked, line.from, line.to);
  const last = records.at(-1);
  const first = last && records.find((record) => changedIn(record, last.piece));
  if (!first || last.piece === "") return undefined;
  const [was, is] = [changedIn(first, last.piece)?.before, changedIn(last, last.piece)?.after];
  if (!is) return undefined;
  const lengths = [...is.edges].flatMap(([name, { path }]): string[] => {
    const old = was?.edges.get(name);
    if (old?.path === path && was?.darts === is.darts && was?.takeUps === is.takeUps) return [];
    const now = lengthIn(sewnLengthOf(is, name), units);
    if (old) return lengthIn(sewnLengthOf(was!, name), units) === now ? [] : [`${plainName(name)} ${now}`];
    return [`${plainName(name)} ${now}`];
  });
  const given = namesGivenBy(line).length;
  const shown = given === 1 && lengths.length === 1 ? [lengths[0]!.slice(lengths[0]!.indexOf(" ") + 1)] : lengths;
  return shown.length > mostShown ? `${shown.slice(0, mostShown).join(", ")}, …` : shown.join(", ");
};

const isInStep = ({ around }: WrittenLine): boolean =>
  around !== undefined && (around.verb === "step" || isInStep(around));

// More than this at the end of a line would hide the line.
const mostShown = 3;
