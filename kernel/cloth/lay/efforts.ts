// How much work goes into a lay. Effort is counted in places looked at and not in seconds, so that a lay is the same on every
// machine; the seconds are those of a coat on an ordinary one.

export interface Effort {
  readonly name: "quick" | "buying" | "long";
  /** What it is for. */
  readonly title: string;
  /** Places looked at and overlaps measured, however few the pieces, and so many more for each of them. */
  readonly least: number;
  readonly each: number;
  /** And no more than so many in all. */
  readonly most: number;
  /** By how much, in mm, the bent line may stand out from a piece. */
  readonly within: number;
}

/** From the quickest to the longest. */
export const efforts: readonly Effort[] = [
  {
    name: "quick",
    title: "at once, while a recipe is written",
    least: 500_000,
    each: 20_000,
    most: 1_500_000,
    within: 4,
  },
  {
    name: "buying",
    title: "a few seconds, before cloth is bought",
    least: 3_000_000,
    each: 1_000_000,
    most: 25_000_000,
    within: 1,
  },
  {
    name: "long",
    title: "minutes, before many are cut",
    least: 100_000_000,
    each: 30_000_000,
    most: 3_000_000_000,
    within: 0.5,
  },
];

/** The effort of a name. */
export const effortOf = (name: Effort["name"]): Effort => efforts.find((each) => each.name === name)!;
