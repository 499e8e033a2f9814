// Does a recipe hold for everybody? Works it with many bodies and design choices, and brings each kind of failure down to
// the few values that it takes.
import type { Circumstances, Kernel, Outcome } from "../kernel.ts";
import { measuresAsked } from "../measures-asked.ts";
import type { Source } from "../sources.ts";
import { isScalar, type Scalar } from "../value.ts";
import { type StressPlan, type Trial, trialsFor } from "./trials.ts";

/** One kind of failure, with the simplest way to it. */
export interface StressFailure {
  readonly check: string;
  readonly on: string;
  /** How many trials failed so. */
  readonly times: number;
  /** The first trial that did. */
  readonly origin: string;
  /** The values that have to differ from the defaults for it, and no more of them than it takes. */
  readonly values: ReadonlyMap<string, Scalar>;
  readonly found: number | string;
  readonly wanted: number | string;
  readonly file: string;
  readonly line: number;
  readonly message: string;
}

export interface StressReport {
  readonly tried: number;
  readonly passed: number;
  /** Bodies with a measure outside the range that the recipe states. */
  readonly outOfRange: number;
  readonly failures: readonly StressFailure[];
}

/** What went wrong in one trial. */
interface Fault extends Omit<StressFailure, "times" | "origin" | "values"> {}

/** Tries a recipe; `told` hears how far it is. */
export const stress = (
  kernel: Kernel,
  source: Source,
  circumstances: Circumstances,
  plan: StressPlan,
  told: (done: number, of: number) => void = () => {},
): StressReport => {
  const work = ({ measures, params }: Pick<Trial, "measures" | "params">): Outcome =>
    kernel.work(source, {
      ...circumstances,
      measures: new Map([...(circumstances.measures ?? []), ...measures]),
      params: new Map([...(circumstances.params ?? []), ...params]),
    });
  const trials = trialsFor(kernel.work(source, circumstances), plan);
  const kinds = new Map<string, { first: Trial; fault: Fault; times: number }>();
  let [passed, outOfRange] = [0, 0];
  trials.forEach((trial, index) => {
    const outcome = work(trial);
    if (isOutOfRange(outcome)) outOfRange += 1;
    else {
      const faults = faultsOf(outcome);
      if (faults.length === 0) passed += 1;
      for (const fault of faults) {
        const known = kinds.get(kindOf(fault));
        kinds.set(kindOf(fault), known ? { ...known, times: known.times + 1 } : { first: trial, fault, times: 1 });
      }
    }
    told(index + 1, trials.length);
  });
  const failures = [...kinds.values()].map(({ first, times }, index) => {
    const kind = [...kinds.keys()][index]!;
    return { ...simplest(first, kind, work), times, origin: first.origin };
  });
  return { tried: trials.length, passed, outOfRange, failures };
};

const isOutOfRange = ({ diagnostics }: Outcome): boolean =>
  diagnostics.some(({ code }) => code === "value-out-of-range");

/** Every check that does not pass, and every line that could not be worked. */
const faultsOf = ({ judgements, diagnostics }: Outcome): Fault[] => [
  ...diagnostics.map(({ code, where, message }) => ({
    check: code,
    on: `line ${where.line}`,
    found: message,
    wanted: "a line that can be worked",
    file: where.file,
    line: where.line,
    message,
  })),
  ...judgements
    .filter(({ verdict }) => verdict === "error" || verdict === "warning")
    .map(({ check, on, found, wanted, where, message }) => ({
      check,
      on,
      found,
      wanted,
      file: where.file,
      line: where.line,
      message,
    })),
];

const kindOf = ({ check, on }: { check: string; on: string }): string => `${check} on ${on}`;

// How often a value that cannot be left out is brought halfway toward its default, while the failure stays.
const halvings = 6;

/** Sets back to its default whatever the failure does not need, and the rest as near to its default as it still fails. */
const simplest = (
  trial: Trial,
  kind: string,
  work: (values: Pick<Trial, "measures" | "params">) => Outcome,
): Fault & { values: ReadonlyMap<string, Scalar> } => {
  const faultWith = (values: Values): Fault | undefined => {
    const outcome = work(values);
    return isOutOfRange(outcome) ? undefined : faultsOf(outcome).find((fault) => kindOf(fault) === kind);
  };
  let values: Values = { measures: trial.measures, params: trial.params };
  const standard = work({ measures: new Map(), params: new Map() });
  for (const table of ["params", "measures"] as const) {
    for (const name of trial[table].keys()) {
      const without = { ...values, [table]: new Map([...values[table]].filter(([each]) => each !== name)) };
      if (faultWith(without)) values = without;
    }
  }
  for (const table of ["params", "measures"] as const) {
    for (const name of values[table].keys()) values = nearer(values, table, name, standard, faultWith);
  }
  const fault = faultWith(values) ?? faultWith({ measures: trial.measures, params: trial.params })!;
  return { ...fault, values: new Map([...values.measures, ...values.params]) };
};

type Values = Pick<Trial, "measures" | "params">;

const nearer = (
  values: Values,
  table: "params" | "measures",
  name: string,
  standard: Outcome,
  faultWith: (values: Values) => Fault | undefined,
): Values => {
  const start = standardOf(standard, name);
  if (start === undefined) return values;
  let [holding, failing] = [start, values[table].get(name)!.value];
  const withValue = (value: number): Values => {
    const { kind } = values[table].get(name)!;
    return { ...values, [table]: new Map([...values[table], [name, { kind, value }]]) };
  };
  for (let halving = 0; halving < halvings; halving += 1) {
    // Half millimetres are as near as anybody sets a value.
    const middle = Math.round(holding + failing) / 2;
    if (middle === failing || middle === holding) break;
    if (faultWith(withValue(middle))) failing = middle;
    else holding = middle;
  }
  return withValue(failing);
};

const standardOf = (standard: Outcome, name: string): number | undefined => {
  const value = (standard.values.get(name) ?? measuresAsked(standard).get(name))?.value;
  return value && isScalar(value) ? value.value : undefined;
};
