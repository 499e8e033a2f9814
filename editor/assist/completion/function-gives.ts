// What kind of value each function gives, so that it is offered where such a value is wanted.
import type { WantedKind } from "../wanted-kinds.ts";

/** The kinds that a function may give; one that goes by its values gives several. */
export const functionGives: ReadonlyMap<string, readonly WantedKind[]> = new Map<string, readonly WantedKind[]>([
  ["length", ["length"]],
  ["cut-length", ["length"]],
  ["distance", ["length"]],
  ["angle", ["angle"]],
  ["area", ["area"]],
  ["min", ["length", "angle", "number"]],
  ["max", ["length", "angle", "number"]],
  ["abs", ["length", "angle", "number"]],
  ["sqrt", ["length", "number"]],
  ["sin", ["number"]],
  ["cos", ["number"]],
  ["tan", ["number"]],
  ["asin", ["angle"]],
  ["acos", ["angle"]],
  ["atan", ["angle"]],
  ["clamp", ["length", "angle", "number"]],
  ["round", ["length", "angle", "number"]],
  ["x", ["length"]],
  ["y", ["length"]],
  ["meet", ["place"]],
  ["foot", ["place"]],
  ["compass", ["place"]],
  ["middle", ["place"]],
  ["mirrored", ["place"]],
  ["corner", ["place"]],
  ["part", ["edge"]],
  ["turned", ["edge"]],
]);
