// A garment as drawings: one for each piece, and one sheet with all of them.
import type { Garment, Piece } from "../working.ts";
import type { Drawing, Group } from "./drawing.ts";
import { paperAround } from "./paper.ts";
import { pieceGroup } from "./piece-group.ts";
import type { Remarks } from "./remarks.ts";
import { sheetOf } from "./sheet.ts";

export interface Drawings {
  /** By the piece's name, in the order of the recipe. */
  readonly pieces: ReadonlyMap<string, Drawing>;
  readonly sheet: Drawing;
}

/** Every piece drawn by itself, and all of them laid side by side on one sheet. */
export const draw = (garment: Garment, remarks: Remarks = { choices: [] }): Drawings => {
  const groups = [...garment.pieces].map(([name, piece]) => ({ name, group: pieceGroup(garment, piece) }));
  return {
    pieces: new Map(groups.map(({ name, group }) => [name, alone(garment, group)])),
    sheet: sheetOf(
      garment,
      groups.map(({ group }) => group),
      remarks,
    ),
  };
};

/** One piece, where it lies on the flat table. */
export const drawPiece = (garment: Garment, piece: Piece): Drawing => alone(garment, pieceGroup(garment, piece));

const alone = (garment: Garment, group: Group): Drawing => ({
  title: `${group.name}, ${garment.title}`,
  words: group.words,
  paper: paperAround([group]),
  groups: [group],
});
