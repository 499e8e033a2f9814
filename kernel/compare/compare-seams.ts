// Seams before and after: what is sewn to what, how long either side is, and whether it fits.
import type { Outcome } from "../kernel.ts";
import { type MeasuredSeam, measuredSeams } from "../report/measured-seam.ts";
import type { ChangedSeam, SeamFit } from "./comparison.ts";
import type { Naming } from "./naming.ts";
import { differs, tellableLength } from "./rounding.ts";

/** The seams that differ, those that began or ceased to fit first. */
export const changedSeams = (before: Outcome, after: Outcome, naming: Naming): ChangedSeam[] => {
  const [was, is] = [seamsByName(before, naming), seamsByName(after, (name) => name)];
  return [...new Set([...is.keys(), ...was.keys()])]
    .flatMap((name): ChangedSeam[] => {
      const [from, to] = [was.get(name) ?? null, is.get(name) ?? null];
      return from && to && isSameFit(from, to) ? [] : [{ name, before: from, after: to }];
    })
    .sort((a, b) => seamWeight(b) - seamWeight(a) || (a.name < b.name ? -1 : 1));
};

const seamsByName = (outcome: Outcome, naming: Naming): ReadonlyMap<string, SeamFit> => {
  const found = new Map<string, SeamFit>();
  for (const seam of measuredSeams(outcome)) {
    let name = naming(nameOf(seam));
    // The same edges may be sewn together twice, with another ease.
    while (found.has(name)) name += " again";
    const { firstLength, secondLength, difference, ease, verdict } = seam;
    found.set(name, { firstLength, secondLength, difference, ease, verdict: verdict ?? null });
  }
  return found;
};

const nameOf = ({ first, second }: MeasuredSeam): string => `${first.join(", ")} with ${second.join(", ")}`;

const isSameFit = (from: SeamFit, to: SeamFit): boolean =>
  from.verdict === to.verdict &&
  (
    [
      [from.firstLength, to.firstLength],
      [from.secondLength, to.secondLength],
      [from.ease, to.ease],
    ] as const
  ).every(([was, is]) => !differs(was, is, tellableLength));

/** One that began or ceased to fit first, then by how far the fit is another. */
const seamWeight = ({ before, after }: ChangedSeam): number => {
  if (!before || !after) return Number.MAX_VALUE / 2;
  if (before.verdict !== after.verdict) return Number.MAX_VALUE;
  return Math.abs(after.difference - before.difference) * 1000 + Math.abs(after.firstLength - before.firstLength);
};
