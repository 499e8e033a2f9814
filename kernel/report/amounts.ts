// Amounts as reports state them: any value in words, an area, and the difference that an alteration made.
import { angleInWords, lengthIn, plainNumber } from "../units.ts";
import { isScalar, type Value } from "../value.ts";
import type { Units } from "../working.ts";

const squareMillimetresIn = { mm: 100, cm: 100, in: 25.4 * 25.4 };

/** An area in mm2 as words: "4512.3 cm2", and "699.4 in2" where the recipe shows inches. */
export const areaIn = (squareMillimetres: number, units: Units): string =>
  `${plainNumber(squareMillimetres / squareMillimetresIn[units], 1)} ${units === "in" ? "in2" : "cm2"}`;

/** A value in words; undefined for what cannot be said in a few: pieces, recipes, cloth and directions. */
export const valueInWords = (value: Value, units: Units): string | undefined => {
  if (isScalar(value)) return scalarInWords(value.kind, value.value, units);
  if (value.kind === "text") return `"${value.text}"`;
  if (value.kind === "truth") return value.holds ? "true" : "false";
  if (value.kind === "place") return `(${lengthIn(value.point.x, units)}, ${lengthIn(value.point.y, units)})`;
  return undefined;
};

const scalarInWords = (kind: string, value: number, units: Units): string => {
  if (kind === "length") return lengthIn(value, units);
  if (kind === "angle") return angleInWords(value);
  if (kind === "area") return areaIn(value, units);
  if (kind === "weight") return `${plainNumber(value, 1)} g/m2`;
  return plainNumber(value, 4);
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
