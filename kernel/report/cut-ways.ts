// What is cut of a piece, in words: how many, of which cloth, and how they lie to one another.
import { foldOf } from "../grain-direction.ts";
import type { Garment } from "../working.ts";

/** "1 of shell, on the fold", "2 of shell, a mirrored pair"; nothing for a piece that is not cut. */
export const cutWays = (garment: Garment, name: string): string[] =>
  garment.cuts
    .filter(({ piece }) => piece === name)
    .map(({ count, fabric }) => `${count} of ${fabric}, ${wayOf(count, onFold(garment, name))}`);

const onFold = ({ pieces }: Garment, name: string): boolean => {
  const piece = pieces.get(name);
  return piece !== undefined && foldOf(piece) !== undefined;
};

// Cut two means a mirrored pair from doubled cloth (handbook of the trade, section 9.1).
const wayOf = (count: number, isOnFold: boolean): string => {
  if (isOnFold) return count === 1 ? "on the fold" : "each on the fold";
  if (count === 1) return "single, right side up";
  const pairs = Math.floor(count / 2);
  const words = pairs === 1 ? "a mirrored pair" : `${pairs} mirrored pairs`;
  return count % 2 === 0 ? words : `${words} and 1 single`;
};
