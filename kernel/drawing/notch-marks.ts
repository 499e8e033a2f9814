// Notches as strokes square to the seam, from the cutting line inward: as deep as they are snipped, and never to the seam.
// Where nothing is cut across from the seam they stand on it and go into the piece.
import { directionAt, pathLength, pointAt } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { type Path, straight } from "../geometry/path.ts";
import { plus, quarterTurn, times } from "../geometry/point.ts";
import { outward } from "../outline.ts";
import type { Notch, Piece } from "../working.ts";
import { cutAcross } from "./cut-across.ts";
import type { Stroke } from "./drawing.ts";
import { walkedEdge } from "./walked-edge.ts";

/** The strokes of a notch: one, or two beside each other for a double one. */
export const notchMarks = (piece: Piece, notch: Notch): Stroke[] => {
  const edge = walkedEdge(piece, notch.edge);
  if (!edge) return [];
  const length = pathLength(edge.path);
  const at = nearest(edge.path, notch.point).at;
  return places(at, length, notch.double).map((place) => ({
    kind: "notch",
    path: edge.walked ? outwardMark(piece, notch.edge, edge.path, place) : tick(edge.path, place),
  }));
};

// Half of 8 mm; common practice, no source, is 6 to 10 between the two strokes.
const besideMiddle = 4;

// Common practice, no source: a notch is 3 to 6 deep and never over half the allowance. Where there is none it goes into the piece.
const depth = 5;

const places = (at: number, length: number, double: boolean): number[] => {
  if (!double) return [at];
  const middle = Math.min(Math.max(at, besideMiddle), length - besideMiddle);
  return [middle - besideMiddle, middle + besideMiddle];
};

const outwardMark = (piece: Piece, edge: string, path: Path, place: number): Path => {
  const from = pointAt(path, place);
  const out = outward(piece, directionAt(path, place));
  const cut = cutAcross(piece, edge, from, out);
  if (!cut) return straight(from, plus(from, times(out, -depth)));
  return straight(cut.point, plus(cut.point, times(out, -Math.min(depth, cut.away / 2))));
};

/** A short stroke across an inner line. */
const tick = (path: Path, place: number): Path => {
  const across = quarterTurn(directionAt(path, place));
  const middle = pointAt(path, place);
  return straight(plus(middle, times(across, -depth / 2)), plus(middle, times(across, depth / 2)));
};
