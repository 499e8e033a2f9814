// Lengths, areas and angles as a pattern maker reads them. The only place that turns a number into words of a unit.
import type { Scalar } from "./value.ts";
import type { Units } from "./working.ts";

/** Millimetres in one of each unit that a recipe may write a length in. */
export const millimetresIn: ReadonlyMap<string, number> = new Map([
  ["mm", 1],
  ["cm", 10],
  ["m", 1000],
  ["in", 25.4],
  ["ft", 304.8],
  ["yd", 914.4],
]);

/** A number with at most `decimals` places, no trailing zeros, no exponent and never "-0". */
export const plainNumber = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals);
  const short = text.includes(".") ? text.replace(/0+$/, "").replace(/\.$/, "") : text;
  return short === "-0" ? "0" : short;
};

/** A length in mm as words: "31.5 cm", "315 mm", "12 3/8 in" (to 1/16 in; under 1/4 in as a decimal). */
export const lengthIn = (millimetres: number, units: Units): string => {
  if (units === "mm") return `${plainNumber(millimetres, 1)} mm`;
  if (units === "cm") return `${plainNumber(millimetres / 10, 2)} cm`;
  const inches = millimetres / 25.4;
  if (Math.abs(inches) < 0.25) return `${plainNumber(inches, 3)} in`;
  return `${inSixteenths(inches)} in`;
};

/** An angle in radians as words: "5.2 deg". */
export const angleInWords = (radians: number): string => `${plainNumber((radians * 180) / Math.PI, 1)} deg`;

/** An area in mm2 as words: "4512.3 cm2", and "699.4 in2" where the recipe shows inches. */
export const areaIn = (squareMillimetres: number, units: Units): string =>
  units === "in"
    ? `${plainNumber(squareMillimetres / (25.4 * 25.4), 1)} in2`
    : `${plainNumber(squareMillimetres / 100, 1)} cm2`;

/** A scalar in words, lengths and areas in these units. */
export const scalarInWords = ({ kind, value }: Scalar, units: Units): string => {
  switch (kind) {
    case "length":
      return lengthIn(value, units);
    case "angle":
      return angleInWords(value);
    case "area":
      return areaIn(value, units);
    case "weight":
      return `${plainNumber(value, 1)} g/m2`;
    case "number":
      return plainNumber(value, 4);
  }
};

/** Inches to the nearest sixteenth, as a tape shows them: "12 3/8". */
export const inSixteenths = (inches: number): string => {
  const sixteenths = Math.round(Math.abs(inches) * 16);
  const whole = Math.floor(sixteenths / 16);
  let numerator = sixteenths % 16;
  let denominator = 16;
  while (numerator > 0 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  const sign = inches < 0 && sixteenths > 0 ? "-" : "";
  if (numerator === 0) return `${sign}${whole}`;
  return `${sign}${whole === 0 ? "" : `${whole} `}${numerator}/${denominator}`;
};
