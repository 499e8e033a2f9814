// The kinds that a parameter of a step of the recipe's own may have.
import { hole, type Suggested } from "./suggested.ts";

const kinds = [
  "edge",
  "place",
  "length",
  "angle",
  "number",
  "direction",
  "piece",
  "fabric",
  "text",
  "area",
  "weight",
  "truth",
];

/** What a parameter may begin with; the name follows. */
export const parameterKinds: Suggested[] = kinds.map((label, rank) => ({
  label,
  kind: "word",
  detail: "the kind of a parameter",
  insert: `${label} ${hole(1, "name")}`,
  isSnippet: true,
  rank,
}));
