// A garment, or all its sizes, as the file that a cutting room is sent: a row for each piece, in it a place for each size. The
// sizes are not laid on one another, as the standard's layers say what a line is and leave none to say whose; what cutting
// rooms load is the blocks, in which every size has the coordinates it was drafted with.
import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import { noRemarks, type Remarks } from "../drawing/remarks.ts";
import { astmDxf } from "../export/astm-dxf.ts";
import type { CutPiece } from "../export/astm-piece.ts";
import { type Bounds, bounds } from "../geometry/bounds.ts";
import type { Garment, Piece } from "../working.ts";
import { cutPiece } from "./cut-piece.ts";

/** A garment to cut, and its size where it has one; `base` is the one that the others are seen from. */
export interface CutIn {
  readonly size?: string;
  readonly base: boolean;
  readonly garment: Garment;
}

/** The DXF after ASTM D6673 of a garment in one or more sizes. */
export const cuttingRoomDxf = (sized: readonly CutIn[], remarks: Remarks = noRemarks): string => {
  const base = sized.find((each) => each.base);
  return astmDxf({
    title: (base ?? sized[0])?.garment.title ?? "",
    ...(base?.size !== undefined && { sampleSize: base.size }),
    pieces: laid(sized, remarks),
  });
};

// Between pieces, mm; under each there is room for what is said of it.
const gap = 80;

/** One size as a row of its pieces; several as a row of sizes for each piece. */
const laid = (sized: readonly CutIn[], remarks: Remarks): CutPiece[] => {
  const names = [...new Set(sized.flatMap(({ garment }) => [...garment.pieces.keys()]))];
  const rows = sized.length === 1 ? [names] : names.map((name) => [name]);
  let top = 0;
  return rows.flatMap((row) => {
    let left = 0;
    let bottom = top;
    const pieces = row.flatMap((name) =>
      sized.flatMap(({ garment, size }): CutPiece[] => {
        const piece = garment.pieces.get(name);
        if (!piece) return [];
        const box = boxOf(piece);
        const place = { x: left - box.left, y: top - box.top };
        left += box.right - box.left + gap;
        bottom = Math.max(bottom, top + box.bottom - box.top + gap);
        return [cutPiece(garment, piece, place, size === undefined ? remarks : { ...remarks, size })];
      }),
    );
    top = bottom;
    return pieces;
  });
};

/** The box around the line that a piece is cut along, or around all its lines while that is not closed. */
const boxOf = (piece: Piece): Bounds => {
  const cutting = cuttingLine(piece)?.path;
  const lines = cutting ? [cutting] : [...piece.edges.values()].map(({ path }) => path);
  return lines.length === 0 ? { left: 0, top: 0, right: 0, bottom: 0 } : bounds(lines);
};
