// Where round a hem the cloth stands in folds, how many there are, and where each has its crest.
import { cos } from "../../geometry/trig.ts";
import type { Stretch } from "./level-stretches.ts";

/** So many stretches round the hem from one on, past the last of them to the first. */
export interface FoldedRun {
  readonly from: number;
  readonly count: number;
}

/** Which stretches of the hem lie in folds together, and how far each column stands out of its fold, in times the amplitude. */
export interface Folding {
  readonly runs: readonly FoldedRun[];
  readonly bumps: readonly number[];
  readonly crests: ReadonlySet<number>;
}

export const foldingOf = (hem: readonly Stretch[], wavelength: number): Folding => {
  const runs = foldedRuns(hem, wavelength);
  const bumps = hem.map(() => 0);
  const crests = new Set<number>();
  for (const run of runs) {
    const { from, count } = run;
    const whole = overRun(run, hem.length, (column) => hem[column]!.flat);
    const folds = Math.max(1, Math.round(whole / wavelength));
    const ats = [0];
    for (let step = 0; step < count; step += 1) {
      const column = (from + step) % hem.length;
      ats.push(ats[step]! + hem[column]!.flat);
      bumps[(column + 1) % hem.length] = bump((2 * Math.PI * folds * ats[step + 1]!) / whole);
    }
    for (let fold = 0; fold < folds; fold += 1) {
      crests.add((from + nearestTo((whole * (fold + 0.5)) / folds, ats)) % hem.length);
    }
  }
  return { runs, bumps, crests };
};

/** Which of some places is nearest to where a crest would be. */
const nearestTo = (wanted: number, ats: readonly number[]): number =>
  ats.reduce((best, at, index) => (Math.abs(at - wanted) < Math.abs(ats[best]! - wanted) ? index : best), 0);

/** Neighbouring stretches round which the cloth lies fuller than flat. */
const foldedRuns = (hem: readonly Stretch[], wavelength: number): Folding["runs"] =>
  runsOf(
    bentOver(hem, bend * wavelength).map((share) => share > foldedShare),
    hem,
  ).filter((run) => slackOf(run, hem) >= leastSlack);

/** The share of slack in the cloth round each stretch, so many mm wide: cloth does not bend more sharply than that. */
const bentOver = (hem: readonly Stretch[], width: number): number[] =>
  hem.map((own, index) => {
    let { flat, hung } = own;
    for (const way of [1, -1]) {
      let reach = own.flat / 2;
      for (let step = 1; reach < width / 2 && step < hem.length; step += 1) {
        const next = hem[(index + way * step + hem.length) % hem.length]!;
        const share = next.flat === 0 ? 0 : Math.min(1, (width / 2 - reach) / next.flat);
        flat += next.flat * share;
        hung += next.hung * share;
        reach += next.flat;
      }
    }
    return flat === 0 ? 0 : 1 - hung / flat;
  });

/** Stretches of a kind that follow one another round the hem; a seam between two of them parts nothing. */
const runsOf = (isFolded: readonly boolean[], hem: readonly Stretch[]): FoldedRun[] => {
  const start = Math.max(
    0,
    hem.findIndex(({ flat }, index) => flat > 0 && !isFolded[index]),
  );
  const runs: { from: number; count: number }[] = [];
  let run: { from: number; count: number } | undefined;
  for (let step = 0; step < hem.length; step += 1) {
    const index = (start + step) % hem.length;
    const isSeam = hem[index]!.flat === 0;
    if (!isFolded[index] && !isSeam) run = undefined;
    else if (run) run.count += 1;
    else if (isFolded[index]) {
      run = { from: index, count: 1 };
      runs.push(run);
    }
  }
  return runs;
};

/** The slack of a run at a level, mm. */
export const slackOf = (run: FoldedRun, level: readonly Stretch[]): number =>
  overRun(run, level.length, (column) => level[column]!.flat - level[column]!.hung);

/** What the stretches of a run come to together, of so many round the hem. */
export const overRun = ({ from, count }: FoldedRun, around: number, of: (column: number) => number): number => {
  let total = 0;
  for (let step = 0; step < count; step += 1) total += of((from + step) % around);
  return total;
};

/** How high a fold is at a phase, in times its amplitude: out and back once in a turn. */
const bump = (phase: number): number => 1 - cos(phase);

// Cloth that lies fuller than by this share of itself stands in folds; less only waves. Less slack than this in one place, mm, makes no fold.
const foldedShare = 0.1;
const leastSlack = 20;

// Within this share of a wavelength cloth does not tell where its slack lies.
const bend = 0.5;
