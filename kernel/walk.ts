// Walking a seam: the two lists of edges are laid end to end from a common start, and their notches held against each other.
// What is good or bad about the outcome is for the checks to say.

import type { Where } from "../grammar/diagnostic.ts";
import { nearest } from "./geometry/nearest.ts";
import { sameSpotTolerance } from "./geometry/point.ts";
import { sewnLength, sewnUpTo } from "./sewn.ts";
import type { Garment, Run, Seam } from "./working.ts";

/** A notch, or a joint of two edges, as one walks past it. */
export interface SeamMark {
  readonly kind: "single" | "double" | "joint";
  /** How far it is from the start of its list, mm. */
  readonly at: number;
  /** The edge it lies on; of a joint, the edge that ends there. */
  readonly run: Run;
  /** The line that set the notch; a bare joint has none. */
  readonly drawnBy?: Where;
}

/** Two marks that are laid on one another. */
export interface MarkPair {
  readonly first: SeamMark;
  readonly second: SeamMark;
  /** How much further the first list has run here, mm. */
  readonly difference: number;
  /** How far that lies outside what the ease allows, mm; 0 when between level and the whole ease. */
  readonly off: number;
}

export interface SeamWalk {
  /** Lengths of the two lists, mm. */
  readonly firstLength: number;
  readonly secondLength: number;
  /** The first less the second, mm. */
  readonly difference: number;
  /** Notches and joints that belong together, in the order they are walked past. */
  readonly pairs: readonly MarkPair[];
  /** What found no partner, by list. */
  readonly leftOver: { readonly first: readonly SeamMark[]; readonly second: readonly SeamMark[] };
  /** A list has more marks than are paired; then none are. */
  readonly tooManyMarks: boolean;
}

/** Walks a seam from end to end. */
export const walkSeam = (seam: Seam, garment: Garment): SeamWalk => {
  const firstLength = lengthOf(seam.first);
  const secondLength = lengthOf(seam.second);
  const pairing = paired(marksAlong(seam.first, garment), marksAlong(seam.second, garment), seam.ease);
  return { firstLength, secondLength, difference: firstLength - secondLength, ...pairing };
};

/** The seams of a garment that can be judged: those whose pieces all exist and hold no failed line. */
export const soundSeams = (garment: Garment): readonly Seam[] =>
  garment.seams.filter((seam) =>
    [...seam.first, ...seam.second].every((run) => garment.pieces.get(run.piece)?.doubtful === false),
  );

/** How a seam is called: "sleeve.cap with back.armscye, front.armscye". */
export const seamName = (seam: Seam): string => `${listName(seam.first)} with ${listName(seam.second)}`;

/** One list of a seam in words: "the armscye of back and the armscye of front". */
export const listInWords = (runs: readonly Run[]): string => {
  const times = new Map<string, number>();
  for (const run of runs) {
    const edge = `${run.whole ? "" : "part of "}the ${run.edge} of ${run.piece}`;
    times.set(edge, (times.get(edge) ?? 0) + 1);
  }
  return [...times].map(([edge, count]) => `${countInWords(count)}${edge}`).join(" and ");
};

const countInWords = (count: number): string => (count === 1 ? "" : count === 2 ? "twice " : `${count} times `);

const listName = (runs: readonly Run[]): string => runs.map((run) => `${run.piece}.${run.edge}`).join(", ");

const lengthOf = (runs: readonly Run[]): number => runs.reduce((sum, run) => sum + sewnLength(run.path, run.taken), 0);

// A mark at either end of the list tells the sewer nothing: there both lists start, or end, together.
const marksAlong = (runs: readonly Run[], garment: Garment): SeamMark[] => {
  const marks: SeamMark[] = [];
  let walkedSoFar = 0;
  let before: Run | undefined;
  for (const run of runs) {
    if (before) marks.push({ kind: "joint", at: walkedSoFar, run: before });
    for (const notch of garment.pieces.get(run.piece)?.notches ?? []) {
      if (notch.edge !== run.edge) continue;
      const foot = nearest(run.path, notch.point);
      if (foot.distance > sameSpotTolerance) continue;
      marks.push({
        kind: notch.double ? "double" : "single",
        at: walkedSoFar + sewnUpTo(run.path, run.taken, foot.at),
        run,
        drawnBy: notch.drawnBy,
      });
    }
    walkedSoFar += sewnLength(run.path, run.taken);
    before = run;
  }
  const inside = marks.filter(({ at }) => at > sameSpotTolerance && at < walkedSoFar - sameSpotTolerance);
  return oneASpot(inside.sort((a, b) => a.at - b.at));
};

// A notch cut at a joint is that joint; of several marks on one spot the plainest to see counts.
const oneASpot = (marks: readonly SeamMark[]): SeamMark[] => {
  const kept: SeamMark[] = [];
  for (const mark of marks) {
    const last = kept.at(-1);
    if (last === undefined || mark.at - last.at > sameSpotTolerance) kept.push(mark);
    else if (plainness[mark.kind] > plainness[last.kind]) kept[kept.length - 1] = { ...mark, at: last.at };
  }
  return kept;
};

const plainness = { joint: 0, single: 1, double: 2 };

const belong = (a: SeamMark, b: SeamMark): boolean => a.kind === b.kind || (a.kind !== "double" && b.kind !== "double");

const pairOf = (first: SeamMark, second: SeamMark, ease: number): MarkPair => {
  const difference = first.at - second.at;
  const off = Math.max(0, -difference, difference - ease);
  return { first, second, difference, off };
};

/** The best that can be made of all marks from some place on. */
interface Pairing {
  /** Notches without a partner; joints may go without. */
  readonly lone: number;
  readonly pairs: number;
  /** Sum of what the pairs are off, mm. */
  readonly off: number;
  readonly next: "pair" | "first" | "second" | "end";
}

const isBetter = (a: Pairing, b: Pairing): boolean =>
  a.lone !== b.lone ? a.lone < b.lone : a.pairs !== b.pairs ? a.pairs > b.pairs : a.off < b.off;

// A list with more notches and joints than this is not paired: no seam has so many, and pairing takes their number squared.
const mostMarks = 100;

// Marks pair in order. Joints may stay alone, so which pairs with which can be open: the pairing that leaves the fewest
// notches alone is taken, of those the one with the most pairs, of those the one that lies best.
const paired = (
  first: readonly SeamMark[],
  second: readonly SeamMark[],
  ease: number,
): Pick<SeamWalk, "pairs" | "leftOver" | "tooManyMarks"> => {
  if (Math.max(first.length, second.length) > mostMarks) {
    return { pairs: [], leftOver: { first: [], second: [] }, tooManyMarks: true };
  }
  const best = bestPairings(first, second, ease);
  const pairs: MarkPair[] = [];
  const leftOver = { first: [] as SeamMark[], second: [] as SeamMark[] };
  let i = 0;
  let j = 0;
  for (let next = best[0]![0]!.next; next !== "end"; next = best[i]![j]!.next) {
    if (next === "pair") pairs.push(pairOf(first[i++]!, second[j++]!, ease));
    else if (next === "first") leftOver.first.push(first[i++]!);
    else leftOver.second.push(second[j++]!);
  }
  return { pairs, leftOver, tooManyMarks: false };
};

// Filled from the ends of both lists back to their starts, as one aligns two lines of text.
const bestPairings = (first: readonly SeamMark[], second: readonly SeamMark[], ease: number): Pairing[][] => {
  const best: Pairing[][] = first.map(() => []);
  best.push([]);
  for (let i = first.length; i >= 0; i -= 1) {
    for (let j = second.length; j >= 0; j -= 1) {
      const choices: Pairing[] = [];
      const [a, b] = [first[i], second[j]];
      if (a && b && belong(a, b)) choices.push(withPair(best[i + 1]![j + 1]!, pairOf(a, b, ease)));
      if (a) choices.push(withLone(best[i + 1]![j]!, a, "first"));
      if (b) choices.push(withLone(best[i]![j + 1]!, b, "second"));
      const end: Pairing = { lone: 0, pairs: 0, off: 0, next: "end" };
      best[i]![j] = choices.reduce((kept, choice) => (isBetter(choice, kept) ? choice : kept), choices[0] ?? end);
    }
  }
  return best;
};

const withPair = (rest: Pairing, pair: MarkPair): Pairing => ({
  lone: rest.lone,
  pairs: rest.pairs + 1,
  off: rest.off + pair.off,
  next: "pair",
});

const withLone = (rest: Pairing, mark: SeamMark, next: "first" | "second"): Pairing => ({
  ...rest,
  lone: rest.lone + (mark.kind === "joint" ? 0 : 1),
  next,
});
