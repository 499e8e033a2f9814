// What is said of pieces that a paper does not take: what room it has, and which papers do take them.
import { lengthIn } from "../units.ts";
import type { Units } from "../working.ts";
import type { Block } from "./block.ts";
import { margin, type PaperKind } from "./papers.ts";

/** What no sheet of a paper takes. */
export interface TooLarge {
  readonly paper: PaperKind;
  readonly tooLarge: readonly Pick<Block, "name" | "width" | "height">[];
  /** The papers that do take all of it. */
  readonly others: readonly PaperKind[];
}

/** Why the pieces do not fit and what takes them; `askedFor` is how the user asks for these other papers. */
export const doesNotFit = (
  { paper, tooLarge, others }: TooLarge,
  units: Units,
  askedFor: (others: readonly PaperKind[]) => string,
): string => {
  // Upward, so that nobody cuts a paper to a size that is too small by a hair.
  const length = (mm: number): string => lengthIn(Math.ceil(mm), units);
  const pieces = tooLarge
    .map(({ name, width, height }) => `${name} (${length(width)} by ${length(height)})`)
    .join(", ");
  const isPutTogether = others.some(({ use }) => use === "tiles");
  const instead =
    others.length > 0
      ? `Others do: ${askedFor(others)}${isPutTogether ? "; the small ones are put together" : ""}.`
      : "Split it into panels first.";
  return `${whyNot(paper, pieces, units)} ${instead}`;
};

const whyNot = ({ title, use, width, height }: PaperKind, pieces: string, units: Units): string => {
  const room = (side: number): string => lengthIn(side - 2 * margin, units);
  switch (use) {
    case "tiles":
      return `${pieces} would take hundreds of pages of ${title}.`;
    case "roll":
      return `A ${title} has room for ${room(width)} across: it does not take ${pieces}.`;
    case "sheets":
      return `${title} is printed whole, and has room for ${room(width)} by ${room(height)}: it does not take ${pieces}.`;
  }
};
