// Names of before as they are now: after a piece or an edge was renamed, seams and checks speak of it by its new name.
import type { ChangedPiece } from "./comparison.ts";

/** How names of before are called now: "back.hem" where both the piece and its edge may have another name. */
export type Naming = (written: string) => string;

/** The naming that follows from the pieces that changed. */
export const namingOf = (pieces: readonly ChangedPiece[]): Naming => {
  const names = new Map<string, string>();
  for (const { name, from, renamed } of pieces) {
    if (from === null) continue;
    names.set(from, name);
    for (const each of renamed) names.set(`${from}.${each.before}`, `${name}.${each.after}`);
  }
  const named = (written: string): string => {
    const whole = names.get(written);
    if (whole !== undefined) return whole;
    const dot = written.indexOf(".");
    return dot < 0 ? written : `${names.get(written.slice(0, dot)) ?? written.slice(0, dot)}${written.slice(dot)}`;
  };
  return (written) => written.replace(/[^\s,()]+/g, named);
};
