// Where the name under the cursor was given: in this recipe, or in one that it uses.
import { lineOf, lineStarts } from "../../grammar/source.ts";
import type { Stretch } from "../../grammar/tree.ts";
import { fileAt, namedAt } from "./named-at.ts";
import type { Given } from "./naming/blocks.ts";
import { type Recipes, recipesAround } from "./naming/recipes.ts";
import type { WorkedText } from "./worked-text.ts";
import type { WrittenLine } from "./written.ts";

/** The word that gives a name; its line counts from 1, and reaches from `lineFrom` to `lineTo`. */
export interface GivenPlace {
  readonly file: string;
  readonly from: number;
  readonly to: number;
  readonly line: number;
  readonly lineFrom: number;
  readonly lineTo: number;
}

/** Where the name at an offset was given, several places where several lines may have given it; none where it is unknown. */
export const definition = (worked: WorkedText, offset: number): GivenPlace[] => {
  const recipes = recipesAround(worked);
  const file = fileAt(recipes, offset);
  if (file !== undefined) return [{ file, from: 0, to: 0, line: 1, lineFrom: 0, lineTo: 0 }];
  const named = namedAt(recipes, offset);
  if (!named) return [];
  if (named.meant.length > 0) return named.meant.map((given) => placeOf(recipes, given));
  return drawnWithoutName(worked, named.word.text, named.line);
};

const placeOf = ({ all }: Recipes, { file, word, line }: Given): GivenPlace => ({
  file,
  from: word.from,
  to: word.to,
  line: lineIn(all.get(file)!.source.text, word.from),
  lineFrom: line.from,
  lineTo: line.to,
});

const lineIn = (text: string, offset: number): number => lineOf(lineStarts(text), offset);

/** Edges, places and darts that a step named by itself: the line that drew them is where they come from. */
const drawnWithoutName = ({ outcome }: WorkedText, name: string, line: WrittenLine): GivenPlace[] => {
  const inside = pieceAround(line);
  const named = line.words.flatMap(({ text }) => outcome.garment.pieces.get(text) ?? []);
  const own = inside === undefined ? undefined : outcome.garment.pieces.get(inside);
  const drawn = [...(own ? [own] : []), ...named]
    .map((piece) => piece.edges.get(name) ?? piece.places.get(name) ?? piece.darts.get(name))
    .find((part) => part !== undefined)?.drawnBy;
  if (!drawn) return [];
  const { file, from, to } = drawn;
  return [{ file, from, to, line: drawn.line, lineFrom: from, lineTo: to } satisfies GivenPlace & Stretch];
};

const pieceAround = (line: WrittenLine): string | undefined => {
  let { around } = line;
  while (around && around.verb !== "piece") around = around.around;
  return around?.words.find(({ means }) => means === "NewName")?.text;
};
