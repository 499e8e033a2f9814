// Packs one problem of the literature for so many seconds of this process's own time: what the bench runs, bundled.

import { toRadians } from "../../kernel/geometry/trig.ts";
import { isValidLayout } from "../../kernel/packing/is-valid-layout.ts";
import { pack } from "../../kernel/packing/pack.ts";
import { type Layout, type Strip, utilisation } from "../../kernel/packing/strip.ts";

/** A problem as its file holds it. */
export interface StoredProblem {
  readonly name: string;
  readonly stripHeight: number;
  readonly bestKnown?: { readonly length: number; readonly utilisationPercent: number };
  readonly items: readonly {
    readonly demand: number;
    readonly allowedRotationsDeg: readonly number[];
    readonly outline: readonly (readonly [number, number])[];
  }[];
}

/** The shortest layout found for a problem in so many seconds of one core, the time to learn its pace among them. */
export const stripRun = (problem: StoredProblem, seed: number, seconds: number) => {
  const strip = stripOf(problem);
  const start = ownSeconds();
  const pace = paceOf(strip, seed, seconds / 15);
  const left = seconds - (ownSeconds() - start);
  const layout = packedUntil(strip, seed, pace * left, start + seconds);
  const percent = 100 * utilisation(strip, layout.length);
  return {
    name: problem.name,
    seed,
    seconds: ownSeconds() - start,
    effort: Math.round(pace * left),
    length: layout.length,
    utilisationPercent: percent,
    ofBestKnownPercent: problem.bestKnown && (100 * percent) / problem.bestKnown.utilisationPercent,
    isValid: isValidLayout(strip, layout),
  };
};

const stripOf = ({ stripHeight, items }: StoredProblem): Strip => ({
  width: stripHeight,
  shapes: items.map(({ outline, allowedRotationsDeg, demand }) => ({
    outline: outline.map(([x, y]) => ({ x, y })),
    turns: allowedRotationsDeg.map(toRadians),
    count: demand,
  })),
});

/** What this process has used of a core so far: what others take of the machine does not count. */
const ownSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

// More than any run comes to, so that the pace is that of the middle of a search.
const plenty = 1e9;

/** How much effort a second is, by the second half of so many seconds: in the first the engine is still warming up. */
const paceOf = (strip: Strip, seed: number, seconds: number): number => {
  const start = ownSeconds();
  let warm: { readonly at: number; readonly done: number } | undefined;
  for (const { done } of pack(strip, seed, plenty)) {
    const at = ownSeconds();
    if (warm && at > start + seconds) return ((done - warm.done) * plenty) / (at - warm.at);
    if (!warm && at > start + seconds / 2) warm = { at, done };
  }
  return plenty / seconds;
};

const packedUntil = (strip: Strip, seed: number, effort: number, until: number): Layout => {
  const search = pack(strip, seed, effort);
  for (;;) {
    const { done, value } = search.next();
    if (done) return value;
    if (ownSeconds() >= until) return value.best;
  }
};
