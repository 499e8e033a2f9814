// The pieces as they were after some of the steps of the working: what the hand would have on the table by then.
import type { Evaluated } from "../../kernel/evaluate.ts";
import type { Piece } from "../../kernel/working.ts";
import type { Picture } from "./picture.ts";
import { picturedAs } from "./pictured.ts";

/** The picture after the first `steps` entries of the record; pieces not begun by then are not there. */
export const picturedAsOf = (evaluated: Evaluated, steps: number): Picture => {
  const pieces = new Map<string, Piece>();
  for (const { changed } of evaluated.records.slice(0, steps))
    for (const { after } of changed) pieces.set(after.name, after);
  return picturedAs(evaluated, { ...evaluated.garment, pieces });
};
