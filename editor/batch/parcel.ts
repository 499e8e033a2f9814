// All that bodies are drafted from, apart from the bodies: the recipe's text and those it uses, and what was asked for. It travels as
// text, to a thread or to another machine, and holds no path that anybody would open.
import { type SourceText, sourceText } from "../../grammar/source.ts";
import type { Source, Sources, Unreadable } from "../../kernel/sources.ts";
import type { MeasureColumn } from "../files/body-table.ts";
import type { OpenedRecipe } from "../files/recipe-files.ts";
import { unreadable } from "../files/unreadable.ts";
import { dataIn, listOf, NotAsWanted, orNull, partsOf, textOf } from "./as-wanted.ts";
import { batchLimits } from "./batch-limits.ts";

/** A recipe that another one uses: the path as it is written there, and what was found. */
export interface UsedSource {
  readonly path: string;
  readonly from: string;
  readonly file: string;
  readonly text: string;
}

export interface Parcel {
  /** Which program packed it, to the last letter. */
  readonly program: string;
  readonly recipe: Source;
  readonly used: readonly UsedSource[];
  /** As the options of a command stand: NAME=VALUE, a size, formats and papers by name. */
  readonly set: readonly string[];
  readonly size: string | null;
  readonly as: readonly string[];
  readonly paper: readonly string[];
  /** How messages name the table of bodies. */
  readonly table: string;
  /** The columns of the table behind that of the names. */
  readonly columns: readonly MeasureColumn[];
  /** The headings of the measures that every row is answered with. */
  readonly headings: readonly string[];
}

/** A recipe that writes down what it reads while it is worked. */
export interface RecordedRecipe extends OpenedRecipe {
  used(): readonly UsedSource[];
}

export const recorded = ({ source, sources, texts }: OpenedRecipe): RecordedRecipe => {
  const found = new Map<string, UsedSource>();
  const read: Sources["read"] = (path, from) => {
    const content = sources.read(path, from);
    if (!("problem" in content)) found.set(keyOf(path, from), { path, from, ...content });
    return content;
  };
  return { source, sources: { read }, texts, used: () => [...found.values()] };
};

/** The recipe of a parcel, opened; nothing but the parcel is read. */
export const unpacked = ({ recipe, used }: Parcel): OpenedRecipe => {
  const found = new Map(used.map((each) => [keyOf(each.path, each.from), each]));
  const texts = new Map<string, SourceText>([recipe, ...used].map(({ file, text }) => [file, sourceText(text)]));
  const read = (path: string, from: string): Source | Unreadable => {
    const known = found.get(keyOf(path, from));
    if (known) return { file: known.file, text: known.text };
    return unreadable("file-missing", `${path} was not there when the recipe was opened.`);
  };
  return { source: recipe, sources: { read }, texts };
};

/** A parcel out of its text, whoever wrote it; throws NotAsWanted where it is none. */
export const parcelIn = (text: string): Parcel => {
  const parts = partsOf(dataIn(text, batchLimits.questionLetters));
  const words = (name: string): string[] => listOf(parts.get(name), batchLimits.fields, (each) => textOf(each));
  const recipe = sourceOf(parts.get("recipe"));
  const used = listOf(parts.get("used"), batchLimits.used, (each) => {
    const way = partsOf(each);
    return { path: textOf(way.get("path")), from: textOf(way.get("from")), ...sourceOf(each) };
  });
  const letters = [recipe, ...used].reduce((sum, each) => sum + each.text.length, 0);
  if (letters > batchLimits.recipeLetters) throw new NotAsWanted("the recipes are too long");
  return {
    program: textOf(parts.get("program")),
    recipe,
    used,
    set: words("set"),
    size: orNull(parts.get("size"), textOf),
    as: words("as"),
    paper: words("paper"),
    table: textOf(parts.get("table")),
    columns: listOf(parts.get("columns"), batchLimits.fields, columnOf),
    headings: listOf(parts.get("headings"), batchLimits.headings, (each) => textOf(each)),
  };
};

const sourceOf = (value: unknown): Source => {
  const parts = partsOf(value);
  return { file: textOf(parts.get("file")), text: textOf(parts.get("text"), batchLimits.recipeLetters) };
};

const columnOf = (value: unknown): MeasureColumn => {
  const parts = partsOf(value);
  const unit = parts.get("unit");
  return { name: textOf(parts.get("name")), ...(unit !== undefined && { unit: textOf(unit) }) };
};

const keyOf = (path: string, from: string): string => JSON.stringify([path, from]);
