// One line for every edge that changed: the edit that undoes it, or the step that did most to it.
import type { Outcome } from "../kernel.ts";
import { type Causes, causeOfEdge } from "./causes.ts";
import type { Comparison } from "./comparison.ts";
import { type EdgeStage, stagesIn } from "./edge-life.ts";

/** A line of a recipe that changed an edge. */
export interface Blamed {
  readonly line: number;
  readonly text: string;
}

/** The edited lines behind the edges of a comparison of two texts, by "piece.edge". */
export const blameOnEdits = (comparison: Comparison, { causes }: Causes): ReadonlyMap<string, Blamed> =>
  blamed(comparison, (piece, edge) => {
    const cause = causeOfEdge(causes, `${piece}.${edge}`);
    return cause && { line: cause.line, text: cause.text === "" ? `taken out: ${cause.was}` : cause.text };
  });

/** The steps behind what became of copied pieces, by "piece.edge". */
export const blameOnSteps = (comparison: Comparison, outcome: Outcome): ReadonlyMap<string, Blamed> =>
  blamed(comparison, (piece, edge) => {
    const stages = stagesIn(outcome.records, piece, edge);
    const most = stages.reduce<EdgeStage | undefined>(
      (best, stage) => (best === undefined || sizeOf(stage) > sizeOf(best) ? stage : best),
      undefined,
    );
    if (!most || most.record.where.file !== outcome.garment.file) return undefined;
    const { from, to, line } = most.record.where;
    return { line, text: outcome.tree.text.slice(from, to).replace(/\s+/g, " ") };
  });

const sizeOf = ({ before, after }: EdgeStage): number => Math.abs((after ?? 0) - (before ?? 0));

const blamed = (
  { pieces }: Comparison,
  lineOf: (piece: string, edge: string) => Blamed | undefined,
): ReadonlyMap<string, Blamed> =>
  new Map(
    pieces.flatMap((piece) =>
      piece.edges.flatMap((edge): [string, Blamed][] => {
        const found = lineOf(piece.name, edge.name);
        return found ? [[`${piece.name}.${edge.name}`, found]] : [];
      }),
    ),
  );
