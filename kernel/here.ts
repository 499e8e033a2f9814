// What a recipe knows at a spot of its text: the piece in hand and the names that a line written there could use.
import type { Line } from "../grammar/tree.ts";
import type { Value } from "./value.ts";
import type { Piece } from "./working.ts";

export interface Here {
  /** The piece whose block it is, as the lines above have left it. */
  readonly piece?: Piece;
  /** Names of this block and of those around it, inner before outer; those of lines that failed are not among them. */
  readonly names: readonly NameHere[];
}

export interface NameHere {
  readonly name: string;
  readonly kind: Value["kind"];
  readonly value: Value;
}

/** Thrown where the work has come as far as it was asked to, and caught where it began. */
export class Reached {
  readonly here: Here;

  constructor(here: Here) {
    this.here = here;
  }
}

/** The lines of the innermost block that an offset lies in: behind its { and not behind its }. */
export const blockAround = (lines: readonly Line[], text: string, offset: number): readonly Line[] | undefined => {
  for (const line of lines) {
    if (line.from >= offset) return undefined;
    const branches = line.otherwise ? [line, line.otherwise] : [line];
    for (const { block } of branches) {
      if (block && block.from < offset && (offset < block.to || (offset === block.to && text[offset - 1] !== "}")))
        return blockAround(block.lines, text, offset) ?? block.lines;
    }
    const within = line.otherwise && blockAround([line.otherwise], text, offset);
    if (within) return within;
  }
  return undefined;
};
