// What a lay comes to, in a sentence.
import { lengthIn, plainNumber } from "../../units.ts";
import type { Units } from "../../working.ts";
import type { LaidCloth } from "./lay-of.ts";

/** "Buy 2 yd (72 in): 69 in of cloth 58 in wide, opened flat, 75.2 % of it used." */
export const clothInWords = (cloth: LaidCloth, units: Units): string => {
  const { length, width, spread, efficiency, lengthToBuy } = cloth;
  if (length === 0) return `Nothing is laid on cloth ${lengthIn(width, units)} wide.`;
  const used = `${plainNumber(100 * efficiency, 1)} % of it used`;
  return `Buy ${boughtInWords(lengthToBuy, units)}: the pieces take ${lengthIn(length, units)} of cloth ${lengthIn(width, units)} wide, ${spreadWords[spread]}, ${used}.`;
};

/** A length as a shop is asked for it: "1.9 m", "2 1/8 yd". */
export const boughtInWords = (length: number, units: Units): string => {
  if (units !== "in") return `${plainNumber(length / 1000, 2)} m`;
  const eighths = Math.round(length / 114.3);
  const [whole, rest] = [Math.floor(eighths / 8), eighths % 8];
  const fraction = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"][rest]!;
  return `${[...(whole > 0 || rest === 0 ? [whole] : []), ...(rest > 0 ? [fraction] : [])].join(" ")} yd`;
};

const spreadWords = { flat: "opened flat", folded: "folded lengthwise", tubular: "knitted as a tube" } as const;
