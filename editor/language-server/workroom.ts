// Where the documents of an editor lie among the recipes: each in the folder that is open around it, else in its own. What
// is open and not yet saved is what other recipes use; everything else is read from the disk, under the same rules as ever.
import { dirname, isAbsolute, join, relative, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Source, Sources, Unreadable } from "../../kernel/sources.ts";
import { findRecipes } from "../files/find-recipes.ts";
import { type RecipeFolder, recipeFolder } from "../files/recipe-folder.ts";
import { unreadable } from "../files/unreadable.ts";
import { fileAt } from "../files/use-path.ts";
import { refusedPath } from "../files/written-path.ts";

/** A recipe's place: the folder that no `use` leads out of, and its path in it with / between the parts. */
export interface Place {
  /** Undefined for a text that has never been saved. */
  readonly root: string | undefined;
  readonly file: string;
  /** Whether the editor has that folder open, so that all its recipes belong together. */
  readonly isShared: boolean;
}

export interface Workroom {
  placeOf(uri: string): Place;
  /** How the editor calls a file of a folder. */
  uriOf(root: string | undefined, file: string): string;
  /** The text of a file, as it is open or as it lies on the disk; undefined where it cannot be read. */
  textOf(root: string | undefined, file: string): string | undefined;
  sourcesFor(root: string | undefined): Sources;
  /** All recipes that belong together with one at this place, in the order of their names. */
  recipesAround(place: Place): Source[];
  /** Their names alone. */
  namesAround(place: Place): string[];
}

/** The recipes in the folders that an editor has open, and the documents that it shows. */
export const workroom = (folders: () => readonly string[], documents: () => readonly TextDocument[]): Workroom => {
  const placeOf = (uri: string): Place => {
    const path = pathOf(uri);
    if (path === undefined) return { root: undefined, file: lastPart(uri), isShared: false };
    const around = folders().filter((folder) => isInside(relative(folder, path)));
    const root = around.sort((a, b) => b.length - a.length)[0] ?? dirname(path);
    return { root, file: relative(root, path).split(sep).join("/"), isShared: around.length > 0 };
  };

  const openAt = (root: string | undefined, file: string): TextDocument | undefined =>
    documents().find(({ uri }) => {
      const place = placeOf(uri);
      return place.root === root && place.file === file;
    });

  const read = (root: string | undefined, file: string): Source | Unreadable => {
    const open = openAt(root, file);
    if (open) return { file, text: open.getText() };
    const folder = folderAt(root);
    const found = folder?.read(file) ?? unreadable("file-missing", `There is no file ${file}.`);
    return "problem" in found ? found : { file, text: found.text };
  };

  const openIn = (root: string | undefined): TextDocument[] =>
    documents().filter(({ uri }) => placeOf(uri).root === root);

  const namesAround = ({ root, isShared }: Place): string[] => {
    const open = openIn(root).map(({ uri }) => placeOf(uri).file);
    // A folder that nobody opened may hold a whole disk.
    const kept = root !== undefined && isShared ? findRecipes(root) : [];
    const names = kept.map((path) => relative(root!, path).split(sep).join("/"));
    return [...new Set([...names, ...open])].sort();
  };

  return {
    placeOf,
    uriOf: (root, file) =>
      openAt(root, file)?.uri ?? (root === undefined ? file : pathToFileURL(join(root, file)).href),
    textOf(root, file) {
      const found = read(root, file);
      return "problem" in found ? undefined : found.text;
    },
    sourcesFor: (root) => ({
      read(path, from) {
        const refused = refusedPath(path);
        if (refused) return refused;
        const file = fileAt(from, path);
        if (file === undefined) return outside(path);
        return read(root, file);
      },
    }),
    recipesAround: (place) =>
      namesAround(place).flatMap((file) => {
        const found = read(place.root, file);
        return "problem" in found ? [] : [found];
      }),
    namesAround,
  };
};

const pathOf = (uri: string): string | undefined => {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
};

const lastPart = (uri: string): string => uri.split(/[/:]/).findLast((part) => part !== "") ?? "untitled.chalk";

/** A folder that is there; one that a new document names may not be yet. */
const folderAt = (root: string | undefined): RecipeFolder | undefined => {
  try {
    return root === undefined ? undefined : recipeFolder(root);
  } catch {
    return undefined;
  }
};

const outside = (path: string): Unreadable =>
  unreadable("use-outside", `${path} lies outside the folder that recipes are read from.`, {
    hint: "Open a folder that holds both recipes.",
  });

const isInside = (within: string): boolean =>
  within !== "" && within !== ".." && !within.startsWith(`..${sep}`) && !isAbsolute(within);
