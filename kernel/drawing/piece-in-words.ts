// A piece in words, for those who have its drawing read out.
import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import { dartHalves } from "../dart-halves.ts";
import { dartMeasures } from "../dart-measures.ts";
import { bounds } from "../geometry/bounds.ts";
import type { Path } from "../geometry/path.ts";
import { withoutHidden } from "../hidden-names.ts";
import { walked } from "../outline.ts";
import { sewnLengthOf } from "../sewn.ts";
import { lengthIn } from "../units.ts";
import type { Dart, Edge, Garment, Piece } from "../working.ts";
import { cutOrders } from "./label-block.ts";

/** What a piece is, what to cut of it, how large, and its edges with their lengths and allowances. */
export const pieceInWords = (garment: Garment, piece: Piece): string => {
  const cut = cuttingLine(piece);
  const orders = cutOrders(garment, piece).map((order) => order.toLowerCase());
  const extent = cut && `${extentInWords(cut.path, garment)} over the cutting line`;
  const edges = walked(piece).map(({ edge }) => edgeInWords(garment, piece, edge));
  const head = [piece.name, ...orders, extent ?? "outline not closed"].join(", ");
  const darts = [...piece.darts.values()].map((dart) => dartInWords(garment, dart));
  const parts = [head, ...said("Edges", edges), ...said("Darts", darts)];
  return parts.map((part) => `${part}.`).join(" ");
};

const said = (what: string, list: readonly string[]): string[] =>
  list.length === 0 ? [] : [`${what}: ${list.join("; ")}`];

const dartInWords = ({ units }: Garment, dart: Dart): string => {
  const { width } = dartMeasures(dart);
  const [upper, lower] = dartHalves(dart).map((half) => lengthIn(dartMeasures(half).legs[0], units));
  const along = lower ? `${upper} along the upper leg, ${lower} along the lower` : `${upper} along the leg`;
  return `${withoutHidden(dart.name)} on the ${dart.edge}, ${lengthIn(width, units)} wide, ${along}`;
};

const extentInWords = (path: Path, { units }: Garment): string => {
  const { left, top, right, bottom } = bounds([path]);
  return `${lengthIn(right - left, units)} wide, ${lengthIn(bottom - top, units)} high`;
};

const edgeInWords = ({ units }: Garment, piece: Piece, { name, role }: Edge): string => {
  const allowance = role === "fold" ? undefined : piece.allowances.get(name);
  const part = role === "seam" ? [] : [role];
  const width = allowance && allowance.width > 0 ? [`allowance ${lengthIn(allowance.width, units)}`] : [];
  return [`${name} ${lengthIn(sewnLengthOf(piece, name), units)}`, ...part, ...width].join(", ");
};
