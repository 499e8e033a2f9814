// Long work that Ctrl-C ends early without losing what it has found.
import { constants } from "node:os";
import { setImmediate } from "node:timers/promises";

/** Whether somebody has asked to stop. */
export interface Stop {
  readonly isAsked: boolean;
}

/** What came of some work, and the signal that asked it to stop, if any did. */
export interface Stopped<Result> {
  readonly result: Result;
  readonly signal: NodeJS.Signals | undefined;
}

/** Does some work; while it lasts, the first of these signals calls `stop`, and a second one ends the program as usual. */
export const untilStopped = async <Result>(
  signals: readonly NodeJS.Signals[],
  stop: () => void,
  work: () => Promise<Result>,
): Promise<Stopped<Result>> => {
  let signal: NodeJS.Signals | undefined;
  const unhear = (): void => {
    for (const each of signals) process.off(each, hear);
  };
  const hear = (heard: NodeJS.Signals): void => {
    unhear();
    signal = heard;
    stop();
  };
  for (const each of signals) process.on(each, hear);
  try {
    const result = await work();
    return { result, signal };
  } finally {
    unhear();
  }
};

/** The code of a program that a signal has stopped, as a shell gives it (POSIX.1-2017, Shell Command Language, 2.8.2). */
export const codeAfterSignal = (signal: NodeJS.Signals): number => 128 + constants.signals[signal];

/** Does work that only Ctrl-C stops: whatever else asks a program to end wants nothing more from it. */
export const untilCtrlC = async <Result>(work: (stop: Stop) => Promise<Result>): Promise<Result> => {
  const stop = { isAsked: false };
  const ask = (): void => {
    stop.isAsked = true;
  };
  return (await untilStopped(["SIGINT"], ask, () => work(stop))).result;
};

// So many looks are taken between two chances to stop.
const looksAtATime = 32;

/** Runs a search to its end; or, where somebody asks to stop, gives what it told last. */
export const searched = async <Progress, End>(
  search: Generator<Progress, End>,
  stop: Stop,
  told: (progress: Progress) => void = () => {},
): Promise<{ readonly end: End } | { readonly stoppedAt: Progress }> => {
  for (let look = 1; ; look += 1) {
    const { done, value } = search.next();
    if (done) return { end: value };
    if (look % looksAtATime === 0) await setImmediate();
    told(value);
    if (stop.isAsked) return { stoppedAt: value };
  }
};
