// What `chalkline lay` is asked for, read and refused where it cannot be.
import { didYouMean } from "../../grammar/nearest.ts";
import type { Asked } from "../../kernel/cloth/lay/lay-of.ts";
import type { AtHand } from "../../kernel/cloth/lay/obstacle.ts";
import { type AskedRange, type Varied, variedOf } from "../../kernel/cloth/lay/varied.ts";
import type { Evaluated } from "../../kernel/evaluate.ts";
import { kindInWords, type Scalar } from "../../kernel/value.ts";
import type { Garment } from "../../kernel/working.ts";
import { readAmount } from "../files/amount.ts";
import type { Given } from "./worked.ts";

export interface LayOptions extends Given {
  readonly root?: string;
  readonly cloth: Asked["spread"];
  readonly width?: string;
  readonly selvedge: string;
  readonly tilt: string;
  /** Where it is not said, the usual one of what is asked for. */
  readonly effort?: Asked["effort"];
  readonly try: string;
  /** The param or measure whose largest value is wanted, and lengths of cloth at hand; or that cloth is wanted over. */
  readonly most?: string;
  readonly length: readonly string[];
  readonly over?: string;
  readonly from?: string;
  readonly to?: string;
  readonly by?: string;
  readonly form: "long" | "json";
  /** The folder that the drawings go to; none are drawn where it is not given. */
  readonly out?: string;
}

/** How pieces are to be laid, or a sentence about what cannot be. */
export const layAsked = (options: LayOptions): Asked | string => {
  const width = options.width === undefined ? undefined : lengthGiven(options.width);
  if (options.width !== undefined && !(width !== undefined && width > 0))
    return `--width takes a length, such as 150cm or 45in, and not ${options.width}.`;
  const selvedge = lengthGiven(options.selvedge);
  if (selvedge === undefined || selvedge < 0)
    return `--selvedge takes a length, such as 1cm or 0cm, and not ${options.selvedge}.`;
  const tilt = readAmount(options.tilt);
  if (tilt?.kind !== "angle" || tilt.value < 0 || tilt.value > mostTilt)
    return `--tilt takes an angle from 0deg to 10deg, and not ${options.tilt}.`;
  const seed = Number(options.try);
  if (!Number.isInteger(seed) || seed < 0) return `--try takes a whole number, and not ${options.try}.`;
  const misplaced = misplacedOption(options);
  if (misplaced !== undefined) return misplaced;
  const isVaried = options.most !== undefined || options.over !== undefined;
  const { cloth: spread, effort = isVaried ? "quick" : "buying" } = options;
  return { spread, selvedge, tilt: tilt.value, effort, seed, ...(width !== undefined && { width }) };
};

// Further off the grain a piece hangs askew, radians.
const mostTilt = Math.PI / 18;

const misplacedOption = ({ most, over, length, from, to, by, set }: LayOptions): string | undefined => {
  if (most !== undefined && over !== undefined) return "Give --most or --over, and not both.";
  if (most === undefined && length.length > 0)
    return "--length says how much cloth is at hand: give --most PARAM as well.";
  const range = Object.entries({ from, to, by }).find(([, given]) => given !== undefined);
  const name = most ?? over;
  if (range && name === undefined)
    return `--${range[0]} belongs to a range: give --most PARAM or --over PARAM as well.`;
  const same = set.find((each) => each.slice(0, each.indexOf("=")).trim() === name);
  return same === undefined ? undefined : `--set ${same} gives one value of ${name}, and many were asked for.`;
};

const lengthGiven = (text: string): number | undefined => {
  const value = readAmount(text);
  return value?.kind === "length" ? value.value : undefined;
};

/** What is to be varied and by which step, if it was said; or a sentence about what cannot be. */
export const variedAsked = (
  name: string,
  options: LayOptions,
  evaluated: Evaluated,
): { readonly varied: Varied; readonly step: number | undefined } | string => {
  const range: { from?: Scalar; to?: Scalar; by?: Scalar } = {};
  for (const end of ["from", "to", "by"] as const) {
    const written = options[end];
    if (written === undefined) continue;
    const value = readAmount(written);
    if (!value) return `--${end} takes a value of ${name}, such as 2cm, and not ${written}.`;
    range[end] = value;
  }
  const varied = variedOf(evaluated, name, range satisfies AskedRange);
  if (typeof varied === "string") return varied;
  const { by } = range;
  if (!by) return { varied, step: undefined };
  if (by.kind !== varied.of)
    return `--by ${options.by}: ${name} is ${kindInWords({ kind: varied.of })}, and this is ${kindInWords(by)}.`;
  if (by.value <= 0) return `--by takes a step over 0, and not ${options.by}.`;
  if ((varied.most - varied.least) / by.value > mostSteps)
    return `--by ${options.by}: that is more than ${mostSteps} steps; take a longer one.`;
  return { varied, step: by.value };
};

// A range of more steps than this was not meant, and halving it would end between two that nobody can tell apart.
const mostSteps = 100_000;

/** The cloth at hand, as `3m` for all cloths or `shell=3m` for one; or a sentence about what cannot be. */
export const atHandAsked = (given: readonly string[], { fabrics, cuts }: Garment): AtHand | string => {
  const used = [...fabrics.keys()].filter((name) => cuts.some(({ fabric }) => fabric === name));
  const atHand = new Map<string, number>();
  for (const written of given) {
    const at = written.indexOf("=");
    const [name, amount] = at < 0 ? [undefined, written] : [written.slice(0, at).trim(), written.slice(at + 1).trim()];
    const length = lengthGiven(amount);
    if (length === undefined || length <= 0)
      return `--length takes a length, such as 3m or shell=3m, and not ${written}.`;
    if (name !== undefined && !used.includes(name))
      return `--length ${written}: the recipe cuts nothing from a cloth called ${name}. ${didYouMean(name, used) ?? ""}`.trim();
    for (const each of name === undefined ? used : [name]) atHand.set(each, length);
  }
  return atHand;
};
