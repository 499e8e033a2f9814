// What is remarked of a drawing by those who had it made.

/** What the title block says besides the garment's title: why it must not be cut, and what it was drafted with. */
export interface Remarks {
  /** "NOT FIT TO CUT: 3 errors" */
  readonly unfit?: string;
  /** "flare 9 cm" */
  readonly choices: readonly string[];
}
