// A line of the bench's table, and the way both of its sides are timed: in turn, in one run, so that whatever else the machine is
// doing falls on both.

/** One goal, measured. */
export interface Row {
  readonly goal: string;
  /** What is measured of ours and of the floor; milliseconds where nothing else is said. */
  readonly ours: number;
  readonly unit?: "ms" | "KiB" | "findings" | "x 1e-9";
  /** What it is held against; a goal without one is a bound on our figure itself. */
  readonly floor?: { readonly is: string; readonly figure: number };
  /** The most that the ratio, or our figure where there is no floor, may be; a row without one is there to be compared. */
  readonly bound?: number;
}

/** A file of the bench: what `npm run bench -- NAME` measures. */
export interface Bench {
  readonly name: string;
  /** Measures; of `rounds` turns of each side the median counts. */
  rows(rounds: number): Promise<readonly Row[]>;
}

/** Ours against the floor, or our figure where there is none. */
export const ratioOf = ({ ours, floor }: Row): number => (floor ? ours / floor.figure : ours);

/** Whether a goal is met; undefined for a row that is none. */
export const isMet = (row: Row): boolean | undefined =>
  row.bound === undefined ? undefined : ratioOf(row) <= row.bound;

/**
 * Milliseconds of the processor that one call of each side takes, medians of so many turns, the two sides by turns. The processor's
 * own time, what collecting garbage takes of it included: a busy machine falls on neither side.
 */
export const sideBySide = (ours: () => void, floor: () => void, rounds: number): { ours: number; floor: number } => {
  const sides = [ours, floor].map((run) => ({ run, calls: callsInATurn(run), times: [] as number[] }));
  for (let round = 0; round < rounds; round += 1) {
    for (const { run, calls, times } of sides) {
      const began = processorTime();
      for (let call = 0; call < calls; call += 1) run();
      times.push((processorTime() - began) / calls);
    }
  }
  const [first, second] = sides;
  return { ours: median(first!.times), floor: median(second!.times) };
};

const processorTime = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** The middle of some figures. */
export const median = (figures: readonly number[]): number =>
  [...figures].sort((a, b) => a - b)[Math.floor(figures.length / 2)]!;

// A turn takes about this long, ms: far above what the clock can tell, and with some garbage to collect in each.
const turn = 25;

// Called for so long first, ms, the code of both sides is as fast as it gets.
const warmUp = 400;

/** How many calls make a turn, found by calling it; that also warms it up. */
const callsInATurn = (run: () => void): number => {
  const began = processorTime();
  let calls = 0;
  do {
    run();
    calls += 1;
  } while (processorTime() - began < warmUp);
  return Math.max(1, Math.round((calls * turn) / warmUp));
};
