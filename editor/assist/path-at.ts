// Names with dots between them, followed from the first: `straight.back.hem`.
import { dartPlaces } from "../../kernel/dart-halves.ts";
import { partOf } from "../../kernel/expression.ts";
import { endOf, startOf } from "../../kernel/geometry/path.ts";
import { isHidden, plainName } from "../../kernel/hidden-names.ts";
import type { Value } from "../../kernel/value.ts";
import type { Piece } from "../../kernel/working.ts";
import type { Known } from "./known-names.ts";
import type { WrittenWord } from "./written-word.ts";

/** The words of the path that the last of these words, a name or a dot, belongs to: from its first name to it. */
export const pathTo = (words: readonly WrittenWord[]): readonly WrittenWord[] => {
  let start = words.length - 1;
  while (start > 0 && (words[start]!.text === "." || words[start - 1]!.text === ".")) start -= 1;
  return words.slice(Math.max(0, start));
};

/** What a path of names stands for; dots are passed over. */
export const valueOfPath = (path: readonly WrittenWord[], known: Known): Value | undefined => {
  const [first, ...rest] = path.filter(({ text }) => text !== ".");
  let value = first && known.names.get(first.text)?.value;
  for (const { text } of rest) value = value && memberOf(value, text);
  return value;
};

/** A part of a value by its name. */
export const memberOf = (value: Value, name: string): Value | undefined => {
  if (value.kind === "piece") return partOf(value.piece, value.called, name);
  if (value.kind === "recipe") return value.find(name);
  if (value.kind === "edge" && (name === "start" || name === "end"))
    return { kind: "place", point: name === "start" ? startOf(value.path) : endOf(value.path) };
  const corner = value.kind === "dart" ? dartPlaces(value.dart).get(name) : undefined;
  return corner && { kind: "place", point: corner };
};

/** A part of the piece, one drawn in a block going by the hidden name that the piece keeps it under. */
export const drawnIn = (piece: Piece, name: string): Value | undefined => {
  const plain = partOf(piece, piece.name, name);
  if (plain) return plain;
  const keys = [...piece.edges.keys(), ...piece.places.keys(), ...piece.darts.keys()];
  const hidden = keys.findLast((key) => isHidden(key) && plainName(key) === name);
  return hidden === undefined ? undefined : partOf(piece, piece.name, hidden);
};
