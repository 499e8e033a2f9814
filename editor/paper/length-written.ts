// A length as somebody writes it into a field: "21", "29.7", "8 1/2", "11 in". No language of recipes here, only one amount.
import { millimetresIn } from "../../kernel/units.ts";

/** The units that a piece can be traced in. */
export type PaperUnits = "cm" | "in";

/** The length in mm; a number alone is in the units given. Undefined where the text is no length. */
export const lengthWritten = (written: string, units: PaperUnits): number | undefined => {
  const found = /^(?:(\d+)\s+)?(\d+(?:[.,]\d+)?|[.,]\d+)(?:\/(\d+))?\s*(mm|cm|in)?$/.exec(written.trim());
  if (!found) return undefined;
  const [, whole, top = "", bottom, unit = units] = found;
  // "8 1/2" is a mixed number, "8 2" is none.
  if (whole !== undefined && bottom === undefined) return undefined;
  const part = Number(top.replace(",", ".")) / (bottom === undefined ? 1 : Number(bottom));
  const length = (Number(whole ?? 0) + part) * millimetresIn.get(unit)!;
  return Number.isFinite(length) ? length : undefined;
};
