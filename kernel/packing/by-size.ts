// Orders of the copies in a bed by how large they are.
import type { Draw } from "../stress/seeded.ts";
import type { Bed } from "./bed.ts";

/** The largest area first. */
export const largestFirst = (bed: Bed): number[] => byWorth(areas(bed));

/** About the largest first: every area is taken for up to twice as large. */
export const nearlyLargestFirst = (bed: Bed, draw: Draw): number[] =>
  byWorth(areas(bed).map((area) => area * (1 + draw())));

const areas = ({ turned, choices }: Bed): number[] => choices.map(([first]) => turned[first!]!.area);

const byWorth = (worth: readonly number[]): number[] =>
  worth.map((_, copy) => copy).sort((a, b) => worth[b]! - worth[a]! || a - b);
