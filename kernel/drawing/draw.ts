// A garment as drawings: one for each piece, and one sheet with all of them.
import type { Garment, Piece } from "../working.ts";
import type { Drawing, Group } from "./drawing.ts";
import { paperAround } from "./paper.ts";
import { pieceGroup } from "./piece-group.ts";
import { noRemarks, type Remarks } from "./remarks.ts";
import { scaleSquareBeside } from "./scale-square-beside.ts";
import { sheetOf } from "./sheet.ts";
import { titleColumn } from "./title-column.ts";

export interface Drawings {
  /** By the piece's name, in the order of the recipe. */
  readonly pieces: ReadonlyMap<string, Drawing>;
  readonly sheet: Drawing;
  /** What a page needs beside the pieces where no title block is printed: a narrow column from (0, 0) on. */
  readonly column: readonly Group[];
}

/** Every piece drawn by itself, and all of them laid side by side on one sheet. */
export const draw = (garment: Garment, remarks: Remarks = noRemarks): Drawings => {
  const groups = [...garment.pieces].map(([name, piece]) => ({ name, group: pieceGroup(garment, piece, remarks) }));
  const kinds = new Set(groups.flatMap(({ group }) => group.strokes.map(({ kind }) => kind)));
  return {
    column: [titleColumn(garment, kinds, remarks)],
    pieces: new Map(
      groups.map(({ name, group }) => [name, alone(garment, [group, scaleSquareBeside(group, garment.units)])]),
    ),
    sheet: sheetOf(
      garment,
      groups.map(({ group }) => group),
      remarks,
    ),
  };
};

/** One piece, where it lies on the flat table, to be looked at: with no scale square, as nothing is cut after it. */
export const drawPiece = (garment: Garment, piece: Piece): Drawing => alone(garment, [pieceGroup(garment, piece)]);

const alone = (garment: Garment, groups: readonly [Group, ...Group[]]): Drawing => ({
  title: `${groups[0].name}, ${garment.title}`,
  words: groups.map(({ words }) => words).join(" "),
  paper: paperAround(groups),
  groups,
});
