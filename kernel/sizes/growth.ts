// Grading by drafting anew: what every edge measures in every size, how it grows from size to size, and whether it grows evenly.
import type { Size } from "../evaluate.ts";
import type { Circumstances, Kernel, Outcome } from "../kernel.ts";
import { measuresAsked } from "../measures-asked.ts";
import { sewnLengthOf } from "../sewn.ts";
import type { Source } from "../sources.ts";
import { type SizeTable, sizeTables } from "./size-tables.ts";

/** One edge through the sizes; lengths in mm, undefined where a size has no such edge. */
export interface GrowingEdge {
  readonly piece: string;
  readonly edge: string;
  readonly lengths: readonly (number | undefined)[];
  /** What is uneven about its growth, in words; undefined where it grows as it should. */
  readonly uneven?: string;
}

/** A size table with what every edge measures in its sizes. */
export interface Growth extends SizeTable {
  readonly edges: readonly GrowingEdge[];
}

/** Works a recipe in each size of its size tables, and measures how its edges grow. */
export const growth = (kernel: Kernel, source: Source, circumstances: Circumstances): Growth[] => {
  const asked = new Set(measuresAsked(kernel.draft(source, circumstances)).keys());
  return sizeTables(kernel, source, circumstances).map((table) => ({
    ...table,
    edges: growingEdges(table.sizes, table.outcomes, asked),
  }));
};

const growingEdges = (
  sizes: readonly Size[],
  outcomes: readonly Outcome[],
  asked: ReadonlySet<string>,
): GrowingEdge[] => {
  const steps = sizes.map((size, index) => (index === 0 ? 0 : bodyGrowth(sizes[index - 1]!, size, asked)));
  const names = new Map<string, readonly [string, string]>();
  for (const { garment } of outcomes) {
    for (const piece of garment.pieces.values()) {
      for (const { edge } of piece.outline) names.set(`${piece.name}.${edge}`, [piece.name, edge]);
    }
  }
  return [...names.values()].map(([piece, edge]): GrowingEdge => {
    const lengths = outcomes.map(({ garment }) => lengthIn(garment.pieces.get(piece), edge));
    const uneven = unevenness(lengths, steps, sizes);
    return { piece, edge, lengths, ...(uneven !== undefined && { uneven }) };
  });
};

const lengthIn = (piece: Parameters<typeof sewnLengthOf>[0] | undefined, edge: string): number | undefined =>
  piece?.outline.some((part) => part.edge === edge) ? sewnLengthOf(piece, edge) : undefined;

/** By how much the girths that the recipe asks for grow from one size to the next, in mm: their mean. */
const bodyGrowth = (from: Size, to: Size, asked: ReadonlySet<string>): number => {
  const steps = [...to.measures].flatMap(([name, { value }]) => {
    const before = from.measures.get(name);
    return name.includes("girth") && asked.has(name) && before ? [value - before.value] : [];
  });
  return steps.length === 0 ? 0 : steps.reduce((sum, step) => sum + step, 0) / steps.length;
};

// A change of less than this many mm is none.
const hair = 0.5;
// A step is a jump when it is off what the other steps lead to expect by more than this many mm and by more than half of it.
const jump = 2;
const jumpShare = 0.5;

/**
 * The first thing about a row of lengths that no cutter would grade so. An edge may shrink steadily, as a side seam does
 * under an armhole that deepens while the garment keeps its length; what grows here and shrinks there is uneven.
 */
const unevenness = (
  lengths: readonly (number | undefined)[],
  steps: readonly number[],
  sizes: readonly Size[],
): string | undefined => {
  const grown = lengths.map((length, index) => {
    const before = lengths[index - 1];
    return index > 0 && length !== undefined && before !== undefined && steps[index]! > 0 ? length - before : undefined;
  });
  const between = (index: number): string => `from ${sizes[index - 1]!.name} to ${sizes[index]!.name}`;
  if (grown.some((by) => by !== undefined && by > hair)) {
    const shrinks = grown.findIndex((by) => by !== undefined && by < -hair);
    if (shrinks > 0) return `shrinks ${between(shrinks)}, and grows elsewhere`;
  }
  const shares = grown.flatMap((by, index) => (by === undefined ? [] : [by / steps[index]!]));
  if (shares.length < 3) return undefined;
  const usual = [...shares].sort((a, b) => a - b)[Math.floor(shares.length / 2)]!;
  const jumps = grown.findIndex((by, index) => {
    if (by === undefined) return false;
    const expected = usual * steps[index]!;
    return Math.abs(by - expected) > Math.max(jump, jumpShare * Math.abs(expected));
  });
  return jumps > 0 ? `jumps ${between(jumps)}` : undefined;
};
