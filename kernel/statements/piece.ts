// piece: a new one, or a copy of another that is then altered.
import { limits } from "../../grammar/limits.ts";
import type { Line } from "../../grammar/tree.ts";
import type { Working } from "../evaluate.ts";
import { evaluate } from "../expression.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { copyOf, emptyPiece } from "../piece.ts";
import { LimitReached, Problem } from "../problem.ts";
import { Scope } from "../scope.ts";
import { kindInWords } from "../value.ts";
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
  working.run.spent.pieces += 1;
  if (working.run.spent.pieces > limits.pieces) {
    throw new LimitReached(
      "limit-pieces",
      `This recipe makes more than ${limits.pieces} pieces, and working it stops here.`,
      { at: name },
    );
  }
  working.piece = started(line, working);
  const outer = working.scope;
  working.scope = new Scope(outer, true, false);
  try {
    working.lines(line.block?.lines ?? []);
  } finally {
    const piece = withKeepsSettled(working.piece);
    working.scope = outer;
    working.piece = undefined;
    working.pieces.set(name.text, piece);
    outer.names.set(name.text, { kind: "value", value: { kind: "piece", piece, called: name.text } });
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
  const copy = copyOf(value.piece, nameOf(line).text, value.called, drawnBy);
  for (const missing of working.withheldIn.get(value.called) ?? []) {
    const names = working.withheldIn.get(copy.name) ?? new Set<string>();
    names.add(missing);
    working.withheldIn.set(copy.name, names);
  }
  return copy;
};

/** A promise to keep an edge is held to the source as the last `strip` left it, wherever in the piece the promise stands. */
const withKeepsSettled = (piece: Piece): Piece => {
  const { kept } = piece;
  if (!kept || piece.keeps.length === 0) return piece;
  return {
    ...piece,
    keeps: piece.keeps.map((keep) => {
      const edge = keep.as ? undefined : kept.edges.get(keep.edge);
      return edge ? { ...keep, wanted: pathLength(edge.path) } : keep;
    }),
  };
};
