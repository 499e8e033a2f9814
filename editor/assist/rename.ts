// A name given anew everywhere it stands, in this recipe and in all that use it. What the recipes make stays as it was: they
// are worked with the new name before it is offered.

import { lineOf, lineStarts } from "../../grammar/source.ts";
import { statementWords } from "../../grammar/statements.ts";
import { isWord, placeWords, scan } from "../../grammar/tokens.ts";
import type { Evaluated } from "../../kernel/evaluate.ts";
import type { Circumstances } from "../../kernel/kernel.ts";
import type { Source, Sources } from "../../kernel/sources.ts";
import type { Scalar } from "../../kernel/value.ts";
import { namedAt } from "./named-at.ts";
import type { Given } from "./naming/blocks.ts";
import { meant, meantInstead } from "./naming/meant.ts";
import { allOccurrences, type Occurrence } from "./naming/occurrences.ts";
import { type Recipes, recipesAround } from "./naming/recipes.ts";
import { whatChanged } from "./same-garment.ts";
import { edited, type TextEdit } from "./text-edit.ts";
import type { WorkedText } from "./worked-text.ts";

/** Why a name stays as it is, in words for a pattern maker. */
export interface Refused {
  readonly refused: string;
}

/** The name at an offset that can be given anew. */
export const renamable = (
  worked: WorkedText,
  offset: number,
): { readonly from: number; readonly to: number; readonly name: string } | Refused => {
  const named = namedAt(recipesAround(worked), offset);
  if (!named || named.meant.length === 0) return { refused: notGiven(named?.word.text) };
  const { from, to, text: name } = named.word;
  return { from, to, name };
};

const notGiven = (word: string | undefined): string =>
  word === undefined ? "No name stands here." : `${word} is not a name that a line of these recipes gives.`;

/** Edits, perhaps of several recipes, that give the name at an offset anew; or why it cannot be called that. */
export const rename = (
  worked: WorkedText,
  offset: number,
  name: string,
  others: readonly Source[] = [],
): { readonly edits: readonly TextEdit[] } | Refused => {
  const recipes = recipesAround(worked, others);
  const named = namedAt(recipes, offset);
  if (!named || named.meant.length === 0) return { refused: notGiven(named?.word.text) };
  const old = named.word.text;
  if (name === old) return { edits: [] };
  const found = allOccurrences(recipes, named.meant);
  const kinds = new Set(found.flatMap((each) => each.meant));
  const refused = notAName(name) ?? keptWord(worked, kinds, name) ?? taken(recipes, found, name);
  if (refused !== undefined) return { refused };
  const edits = found.map(({ recipe, word }) => editOf(recipe.source.file, word, name));
  if (isPlain(worked, recipes, found, old, name)) return { edits };
  const wrong = changed(worked, recipes, edits, kinds, old, name);
  if (wrong === undefined) return { edits };
  // A step may have made names out of this one: hem-1, other-hem.
  const withDerived = [...edits, ...derivedNames(recipes, old, name)];
  const isMended =
    withDerived.length > edits.length && changed(worked, recipes, withDerived, kinds, old, name) === undefined;
  return isMended ? { edits: withDerived } : { refused: `${old} cannot be called ${name}: ${wrong}` };
};

/**
 * Whether the text alone shows that nothing can go wrong: every word that is written like the old name is this name or
 * another known one, no name is made out of it, and nothing anywhere is called by the new one. Working recipes again takes
 * longer than one waits for an answer.
 */
const isPlain = (
  { outcome }: WorkedText,
  recipes: Recipes,
  found: readonly Occurrence[],
  old: string,
  name: string,
): boolean => {
  const edited = new Set(found.map(({ word }) => word));
  const isClear = [...recipes.all.values()].every((recipe) =>
    recipe.written.lines.every((line) =>
      line.words.every((word, at) => {
        if (word.text === name) return false;
        if (edited.has(word) || (word.means !== "Name" && word.means !== "NewName")) return true;
        const isLike = `-${word.text}-`.includes(`-${old}-`);
        return !isLike || line.isEntry || meant(recipes, recipe, line, at).length > 0;
      }),
    ),
  );
  return isClear && !isDrawn(outcome, name);
};

/** Whether a step has drawn something by that name, or made one out of it. */
const isDrawn = ({ garment, uses }: Pick<Evaluated, "garment" | "uses">, name: string): boolean => {
  const isLike = (other: string): boolean => `-${other}-`.includes(`-${name}-`);
  const inPieces = [...garment.pieces.values()].some((piece) =>
    [...piece.edges.keys(), ...piece.places.keys(), ...piece.darts.keys()].some(isLike),
  );
  return inPieces || [...uses.values()].some((used) => isDrawn(used, name));
};

const editOf = (file: string, { from, to }: { from: number; to: number }, text: string): TextEdit => ({
  file,
  from,
  to,
  text,
});

const notAName = (name: string): string | undefined => {
  const { tokens, comments } = scan(name);
  const [word, more] = tokens;
  if (word && !more && comments.length === 0 && isWord(word) && word.image === name) return undefined;
  return "A name is letters and digits, with single hyphens inside, and begins with a letter.";
};

const keptWord = ({ kernel }: WorkedText, given: ReadonlySet<Given>, name: string): string | undefined => {
  if (placeWords.includes(name)) return `${name} is a place word and cannot be a name.`;
  if (statementWords.includes(name)) return `${name} is a word that starts a statement and cannot be a name.`;
  const isStep = [...given].some(({ kind }) => kind === "step");
  return isStep && kernel.forms.has(name) ? `There is already a step called ${name}.` : undefined;
};

/** Whether the new name already stands for something where the old one is given or used. */
const taken = (recipes: Recipes, found: readonly Occurrence[], name: string): string | undefined => {
  for (const { recipe, line, word, meant: stands } of found) {
    const there =
      meantInstead(recipes, recipe, line, line.words.indexOf(word), name)[0] ??
      stands.map(({ block }) => block.names.get(name)?.[0]).find((given) => given !== undefined) ??
      stands.flatMap((given) => besideOf(recipes, given).get(name) ?? [])[0];
    if (!there) continue;
    const { text } = recipes.all.get(there.file)!.source;
    const where = there.file === recipes.opened.source.file ? "" : ` of ${there.file}`;
    return `${name} already names something here, since line ${lineOf(lineStarts(text), there.word.from)}${where}.`;
  }
  return undefined;
};

/** Sizes and steps stand beside the names of their block. */
const besideOf = ({ all }: Recipes, { kind, file }: Given): ReadonlyMap<string, readonly Given[]> => {
  const { sizes, steps } = all.get(file)!.blocks;
  return kind === "size" ? sizes : kind === "step" ? steps : new Map();
};

/** Names that nobody gives and that hold the old one as a part: hem in hem-1 and in other-hem. */
const derivedNames = (recipes: Recipes, old: string, name: string): TextEdit[] =>
  [...recipes.all.values()].flatMap((recipe) =>
    recipe.written.lines.flatMap((line) =>
      line.words.flatMap((word, at) => {
        const part = `-${word.text}-`.indexOf(`-${old}-`);
        const isOpen = word.means === "Name" && word.text !== old && part >= 0;
        if (!isOpen || meant(recipes, recipe, line, at).length > 0) return [];
        const from = word.from + part;
        return [editOf(recipe.source.file, { from, to: from + old.length }, name)];
      }),
    ),
  );

/** What would change if these edits were made; undefined where every recipe they touch comes to the same garment. */
const changed = (
  worked: WorkedText,
  recipes: Recipes,
  edits: readonly TextEdit[],
  given: ReadonlySet<Given>,
  old: string,
  name: string,
): string | undefined => {
  const texts = new Map<string, string>();
  for (const { source } of recipes.all.values()) {
    const own = edits.filter(({ file }) => file === source.file);
    if (own.length > 0) texts.set(source.file, edited(source.text, own));
  }
  const after: Circumstances = {
    ...givenAnew(worked.circumstances, given, old, name),
    sources: over(worked.sources, texts),
  };
  for (const { source } of recipes.all.values()) {
    const isOpened = source.file === worked.source.file;
    const text = texts.get(source.file);
    if (text === undefined && !isOpened) continue;
    const plain = { sources: worked.sources };
    const before = isOpened ? worked.outcome : worked.kernel.work(source, plain);
    const now = worked.kernel.work(
      { ...source, text: text ?? source.text },
      isOpened ? after : { sources: after.sources! },
    );
    const wrong = whatChanged(before, now);
    if (wrong !== undefined) return wrong;
  }
  return undefined;
};

/** Measures and params that come from outside go by the new name too. */
const givenAnew = (
  circumstances: Circumstances,
  given: ReadonlySet<Given>,
  old: string,
  name: string,
): Circumstances => {
  const kinds = new Set([...given].map(({ kind }) => kind));
  const { measures, params, size } = circumstances;
  return {
    ...circumstances,
    ...(measures && kinds.has("measure") && { measures: withKey(measures, old, name) }),
    ...(params && kinds.has("param") && { params: withKey(params, old, name) }),
    ...(kinds.has("size") && size === old && { size: name }),
  };
};

const withKey = (values: ReadonlyMap<string, Scalar>, old: string, name: string): ReadonlyMap<string, Scalar> =>
  new Map([...values].map(([key, value]) => [key === old ? name : key, value]));

const over = (sources: Sources, texts: ReadonlyMap<string, string>): Sources => ({
  read(path, from) {
    const found = sources.read(path, from);
    const text = "problem" in found ? undefined : texts.get(found.file);
    return "problem" in found || text === undefined ? found : { ...found, text };
  },
});
