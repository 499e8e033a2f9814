// Recipes that were used before, as they came out: while a recipe is being written, those that it uses seldom change. One is
// taken as it is only if working it again would come to the same, to the last digit and the last finding.
import type { Where } from "../grammar/diagnostic.ts";
import { limits } from "../grammar/limits.ts";
import type { DeclaredMeasure } from "./body.ts";
import type { Evaluated, SharedRun, Spent, Working } from "./evaluate.ts";
import type { Source, Unreadable } from "./sources.ts";
import type { Scalar } from "./value.ts";

/** What a used recipe asked of the world around it, and what it left there. */
export type Asked =
  | { readonly kind: "recipe"; readonly path: string; readonly from: string; readonly found: Source | Unreadable }
  | {
      readonly kind: "measure";
      readonly name: string;
      readonly given: Scalar | undefined;
      readonly root: Scalar | undefined;
      readonly used: DeclaredMeasure | undefined;
      /** What it is among the measures of used recipes from then on. */
      readonly left: DeclaredMeasure | undefined;
    }
  /** It listed all measures that there are, which nobody can foresee. */
  | { readonly kind: "all-measures" };

/** What one use takes of all that the limits count. */
type Took = Omit<Spent, "depth">;

/** Where a recipe is used: its text, the params it is given, and the files that are being worked around it. */
export interface Use {
  readonly source: Source;
  readonly given: ReadonlyMap<string, Scalar>;
  readonly chain: readonly string[];
}

interface UsedBefore extends Use {
  readonly asked: readonly Asked[];
  readonly took: Took;
  readonly working: Working;
  readonly evaluated: Evaluated;
}

/** The uses that a kernel remembers, the latest first. */
export type UsesBefore = UsedBefore[];

/** A used recipe as it comes out, worked by `work` unless it was worked before. */
export const usedAgain = (
  use: Use,
  run: SharedRun,
  work: () => Pick<UsedBefore, "working" | "evaluated">,
): Pick<UsedBefore, "working" | "evaluated"> => {
  const { usesBefore, asked, spent } = run;
  const index = usesBefore.findIndex(
    (before) => isSame(before, use) && isWithinLimits(before, run) && repeats(before, run),
  );
  const known = index < 0 ? undefined : usesBefore[index]!;
  if (known) {
    usesBefore.splice(index, 1);
    usesBefore.unshift(known);
    for (const each of known.asked) asked.push(each);
    spend(spent, known.took);
    return known;
  }
  const [before, from] = [{ ...spent }, asked.length];
  spent.mostSpans = spent.spans;
  const { working, evaluated } = work();
  const took = difference(spent, before);
  spent.mostSpans = Math.max(spent.mostSpans, before.mostSpans);
  if (working.endedBy) return { working, evaluated };
  usesBefore.unshift({ ...use, asked: asked.slice(from), took, working, evaluated });
  if (usesBefore.length > mostRemembered) usesBefore.length = mostRemembered;
  return { working, evaluated };
};

// A garment uses a handful of recipes; twice that many come of working it in a size, which is done once without and once with it.
const mostRemembered = 32;

const isSame = (before: Use, { source, given, chain }: Use): boolean =>
  before.source.file === source.file &&
  before.source.text === source.text &&
  before.chain.length === chain.length &&
  before.chain.every((file, index) => file === chain[index]) &&
  before.given.size === given.size &&
  [...before.given].every(([name, value]) => sameScalar(value, given.get(name)));

/** No limit would be reached on the way. */
const isWithinLimits = ({ took }: UsedBefore, { spent }: SharedRun): boolean =>
  spent.steps + took.steps <= limits.steps &&
  spent.files + took.files <= limits.usedFiles &&
  spent.pieces + took.pieces <= limits.pieces &&
  spent.spans + took.mostSpans <= limits.curveSpans &&
  spent.recorded + took.recorded <= limits.recorded &&
  spent.effort + took.effort <= limits.effort;

/** All that it asked for is now what it was then; what it left in the body is then left there again. */
const repeats = ({ asked }: UsedBefore, { body, sources }: SharedRun): boolean => {
  const left = new Map<string, DeclaredMeasure>();
  for (const each of asked) {
    if (each.kind === "all-measures") return false;
    if (each.kind === "recipe") {
      if (!sameFound(each.found, sources.read(each.path, each.from))) return false;
      continue;
    }
    const { name } = each;
    const isSameMeasure =
      sameScalar(each.given, body.given.get(name)) &&
      sameScalar(each.root, body.root.get(name)?.standard) &&
      sameDeclared(each.used, left.get(name) ?? body.used.get(name));
    if (!isSameMeasure) return false;
    if (each.left) left.set(name, each.left);
  }
  for (const [name, measure] of left) body.used.set(name, measure);
  return true;
};

const sameScalar = (one: Scalar | undefined, other: Scalar | undefined): boolean =>
  one === other ||
  (one !== undefined &&
    other !== undefined &&
    one.kind === other.kind &&
    Object.is(one.value, other.value) &&
    one.bareZero === other.bareZero);

const sameDeclared = (one: DeclaredMeasure | undefined, other: DeclaredMeasure | undefined): boolean =>
  one === other ||
  (one !== undefined &&
    other !== undefined &&
    sameScalar(one.standard, other.standard) &&
    sameWhere(one.where, other.where));

const sameWhere = (one: Where, other: Where): boolean =>
  one.file === other.file && one.from === other.from && one.to === other.to && one.line === other.line;

const sameFound = (one: Source | Unreadable, other: Source | Unreadable): boolean => {
  if ("problem" in one || "problem" in other) return JSON.stringify(one) === JSON.stringify(other);
  return one.file === other.file && one.text === other.text;
};

const difference = (after: Spent, before: Spent): Took => ({
  steps: after.steps - before.steps,
  files: after.files - before.files,
  pieces: after.pieces - before.pieces,
  spans: after.spans - before.spans,
  mostSpans: after.mostSpans - before.spans,
  recorded: after.recorded - before.recorded,
  effort: after.effort - before.effort,
});

const spend = (spent: Spent, took: Took): void => {
  spent.steps += took.steps;
  spent.files += took.files;
  spent.pieces += took.pieces;
  spent.mostSpans = Math.max(spent.mostSpans, spent.spans + took.mostSpans);
  spent.spans += took.spans;
  spent.recorded += took.recorded;
  spent.effort += took.effort;
};
