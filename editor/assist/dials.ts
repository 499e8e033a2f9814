// The numbers of a recipe that can be turned like dials: every param within its range, and every number in the text.
import { lineOf, lineStarts } from "../../grammar/source.ts";
import type { Entry, Expression, Line, NumberValue, Stretch } from "../../grammar/tree.ts";
import { valuesWithin } from "../../grammar/within.ts";
import type { NamedValue } from "../../kernel/evaluate.ts";
import { inSixteenths, millimetresIn, plainNumber } from "../../kernel/units.ts";
import type { WorkedText } from "./worked-text.ts";

/** A number as it stands in the text, and how far it may be turned. */
export interface Dial extends Stretch {
  /** What it is: "flare", or the words around it: "extend-hem by". */
  readonly label: string;
  /** What the recipe says of it. */
  readonly note?: string;
  readonly isParam: boolean;
  /** The number and its unit as written; `least`, `most` and `stride` are in that unit. */
  readonly value: number;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly stride: number;
  /** From 1. */
  readonly line: number;
  /** The piece whose block it stands in. */
  readonly piece?: string;
}

/** All dials of the opened recipe, in the order of its text. */
export const dials = ({ outcome }: WorkedText): Dial[] => {
  const { text } = outcome.tree;
  const found: Dial[] = [];
  const starts = lineStarts(text);
  const visit = (line: Line, piece: string | undefined): void => {
    const within = line.verb.text === "piece" ? (line.names[0]?.text ?? piece) : piece;
    const param = line.verb.text === "param" ? outcome.values.get(line.names[0]?.text ?? "") : undefined;
    const numbers = numbersOf(line);
    numbers.forEach(({ number, word }, index) => {
      const isParam = param !== undefined && index === 0;
      // The range of a param is written, and no dial of its own.
      if (param !== undefined && !isParam) return;
      if (line.verb.text === "chalkline") return;
      const unit = number.unit?.text ?? (text[number.to - 1] === "%" ? "%" : "");
      const range = isParam && param.range ? rangeIn(unit, param.range) : usualRange(number.value, unit);
      found.push({
        from: number.from,
        to: number.to,
        label: isParam ? line.names[0]!.text : word,
        ...(isParam && param.note !== undefined && { note: param.note }),
        isParam,
        value: tidy(number.value * (unit === "%" ? 100 : 1)),
        unit,
        ...range,
        line: lineOf(starts, number.from),
        ...(within !== undefined && { piece: within }),
      });
    });
    for (const each of line.block?.lines ?? []) visit(each, within);
    if (line.otherwise) visit(line.otherwise, within);
  };
  for (const line of outcome.tree.lines) visit(line, undefined);
  return found;
};

/** How a dial's number is written at another value: its unit, and the space before it, stay as they are. */
export const dialText = (
  text: string,
  { from, to, unit }: Pick<Dial, "from" | "to" | "unit">,
  value: number,
): string => {
  const written = text.slice(from, to);
  const number = written.slice(0, written.length - unit.length).trimEnd();
  return `${number.includes("/") ? inFractions(value) : plainNumber(value, 3)}${written.slice(number.length)}`;
};

/** "3 5/8": a number that was written with a fraction keeps one, where sixteenths say it exactly. */
const inFractions = (value: number): string =>
  Math.abs(Math.round(value * 16) / 16 - value) > 1e-9 ? plainNumber(value, 3) : inSixteenths(value);

interface NumberInLine {
  readonly number: NumberValue;
  readonly word: string;
}

/** The numbers of one line, without those of its block, each with the words it stands behind. */
const numbersOf = (line: Line): NumberInLine[] => {
  const verb = [line.verb.text, ...line.names.map(({ text }) => text)].join(" ");
  const behind = (word: string) => (number: NumberValue) => ({ number, word });
  return [
    ...line.operands.flatMap(({ value, suffix }) => [
      ...numbersIn(value).map(behind(verb)),
      ...(suffix ? numbersIn(suffix.value).map(behind(`${verb} ${suffix.word.text}`)) : []),
    ]),
    ...(line.count ? [{ number: line.count, word: verb }] : []),
    ...line.clauses.flatMap(({ word, operands }) =>
      operands.flatMap(({ value, suffix }) => [
        ...numbersIn(value).map(behind(`${verb} ${word.text}`)),
        ...(suffix ? numbersIn(suffix.value).map(behind(`${verb} ${suffix.word.text}`)) : []),
      ]),
    ),
    ...(line.block?.entries ?? []).flatMap(({ name, value }: Entry) => numbersIn(value).map(behind(name.text))),
  ].sort((a, b) => a.number.from - b.number.from);
};

/** Every number that stands in an expression. */
export const numbersIn = (value: Expression): NumberValue[] =>
  valuesWithin(value).filter((each) => each.kind === "number");

/** A param's range in the unit of its number; undefined where they are of different kinds. */
const rangeIn = (
  unit: string,
  { least, most }: NonNullable<NamedValue["range"]>,
): Pick<Dial, "least" | "most" | "stride"> => {
  const one = sizeOf(unit);
  return { least: tidy(least.value / one), most: tidy(most.value / one), stride: strideOf(unit) };
};

/** From nothing to twice the number, or a little way where it is small: enough to feel what it does. */
const usualRange = (value: number, unit: string): Pick<Dial, "least" | "most" | "stride"> => {
  const stride = strideOf(unit);
  if (unit === "%") return { least: 0, most: 100, stride };
  const most = tidy(Math.max(value * 2, stride * 20));
  return { least: 0, most, stride };
};

/** One of a unit in what the kernel counts in: mm, radians, mm2, g/m2; 1 for a plain number. */
const sizeOf = (unit: string): number => {
  if (unit === "deg") return Math.PI / 180;
  if (unit === "%") return 0.01;
  return millimetresIn.get(unit) ?? 1;
};

// As finely as a hand marks on paper: 1 mm, 1/8 in, half a degree, one hundredth.
const strides: ReadonlyMap<string, number> = new Map([
  ["mm", 1],
  ["cm", 0.1],
  ["m", 0.01],
  ["in", 0.125],
  ["ft", 0.125],
  ["yd", 0.125],
  ["deg", 0.5],
  ["%", 1],
  ["gsm", 10],
]);

const strideOf = (unit: string): number => strides.get(unit) ?? 1;

/** Without the dust that dividing by a unit leaves. */
const tidy = (value: number): number => Number(value.toFixed(6));
