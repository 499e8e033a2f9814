// What kind of thing each name of a recipe is, for every line at once: a line's place among the others is not asked, only
// its piece. What a name is worth at one line stands in known-names.ts.
import { partOf } from "../../kernel/expression.ts";
import type { Value } from "../../kernel/value.ts";
import type { Piece } from "../../kernel/working.ts";
import { pieceBefore, pieceInStep } from "./as-of.ts";
import { bundleOf } from "./bundle.ts";
import { namesGivenBy, parametersOf } from "./giving.ts";
import { memberOf } from "./path-at.ts";
import type { TokenKind } from "./semantic-tokens.ts";
import type { WorkedText } from "./worked-text.ts";
import type { WrittenLine } from "./written.ts";

/** For a line, what a name or a path of names is there; undefined where nobody gives it. */
export type KindNamed = (path: readonly string[]) => TokenKind | undefined;

/** The kinds of the names in these lines. */
export const nameKinds = (worked: WorkedText, lines: readonly WrittenLine[]): ((line: WrittenLine) => KindNamed) => {
  const { garment, uses } = worked.outcome;
  const given = new Map<WrittenLine | undefined, Map<string, TokenKind>>();
  const owners = new Map<WrittenLine, WrittenLine | undefined>();
  for (const line of lines) {
    const owner = line.around && (isOwner(line.around) ? line.around : owners.get(line.around));
    owners.set(line, owner);
    for (const { word, kind } of namesGivenBy(line))
      note(given, owner, word.text, kind === "let" ? "value" : kindOf(kind));
    for (const { word, kind } of parametersOf(line)) note(given, line, word.text, kindOf(kind));
  }
  const valueNamed = (name: string): Value | undefined => {
    const piece = garment.pieces.get(name);
    if (piece) return { kind: "piece", piece, called: name, withheld: new Set() };
    const used = uses.get(name);
    return used && bundleOf(name, used);
  };
  const begun = new Map<WrittenLine, readonly Piece[]>();
  const piecesOf = (owner: WrittenLine): readonly Piece[] => {
    const known = begun.get(owner) ?? asFinishedAndBegun(worked, owner);
    begun.set(owner, known);
    return known;
  };
  return (line) => {
    const owner = owners.get(line);
    const pieces = owner ? piecesOf(owner) : [];
    return ([first, ...rest]) => {
      if (first === undefined) return undefined;
      const holder = pieces.find((piece) => partKind(piece, first));
      if (rest.length === 0) {
        const known = holder && partKind(holder, first);
        return (
          known ??
          given.get(owner)?.get(first) ??
          given.get(undefined)?.get(first) ??
          (first === "pi" ? "value" : undefined)
        );
      }
      let value = holder ? partOf(holder, holder.name, first) : valueNamed(first);
      for (const name of rest.slice(0, -1)) value = value && memberOf(value, name);
      const last = rest.at(-1)!;
      if (value?.kind === "piece") return partKind(value.piece, last);
      const member = value && memberOf(value, last);
      return member && kindOf(member.kind);
    };
  };
};

/** The piece that the lines of a block work on, as it is in the end and as it was at first, with what a line took out of it. */
const asFinishedAndBegun = (worked: WorkedText, owner: WrittenLine): readonly Piece[] => {
  if (owner.verb === "step")
    return [owner.block && pieceInStep(worked, owner.block, owner.from)].filter((each) => !!each);
  const name = owner.words.find(({ means }) => means === "NewName")?.text ?? "";
  return [worked.outcome.garment.pieces.get(name), pieceBefore(worked, name, owner.from + 1)].filter((each) => !!each);
};

const partKind = ({ edges, places, darts }: Piece, name: string): TokenKind | undefined => {
  if (edges.has(name)) return "edge";
  if (darts.has(name)) return "dart";
  return places.has(name) ? "place" : undefined;
};

const isOwner = ({ verb }: WrittenLine): boolean => verb === "piece" || verb === "step";

const note = (
  given: Map<WrittenLine | undefined, Map<string, TokenKind>>,
  owner: WrittenLine | undefined,
  name: string,
  kind: TokenKind,
): void => {
  const names = given.get(owner) ?? new Map<string, TokenKind>();
  if (!names.has(name)) names.set(name, kind);
  given.set(owner, names);
};

/** Amounts of every kind are values to the eye. */
const kindOf = (kind: string): TokenKind => {
  const shown = ["edge", "place", "dart", "piece", "recipe", "fabric", "parameter"] as const;
  return shown.find((each) => each === kind) ?? "value";
};
