// The life of an edge: which line drafted it, which lines changed it, and how long it was after each.
import type { Evaluated } from "../evaluate.ts";
import { samePath } from "../geometry/same-path.ts";
import { changedIn, type StepRecord } from "../record.ts";
import { sewnLengthOf } from "../sewn.ts";
import type { Piece } from "../working.ts";
import { differs, tellableLength } from "./rounding.ts";

/** One line that drafted, changed or took an edge. */
export interface EdgeStage {
  readonly record: StepRecord;
  /** The piece that the edge was part of, as its own recipe calls it. */
  readonly piece: string;
  /** Lengths as sewn before and after the line, mm; null where the edge is not there. */
  readonly before: number | null;
  readonly after: number | null;
  /** Whether the outline holds it after the line. */
  readonly isOutside: boolean;
}

/** The stages of an edge, the earliest first, those in the pieces that its piece was copied from among them. */
export const edgeLife = (evaluated: Evaluated, name: string, edge: string): EdgeStage[] => {
  const piece = evaluated.garment.pieces.get(name);
  return piece ? [...lifeInSource(evaluated, piece, edge), ...stagesIn(evaluated.records, name, edge)] : [];
};

/** The stages in one record of an edge of one piece, the piece being made anew each time. */
export const stagesIn = (records: readonly StepRecord[], name: string, edge: string): EdgeStage[] =>
  records.flatMap((record): EdgeStage[] => {
    const changed = changedIn(record, name);
    // That a piece is begun as a copy drafts none of its edges.
    if (!changed || record.step === "piece") return [];
    const [before, after] = [lengthIn(changed.before, edge), lengthIn(changed.after, edge)];
    if (!differs(before, after, tellableLength) && runsAlike(changed.before, changed.after, edge)) return [];
    return [
      { record, piece: name, before, after, isOutside: changed.after.outline.some((part) => part.edge === edge) },
    ];
  });

/** In the recipe that the source belongs to: this one, or one that it uses. What befell the source after it was copied is left out. */
const lifeInSource = (evaluated: Evaluated, { source, from }: Piece, edge: string): EdgeStage[] => {
  if (!source || from === undefined) return [];
  const used = from.split(".").slice(0, -1);
  const home = used.reduce<Evaluated | undefined>((recipe, name) => recipe?.uses.get(name), evaluated);
  if (!home) return [];
  const last = home.records.findLastIndex((record) => changedIn(record, source.name)?.after === source);
  const records = last < 0 ? home.records : home.records.slice(0, last + 1);
  return [...lifeInSource(home, source, edge), ...stagesIn(records, source.name, edge)];
};

const lengthIn = (piece: Piece | undefined, edge: string): number | null =>
  piece?.edges.has(edge) ? sewnLengthOf(piece, edge) : null;

const runsAlike = (before: Piece | undefined, after: Piece, edge: string): boolean => {
  const [was, is] = [before?.edges.get(edge)?.path, after.edges.get(edge)?.path];
  return was === is || (was !== undefined && is !== undefined && samePath(was, is, tellableLength));
};
