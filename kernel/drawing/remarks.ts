// What is remarked of a drawing by those who had it made.

/** What title block and labels say besides the garment's title: why it must not be cut, and what it was drafted from. */
export interface Remarks {
  /** "NOT FIT TO CUT: 3 errors" */
  readonly unfit?: string;
  /** "flare 9 cm" */
  readonly choices: readonly string[];
  /** The size of the recipe's size table, "12". */
  readonly size?: string;
  /** The version of the recipe, "3f0a91c". */
  readonly version?: string;
}

/** Nothing to remark. */
export const noRemarks: Remarks = { choices: [] };
