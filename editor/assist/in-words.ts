// A named thing in a few words, as a pattern maker reads it: "edge, 31.5 cm, hem", "place at 12 cm, 4 cm".
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { plainName } from "../../kernel/hidden-names.ts";
import { valueInWords } from "../../kernel/report/amounts.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import { lengthIn } from "../../kernel/units.ts";
import type { Value } from "../../kernel/value.ts";
import type { Piece, Units } from "../../kernel/working.ts";
import type { KnownName } from "./known-names.ts";

/** What a name stands for, with its amount. */
export const nameInWords = ({ kind, value, named }: KnownName, units: Units): string => {
  const what = kind === "recipe" ? "recipe" : kind === "let" ? "value" : kind;
  const worth = value && worthInWords(value, units);
  const range = named?.range;
  const limits = range ? `, ${valueInWords(range.least, units)} to ${valueInWords(range.most, units)}` : "";
  if (worth === undefined) return what;
  return worth.startsWith("with ") || worth.startsWith("on ") ? `${what} ${worth}` : `${what}, ${worth}${limits}`;
};

/** A value in words; undefined for what has no amount. */
export const worthInWords = (value: Value, units: Units): string | undefined => {
  switch (value.kind) {
    case "edge":
      return lengthIn(pathLength(value.path) - value.taken.reduce((sum, { amount }) => sum + amount, 0), units);
    case "dart":
      return `on ${plainName(value.dart.edge)}`;
    case "piece":
      return `${value.piece.outline.length} edges`;
    case "recipe":
      return value.names.length > 0 ? `with ${shortList(value.names)}` : undefined;
    case "fabric":
      return value.fabric.title;
    default:
      return valueInWords(value, units);
  }
};

const shortList = (names: readonly string[]): string =>
  `${names.slice(0, 4).join(", ")}${names.length > 4 ? ", …" : ""}`;

/** "31.5 cm as sewn, 34.5 cm as cut": the length of an edge of a piece. */
export const edgeLength = (piece: Piece, edge: string, units: Units): string => {
  const [sewn, cut] = [sewnLengthOf(piece, edge), pathLength(piece.edges.get(edge)!.path)];
  const [asSewn, asCut] = [lengthIn(sewn, units), lengthIn(cut, units)];
  return asSewn === asCut ? asSewn : `${asSewn} as sewn, ${asCut} as cut`;
};
