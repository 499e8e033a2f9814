// The words that walk on from a place or along an edge, and those that join two conditions.
import type { SlotAt } from "../slot-at.ts";
import type { WantedKind } from "../wanted-kinds.ts";
import type { WrittenWord } from "../written-word.ts";
import { hole, type Suggested } from "./suggested.ts";

const walks: readonly (readonly [string, string, string])[] = [
  ["right", "on the table", hole(1, "1 cm")],
  ["left", "on the table", hole(1, "1 cm")],
  ["up", "on the table", hole(1, "1 cm")],
  ["down", "on the table, toward the hem", hole(1, "1 cm")],
  ["toward", "another place, by a length or a ratio", `${hole(1, "place")} ${hole(2, "50%")}`],
  ["bearing", "at an angle: 0 deg points right, 90 deg down", `${hole(1, "45 deg")} for ${hole(2, "1 cm")}`],
];

/** What may follow a place, an edge or a condition; `before` are the words of the line up to here. */
export const placeWordsHere = (
  { last }: SlotAt,
  before: readonly WrittenWord[],
  wanted: readonly WantedKind[],
): Suggested[] => {
  const isPlace = wanted.includes("place");
  const word = (label: string, detail: string, rank: number, insert = label): Suggested => ({
    label,
    kind: "word",
    detail,
    insert,
    isSnippet: true,
    rank,
  });
  const bearing = before.findLast(({ text }) => text === "bearing" || text === "for");
  const due =
    bearing?.text === "bearing" && last?.text !== "bearing"
      ? [word("for", "how far", last?.means === "Number" ? 2.5 : 0, `for ${hole(1, "1 cm")}`)]
      : [];
  const base = isPlace ? 30 : 70;
  return [
    ...due,
    word("at", "along an edge, by length or ratio", base - 1, `at ${hole(1, "50%")}`),
    ...walks.map(([label, detail, rest], index) => word(label, detail, base + index / 10, `${label} ${rest}`)),
    ...["and", "or"].map((label) => word(label, "both, or either, of two conditions", 80)),
  ];
};
