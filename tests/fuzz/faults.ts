// Runs recipes through targets and keeps what went wrong, each fault once and with as short a recipe as shows it.
import { Broken, type Kind, type Subject, type Target, takes } from "./target.ts";

/** A recipe that a target fails on. */
export interface Fault {
  readonly target: string;
  /** The same for every recipe that shows this fault. */
  readonly key: string;
  readonly message: string;
  /** Where it was thrown: the first lines of the stack. */
  readonly stack: readonly string[];
  readonly text: string;
  readonly kind: Kind;
}

/** How a target fares: runs, and faults counted with those already known. */
export interface Tally {
  runs: number;
  faults: number;
  /** Computing time, ms. */
  spent: number;
}

/** What one run of a target may take in computing time, ms: more than any limit of the language lets a recipe take. */
const longest = 10_000;

/** The fault of one target on one recipe. */
export const faultOf = async (target: Target, subject: Subject, tally?: Tally): Promise<Fault | undefined> => {
  const began = process.cpuUsage();
  try {
    await target.run(subject);
    const spent = millisecondsSince(began);
    if (spent > longest) throw new Broken("it takes too long", `${Math.round(spent)} ms`);
    return undefined;
  } catch (error) {
    return faultFrom(target, subject, error);
  } finally {
    if (tally) {
      tally.runs += 1;
      tally.spent += millisecondsSince(began);
    }
  }
};

const millisecondsSince = (began: NodeJS.CpuUsage): number => {
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1000;
};

const faultFrom = (target: Target, { text, kind = "recipe" }: Subject, error: unknown): Fault => {
  const message = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  const stack = error instanceof Error ? (error.stack ?? "").split("\n").filter((line) => /^ +at /.test(line)) : [];
  const what =
    error instanceof Broken ? error.what : `${message.replace(/\d+|"[^"]*"/g, "…").slice(0, 80)}${placeOf(stack[0])}`;
  return { target: target.name, key: `${target.name}: ${what}`, message, stack: stack.slice(0, 6), text, kind };
};

/** The function that threw; its line is another one in a bundle. */
const placeOf = (frame: string | undefined): string => {
  const name = frame === undefined ? undefined : /at (?:async )?([\w.<>]+) \(/.exec(frame)?.[1];
  // A bundle numbers names that several files have.
  return name === undefined ? "" : ` in ${name.replace(/\d+$/, "")}`;
};

/** Faults of these texts, each kind once; kinds in `known` are counted and not told again, and a target that is passed over gets none. */
export const faultsOn = async (
  targets: readonly Target[],
  subjects: Iterable<Subject>,
  known: Set<string>,
  tallies: Map<string, Tally> = new Map(),
  begins: (target: Target, subject: Subject) => void = () => {},
  isPassed: (target: Target) => boolean = () => false,
): Promise<Fault[]> => {
  const found: Fault[] = [];
  for (const subject of subjects) {
    for (const target of targets) {
      if (!takes(target, subject) || isPassed(target)) continue;
      const tally = tallies.get(target.name) ?? { runs: 0, faults: 0, spent: 0 };
      tallies.set(target.name, tally);
      begins(target, subject);
      const fault = await faultOf(target, subject, tally);
      if (!fault) continue;
      tally.faults += 1;
      if (known.has(fault.key)) continue;
      known.add(fault.key);
      found.push(await shortened(fault, target, subject, begins));
    }
  }
  return found;
};

// A recipe of a hundred lines is down to a few after some two hundred tries; a fault that takes long is shown as it came.
const mostTries = 400;
const longestShortening = 15_000;

/** The same fault with lines, then words taken away for as long as it shows. */
const shortened = async (
  fault: Fault,
  target: Target,
  subject: Subject,
  begins: (target: Target, subject: Subject) => void,
): Promise<Fault> => {
  const until = performance.now() + longestShortening;
  let tries = 0;
  let best = fault;
  for (const sign of ["\n", " "]) {
    let parts = best.text.split(sign);
    for (let size = Math.ceil(parts.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2)) {
      for (let at = 0; at < parts.length; ) {
        if (tries >= mostTries || performance.now() > until) return best;
        tries += 1;
        const fewer = parts.toSpliced(at, size);
        const tried = { ...subject, text: fewer.join(sign) };
        begins(target, tried);
        const shown = await faultOf(target, tried);
        if (shown?.key === fault.key) {
          parts = fewer;
          best = shown;
        } else at += size;
      }
    }
  }
  return best;
};

/** A fault as a person reads it. */
export const faultInWords = ({ target, message, stack, text, kind }: Fault): string =>
  [`${target}: ${message}`, ...stack, kind === "recipe" ? "Recipe:" : `Drawing, ${kind}:`, text].join("\n");
