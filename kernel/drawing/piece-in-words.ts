// A piece in words, for those who have its drawing read out.
import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { bounds } from "../geometry/bounds.ts";
import type { Path } from "../geometry/path.ts";
import { walked } from "../outline.ts";
import { lengthIn } from "../units.ts";
import type { Edge, Garment, Piece } from "../working.ts";
import { cutOrders } from "./label-block.ts";

/** What a piece is, what to cut of it, how large, and its edges with their lengths and allowances. */
export const pieceInWords = (garment: Garment, piece: Piece): string => {
  const cut = cuttingLine(piece);
  const orders = cutOrders(garment, piece).map((order) => order.toLowerCase());
  const extent = cut && `${extentInWords(cut.path, garment)} over the cutting line`;
  const edges = walked(piece).map(({ edge }) => edgeInWords(garment, piece, edge));
  const head = [piece.name, ...orders, extent ?? "outline not closed"].join(", ");
  return edges.length === 0 ? `${head}.` : `${head}. Edges: ${edges.join("; ")}.`;
};

const extentInWords = (path: Path, { units }: Garment): string => {
  const { left, top, right, bottom } = bounds([path]);
  return `${lengthIn(right - left, units)} wide, ${lengthIn(bottom - top, units)} high`;
};

const edgeInWords = ({ units }: Garment, piece: Piece, { name, path, role }: Edge): string => {
  const allowance = role === "fold" ? undefined : piece.allowances.get(name);
  const part = role === "seam" ? [] : [role];
  const width = allowance && allowance.width > 0 ? [`allowance ${lengthIn(allowance.width, units)}`] : [];
  return [`${name} ${lengthIn(pathLength(path), units)}`, ...part, ...width].join(", ");
};
