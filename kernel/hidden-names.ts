// Names drawn inside `if`, `repeat` and steps of the recipe's own stay inside: the piece keeps them under hidden names.
// An edge that ends up in the outline gets its plain name when the block ends, and so does a dart: without a name neither
// is of use.
import { renamed } from "./alter/renamed.ts";
import type { Piece } from "./working.ts";

/** A tilde cannot be written in a recipe, so no name of the recipe's can be taken for a hidden one. */
export const hiddenName = (name: string, count: number): string => `${name}~${count}`;

/** Words about a piece, with hidden names as the recipe wrote them. */
export const withoutHidden = (words: string): string => words.replace(/~\d+/g, "");

/** Whether a name is one that no recipe could have written. */
export const isHidden = (name: string): boolean => name.includes("~");

/** A name as the recipe wrote it, hidden or not. */
export const plainName = (name: string): string => (isHidden(name) ? name.slice(0, name.indexOf("~")) : name);

/** The names of a piece's edges, places and darts that a recipe can use. */
export const shownNames = (piece: Piece): string[] =>
  [...piece.edges.keys(), ...piece.places.keys(), ...piece.darts.keys()].filter((name) => !isHidden(name));

/**
 * The piece as a block leaves it: places drawn inside are forgotten, outline edges and darts drawn inside get their plain
 * names where these are free.
 */
export const withPlainNames = (piece: Piece, before: Piece): Piece => {
  const drawn = [...piece.edges.keys()].filter((name) => isHidden(name) && !before.edges.has(name));
  const inOutline = new Set(piece.outline.map(({ edge }) => edge));
  const forgotten = [...piece.places.keys()].some((name) => isHidden(name) && !before.places.has(name));
  const darts = [...piece.darts.keys()].filter((name) => isHidden(name) && !before.darts.has(name));
  if (drawn.length === 0 && darts.length === 0 && !forgotten) return piece;
  const renamed = drawn
    .filter((name) => inOutline.has(name) && !piece.edges.has(plainName(name)))
    .reduce((changed, name) => withEdgeRenamed(changed, name, plainName(name)), piece);
  const withDarts = darts
    .filter((name) => !shownNames(renamed).includes(plainName(name)))
    .reduce((changed, name) => withDartRenamed(changed, name, plainName(name)), renamed);
  const places = new Map([...withDarts.places].filter(([name]) => !isHidden(name) || before.places.has(name)));
  return { ...withDarts, places };
};

/** The hidden names of edges and darts that gave way to plain ones at a block's end. */
export const namesGiven = (inside: Piece, after: Piece): NamesGiven => ({
  edges: [...inside.edges.keys()].filter((name) => !after.edges.has(name)),
  darts: [...inside.darts.keys()].filter((name) => !after.darts.has(name)),
});

export interface NamesGiven {
  readonly edges: readonly string[];
  readonly darts: readonly string[];
}

/** A piece as it was within a block, under the names that the block's end gave; one that still had another owner then waits. */
export const withNamesGiven = (piece: Piece, { edges, darts }: NamesGiven): Piece => {
  const named = edges
    .filter((name) => piece.edges.has(name) && !piece.edges.has(plainName(name)))
    .reduce((changed, name) => withEdgeRenamed(changed, name, plainName(name)), piece);
  return darts
    .filter((name) => piece.darts.has(name))
    .reduce((changed, name) => withDartRenamed(changed, name, plainName(name)), named);
};

/** The plain names of edges and places that were drawn in a block and did not outlive it. */
export const namesLost = (inside: Piece, after: Piece): string[] =>
  [...inside.edges.keys(), ...inside.places.keys()]
    .filter((name) => isHidden(name) && !after.edges.has(plainName(name)) && !after.places.has(plainName(name)))
    .map(plainName);

const withDartRenamed = (piece: Piece, from: string, to: string): Piece => {
  if (piece.darts.has(to)) return piece;
  return renamed(
    piece,
    (name) => name,
    (name) => name,
    (name) => (name === from ? to : name),
  );
};

/** The same piece with one edge under another name, wherever it is spoken of. */
export const withEdgeRenamed = (piece: Piece, from: string, to: string): Piece =>
  renamed(piece, (name) => (name === from ? to : name));
