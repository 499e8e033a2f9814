// The outline of a recipe: its measures, params and values, its pieces with what is drawn in them, its seams and cuts.

import { partOf } from "../../kernel/expression.ts";
import { bundleOf } from "./bundle.ts";
import { namesGivenBy } from "./giving.ts";
import { worthInWords } from "./in-words.ts";
import { nameKinds } from "./name-kinds.ts";
import type { WorkedText } from "./worked-text.ts";
import { type WrittenLine, written } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

/** What kind of thing stands in the outline. */
export type SymbolKind =
  | "piece"
  | "edge"
  | "place"
  | "dart"
  | "measure"
  | "param"
  | "let"
  | "step"
  | "size"
  | "fabric"
  | "use"
  | "seam"
  | "cut"
  | "check";

/** A thing of the recipe; the name's stretch lies within the whole. */
export interface OutlineSymbol {
  readonly name: string;
  readonly kind: SymbolKind;
  /** Its amount, or how it is made. */
  readonly detail: string;
  readonly from: number;
  readonly to: number;
  readonly nameFrom: number;
  readonly nameTo: number;
  readonly children: readonly OutlineSymbol[];
}

/** The things of a recipe in the order of its text. */
export const symbols = (worked: WorkedText): OutlineSymbol[] => {
  const { lines } = written(worked);
  const kindAt = nameKinds(worked, lines);
  const below = new Map<WrittenLine | undefined, WrittenLine[]>();
  for (const line of lines) below.set(line.around, [...(below.get(line.around) ?? []), line]);
  const inBlock = (around: WrittenLine | undefined, piece: string | undefined): OutlineSymbol[] =>
    (below.get(around) ?? []).flatMap((line) => symbolsOf(line, piece));
  const symbolsOf = (line: WrittenLine, piece: string | undefined): OutlineSymbol[] => {
    if (line.isEntry) return [];
    const own = line.verb === "piece" ? line.words.find(({ means }) => means === "NewName")?.text : undefined;
    const within = line.block ? inBlock(line, own ?? piece) : [];
    // What an `if`, a `repeat` or a `solve` holds counts as what stands around it.
    if (branching.has(line.verb)) return within;
    const whole = { from: line.from, to: Math.max(line.to, Math.min(line.block?.to ?? 0, worked.source.text.length)) };
    const named = namesIn(line).map(({ word, kind }, index): OutlineSymbol => {
      const drawn = kindAt(line)([word.text]);
      const isPart = kind === "edge" && (drawn === "place" || drawn === "dart" || drawn === "piece");
      const told = isPart ? drawn : kind;
      const { text: name, from: nameFrom, to: nameTo } = word;
      return {
        name,
        kind: told,
        detail: detailOf(worked, told, name, piece),
        ...whole,
        nameFrom,
        nameTo,
        children: index === 0 ? within : [],
      };
    });
    return [...named, ...unnamed(worked.source.text, line, whole)];
  };
  return inBlock(undefined, undefined);
};

const branching = new Set(["if", "else", "repeat", "solve"]);

const namesIn = (line: WrittenLine): { word: WrittenWord; kind: SymbolKind }[] => {
  if (line.verb === "step") {
    const word = line.words[1];
    return word?.means === "NewName" ? [{ word, kind: "step" }] : [];
  }
  return namesGivenBy(line).map(({ word, kind }) => ({
    word,
    kind: kind === "recipe" ? "use" : kind === "value" || kind === "parameter" ? "let" : kind,
  }));
};

/** Seams, cuts and checks go by what they are about. */
const unnamed = (text: string, line: WrittenLine, whole: { from: number; to: number }): OutlineSymbol[] => {
  const kind = (["seam", "cut", "check"] as const).find((each) => each === line.verb);
  const [verb, first] = line.words;
  if (!kind || !verb || !first) return [];
  const name = text.slice(first.from, line.to).replace(/\s+/g, " ");
  return [{ name, kind, detail: "", ...whole, nameFrom: first.from, nameTo: line.words.at(-1)!.to, children: [] }];
};

const detailOf = ({ outcome }: WorkedText, kind: SymbolKind, name: string, piece: string | undefined): string => {
  const { units, pieces } = outcome.garment;
  const within = piece === undefined ? undefined : pieces.get(piece);
  const part =
    within && (kind === "edge" || kind === "place" || kind === "dart") ? partOf(within, piece!, name) : undefined;
  const made = pieces.get(name);
  if (kind === "piece") return made?.from === undefined ? "" : `from ${made.from}`;
  const used = kind === "use" ? outcome.uses.get(name) : undefined;
  if (used) return worthInWords(bundleOf(name, used), units) ?? "";
  if (kind === "fabric") return outcome.garment.fabrics.get(name)?.title ?? "";
  const value = part ?? (piece === undefined ? outcome.values.get(name)?.value : undefined);
  return (value && worthInWords(value, units)) ?? "";
};
