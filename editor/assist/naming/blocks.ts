// The blocks of one recipe, block within block, with the names that are given in each. Read from the text alone, so that a
// recipe with mistakes in it has its names too.
import { type GivenName, namesGivenBy, parametersOf } from "../giving.ts";
import type { NameKind } from "../known-names.ts";
import type { Written, WrittenLine } from "../written.ts";
import type { WrittenWord } from "../written-word.ts";

/** A name at the word that gives it. */
export interface Given {
  readonly file: string;
  readonly word: WrittenWord;
  readonly line: WrittenLine;
  readonly kind: NameKind | "step";
  /** The block whose lines may use it. */
  readonly block: Block;
}

/** How a block stands to the piece at hand, as in kernel/scope.ts; `file` is the recipe itself. */
export type BlockKind = "file" | "piece" | "through" | "step";

export interface Block {
  readonly kind: BlockKind;
  /** The line it belongs to; undefined for the recipe itself. */
  readonly line: WrittenLine | undefined;
  readonly outer: Block | undefined;
  /** In the order of the text; a name that was joined away may be given again. */
  readonly names: ReadonlyMap<string, readonly Given[]>;
  /** Blocks of `if` and `repeat` in it. */
  readonly inner: readonly Block[];
  /** Lines in it that call a step of the recipe's own. */
  readonly calls: readonly WrittenLine[];
}

/** The blocks of a recipe, and what it gives beside the names of its blocks. */
export interface Blocks {
  readonly top: Block;
  /** The block that a line of the recipe opens; a `solve` opens none. */
  readonly of: ReadonlyMap<WrittenLine, Block>;
  /** Sizes and steps of the recipe's own are asked for by themselves: a value may have the same name. */
  readonly sizes: ReadonlyMap<string, readonly Given[]>;
  readonly steps: ReadonlyMap<string, readonly Given[]>;
  /** Every name by the offset of the word that gives it. */
  readonly at: ReadonlyMap<number, Given>;
}

/** Whether a name belongs to a piece, and goes with it wherever it is copied. */
export const isPart = ({ kind }: Pick<Given, "kind">): boolean =>
  kind === "edge" || kind === "place" || kind === "dart";

type Names = Map<string, Given[]>;
type Growing = Omit<Block, "names" | "inner" | "calls"> & { names: Names; inner: Growing[]; calls: WrittenLine[] };

/** Reads the blocks of a recipe. */
export const blocksOf = (file: string, { lines }: Written): Blocks => {
  const top = block("file", undefined, undefined);
  const of = new Map<WrittenLine, Growing>();
  const [sizes, steps]: [Names, Names] = [new Map(), new Map()];
  const at = new Map<number, Given>();
  const put = (names: Names, line: WrittenLine, { word, kind }: GivenName | StepName, where: Growing): void => {
    const given = { file, word, line, kind, block: where };
    names.set(word.text, [...(names.get(word.text) ?? []), given]);
    at.set(word.from, given);
  };
  for (const line of lines) {
    const around = (line.around && of.get(line.around)) ?? top;
    const own = opened(line, around);
    of.set(line, own);
    if (own.kind === "through" && own !== around) around.inner.push(own);
    if (line.verb === "step") {
      const [, name] = line.words;
      if (name?.means === "NewName") put(steps, line, { word: name, kind: "step" }, top);
      // An edge by the name of a parameter is no edge of the piece, and ends with the step.
      for (const { word } of parametersOf(line)) put(own.names, line, { word, kind: "parameter" }, own);
    } else if (line.verb === "size") {
      for (const name of namesGivenBy(line)) put(sizes, line, name, top);
    } else {
      const inside = line.verb === "repeat" ? own : around;
      for (const name of namesGivenBy(line)) put(inside.names, line, name, inside);
    }
    if (!line.isEntry && steps.has(line.verb)) around.calls.push(line);
  }
  return { top, of, sizes, steps, at };
};

interface StepName {
  readonly word: WrittenWord;
  readonly kind: "step";
}

const block = (kind: BlockKind, line: WrittenLine | undefined, outer: Growing | undefined): Growing => ({
  kind,
  line,
  outer,
  names: new Map(),
  inner: [],
  calls: [],
});

/** The block that the lines in a line's braces stand in. What a `solve` draws stays below it: its block is the one around. */
const opened = (line: WrittenLine, around: Growing): Growing => {
  if (line.verb === "piece" || line.verb === "step") return block(line.verb, line, around);
  return line.block && line.verb !== "solve" && !line.isEntry ? block("through", line, around) : around;
};
