// Amounts as reports state them: any value in words, and the difference that an alteration made.
import { lengthIn, plainNumber, scalarInWords } from "../units.ts";
import { isScalar, type Value } from "../value.ts";
import type { Units } from "../working.ts";

/** A value in words; undefined for what cannot be said in a few: pieces, recipes, cloth and directions. */
export const valueInWords = (value: Value, units: Units): string | undefined => {
  if (isScalar(value)) return scalarInWords(value, units);
  if (value.kind === "text") return `"${value.text}"`;
  if (value.kind === "truth") return value.holds ? "true" : "false";
  if (value.kind === "place") return `(${lengthIn(value.point.x, units)}, ${lengthIn(value.point.y, units)})`;
  return undefined;
};

/** Two lengths closer than this, in mm, count as unchanged: less than the width of a sharp pencil line. */
export const unchanged = 0.05;

// Below this many mm a difference in cm would lose its digits, so it is told in mm.
const small = 0.5;

/** A difference in mm as words, with its sign: "+9 cm", "-0.06 mm"; "=" where nothing to speak of has changed. */
export const differenceIn = (millimetres: number, units: Units): string => {
  if (Math.abs(millimetres) < unchanged) return "=";
  const sign = millimetres > 0 ? "+" : "-";
  const size = Math.abs(millimetres);
  return `${sign}${size < small && units !== "in" ? `${plainNumber(size, 2)} mm` : lengthIn(size, units)}`;
};
