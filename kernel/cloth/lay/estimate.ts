// What the rules of area say of the length of a cloth, without laying anything: to be held against the lay.

/** From the tightest to the loosest lay that the rule goes by, mm. */
export interface Estimate {
  readonly least: number;
  readonly most: number;
}

// The share of the cloth that pieces take: 0.78 to 0.85 in coats and jackets cut many at a time, 0.60 to 0.75 in a single
// garment cut at home (common practice, no source).
const tightest = 0.85;
const loosest = 0.6;

/** Length = area of the pieces / (usable width x the share of it that is used), for both ends of what is usual. */
export const estimateOf = (area: number, usableWidth: number): Estimate => ({
  least: area / (usableWidth * tightest),
  most: area / (usableWidth * loosest),
});
