// Values before and after: measures, design choices, what was worked out, and the measures of every size.
import { toDegrees } from "../geometry/trig.ts";
import type { Outcome } from "../kernel.ts";
import { valueInWords } from "../report/amounts.ts";
import type { Json } from "../report/json.ts";
import { toldValues } from "../report/told-values.ts";
import { sewnLength } from "../sewn.ts";
import { lengthIn } from "../units.ts";
import { isScalar, type Value } from "../value.ts";
import type { Garment } from "../working.ts";
import type { ChangedValue } from "./comparison.ts";

/** The values that differ, those of after first. */
export const changedValues = (before: Outcome, after: Outcome): ChangedValue[] => {
  const [was, is] = [valuesOf(before), valuesOf(after)];
  return [...new Set([...is.keys(), ...was.keys()])].flatMap((name): ChangedValue[] => {
    const [from, to] = [was.get(name), is.get(name)];
    if (from && to && !isOtherValue(from, to)) return [];
    return [
      {
        name,
        before: from ? dataOf(from.value) : null,
        after: to ? dataOf(to.value) : null,
        words: { before: wordsOf(from), after: wordsOf(to) },
      },
    ];
  });
};

interface ToldValue {
  readonly value: Value;
  readonly garment: Garment;
}

/** The values that can be told, and the measures of every size under "size NAME MEASURE". */
const valuesOf = (outcome: Outcome): ReadonlyMap<string, ToldValue> => {
  const own = [...toldValues(outcome)].map(([name, { value }]) => [name, value] as const);
  const sized = [...outcome.sizes.values()].flatMap(({ name, measures }) =>
    [...measures].map(([measure, value]) => [`size ${name} ${measure}`, value] as const),
  );
  return new Map(
    [...own, ...sized].flatMap(([name, value]) =>
      dataOf(value) === null ? [] : [[name, { value, garment: outcome.garment }] as const],
    ),
  );
};

const dataOf = (value: Value): Json => {
  if (isScalar(value)) return value.kind === "angle" ? toDegrees(value.value) : value.value;
  if (value.kind === "text") return value.text;
  if (value.kind === "truth") return value.holds;
  if (value.kind === "place") return { x: value.point.x, y: value.point.y };
  if (value.kind === "edge") return sewnLength(value.path, value.taken);
  return null;
};

const wordsOf = (told: ToldValue | undefined): string | null => {
  if (!told) return null;
  const { value, garment } = told;
  if (value.kind === "edge") return lengthIn(sewnLength(value.path, value.taken), garment.units);
  return valueInWords(value, garment.units) ?? null;
};

// What was typed differs where a digit does; what was worked out has the dust of reckoning on its last digits.
const sameNumber = 1e-6;

const isOtherValue = ({ value: was }: ToldValue, { value: is }: ToldValue): boolean => {
  if (was.kind !== is.kind) return true;
  const [from, to] = [dataOf(was), dataOf(is)];
  if (typeof from === "number" && typeof to === "number") return Math.abs(from - to) > sameNumber;
  if (was.kind === "place" && is.kind === "place")
    return Math.abs(was.point.x - is.point.x) + Math.abs(was.point.y - is.point.y) > sameNumber;
  return from !== to;
};
