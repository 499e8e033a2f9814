// Words of the language and signs that could begin a value.
import type { WantedKind } from "../wanted-kinds.ts";
import { hole, type Suggested } from "./suggested.ts";

const directions = ["down", "up", "left", "right"];

/** Directions, the bracket of a place, the quotes of a text, where such things are wanted. */
export const wordsHere = (wanted: readonly WantedKind[]): Suggested[] => {
  const word = (label: string, detail: string, rank: number, insert?: string): Suggested => ({
    label,
    kind: "word",
    detail,
    rank,
    ...(insert !== undefined && { insert, isSnippet: true }),
  });
  if (wanted[0] === "side")
    return [word("left", "seen from the first place", 0), word("right", "seen from the first place", 0)];
  if (wanted[0] === "direction")
    return [
      ...directions.map((side, index) => word(side, "a direction", index / 10)),
      word("toward", "a place", 1, `toward ${hole(1, "place")}`),
      word("along", "an edge, as it was drafted", 2, `along ${hole(1, "edge")}`),
      word("square-to", "an edge", 3, `square-to ${hole(1, "edge")}`),
    ];
  const place = wanted.includes("place")
    ? [word("(", "a place by how far right and down it lies", 45, `(${hole(1, "0 cm")}, ${hole(2, "0 cm")})`)]
    : [];
  const text = wanted.includes("text") ? [word('"', "a text", 0, `"${hole(1, "text")}"`)] : [];
  const not = wanted.includes("number") ? [word("not", "the contrary of a condition", 95)] : [];
  const pi = wanted.length === 0 || wanted.includes("number") ? [word("pi", "3.14159…", 94)] : [];
  return [...place, ...text, ...not, ...pi];
};
