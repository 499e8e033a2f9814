// Amounts of a comparison as somebody reads them who has been cutting all day: whole millimetres, and less only where the
// change itself is less.
import type { ChangedMark } from "../compare/comparison.ts";
import { lengthIn, plainNumber } from "../units.ts";
import type { Units } from "../working.ts";

/** "56.8 cm", "568.3 mm", "22 3/8 in". */
export const shortLength = (millimetres: number, units: Units): string =>
  units === "cm" ? `${plainNumber(millimetres / 10, 1)} cm` : lengthIn(millimetres, units);

/** "+4.4 cm", "-0.3 mm": under a millimetre in tenths of one. */
export const change = (millimetres: number, units: Units): string => {
  const size = Math.abs(millimetres);
  const words = units === "cm" && size < leastInCm ? `${plainNumber(size, 1)} mm` : shortLength(size, units);
  return `${millimetres < 0 ? "-" : "+"}${words}`;
};

/** How far something moved: "3.2 cm", "0.4 mm". */
export const far = (millimetres: number, units: Units): string => change(millimetres, units).slice(1);

// Half a mm less than the first tenth of a cm that one would write.
const leastInCm = 0.95;

/** "412 cm2", "63.9 in2", "0.5 cm2": whole numbers from ten on. */
export const shortArea = (squareMillimetres: number, units: Units): string => {
  const amount = squareMillimetres / (units === "in" ? 25.4 * 25.4 : 100);
  return `${plainNumber(amount, amount < 10 ? 1 : 0)} ${units === "in" ? "in2" : "cm2"}`;
};

/** "88.2 deg". */
export const degrees = (angle: number): string => `${plainNumber(angle, 1)} deg`;

/** Marks in words, those that changed alike in one: "allowance of hem, wrist: 2.5 cm to 4 cm". */
export const marksInWords = (marks: readonly ChangedMark[], units: Units): string[] => {
  const alike = new Map<string, ChangedMark>();
  for (const mark of marks) {
    const key = markInWords({ ...mark, on: "~" }, units);
    const other = alike.get(key);
    alike.set(key, other ? { ...other, on: `${other.on}, ${mark.on}` } : mark);
  }
  return [...alike.values()].map((mark) => markInWords(mark, units));
};

const markInWords = ({ kind, on, measures, before, after }: ChangedMark, units: Units): string => {
  const words = (value: number | string | null): string => {
    if (value === null) return "none";
    if (typeof value === "string") return value;
    return measures === "angle" ? degrees(value) : shortLength(value, units);
  };
  const name = `${names.get(kind) ?? kind}${on === "" ? "" : ` ${prepositions[kind]} ${on}`}`.replace(/ {2,}/g, " ");
  if (before === null && after === "there") return `new ${name}`;
  if (after === null && before === "there") return `${name} is gone`;
  if (before === null) return `new ${name}: ${words(after)}`;
  if (after === null) return `${name} is gone (was ${words(before)})`;
  return `${name}: ${words(before)} to ${words(after)}`;
};

const names: ReadonlyMap<ChangedMark["kind"], string> = new Map([["corners", "corners of the allowance"]]);

const prepositions: Readonly<Record<ChangedMark["kind"], string>> = {
  lies: "",
  part: "of",
  allowance: "of",
  corners: "of",
  notch: "on",
  dart: "",
  "taken up": "along",
  grain: "",
  label: "",
  drill: "at",
};
