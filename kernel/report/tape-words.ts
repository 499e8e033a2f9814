// Lengths as a tape shows them: in eighths of an inch, or in mm and tenths of a cm.
import { inSixteenths, lengthIn, plainNumber } from "../units.ts";
import type { Units } from "../working.ts";

/** "12 3/8 in", "31.4 cm", "314 mm"; a length of no sign. */
export const onTape = (millimetres: number, units: Units): string =>
  units === "in" ? `${inSixteenths(millimetres / 25.4)} in` : lengthIn(millimetres, units);

/** How far a chalked line strays, to a tenth of a mm and upward: "1.7 mm"; whoever reads inches reads "0.07 in". */
export const strayInWords = (millimetres: number, units: Units): string =>
  units === "in"
    ? `${plainNumber(Math.ceil((millimetres / 25.4) * 100) / 100, 2)} in`
    : `${plainNumber(Math.ceil(millimetres * 10) / 10, 1)} mm`;
