// The statement of the recipe itself in whose blocks a line stands.
import type { WrittenLine } from "../written.ts";

/** The outermost line around a line; itself where it stands in no block. */
export const outermost = (line: WrittenLine): WrittenLine => {
  let each = line;
  while (each.around) each = each.around;
  return each;
};
