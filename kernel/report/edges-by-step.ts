// The life of every edge of an altered piece: its length to the last digit after each line of the recipe that changed any.
import type { Outcome } from "../kernel.ts";
import { type ChangedPiece, changedIn, type StepRecord } from "../record.ts";
import { sewnLengthOf } from "../sewn.ts";
import { plainNumber } from "../units.ts";
import type { Piece } from "../working.ts";
import { blank, quiet, type SaidLine, strong } from "./said.ts";
import { aligned, amount, type Cell, words } from "./table.ts";

// What is promised of a slash is promised to this many mm (language of recipes: spread-from).
const exactly = 1e-6;

/** A table for each piece that was copied and altered, in mm whatever the units of the recipe; nothing where none was. */
export const edgesByStep = ({ garment, records }: Outcome): SaidLine[] => {
  const tables = [...garment.pieces.values()].flatMap((piece) => {
    const stages = records.flatMap((record) => {
      const changed = changedIn(record, piece.name);
      return changed?.before && changesLengths(changed.before, changed.after)
        ? [{ record, before: changed.before, after: changed.after }]
        : [];
    });
    return piece.source && stages.length > 0 ? [blank, ...tableOf(piece, stages)] : [];
  });
  return tables.length === 0 ? [] : [[strong("Edges by step, in mm")], ...tables.slice(1)];
};

interface Stage extends Required<ChangedPiece> {
  readonly record: StepRecord;
}

const tableOf = (piece: Piece, stages: readonly Stage[]): SaidLine[] => {
  const head = ["edge", "at first", ...stages.map(({ record }) => `${record.step} (${record.where.line})`), "in all"];
  const rows = piece.outline.map(({ edge }) => rowOf(edge, piece, stages));
  return [
    [strong(piece.name), quiet(`  from ${piece.from}`)],
    ...aligned([head.map((text) => words(text, "quiet")), ...rows]),
  ];
};

const rowOf = (edge: string, piece: Piece, stages: readonly Stage[]): Cell[] => {
  const first = lengthIn(piece.source!, edge);
  const last = lengthIn(piece, edge);
  return [
    words(edge),
    first === undefined ? words("new", "quiet") : amount(exact(first)),
    ...stages.map(({ before, after }) => change(lengthIn(before, edge), lengthIn(after, edge))),
    first === undefined || last === undefined ? words("", "quiet") : difference(last - first),
  ];
};

const change = (before: number | undefined, after: number | undefined): Cell => {
  if (after === undefined) return words("", "quiet");
  if (before !== undefined && Math.abs(after - before) <= exactly) return words("=", "quiet");
  return amount(exact(after));
};

const difference = (by: number): Cell =>
  Math.abs(by) <= exactly ? words("=", "quiet") : amount(`${by > 0 ? "+" : ""}${exact(by)}`, "strong");

const lengthIn = (piece: Piece, edge: string): number | undefined =>
  piece.outline.some((part) => part.edge === edge) ? sewnLengthOf(piece, edge) : undefined;

const changesLengths = (before: Piece, after: Piece): boolean =>
  before.outline.length > 0 &&
  after.outline.some(({ edge }) => Math.abs((lengthIn(after, edge) ?? 0) - (lengthIn(before, edge) ?? 0)) > exactly);

const exact = (millimetres: number): string => plainNumber(millimetres, 6);
