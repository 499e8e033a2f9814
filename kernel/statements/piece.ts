// piece: a new one, or a copy of another that is then altered.
import type { Line } from "../../grammar/tree.ts";
import type { Working } from "../evaluate.ts";
import { evaluate } from "../expression.ts";
import { copyOf, emptyPiece } from "../piece.ts";
import { Problem } from "../problem.ts";
import { Scope } from "../scope.ts";
import { sewnLengthOf } from "../sewn.ts";
import { kindInWords } from "../value.ts";
import { effortOf } from "../within-limits.ts";
import type { Piece } from "../working.ts";
import { fitStatement, nameOf } from "./reading.ts";

export const pieceLine = (line: Line, working: Working): void => {
  fitStatement(line, working);
  if (working.piece) {
    throw new Problem(
      "piece-inside",
      `A piece cannot stand inside another; ${working.piece.name} is not closed above this line.`,
      {
        at: line.verb,
        hint: `Write the } that closes ${working.piece.name}.`,
      },
    );
  }
  const name = nameOf(line);
  working.refuseTaken(name.text, name);
  if (working.pieces.has(name.text))
    throw new Problem("name-taken", `There is already a piece called ${name.text}.`, { at: name });
  working.spendPiece();
  const begun = started(line, working);
  working.spendEffort(effortOf(begun));
  working.piece = begun;
  const outer = working.scope;
  working.scope = new Scope(outer, "piece", false);
  try {
    const { drawnBy: where, name: piece } = begun;
    working.keep({ where, piece, step: line.verb.text, changed: [{ after: begun }], words: "" }, line);
    working.lines(line.block?.lines ?? []);
  } finally {
    const piece = withKeepsSettled(working.piece);
    const { withheld } = working;
    working.scope = outer;
    working.piece = undefined;
    working.withheld = new Set();
    working.recordFinal(piece);
    working.finished(piece, outer, withheld);
  }
};

const started = (line: Line, working: Working): Piece => {
  const drawnBy = working.where({ from: line.from, to: nameOf(line).to });
  const source = line.operands[0]?.value;
  if (!source) return emptyPiece(nameOf(line).text, drawnBy);
  const value = evaluate(source, working.filling);
  if (value.kind !== "piece") {
    throw new Problem("value-kind", `A piece is copied from another piece, and this is ${kindInWords(value)}.`, {
      at: source,
    });
  }
  working.withheld = new Set(value.withheld);
  return copyOf(value.piece, nameOf(line).text, value.called, drawnBy);
};

/** A promise to keep an edge is held to the source as the last `strip` left it, wherever in the piece the promise stands. */
const withKeepsSettled = (piece: Piece): Piece => {
  const { kept } = piece;
  if (!kept || piece.keeps.length === 0) return piece;
  return {
    ...piece,
    keeps: piece.keeps.map((keep) => {
      const stands = !keep.as && kept.edges.has(keep.edge);
      return stands ? { ...keep, wanted: sewnLengthOf(kept, keep.edge) } : keep;
    }),
  };
};
