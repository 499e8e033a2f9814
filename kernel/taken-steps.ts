// Steps and checks that come from outside, held to what the program asks of its own before it knows them: names of their own, a
// sentence, an example. Whatever they do when they are worked stays on its line.
import { limits } from "../grammar/limits.ts";
import { statementWords } from "../grammar/statements.ts";
import { placeWords } from "../grammar/tokens.ts";
import type { Check } from "./check.ts";
import { functions } from "./functions.ts";
import type { Vocabulary } from "./kernel.ts";
import { Problem } from "./problem.ts";
import type { Step } from "./step.ts";
import type { Garment, Judgement } from "./working.ts";

/** The steps and checks of a plugin, fit for a kernel; or one sentence that says why they cannot be taken. */
export type StepsTaken = Vocabulary | { readonly problem: string };

/** Takes what the function of a plugin gave, beside all that is known already; `called` is how sentences name its file. */
export const takenSteps = (given: unknown, known: Vocabulary, called: string): StepsTaken => {
  const { steps = [], checks = [] } = isRecord(given) ? given : {};
  if (!isRecord(given) || !Array.isArray(steps) || !Array.isArray(checks) || steps.length + checks.length === 0)
    return {
      problem: `${called} brings no steps and no checks: its function has to give { steps: […], checks: […] }.`,
    };
  const taken = new Set([
    ...statementWords,
    ...placeWords,
    ...functions.keys(),
    ...known.steps.map(({ name }) => name),
    ...known.checks.map(({ name }) => name),
  ]);
  for (const [what, faultOf, declared] of [
    ["step", stepFault, steps],
    ["check", checkFault, checks],
  ] as const)
    for (const each of declared as readonly unknown[]) {
      const fault = faultOf(each);
      if (fault !== undefined) return { problem: `${called} cannot be used: ${fault}.` };
      const { name } = each as Step | Check;
      if (taken.has(name))
        return { problem: `${called} brings a ${what} called ${name}, and that name is taken; it needs another one.` };
      taken.add(name);
    }
  return {
    steps: (steps as Step[]).map((step) => keptOnItsLine(step, called)),
    checks: (checks as Check[]).map((check) => keptToItself(check, called)),
  };
};

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

const plainName = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;

const isText = (value: unknown): value is string => typeof value === "string" && value !== "";

const nameFault = (value: unknown, what: string): string | undefined => {
  if (isText(value) && value.length <= limits.wordLetters && plainName.test(value)) return undefined;
  const called = isText(value) ? `called ${value.slice(0, 40)}` : "without a name";
  return `it brings a ${what} ${called}, and a name is small letters and digits with hyphens inside`;
};

const stepFault = (value: unknown): string | undefined => {
  if (!isRecord(value)) return "one of its steps is not made with pieceStep or garmentStep";
  const fault = nameFault(value.name, "step");
  if (fault !== undefined) return fault;
  const { phrases, on, work } = value;
  if (!Array.isArray(phrases) || phrases.length === 0 || (on !== "piece" && on !== "garment"))
    return `its step ${value.name} is not made with pieceStep or garmentStep`;
  if (phrases.some((each) => !isRecord(each) || each.verb !== value.name))
    return `a phrase of its step ${value.name} does not begin with ${value.name}`;
  if (typeof work !== "function") return `its step ${value.name} has no function work`;
  return [value.summary, value.example, value.since].every(isText)
    ? undefined
    : `its step ${value.name} lacks a summary, an example or a since`;
};

const checkFault = (value: unknown): string | undefined => {
  if (!isRecord(value)) return "one of its checks is not made with defineCheck";
  const fault = nameFault(value.name, "check");
  if (fault !== undefined) return fault;
  if (typeof value.judge !== "function") return `its check ${value.name} has no function judge`;
  return [value.title, value.why, value.passes, value.fails, value.since].every(isText)
    ? undefined
    : `its check ${value.name} lacks a title, a why, a recipe that passes or fails, or a since`;
};

/** The step with whatever goes wrong in it told as a mistake of its line, and not of the program. */
const keptOnItsLine = (step: Step, called: string): Step => {
  const work = (...given: Parameters<Step["work"]>): ReturnType<Step["work"]> => {
    const failed = (words: string): Problem =>
      new Problem("plugin-failed", `${step.name}, which ${called} brings, failed: ${words}`, {
        hint: "Tell whoever wrote it.",
      });
    let worked: unknown;
    try {
      worked = (step.work as (...given: unknown[]) => unknown)(...given);
    } catch (error) {
      throw error instanceof Problem ? error : failed(wordsOf(error));
    }
    if (!isRecord(worked) || typeof worked.words !== "string" || !isLike(worked.now, given[1]))
      throw failed(`it gave no ${step.on} and words back.`);
    return worked as unknown as ReturnType<Step["work"]>;
  };
  return { ...step, work } as Step;
};

// Whoever spreads what was given and changes a part of it has all the parts that there were, each of its kind.
const isLike = (now: unknown, given: unknown): boolean =>
  isRecord(now) &&
  isRecord(given) &&
  Object.entries(given).every(([part, was]) => {
    const is = now[part];
    if (was instanceof Map) return is instanceof Map;
    if (Array.isArray(was)) return Array.isArray(is);
    return was === undefined || typeof is === typeof was;
  }) &&
  now.name === given.name;

/** The check with whatever goes wrong in it told as its own finding on the garment. */
const keptToItself = (check: Check, called: string): Check => ({
  ...check,
  judge: (garment: Garment): readonly Judgement[] => {
    try {
      return [...check.judge(garment)];
    } catch (error) {
      const where = { file: garment.file, from: 0, to: 0, line: 1 };
      const message = `${check.name}, which ${called} brings, failed: ${wordsOf(error)}`;
      return [{ on: "garment", verdict: "error", found: "failed", wanted: "a judgement", where, message }];
    }
  },
});

/** What was thrown, on one line and not too long. */
export const wordsOf = (thrown: unknown): string => {
  const words = (thrown instanceof Error ? thrown.message : String(thrown)).split("\n", 1)[0]!.trim().slice(0, 200);
  if (words === "") return "it did not say why.";
  return /[.!?]$/.test(words) ? words : `${words}.`;
};
