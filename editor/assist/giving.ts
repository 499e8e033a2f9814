// The names that a line gives, and what kind of thing each will be as far as the line's own words say.
import type { NameKind } from "./known-names.ts";
import type { WrittenLine } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

/** A name where it is given. */
export interface GivenName {
  readonly word: WrittenWord;
  readonly kind: NameKind;
}

/** The names that a line gives to the lines below it. */
export const namesGivenBy = (line: WrittenLine): GivenName[] => {
  // `base size M` and an entry name things that are there already.
  if (line.isEntry || line.verb === "base" || line.verb === "step") return [];
  const kind = kinds.get(line.verb) ?? kindByNote(line);
  return line.words.filter(({ means }) => means === "NewName").map((word) => ({ word, kind }));
};

/** What stands between the brackets of a step of the recipe's own: (edge shoulder, length amount = 5 cm). */
export const parametersOf = (line: WrittenLine): GivenName[] =>
  line.verb !== "step"
    ? []
    : line.words.flatMap((word, index, words): GivenName[] => {
        const type = words[index - 1];
        if (word.means !== "NewName" || type?.means !== "ChoiceWord") return [];
        const kind = (["edge", "place", "piece", "fabric"] as const).find((each) => each === type.text);
        return [{ word, kind: kind ?? "parameter" }];
      });

const kinds: ReadonlyMap<string, NameKind> = new Map([
  ["measure", "measure"],
  ["param", "param"],
  ["let", "let"],
  ["size", "size"],
  ["fabric", "fabric"],
  ["use", "recipe"],
  ["piece", "piece"],
  ["repeat", "value"],
  ["solve", "value"],
]);

/** A step of the garment names pieces; one of a piece says in its declaration what it names: "the place", "the dart". */
const kindByNote = (line: WrittenLine): NameKind => {
  if (!isInPiece(line)) return "piece";
  const { forms } = line;
  const note = forms.find(({ naming }) => naming)?.naming?.slot.note ?? "";
  return (["place", "dart", "piece"] as const).find((kind) => note.includes(kind)) ?? "edge";
};

const isInPiece = ({ around }: WrittenLine): boolean =>
  around !== undefined && (around.verb === "piece" || around.verb === "step" || isInPiece(around));
