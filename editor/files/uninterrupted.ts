// Lets a stretch of work come to its end before Ctrl-C, a closed terminal or a shutdown ends the program, so that none of them
// leaves files set aside. Nothing can be done about a kill that asks nobody: left-aside.ts clears up behind that.

/** How a program is asked to end: Ctrl-C, a shutdown, a closed terminal. */
export const endingSignals = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

/** Does the work, which must not wait for anything; a signal that comes meanwhile ends the program as soon as it is done. */
export const uninterrupted = <T>(work: () => T): T => {
  if (held === 0) for (const signal of endingSignals) process.prependListener(signal, hear);
  held += 1;
  try {
    return work();
  } finally {
    // Node tells of a signal between two turns, and one of two turns from now lies behind the place where it does.
    setImmediate(setImmediate, release);
  }
};

let held = 0;
let heard: NodeJS.Signals | undefined;

const hear = (signal: NodeJS.Signals): void => {
  // Whoever else listens is told next, and decides for itself.
  if (process.listenerCount(signal) === 1) heard = signal;
};

const release = (): void => {
  held -= 1;
  if (held > 0 && heard === undefined) return;
  for (const signal of endingSignals) process.off(signal, hear);
  const signal = heard;
  heard = undefined;
  // The signal comes again and does what it always does: the shell sees a program that ended by it, code 130 for Ctrl-C.
  if (signal !== undefined) process.kill(process.pid, signal);
};
