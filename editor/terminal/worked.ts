// Works an opened recipe with what the command line gives: --set, --body, --person and --size.
import { didYouMean } from "../../grammar/nearest.ts";
import type { Evaluated } from "../../kernel/evaluate.ts";
import type { Circumstances, Outcome } from "../../kernel/kernel.ts";
import { measuresAsked } from "../../kernel/measures-asked.ts";
import { isScalar, kindInWords, type Scalar, sharedKind } from "../../kernel/value.ts";
import { readAmount } from "../files/amount.ts";
import { bodyIn } from "../files/body-table.ts";
import { readText } from "../files/read-text.ts";
import type { OpenedRecipe } from "../files/recipe-files.ts";
import { chalk } from "./known.ts";

/** What may be given to a recipe, as the options stand. */
export interface Given {
  readonly set: readonly string[];
  readonly body?: string;
  readonly person?: string;
  readonly size?: string;
}

/** A worked recipe, with remarks about what was given; or why it was not worked. */
export type Worked =
  | { readonly outcome: Outcome; readonly remarks: readonly string[]; readonly circumstances: Circumstances }
  | { readonly problem: string };

/** Works the recipe; what was given has to be asked for by the recipe, and be of its kind. */
export const worked = ({ source, sources }: OpenedRecipe, given: Given): Worked => {
  const settings = settingsOf(given);
  if (typeof settings === "string") return { problem: settings };
  const sized = { sources, ...(given.size !== undefined && { size: given.size }) };
  const plain = chalk.work(source, sized);
  const noSize = unknownSize(given.size, plain);
  if (noSize !== undefined) return { problem: noSize };
  if (settings.length === 0) return { outcome: plain, remarks: [], circumstances: sized };

  const asked = askedFor(plain);
  const checked = settings.map((setting) => fitted(setting, asked, settings, plain));
  const problem = checked.find((each) => "problem" in each);
  if (problem) return problem;
  const [params, measures] = [new Map<string, Scalar>(), new Map<string, Scalar>()];
  for (const each of checked) {
    if ("value" in each) (each.kind === "param" ? params : measures).set(each.name, each.value);
  }
  const remarks = checked.flatMap((each) => ("remark" in each ? [each.remark] : []));
  const circumstances = { ...sized, params, measures };
  return { outcome: chalk.work(source, circumstances), remarks, circumstances };
};

interface Setting {
  readonly name: string;
  readonly value: Scalar;
  /** As the user wrote it, and where. */
  readonly written: string;
  readonly from: "--set" | "--body";
}

/** All that was given, --set behind --body so that it wins; or what is the matter. */
const settingsOf = ({ set, body, person }: Given): Setting[] | string => {
  const settings: Setting[] = [];
  if (body === undefined && person !== undefined)
    return "--person picks a body out of a file: say --body FILE as well.";
  if (body !== undefined) {
    const read = readText(body, body);
    if ("problem" in read) return read.problem.message;
    const measures = bodyIn(read.text, body, person);
    if (!isMeasures(measures)) return measures.problem;
    for (const [name, value] of measures) settings.push({ name, value, written: name, from: "--body" });
  }
  for (const written of set) {
    const at = written.indexOf("=");
    const [name, amount] = [written.slice(0, at).trim(), written.slice(at + 1).trim()];
    if (at < 1) return `--set takes NAME=VALUE, such as --set flare=12cm, and this is ${written}.`;
    const value = readAmount(amount);
    if (/\d,\d/.test(amount))
      return `--set ${written}: decimals have a point here. Write --set ${name}=${amount.replace(",", ".")}.`;
    if (!value) return `--set ${written}: "${amount}" is not a number with a unit such as 12cm.`;
    settings.push({ name, value, written, from: "--set" });
  }
  return settings;
};

const isMeasures = (read: ReturnType<typeof bodyIn>): read is ReadonlyMap<string, Scalar> => read instanceof Map;

/** What a recipe asks for. */
export interface Asked {
  readonly kind: "measure" | "param";
  readonly like: Scalar;
}

/** Params of the opened recipe, and the measures of it and of all that it uses. */
export const askedFor = (evaluated: Evaluated): Map<string, Asked> => {
  const params = [...evaluated.values].filter(([, { kind }]) => kind === "param");
  return new Map(
    [...measuresAsked(evaluated), ...params].flatMap(([name, { kind, value }]) =>
      isScalar(value) && kind !== "let" ? [[name, { kind, like: value }] as const] : [],
    ),
  );
};

type Fitted =
  | { readonly name: string; readonly kind: Asked["kind"]; readonly value: Scalar }
  | { readonly problem: string }
  | { readonly remark: string };

const fitted = (
  { name, value, written, from }: Setting,
  asked: ReadonlyMap<string, Asked>,
  all: readonly Setting[],
  plain: Evaluated,
): Fitted => {
  const wanted = asked.get(name);
  if (!wanted) {
    const open = [...asked.keys()].filter((each) => !all.some((other) => other.name === each));
    const hint = didYouMean(name, from === "--set" ? asked.keys() : open);
    const used = from === "--set" ? paramOfUsed(name, plain) : undefined;
    const told = used ?? (hint === undefined ? "" : ` ${hint}`);
    // A body has more measures than one garment needs; a single one set by hand was meant, unless a line that failed asks for it.
    if (from === "--body") return { remark: `The recipe asks for no measure called ${name}.${told}` };
    const problem = `--set ${written}: the recipe has no param or measure called ${name}.${told}`;
    return plain.incomplete ? { remark: problem } : { problem };
  }
  if (from === "--body" && wanted.kind === "param") {
    return { problem: `${name} is a design choice of the recipe and no body measure; give it with --set.` };
  }
  if (sharedKind(value, wanted.like) === undefined) {
    const unit =
      wanted.like.kind === "length" && value.kind === "number" ? ` Write --set ${written}cm, if cm are meant.` : "";
    return {
      problem: `${from} ${written}: ${name} is ${kindInWords(wanted.like)}, and this is ${kindInWords(value)}.${from === "--set" ? unit : ""}`,
    };
  }
  return { name, kind: wanted.kind, value };
};

/** A param of a used recipe is given where that recipe is used. */
const paramOfUsed = (name: string, { uses }: Evaluated): string | undefined => {
  const user = [...uses].find(([, { values }]) => values.get(name)?.kind === "param");
  return user && ` It is a param of ${user[0]}: give it in the line that uses it, as ${user[0]} { ${name} = … }.`;
};

const unknownSize = (size: string | undefined, { sizes, incomplete }: Outcome): string | undefined => {
  if (size === undefined || sizes.has(size) || (incomplete && sizes.size === 0)) return undefined;
  if (sizes.size === 0) return `--size ${size}: the recipe has no size table.`;
  return `--size ${size}: the recipe has no such size. ${didYouMean(size, sizes.keys()) ?? `It has ${[...sizes.keys()].join(", ")}.`}`;
};
