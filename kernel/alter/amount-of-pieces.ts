// Into how many equal pieces something is divided.
import { Problem } from "../problem.ts";

// More pieces than this in one round are a slip of the finger.
const mostPieces = 100;

/** The count itself; a Problem unless it is a whole number of pieces. */
export const amountOfPieces = (count: number): number => {
  if (Number.isInteger(count) && count >= 1 && count <= mostPieces) return count;
  throw new Problem("piece-count", `Pieces come in a whole number, from 1 to ${mostPieces}.`, {
    hint: "Write for example `in 6`.",
  });
};
