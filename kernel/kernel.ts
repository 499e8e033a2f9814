// The way in: a vocabulary of steps and checks makes a kernel; a kernel makes a garment with findings out of a recipe's text.
import type { Diagnostic } from "../grammar/diagnostic.ts";
import { limits } from "../grammar/limits.ts";
import { type Forms, type Parsed, parse } from "../grammar/parse.ts";
import type { Form } from "../grammar/phrase.ts";
import { Body } from "./body.ts";
import type { Check } from "./check.ts";
import { type Evaluated, parsedIn, type SharedRun, Working } from "./evaluate.ts";
import { exampleLine } from "./example-line.ts";
import type { Here } from "./here.ts";
import { withoutHidden } from "./hidden-names.ts";
import { findingsFrom, inspect } from "./inspect.ts";
import { noSources, type Source, type Sources } from "./sources.ts";
import { statementWork } from "./statements/statement-work.ts";
import type { Step } from "./step.ts";
import type { UsesBefore } from "./used-before.ts";
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
  /** Works a recipe and judges what came of it. */
  work(source: Source, circumstances?: Circumstances): Outcome;
  /** The same without a word of the checks, for whoever asks only where things lie. */
  draft(source: Source, circumstances?: Circumstances): Evaluated;
  /**
   * Works a recipe no further than an offset of its text, without judging it: down to the first line that begins there or
   * later, or to the end of the block that the offset lies in. A repeat is left in its first round. `here` is what a line
   * written there would see: the piece in hand, and every name with what it stands for.
   */
  workUpTo(source: Source, offset: number, circumstances?: Circumstances): Evaluated & { readonly here: Here };
  parse(source: Source): ReturnType<typeof parse>;
}

/** A kernel that knows these steps and checks. The lists are the registry: a plugin is one more entry. */
export const kernel = (vocabulary: Vocabulary): Kernel => {
  const steps = new Map(vocabulary.steps.map((step) => [step.name, step]));
  const forms: Forms = new Map(vocabulary.steps.map((step) => [step.name, formsOf(step)]));
  // A recipe is read again only when its text has changed.
  const parsed = new Map<string, Parsed>();
  const usesBefore: UsesBefore = [];
  const judgedBefore: JudgedBefore = new WeakMap();
  const checkNames = vocabulary.checks.map(({ name }) => name);

  const working = (
    source: Source,
    { sources = noSources, measures = new Map(), params = new Map() }: Circumstances,
    until?: number,
  ): Working => {
    const run: SharedRun = {
      statements: statementWork,
      steps,
      forms,
      checkNames,
      sources,
      body: new Body(measures),
      parsed,
      usesBefore,
      asked: [],
      spent: { steps: 0, files: 0, pieces: 0, spans: 0, mostSpans: 0, recorded: 0, effort: 0, depth: 0 },
    };
    const place = { isRoot: true, given: params, chain: [source.file] };
    return new Working(parsedIn(run, source.file, source.text), run, place, until);
  };

  // A size is a body: once its measures are known, the recipe is worked again with them. A measure given by hand wins.
  const inSize = ({ sizes }: Evaluated, circumstances: Circumstances): Circumstances | undefined => {
    const size = circumstances.size === undefined ? undefined : sizes.get(circumstances.size);
    return size && { ...circumstances, measures: new Map([...size.measures, ...(circumstances.measures ?? [])]) };
  };

  const draft = (source: Source, circumstances: Circumstances = {}): Evaluated => {
    const first = working(source, circumstances).all();
    const sized = inSize(first, circumstances);
    return sized ? working(source, sized).all() : first;
  };

  return {
    vocabulary,
    forms,
    parse: ({ text, file }) => parse(text, file, forms),
    work: (source, circumstances) => judged(draft(source, circumstances), vocabulary.checks, judgedBefore),
    draft,
    workUpTo(source, offset, circumstances = {}) {
      const isSized = circumstances.size !== undefined;
      const sized = isSized ? inSize(working(source, circumstances).all(), circumstances) : undefined;
      return working(source, sized ?? circumstances, offset).upToThere();
    },
  };
};

/** A step's forms, each with the line of its example that shows it. */
const formsOf = ({ phrases, example }: Step): Form[] =>
  phrases.map((form) => {
    const line = exampleLine(example, form);
    return line === undefined ? form : { ...form, example: line };
  });

/** What was judged of used recipes, which come out anew only when something in them is new. */
type JudgedBefore = WeakMap<Evaluated, readonly Judged[]>;

const judged = (evaluated: Evaluated, checks: readonly Check[], before: JudgedBefore): Outcome => {
  const judgements = [
    ...evaluated.judged,
    ...inspect(evaluated.garment, checks),
    ...judgedInUses(evaluated, checks, before),
  ].map((each) => ({ ...each, on: withoutHidden(each.on), message: withoutHidden(each.message) }));
  const all = [...evaluated.diagnostics, ...findingsFrom(judgements)];
  const distinct = toldOnce(all).sort(inTextOrder(evaluated));
  return {
    ...evaluated,
    judgements,
    findings: distinct.slice(0, limits.findings),
    untold: evaluated.untold + Math.max(0, distinct.length - limits.findings),
  };
};

/** Each finding once, with how often it came up. */
const toldOnce = (all: readonly Diagnostic[]): Diagnostic[] => {
  const times = new Map<string, number>();
  for (const finding of all) times.set(keyOf(finding), (times.get(keyOf(finding)) ?? 0) + 1);
  return [...new Map(all.map((finding) => [keyOf(finding), finding]))].map(([key, finding]) => {
    const often = times.get(key)!;
    return often === 1 ? finding : { ...finding, times: often };
  });
};

/** The checks of used recipes, theirs and the built-in ones, on what they make by themselves. */
const judgedInUses = (evaluated: Evaluated, checks: readonly Check[], before: JudgedBefore): Judged[] =>
  [...evaluated.uses].flatMap(([name, used]) => {
    const known = before.get(used) ?? [
      ...used.judged,
      ...inspect(used.garment, checks),
      ...judgedInUses(used, checks, before),
    ];
    before.set(used, known);
    return known.map((each) => ({ ...each, on: `${name}.${each.on}` }));
  });

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
