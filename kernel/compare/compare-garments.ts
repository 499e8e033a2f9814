// Two garments against one another: values, pieces matched by name or by shape, seams and how they fit, what is cut from what,
// and the checks that began or ceased to fail.
import type { Outcome } from "../kernel.ts";
import type { Garment } from "../working.ts";
import { changedChecks } from "./compare-checks.ts";
import { changedCuts } from "./compare-cuts.ts";
import { comparePieces, lonePiece } from "./compare-pieces.ts";
import { changedSeams } from "./compare-seams.ts";
import { changedValues } from "./compare-values.ts";
import type { ChangedPiece, Comparison } from "./comparison.ts";
import { namingOf } from "./naming.ts";
import { renamedPieces } from "./renames.ts";
import { tellableArea } from "./rounding.ts";

/** What changed from one worked recipe to another. */
export const compareGarments = (before: Outcome, after: Outcome): Comparison => {
  const renames = renamedPieces(before.garment.pieces, after.garment.pieces);
  const pieces = changedPieces(before.garment, after.garment, renames);
  const naming = namingOf(pieces);
  return {
    values: changedValues(before, after),
    pieces,
    seams: changedSeams(before, after, naming),
    cuts: changedCuts(before.garment, after.garment, naming),
    checks: changedChecks(before, after, naming),
  };
};

const changedPieces = (before: Garment, after: Garment, renames: ReadonlyMap<string, string>): ChangedPiece[] => {
  const was = [...before.pieces.values()].flatMap((piece): ChangedPiece[] => {
    const now = after.pieces.get(renames.get(piece.name) ?? piece.name);
    return now ? listed(comparePieces(piece, now)) : [lonePiece(piece, "removed")];
  });
  const known = new Set(renames.values());
  const come = [...after.pieces.values()].flatMap(({ name }) =>
    before.pieces.has(name) || known.has(name) ? [] : [lonePiece(after.pieces.get(name)!, "added")],
  );
  return [...was, ...come].sort((a, b) => consequence(b) - consequence(a) || (pieceKey(a) < pieceKey(b) ? -1 : 1));
};

const listed = (piece: ChangedPiece | undefined): ChangedPiece[] => (piece ? [piece] : []);

const pieceKey = ({ name, from }: ChangedPiece): string => [name, from ?? name].sort().join(" ");

/** How much a change of a piece weighs: a whole piece most, then cloth, then lengths, then all that is only written on it. */
const consequence = ({ status, edges, area }: ChangedPiece): number => {
  if (status === "added" || status === "removed") return Number.MAX_VALUE;
  const longest = Math.max(0, ...edges.map(({ difference, isInner }) => (isInner ? 0 : Math.abs(difference ?? 0))));
  return longest + (area ? (area.added + area.removed) / tellableArea : 0);
};
