// The param or measure that cloth is looked at over: its range, where that comes from, and the steps it goes by.
import { didYouMean, listWithOr } from "../../../grammar/nearest.ts";
import type { Evaluated, NamedValue } from "../../evaluate.ts";
import { measuresAsked } from "../../measures-asked.ts";
import { scalarInWords } from "../../units.ts";
import { isScalar, kindInWords, type Scalar, type ScalarKind } from "../../value.ts";
import type { Units } from "../../working.ts";

export interface Varied {
  readonly name: string;
  readonly kind: "param" | "measure";
  readonly of: ScalarKind;
  /** What the recipe says of it; empty where it says nothing. */
  readonly note: string;
  /** Its value in the recipe as it is worked, and the range that is looked at: mm, radians or a plain number. */
  readonly standard: number;
  readonly least: number;
  readonly most: number;
  /** Whether the recipe states the range, it was asked for, or it was chosen here because neither is so. */
  readonly range: "stated" | "asked" | "chosen";
  /** It counts something, and stands at whole numbers only. */
  readonly isWhole: boolean;
}

/** What of the range was asked for. */
export interface AskedRange {
  readonly from?: Scalar;
  readonly to?: Scalar;
}

/** The value of a name with the range to look at; or a sentence about why there is none. */
export const variedOf = (evaluated: Evaluated, name: string, asked: AskedRange): Varied | string => {
  const found = choicesOf(evaluated).get(name);
  if (!found) return unknown(name, evaluated);
  const { value, range: stated, note = "" } = found;
  if (found.kind === "let" || !isScalar(value))
    return `${name} is ${kindInWords(value)}, and has no range to look over.`;
  const { units } = evaluated.garment;
  for (const given of [asked.from, asked.to]) {
    if (given && given.kind !== value.kind && !given.bareZero)
      return `${name} is ${kindInWords(value)}, and ${scalarInWords(given, units)} is ${kindInWords(given)}.`;
  }
  const whole = stated ? { least: stated.least.value, most: stated.most.value } : chosenRange(value);
  const [least, most] = [asked.from?.value ?? whole.least, asked.to?.value ?? whole.most];
  const shown = (number: number): string => scalarInWords({ kind: value.kind, value: number }, units);
  if (stated && (least < whole.least - rounding || most > whole.most + rounding))
    return `The recipe has ${name} from ${shown(whole.least)} to ${shown(whole.most)}; look no farther than that.`;
  if (least > most) return `${name} cannot go from ${shown(least)} to ${shown(most)}: the first is the larger one.`;
  const isAsked = asked.from !== undefined || asked.to !== undefined;
  return {
    name,
    kind: found.kind,
    of: value.kind,
    note,
    standard: value.value,
    least,
    most,
    range: isAsked ? "asked" : stated ? "stated" : "chosen",
    isWhole: value.kind === "number" && [value.value, least, most].every(Number.isInteger),
  };
};

// What is asked for in one unit and stated in another may differ in the last digit.
const rounding = 1e-9;

const choicesOf = (evaluated: Evaluated): Map<string, NamedValue> => {
  const params = [...evaluated.values].filter(([, { kind }]) => kind === "param");
  return new Map([...measuresAsked(evaluated), ...params]);
};

const unknown = (name: string, evaluated: Evaluated): string => {
  const let_ = evaluated.values.get(name);
  if (let_) return `${name} is worked out by the recipe; only a param or a measure can be varied.`;
  const user = [...evaluated.uses].find(([, { values }]) => values.get(name)?.kind === "param");
  if (user) return `${name} is a param of ${user[0]}, and only those of the recipe itself can be varied.`;
  const known = [...choicesOf(evaluated).keys()];
  const params = known.filter((each) => evaluated.values.get(each)?.kind === "param");
  const hint =
    didYouMean(name, known) ??
    (params.length > 0 ? `It has the ${params.length === 1 ? "param" : "params"} ${listWithOr(params)}.` : "");
  return `The recipe has no param or measure called ${name}. ${hint}`.trim();
};

// How far to look where nobody has said: four times what the recipe has, and no less than this.
const farther = 4;
const atLeast: Readonly<Record<ScalarKind, number>> = {
  length: 1000,
  angle: Math.PI / 2,
  number: 10,
  area: 1_000_000,
  weight: 1000,
};

const chosenRange = ({ kind, value }: Scalar): { readonly least: number; readonly most: number } => {
  const far = Math.max(atLeast[kind], farther * Math.abs(value));
  return value < 0 ? { least: -far, most: 0 } : { least: 0, most: far };
};

/** A value of it in words, lengths in these units. */
export const variedInWords = ({ of }: Varied, value: number, units: Units): string =>
  scalarInWords({ kind: of, value }, units);

/** The step that somebody sets it by: 1 mm or 1/8 in, half a degree, a hundredth of a plain number. */
export const fineStep = ({ of, isWhole }: Varied, units: Units): number => {
  if (of === "length") return units === "in" ? 25.4 / 8 : 1;
  if (of === "angle") return Math.PI / 360;
  if (of === "number") return isWhole ? 1 : 0.01;
  return of === "area" ? 100 : 1;
};

/** The least round step that goes over the range in no more than so many. */
export const roundStep = (varied: Varied, units: Units, mostSteps: number): number => {
  const { least, most, of } = varied;
  const unit = fineStep(varied, units);
  const ladder = of === "angle" ? angleLadder : of === "length" && units === "in" ? inchLadder : decimalLadder;
  const wanted = (most - least) / mostSteps / unit;
  for (let scale = 1; ; scale *= ladder.at(-1)!) {
    const step = ladder.slice(0, -1).find((each) => each * scale >= wanted * (1 - rounding));
    if (step !== undefined) return step * scale * unit;
  }
};

// Of the fine step so many at a time; the last number says by how much all are multiplied where that is not enough. Eighths of an
// inch make halves, inches and feet; half degrees make quarter turns.
const decimalLadder = [1, 2, 5, 10];
const inchLadder = [1, 2, 4, 8, 16, 24, 48, 96];
const angleLadder = [1, 2, 4, 10, 20, 30, 60, 90, 180];
