// What a word of a recipe stands for: the words that gave the name. The rules are those of kernel/scope.ts, read from the
// text; where several lines may have given it (the branches of an `if`, the pieces that a step is called in), it stands for
// all of them.
import { functions } from "../../../kernel/functions.ts";
import type { WrittenLine } from "../written.ts";
import type { WrittenWord } from "../written-word.ts";
import { type Block, type Given, isPart } from "./blocks.ts";
import { type NamedRecipe, type Recipes, usedBy } from "./recipes.ts";

/** What the word of a line stands for; empty where it is no name, or nobody gives it. */
export const meant = (recipes: Recipes, recipe: NamedRecipe, line: WrittenLine, at: number): readonly Given[] =>
  new Looking(recipes).word(recipe, line, at);

/** What the word of a line would stand for if it were another: whether a new name is free there. */
export const meantInstead = (
  recipes: Recipes,
  recipe: NamedRecipe,
  line: WrittenLine,
  at: number,
  name: string,
): readonly Given[] => new Looking(recipes).instead(recipe, line, at, name);

/** All that goes by one measure's name for the bodies that come to this file: one body serves a recipe and all that it uses. */
export const measuresCalled = (recipes: Recipes, file: string, name: string): Given[] => {
  const found = new Set<Given>();
  for (const root of recipes.all.keys()) {
    const served = usedBy(recipes, root);
    if (!served.some(({ source }) => source.file === file)) continue;
    for (const { blocks } of served)
      for (const given of blocks.top.names.get(name) ?? []) if (given.kind === "measure") found.add(given);
  }
  return [...found];
};

// Pieces copied from one another further than this are no garment; each takes a few calls on the way to the first.
const furthest = 300;

/** One question; it remembers what it has looked for, so that recipes that lead in a circle, or the same way often, end it. */
class Looking {
  private readonly recipes: Recipes;
  private readonly known = new Map<string, readonly Given[]>();
  private depth = 0;

  constructor(recipes: Recipes) {
    this.recipes = recipes;
  }

  /** Looks for a thing once; while that goes on, and too far away, there is nothing. */
  private once(key: string, look: () => readonly Given[]): readonly Given[] {
    const before = this.known.get(key);
    if (before || this.depth >= furthest) return before ?? [];
    this.known.set(key, []);
    this.depth += 1;
    const found = distinct(look());
    this.depth -= 1;
    this.known.set(key, found);
    return found;
  }

  word(recipe: NamedRecipe, line: WrittenLine, at: number): readonly Given[] {
    const word = line.words[at]!;
    switch (word.means) {
      case "Verb":
        return recipe.blocks.steps.get(word.text)?.filter((given) => given.line !== line) ?? [];
      case "ClauseWord":
        return this.parameter(recipe, line, word);
      case "NewName":
        if (line.isEntry) return this.entry(recipe, line, word);
        return line.verb === "base" ? this.size(recipe, word.text) : only(recipe.blocks.at.get(word.from));
      case "Name":
        return this.path(recipe, line, pathUpTo(line.words, at));
      default:
        return [];
    }
  }

  instead(recipe: NamedRecipe, line: WrittenLine, at: number, text: string): readonly Given[] {
    const word = { ...line.words[at]!, text };
    if (word.means === "NewName" && !line.isEntry) return this.plain(recipe, line, word);
    const path = pathUpTo(line.words, at);
    return word.means === "Name" ? this.path(recipe, line, [...path.slice(0, -1), word]) : [];
  }

  /** In the call of a step of the recipe's own, the clause words are its parameters. */
  private parameter(recipe: NamedRecipe, line: WrittenLine, { text }: WrittenWord): readonly Given[] {
    return (recipe.blocks.steps.get(line.verb) ?? []).flatMap(
      (step) =>
        recipe.blocks.of
          .get(step.line)
          ?.names.get(text)
          ?.filter(({ kind }) => kind === "parameter") ?? [],
    );
  }

  private entry(recipe: NamedRecipe, { around }: WrittenLine, { text }: WrittenWord): readonly Given[] {
    if (around?.verb === "size") return measuresCalled(this.recipes, recipe.source.file, text);
    if (around?.verb !== "use") return [];
    return this.used(recipe, around)?.blocks.top.names.get(text) ?? [];
  }

  /** Sizes of used recipes carry over. */
  private size(recipe: NamedRecipe, name: string): readonly Given[] {
    for (const { blocks } of usedBy(this.recipes, recipe.source.file)) {
      const found = blocks.sizes.get(name);
      if (found) return found;
    }
    return [];
  }

  private used({ uses }: NamedRecipe, line: WrittenLine): NamedRecipe | undefined {
    const file = uses.get(line);
    return file === undefined ? undefined : this.recipes.all.get(file);
  }

  /** `straight.back.hem` up to one of its words. */
  private path(recipe: NamedRecipe, line: WrittenLine, path: readonly WrittenWord[]): readonly Given[] {
    const [first, ...rest] = path;
    if (!first) return [];
    let found = this.plain(recipe, line, first);
    for (const { text } of rest) found = found.flatMap((given) => this.member(given, text));
    return distinct(found);
  }

  /** A name as the line finds it, from its own block outward. */
  private plain(recipe: NamedRecipe, line: WrittenLine, word: WrittenWord): readonly Given[] {
    const { blocks } = recipe;
    const { text: name } = word;
    const isHeading = line.verb === "step";
    const inner = isHeading ? blocks.of.get(line)! : blockAround(blocks.of, line, blocks.top);
    let seenFrom = isHeading ? word.from : seenFromWord(line, word);
    for (let block: Block | undefined = inner; block; block = block.outer) {
      const above = ({ line: by, word: { from } }: Given): boolean =>
        by === line ? isOwnName(line, word, from) : by.from < seenFrom;
      const given = block.names.get(name)?.filter(above) ?? [];
      const found = given.length > 0 ? given : this.fromPiece(recipe, block, name, seenFrom);
      if (found.length > 0) return found;
      // A step of the recipe's own knows the names above it, not those above its calls.
      if (block.kind === "step") seenFrom = Math.min(seenFrom, block.line!.from);
    }
    return this.beyondBlocks(recipe, inner, name);
  }

  /** What the piece at hand has by that name, besides what the block itself names. */
  private fromPiece(recipe: NamedRecipe, block: Block, name: string, before: number): readonly Given[] {
    if (block.kind === "file") return [];
    const outlived = this.outlived(recipe, block, name, before);
    if (outlived.length > 0 || block.kind === "through") return outlived;
    if (block.kind === "piece") return this.copied(recipe, block.line!, name);
    return this.fromCallers(recipe, block, name);
  }

  /** The edges and darts that blocks and steps inside a block drew, and that outlived them. */
  private outlived(recipe: NamedRecipe, block: Block, name: string, before: number): readonly Given[] {
    return this.once(`outlived ${recipe.source.file} ${block.line?.from} ${before} ${name}`, () => {
      const steps = block.calls
        .filter(({ from }) => from < before)
        .flatMap(({ verb }) => recipe.blocks.steps.get(verb) ?? [])
        .flatMap((step) => recipe.blocks.of.get(step.line) ?? []);
      const inner = new Set([...block.inner.filter(({ line }) => line!.block!.to <= before), ...steps]);
      return [...inner].flatMap((each) => [
        ...(each.names.get(name)?.filter(isPart) ?? []),
        ...this.outlived(recipe, each, name, Number.POSITIVE_INFINITY),
      ]);
    });
  }

  /** What a piece has from the pieces that its line names: the one it is copied from, or those that a step makes it out of. */
  private copied(recipe: NamedRecipe, line: WrittenLine, name: string): readonly Given[] {
    const found = line.words.flatMap((word, at) => {
      const pieces = word.means === "Name" ? this.word(recipe, line, at).filter(({ kind }) => kind === "piece") : [];
      return pieces.flatMap((piece) => this.partOf(piece, name));
    });
    return distinct(found);
  }

  /** A step of the recipe's own sees the parts of the pieces in which it is called. */
  private fromCallers(recipe: NamedRecipe, { line }: Block, name: string): readonly Given[] {
    const step = line!.words[1]?.text;
    const { blocks, written, source } = recipe;
    const fromCall = (call: WrittenLine): readonly Given[] => {
      if (call.verb !== step || call.isEntry) return [];
      let block: Block | undefined = blockAround(blocks.of, call, blocks.top);
      while (block?.kind === "through") block = block.outer;
      if (block?.kind !== "piece") return block?.kind === "step" ? this.fromCallers(recipe, block, name) : [];
      const own = block.names.get(name)?.filter((given) => isPart(given) && given.line.from < call.from) ?? [];
      return own.length > 0 ? own : this.fromPiece(recipe, block, name, call.from);
    };
    return this.once(`callers ${source.file} ${line!.from} ${name}`, () => written.lines.flatMap(fromCall));
  }

  /** A piece's own name inside its block, and cloths of used recipes. */
  private beyondBlocks(recipe: NamedRecipe, inner: Block, name: string): readonly Given[] {
    for (let block: Block | undefined = inner; block; block = block.outer) {
      const own = block.kind === "piece" ? block.line!.words.find(({ means }) => means === "NewName") : undefined;
      if (own?.text === name) return only(recipe.blocks.at.get(own.from));
    }
    for (const { blocks } of usedBy(this.recipes, recipe.source.file)) {
      const cloth = blocks.top.names.get(name)?.filter(({ kind }) => kind === "fabric") ?? [];
      if (cloth.length > 0) return cloth;
    }
    return [];
  }

  private member(given: Given, name: string): readonly Given[] {
    const recipe = this.recipes.all.get(given.file);
    if (!recipe) return [];
    switch (given.kind) {
      case "piece":
        return this.partOf(given, name);
      case "recipe":
        return this.used(recipe, given.line)?.blocks.top.names.get(name) ?? [];
      case "let":
        return this.aliased(recipe, given, name);
      case "parameter":
        return this.ofParameter(recipe, given, name);
      default:
        return [];
    }
  }

  private partOf(piece: Given, name: string): readonly Given[] {
    const recipe = this.recipes.all.get(piece.file);
    if (!recipe) return [];
    return this.once(`part ${piece.file} ${piece.word.from} ${name}`, () => {
      const block = piece.line.verb === "piece" ? recipe.blocks.of.get(piece.line) : undefined;
      const own = block?.names.get(name)?.filter(isPart) ?? [];
      const outlived = block && own.length === 0 ? this.outlived(recipe, block, name, Number.POSITIVE_INFINITY) : own;
      return outlived.length > 0 ? outlived : this.copied(recipe, piece.line, name);
    });
  }

  /** `let old = straight.back`: what `old.hem` is. */
  private aliased(recipe: NamedRecipe, { line }: Given, name: string): readonly Given[] {
    const names = line.words.flatMap(({ means }, at) => (means === "Name" ? [at] : []));
    const last = names.at(-1);
    const isPlain = line.words.slice(3).every(({ means, text }) => means === "Name" || text === ".");
    if (last === undefined || !isPlain) return [];
    return this.once(`alias ${recipe.source.file} ${line.from} ${name}`, () =>
      this.word(recipe, line, last).flatMap((given) => this.member(given, name)),
    );
  }

  /** A part of a piece that a step of the recipe's own is called with. */
  private ofParameter(recipe: NamedRecipe, { line, word: { text } }: Given, name: string): readonly Given[] {
    const step = line.words[1]?.text;
    const found = recipe.written.lines.flatMap((call) => {
      if (call.verb !== step || call.isEntry) return [];
      const from = call.words.findIndex((word) => word.means === "ClauseWord" && word.text === text);
      const ends = call.words.findIndex(({ means }, at) => at > from && means === "ClauseWord");
      const last = (ends < 0 ? call.words.length : ends) - 1;
      const given = from >= 0 && call.words[last]!.means === "Name" ? this.word(recipe, call, last) : [];
      return given.filter(({ kind }) => kind === "piece").flatMap((piece) => this.partOf(piece, name));
    });
    return distinct(found);
  }
}

const only = (given: Given | undefined): readonly Given[] => (given ? [given] : []);
const distinct = (given: readonly Given[]): readonly Given[] => (given.length > 1 ? [...new Set(given)] : given);

const blockAround = (of: ReadonlyMap<WrittenLine, Block>, { around }: WrittenLine, top: Block): Block =>
  (around && of.get(around)) ?? top;

/** The words of a path of names from its first to this one; empty behind a bracket and for a function. */
const pathUpTo = (words: readonly WrittenWord[], at: number): readonly WrittenWord[] => {
  const [name, next] = [words[at]!, words[at + 1]];
  if (next?.text === "(" && next.from === name.to && functions.has(name.text)) return [];
  let start = at;
  while (words[start - 1]?.text === ".") {
    if (words[start - 2]?.means !== "Name") return [];
    start -= 2;
  }
  return words.slice(start, at + 1).filter(({ text }) => text !== ".");
};

/** Up to where names are given for a word of a line: what `until` of a `solve` compares may be drawn in its block. */
const seenFromWord = (line: WrittenLine, word: WrittenWord): number => {
  const until =
    line.verb === "solve" && line.words.find(({ means, text }) => means === "ClauseWord" && text === "until");
  return until && word.from > until.from ? (line.block?.to ?? line.to) : line.from;
};

/** Whether a name that a line gives is known to a word of that very line: a parameter to those behind it, what is sought to `until`. */
const isOwnName = (line: WrittenLine, word: WrittenWord, givenFrom: number): boolean =>
  (line.verb === "step" && givenFrom < word.from) || (line.verb === "solve" && seenFromWord(line, word) > line.from);
