// How places and lengths are rounded and written in a traced recipe: to about a hundredth of a millimetre.
import type { Point } from "../../kernel/geometry/point.ts";
import { millimetresIn, plainNumber } from "../../kernel/units.ts";
import type { Units } from "../../kernel/working.ts";

export interface RecipeUnits {
  readonly units: Units;
  /** A place as it will be read back, mm. */
  round(p: Point): Point;
  /** "12.5 cm", and 0 for nothing. */
  length(millimetres: number): string;
  /** "(12.5 cm, 0)". */
  place(p: Point): string;
}

/** Writes in these units. */
export const recipeUnits = (units: Units): RecipeUnits => {
  const one = millimetresIn.get(units)!;
  const places = decimals.get(units)!;
  const length = (millimetres: number): string => {
    const number = plainNumber(millimetres / one, places);
    return number === "0" ? "0" : `${number} ${units}`;
  };
  // Read back from what is written, so that both are the same number.
  const rounded = (millimetres: number): number => Number(plainNumber(millimetres / one, places)) * one;
  return {
    units,
    round: ({ x, y }) => ({ x: rounded(x), y: rounded(y) }),
    length,
    place: ({ x, y }) => `(${length(x)}, ${length(y)})`,
  };
};

const decimals: ReadonlyMap<Units, number> = new Map([
  ["mm", 2],
  ["cm", 3],
  ["in", 4],
]);
