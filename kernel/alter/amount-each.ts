// How an amount is shared out among several slashes, and what speaks against it.
import { Problem } from "../problem.ts";

/** More slashes than this in one line are a slip of the finger. */
const mostSlashes = 200;

/** The amount of each slash, mm, where the amount is the total of all; a Problem where the two words contradict. */
export const amountEach = (
  amount: number,
  count: number,
  says: { readonly each: boolean; readonly total: boolean },
): number => {
  if (says.each && says.total) {
    throw new Problem("each-or-total", "The amount is that of each slash, or the total of all, but not both.", {
      hint: "Leave `each` or `total` out.",
    });
  }
  if (amount < 0) {
    throw new Problem("amount-negative", "A negative amount would do the opposite of this step.", {
      hint: "Use `overlap-several` or `overlap-evenly` to take fullness out, and `spread-several` or `spread-evenly` to add it.",
    });
  }
  return says.total ? amount / count : amount;
};

/** The count itself; a Problem unless it is a whole number of slashes. */
export const countOfSlashes = (count: number): number => {
  if (Number.isInteger(count) && count >= 1 && count <= mostSlashes) return count;
  throw new Problem("slash-count", `Slashes come in a whole number, from 1 to ${mostSlashes}.`, {
    hint: "Write for example `in 4`.",
  });
};
