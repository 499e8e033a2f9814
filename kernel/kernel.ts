// The way in: a vocabulary of steps and checks makes a kernel; a kernel makes a garment with findings out of a recipe's text.
import type { Diagnostic } from "../grammar/diagnostic.ts";
import { limits } from "../grammar/limits.ts";
import { type Vocabulary as Forms, type Parsed, parse } from "../grammar/parse.ts";
import type { Form } from "../grammar/phrase.ts";
import { Body } from "./body.ts";
import type { Check } from "./check.ts";
import { type Evaluated, parsedIn, type Run, Working } from "./evaluate.ts";
import { exampleLine } from "./example-line.ts";
import { withoutHidden } from "./hidden-names.ts";
import { findingsFrom, inspect } from "./inspect.ts";
import { noSources, type Source, type Sources } from "./sources.ts";
import type { Step } from "./step.ts";
import type { Scalar } from "./value.ts";
import type { Judged } from "./working.ts";

export interface Vocabulary {
  readonly steps: readonly Step[];
  readonly checks: readonly Check[];
}

/** What a recipe is worked with, besides its own text. */
export interface Circumstances {
  readonly sources?: Sources;
  /** Measures from outside, by name. */
  readonly measures?: ReadonlyMap<string, Scalar>;
  /** Params of the recipe that is opened. */
  readonly params?: ReadonlyMap<string, Scalar>;
  /** A size of its size table. */
  readonly size?: string;
}

/** Everything that is known of a garment in the end. */
export interface Outcome extends Evaluated {
  /** Every check's word on every thing it looked at, the recipe's own checks first. */
  readonly judgements: readonly Judged[];
  /** What has to be said, in the order of the text; at most as many as the limits allow. */
  readonly findings: readonly Diagnostic[];
  /** Findings beyond the limit. */
  readonly untold: number;
}

export interface Kernel {
  readonly vocabulary: Vocabulary;
  readonly forms: Forms;
  work(source: Source, circumstances?: Circumstances): Outcome;
  parse(source: Source): ReturnType<typeof parse>;
}

/** A kernel that knows these steps and checks. The lists are the registry: a plugin is one more entry. */
export const kernel = (vocabulary: Vocabulary): Kernel => {
  const steps = new Map(vocabulary.steps.map((step) => [step.name, step]));
  const forms: Forms = new Map(vocabulary.steps.map((step) => [step.name, formsOf(step)]));
  // A recipe is read again only when its text has changed.
  const parsed = new Map<string, Parsed>();
  const checkNames = vocabulary.checks.map(({ name }) => name);

  const once = (
    source: Source,
    { sources = noSources, measures = new Map(), params = new Map() }: Circumstances,
  ): Evaluated => {
    const run: Run = {
      steps,
      forms,
      checkNames,
      sources,
      body: new Body(measures),
      parsed,
      spent: { steps: 0, files: 0, pieces: 0, spans: 0, recorded: 0, depth: 0 },
    };
    const working = new Working(parsedIn(run, source.file, source.text), run, {
      isRoot: true,
      given: params,
      chain: [source.file],
    });
    return working.all();
  };

  return {
    vocabulary,
    forms,
    parse: ({ text, file }) => parse(text, file, forms),
    work(source, circumstances = {}) {
      const first = once(source, circumstances);
      const size = circumstances.size === undefined ? undefined : first.sizes.get(circumstances.size);
      // A size is a body: once its measures are known, the recipe is worked again with them. A measure given by hand wins.
      const evaluated = size
        ? once(source, { ...circumstances, measures: new Map([...size.measures, ...(circumstances.measures ?? [])]) })
        : first;
      return judged(evaluated, vocabulary.checks);
    },
  };
};

/** A step's forms, each with the line of its example that shows it. */
const formsOf = ({ phrases, example }: Step): Form[] =>
  phrases.map((form) => {
    const line = exampleLine(example, form);
    return line === undefined ? form : { ...form, example: line };
  });

const judged = (evaluated: Evaluated, checks: readonly Check[]): Outcome => {
  const judgements = [
    ...evaluated.judged,
    ...inspect(evaluated.garment, checks),
    ...judgedInUses(evaluated, checks),
  ].map((each) => ({ ...each, on: withoutHidden(each.on), message: withoutHidden(each.message) }));
  const all = [...evaluated.diagnostics, ...findingsFrom(judgements)];
  const distinct = [...new Map(all.map((finding) => [keyOf(finding), finding])).values()].sort(inTextOrder(evaluated));
  return {
    ...evaluated,
    judgements,
    findings: distinct.slice(0, limits.findings),
    untold: evaluated.untold + Math.max(0, distinct.length - limits.findings),
  };
};

/** The checks of used recipes, theirs and the built-in ones, on what they make by themselves. */
const judgedInUses = (evaluated: Evaluated, checks: readonly Check[]): Judged[] =>
  [...evaluated.uses].flatMap(([name, used]) =>
    [...used.judged, ...inspect(used.garment, checks), ...judgedInUses(used, checks)].map((each) => ({
      ...each,
      on: `${name}.${each.on}`,
    })),
  );

const keyOf = ({ code, message, where }: Diagnostic): string =>
  `${where.file}:${where.from}:${where.to}:${code}:${message}`;

/** The opened recipe first, then used ones by name; within a file from top to bottom. */
const inTextOrder =
  ({ tree }: Evaluated) =>
  (a: Diagnostic, b: Diagnostic): number => {
    if (a.where.file !== b.where.file) {
      if (a.where.file === tree.file) return -1;
      if (b.where.file === tree.file) return 1;
      return a.where.file < b.where.file ? -1 : 1;
    }
    return a.where.from - b.where.from || a.where.to - b.where.to;
  };
