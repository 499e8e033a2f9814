// A seam as reports show it: what is sewn to what, how long either side is, and what the checks say.

import type { Outcome } from "../kernel.ts";
import { seamName, walkSeam } from "../walk.ts";
import type { Judged, Run, Seam, Verdict } from "../working.ts";

export interface MeasuredSeam {
  /** "front.side", in the order they are sewn. */
  readonly first: readonly string[];
  readonly second: readonly string[];
  /** All in mm; the difference is the first list less the second. */
  readonly ease: number;
  readonly firstLength: number;
  readonly secondLength: number;
  readonly difference: number;
  /** The worst of what the checks say of it; undefined where a failed line left it unjudged. */
  readonly verdict: Verdict | undefined;
}

/** All seams, in the order of the recipe. */
export const measuredSeams = ({ garment, judgements }: Outcome): MeasuredSeam[] =>
  garment.seams.map((seam) => {
    const { firstLength, secondLength, difference } = walkSeam(seam, garment);
    return {
      first: seam.first.map(edgeName),
      second: seam.second.map(edgeName),
      ease: seam.ease,
      firstLength,
      secondLength,
      difference,
      verdict: verdictOn(seam, judgements),
    };
  });

const edgeName = ({ piece, edge }: Run): string => `${piece}.${edge}`;

const worstFirst: readonly Verdict[] = ["error", "warning", "accepted", "pass"];

const verdictOn = (seam: Seam, judgements: readonly Judged[]): Verdict | undefined => {
  const name = seamName(seam);
  // A garment may hold the same pair of edges twice, with another ease: the line tells them apart.
  const own = judgements.filter(
    ({ check, on, where }) => seamChecks.has(check) && on === name && where === seam.drawnBy,
  );
  return worstFirst.find((verdict) => own.some((each) => each.verdict === verdict));
};

const seamChecks = new Set(["seam-length", "seam-notches"]);
