// How the slack of a hanging piece grows on the way down: at a quarter, half, three quarters of its length, and at the hem.
import { between } from "../../geometry/point.ts";
import type { HungHem } from "./hung-hem.ts";
import { type HungPlace, slackAlong, withoutGaps } from "./slack.ts";

/** The slack along a level of a piece as it hangs. */
export interface SlackAtLevel {
  /** Share of the way from the highest place that holds it down to its lowest hanging point. */
  readonly share: number;
  /** How far below that highest place, mm. */
  readonly down: number;
  /** Width of the cloth there, the width it takes up, and the difference, mm. */
  readonly flat: number;
  readonly hung: number;
  readonly slack: number;
}

/** The slack at some levels; where the hem does not reach so far down, at the hem. */
export const slackAtLevels = ({ columns }: HungHem, shares: readonly number[] = quarters): SlackAtLevel[] => {
  const top = Math.min(...columns.map((column) => column[0]!.hung.y));
  const bottom = Math.max(...columns.map((column) => column.at(-1)!.hung.y));
  return shares.map((share) => {
    const down = share * (bottom - top);
    const lines = runsAt(columns, top + down).map((run) => slackAlong(withoutGaps(run)));
    const sum = (of: "flat" | "hung" | "slack"): number => lines.reduce((total, line) => total + line[of], 0);
    return { share, down, flat: sum("flat"), hung: sum("hung"), slack: sum("slack") };
  });
};

const quarters = [0.25, 0.5, 0.75, 1];

/** The cloth at a level, from column to column; what hangs from further down parts it. */
const runsAt = (columns: HungHem["columns"], y: number): HungPlace[][] => {
  const runs: HungPlace[][] = [[]];
  for (const column of columns) {
    const place = placeAt(column, y);
    if (place) runs.at(-1)!.push(place);
    else if (runs.at(-1)!.length > 0) runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
};

/** Where a column is at a level; its end where it does not reach so far, undefined where it begins below. */
const placeAt = (column: readonly HungPlace[], y: number): HungPlace | undefined => {
  if (column[0]!.hung.y > y) return undefined;
  const index = column.findIndex(({ hung }) => hung.y >= y);
  const [above, below] = [column[index - 1], column[index]];
  if (!below) return column.at(-1);
  if (!above) return below;
  const share = (y - above.hung.y) / (below.hung.y - above.hung.y);
  return { flat: between(above.flat, below.flat, share), hung: between(above.hung, below.hung, share) };
};
