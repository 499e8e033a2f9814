// The names that a line may use: those of the lines above it, in its block and the blocks around, and of the piece it works
// on as that piece is then. The kernel forgets its scopes when a recipe is worked; here they are read out of the text and
// the record, so that a line that is still broken is told its names too.
import { lineOf, lineStarts } from "../../grammar/source.ts";
import type { NamedValue } from "../../kernel/evaluate.ts";
import { shownNames } from "../../kernel/hidden-names.ts";
import type { Value } from "../../kernel/value.ts";
import type { Piece } from "../../kernel/working.ts";
import { pieceBefore, pieceInStep } from "./as-of.ts";
import { type GivenName, namesGivenBy, parametersOf } from "./giving.ts";
import { valued } from "./name-worth.ts";
import { drawnIn } from "./path-at.ts";
import type { WorkedText } from "./worked-text.ts";
import { type WrittenLine, written } from "./written.ts";

/** What kind of thing a name stands for. */
export type NameKind =
  | "edge"
  | "place"
  | "dart"
  | "piece"
  | "recipe"
  | "fabric"
  | "measure"
  | "param"
  | "let"
  | "value"
  | "size"
  | "parameter";

/** A name as a line finds it. */
export interface KnownName {
  readonly name: string;
  readonly kind: NameKind;
  /** Undefined where the line that gives it failed, or where it is found anew each time. */
  readonly value?: Value;
  /** With range and note, where it was declared with them. */
  readonly named?: NamedValue;
  /** The line, from 1, that gives it in this file; undefined for what came with a copied piece. */
  readonly line?: number;
  /** Where that line begins. */
  readonly from?: number;
}

/** What a line may build on. */
export interface Known {
  /** The piece that is being worked on, as the lines above left it. */
  readonly piece: Piece | undefined;
  readonly names: ReadonlyMap<string, KnownName>;
}

/** What is known to a line that begins at an offset, in the block of the line `around`. */
export const knownAt = (worked: WorkedText, offset: number, around: WrittenLine | undefined): Known => {
  const chain = new Set<WrittenLine | undefined>([undefined]);
  for (let each = around; each; each = each.around) chain.add(each);
  const owner = [...chain].findLast((each) => each?.verb === "piece" || each?.verb === "step");
  const pieceAt = (at: number): Piece | undefined => owner && pieceOf(worked, owner, at);
  const piece = pieceAt(offset);
  const starts = lineStarts(worked.source.text);
  const names = new Map<string, KnownName>();
  const addPart = (name: string, line?: number): boolean => {
    const value = piece && drawnIn(piece, name);
    if (value) names.set(name, { name, kind: value.kind as NameKind, value, ...(line !== undefined && { line }) });
    return value !== undefined;
  };
  for (const line of written(worked).lines) {
    if (line.from >= offset) break;
    if (!isSeenFrom(line, chain)) continue;
    for (const given of [...namesGivenBy(line), ...(line === owner ? parametersOf(line) : [])]) {
      const { text: name, from } = given.word;
      const at = lineOf(starts, from);
      if (isPart(given) && addPart(name, at)) continue;
      const worth = isPart(given) ? {} : valued(worked, given, line, names, offset, pieceAt);
      names.set(name, { name, kind: given.kind, line: at, from: line.from, ...worth });
    }
    if (line === owner && piece) for (const name of shownNames(piece)) addPart(name);
  }
  return { piece, names };
};

const isPart = ({ kind }: GivenName): boolean => kind === "edge" || kind === "place" || kind === "dart";

/** Whether the names of a line are seen from within these blocks: what a `solve` draws stays below it, a count does not. */
const isSeenFrom = (line: WrittenLine, chain: ReadonlySet<WrittenLine | undefined>): boolean => {
  if (line.verb === "repeat" && !chain.has(line)) return false;
  let { around } = line;
  while (around?.verb === "solve" && !chain.has(around)) around = around.around;
  return chain.has(around);
};

const pieceOf = (worked: WorkedText, owner: WrittenLine, offset: number): Piece | undefined => {
  if (owner.verb === "step") return owner.block && pieceInStep(worked, owner.block, offset);
  const name = owner.words.find(({ means }) => means === "NewName")?.text;
  return name === undefined ? undefined : pieceBefore(worked, name, offset);
};
