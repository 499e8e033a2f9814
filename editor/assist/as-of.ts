// The garment's pieces as they were when a line of the recipe was about to be worked.
import { outermostIn, type Where } from "../../grammar/diagnostic.ts";
import { changedIn, type StepRecord } from "../../kernel/record.ts";
import type { Piece } from "../../kernel/working.ts";
import type { WorkedText } from "./worked-text.ts";

/** A piece as the lines before an offset left it; undefined where none of them has begun it. */
export const pieceBefore = ({ outcome }: WorkedText, name: string, offset: number): Piece | undefined => {
  let found: Piece | undefined;
  for (const record of outcome.records) {
    const changed = changedIn(record, name);
    if (!changed) continue;
    // Of a line that is worked several times, the first time counts.
    if ((outermostIn(outcome.tree.file, record.where)?.from ?? -1) >= offset) return found ?? changed.before;
    found = changed.after;
  }
  return found;
};

/** What the lines from one offset to another did, in the order in which they were worked; calls of own steps included. */
export const recordsWithin = ({ outcome }: WorkedText, from: number, to: number): StepRecord[] =>
  outcome.records.filter(({ where }) => isWithin(outcome.tree.file, where, from, to));

const isWithin = (file: string, where: Where, from: number, to: number): boolean =>
  (where.file === file && where.from >= from && where.from < to) ||
  (where.calledBy !== undefined && isWithin(file, where.calledBy, from, to));

/** The piece that a step of the recipe's own works on at an offset in its block, the first time that it is called. */
export const pieceInStep = (
  { outcome }: WorkedText,
  block: { readonly from: number; readonly to: number },
  offset: number,
): Piece | undefined => {
  const { file } = outcome.tree;
  const inside = outcome.records.filter(
    ({ where }) => where.file === file && where.from > block.from && where.from < block.to && where.calledBy,
  );
  const next = inside.find(({ where }) => where.from >= offset)?.changed[0];
  return next?.before ?? inside.findLast(({ where }) => where.from < offset)?.changed[0]?.after;
};
