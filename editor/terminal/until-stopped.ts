// Long work that Ctrl-C ends early without losing what it has found.
import { setImmediate } from "node:timers/promises";

/** Whether somebody has asked to stop. */
export interface Stop {
  readonly isAsked: boolean;
}

/** Does some work; while it lasts, Ctrl-C asks it to stop, and a second one ends the program as usual. */
export const untilStopped = async <Result>(work: (stop: Stop) => Promise<Result>): Promise<Result> => {
  const stop = { isAsked: false };
  const onStop = (): void => {
    stop.isAsked = true;
  };
  process.once("SIGINT", onStop);
  try {
    return await work(stop);
  } finally {
    process.removeListener("SIGINT", onStop);
  }
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
