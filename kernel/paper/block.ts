// What is laid on the paper as one: a piece with all that is drawn on it and beside it, in every size.
import type { Drawing, Group, Stroke, Text } from "../drawing/drawing.ts";
import { extentOf } from "../drawing/paper.ts";
import { mapped } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";

/** A block with its upper left corner at (0, 0), mm. */
export interface Block {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly groups: readonly Group[];
}

/** A drawing as a block; its own square to measure by is left out, for the pages bring theirs. */
export const blockOf = (name: string, { groups }: Pick<Drawing, "groups">): Block => {
  const kept = groups.filter(({ of }) => of !== "scale-square");
  const { left, top, right, bottom } = extentOf(kept);
  return { name, width: right - left, height: bottom - top, groups: movedGroups(kept, { x: -left, y: -top }) };
};

/** The block turned by a quarter: what was its left is now its top. */
export const turnedBlock = ({ name, width, height, groups }: Block): Block => ({
  name,
  width: height,
  height: width,
  groups: groups.map((group) => ({
    ...group,
    strokes: group.strokes.map(
      (stroke): Stroke => ({ ...stroke, path: mapped(stroke.path, ({ x, y }) => ({ x: height - y, y: x })) }),
    ),
    texts: group.texts.map(
      (text): Text => ({ ...text, at: { x: height - text.at.y, y: text.at.x }, turn: text.turn + Math.PI / 2 }),
    ),
  })),
});

/** Groups moved by a vector. */
export const movedGroups = (groups: readonly Group[], by: Point): Group[] => {
  const move = (p: Point): Point => ({ x: p.x + by.x, y: p.y + by.y });
  return groups.map((group) => ({
    ...group,
    strokes: group.strokes.map((stroke) => ({ ...stroke, path: mapped(stroke.path, move) })),
    texts: group.texts.map((text) => ({ ...text, at: move(text.at) })),
  }));
};
