// Blocks laid on shelves across a width, the highest first: simple, the same every time, and dense enough for paper.
import type { Group } from "../drawing/drawing.ts";
import type { Point } from "../geometry/point.ts";
import { type Block, movedGroups, turnedBlock } from "./block.ts";

/** Blocks where they lie, how far down they reach, mm, and those for which there was no room. */
export interface Laid {
  readonly blocks: readonly { readonly block: Block; readonly at: Point }[];
  readonly height: number;
  readonly left: readonly Block[];
}

/** Lays blocks on shelves no wider and no further down than this; `first` open the first shelf. */
export const onShelves = (
  blocks: readonly Block[],
  { width, height, first = [] }: { readonly width: number; readonly height: number; readonly first?: readonly Block[] },
): Laid => {
  const highestFirst = blocks.map((block) => upright(block, width)).sort((a, b) => b.height - a.height);
  const shelves: { top: number; height: number; right: number }[] = [];
  const laid: { block: Block; at: Point }[] = [];
  const left: Block[] = [];
  for (const block of [...first, ...highestFirst]) {
    const shelf = shelves.find((each) => each.right + block.width <= width && block.height <= each.height);
    const below = shelves.at(-1);
    const top = below ? below.top + below.height + gap : 0;
    if (shelf) {
      laid.push({ block, at: { x: shelf.right, y: shelf.top } });
      shelf.right += block.width + gap;
    } else if (block.width <= width && top + block.height <= height) {
      laid.push({ block, at: { x: 0, y: top } });
      shelves.push({ top, height: block.height, right: block.width + gap });
    } else left.push(block);
  }
  const last = shelves.at(-1);
  return { blocks: laid, height: last ? last.top + last.height : 0, left };
};

/** The groups of all blocks where they lie, moved by a vector. */
export const groupsOf = ({ blocks }: Laid, by: Point): Group[] =>
  blocks.flatMap(({ block, at }) => movedGroups(block.groups, { x: at.x + by.x, y: at.y + by.y }));

/** Upright where that fits, for lettering that reads without turning the paper. */
const upright = (block: Block, width: number): Block => (block.width <= width ? block : turnedBlock(block));

// Between blocks, mm.
const gap = 8;
