// The corner cut off straight, from where one allowance ends to where the other does.
import { type Flank, type Meeting, wayAcross } from "./flank.ts";

/** Straight across between the ends of the two allowances, neither carried on. */
export const cutCorner = (own: Flank, other: Flank): Meeting => ({
  ownAt: 0,
  otherAt: 0,
  across: wayAcross(own.end, other.end),
});
