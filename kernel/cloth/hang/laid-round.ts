// The cloth of one level laid on the body's ellipse and, where it is fuller than the body is round, thrown into folds that are as
// long as the cloth is.
import type { Point } from "../../geometry/point.ts";
import { onEllipse } from "./ellipse.ts";
import { type Folding, overRun, slackOf } from "./folding.ts";
import type { Stretch } from "./level-stretches.ts";

/** Where a column is at a level, mm to the right and toward whoever looks, and how far the fold there stands out at its crest. */
export interface LaidColumn {
  readonly x: number;
  readonly z: number;
  readonly depth: number;
}

/** Every column of a level in the room; `body` is the level that the body's width there is taken from. */
export const laidRound = (
  level: readonly Stretch[],
  body: readonly Stretch[],
  { runs, bumps }: Folding,
  bodyDepth: number,
): LaidColumn[] => {
  const count = level.length;
  // Cloth that is not folded lies as wide as it is cut; folds are as wide as one another.
  const room = body.map(({ flat }) => flat);
  for (const run of runs) {
    const flat = overRun(run, count, (column) => body[column]!.flat);
    const share = flat === 0 ? 1 : 1 - ((1 - roomShare) * slackOf(run, body)) / flat;
    for (let step = 0; step < run.count; step += 1) {
      const column = (run.from + step) % count;
      room[column] = body[column]!.flat * share;
    }
  }
  const around = room.reduce((total, wide) => total + wide, 0);
  let along = 0;
  const base = room.map((wide) => {
    const spot = onEllipse(around === 0 ? 0 : along / around, around, bodyDepth);
    along += wide;
    return spot;
  });
  const amplitudes = level.map(() => 0);
  for (const run of runs) {
    // As wide as the body there, and the slack of this level besides.
    const cloth = overRun(run, count, (column) => room[column]!) + (1 - roomShare) * slackOf(run, level);
    const bends = Array.from({ length: run.count + 1 }, (_, step): Bend => {
      const column = (run.from + step) % count;
      const { at, out } = base[column]!;
      return { at, out, bump: bumps[column]! };
    });
    const amplitude = amplitudeOf(cloth, (trial) => foldedLength(bends, trial));
    for (let step = 0; step <= run.count; step += 1) amplitudes[(run.from + step) % count] = amplitude;
  }
  return base.map(({ at, out }, index) => {
    const high = amplitudes[index]! * bumps[index]!;
    return { x: at.x + out.x * high, z: at.y + out.y * high, depth: 2 * amplitudes[index]! };
  });
};

/** A spot of the base line, the way out from it, and how far in times the amplitude a fold stands out there. */
interface Bend {
  readonly at: Point;
  readonly out: Point;
  readonly bump: number;
}

/** Length of the line through spots that stand out by their bumps at an amplitude, mm. */
const foldedLength = (bends: readonly Bend[], amplitude: number): number => {
  let length = 0;
  let [x, y] = [0, 0];
  bends.forEach(({ at, out, bump: high }, index) => {
    const [nextX, nextY] = [at.x + out.x * amplitude * high, at.y + out.y * amplitude * high];
    if (index > 0) length += Math.sqrt((nextX - x) * (nextX - x) + (nextY - y) * (nextY - y));
    [x, y] = [nextX, nextY];
  });
  return length;
};

/** The amplitude at which the folded line is as long as the cloth, mm; none where it is as long without folds. */
const amplitudeOf = (cloth: number, lengthAt: (amplitude: number) => number): number => {
  // The line grows with its amplitude, ever faster up to as fast as the folds are many: a chord from above finds it in a few steps.
  let [low, high] = [0, cloth];
  let [below, above] = [lengthAt(low) - cloth, lengthAt(high) - cloth];
  if (below >= 0) return 0;
  for (let turn = 0; turn < mostTurns && high - low > nearEnough; turn += 1) {
    const chord = low - (below * (high - low)) / (above - below);
    // In the middle now and then, so that both ends close in.
    const at = turn % 3 === 2 ? (low + high) / 2 : chord;
    const off = lengthAt(at) - cloth;
    if (Math.abs(off) < nearEnough) return at;
    if (off < 0) [low, below] = [at, off];
    else [high, above] = [at, off];
  }
  return low;
};

// A fold takes up so much of its slack in width, for its bends are rounder than those of the wave that is drawn here. Fitted to a
// chain of stiff rods (tests/hang/chain.ts): along a straight hem a fold is as deep as the chain's, to one in twenty.
const roomShare = 0.08;

// A fold is drawn this near to the length of its cloth, mm.
const nearEnough = 0.05;
const mostTurns = 40;
