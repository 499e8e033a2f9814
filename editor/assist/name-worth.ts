// What names that are no part of a piece are worth: read out of the outcome, and in a block worked out anew.
import type { Expression } from "../../grammar/tree.ts";
import { evaluate } from "../../kernel/expression.ts";
import { Problem, Withheld } from "../../kernel/problem.ts";
import { number, type Value } from "../../kernel/value.ts";
import type { Piece, Units } from "../../kernel/working.ts";
import { pieceBefore } from "./as-of.ts";
import { bundleOf } from "./bundle.ts";
import type { GivenName } from "./giving.ts";
import type { KnownName } from "./known-names.ts";
import { drawnIn } from "./path-at.ts";
import { treeLine } from "./tree-line.ts";
import type { WorkedText } from "./worked-text.ts";
import type { WrittenLine } from "./written.ts";

/** What the text and the outcome know of a name that is no part of a piece. */
export const valued = (
  worked: WorkedText,
  { word: { text: name }, kind }: GivenName,
  line: WrittenLine,
  names: ReadonlyMap<string, KnownName>,
  offset: number,
  pieceAt: (at: number) => Piece | undefined,
): Pick<KnownName, "value" | "named"> => {
  const { values, garment, uses, tree } = worked.outcome;
  if (kind === "piece") {
    const piece = pieceBefore(worked, name, offset);
    return piece ? { value: { kind: "piece", piece, called: name, withheld: new Set() } } : {};
  }
  if (kind === "fabric") {
    const fabric = garment.fabrics.get(name);
    return fabric ? { value: { kind: "fabric", fabric } } : {};
  }
  if (kind === "recipe") {
    const used = uses.get(name);
    return used ? { value: bundleOf(name, used) } : {};
  }
  const named = line.around ? undefined : values.get(name);
  if (named) return { value: named.value, named };
  const expression = kind === "let" ? treeLine(tree, line.from)?.operands[0]?.value : undefined;
  if (!expression) return {};
  // A value worked out in a block measures the piece as it was at that line.
  const piece = pieceAt(line.from);
  const value = worthOf(expression, (each) => (piece && drawnIn(piece, each)) ?? names.get(each)?.value, garment.units);
  return value ? { value } : {};
};

/** What an expression is worth to somebody who knows these names; undefined where it cannot be told. */
const worthOf = (
  expression: Expression,
  valueOfName: (name: string) => Value | undefined,
  units: Units,
): Value | undefined => {
  try {
    return evaluate(expression, {
      units,
      valueOf: (name) => {
        const value = valueOfName(name) ?? (name === "pi" ? number(Math.PI) : undefined);
        if (value) return value;
        throw new Withheld();
      },
    });
  } catch (error) {
    if (error instanceof Problem || error instanceof Withheld) return undefined;
    throw error;
  }
};
