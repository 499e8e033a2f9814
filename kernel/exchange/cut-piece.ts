// A piece as a cutting room is sent it: its strokes sorted by what the cutting room does with them.
import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import type { Group, Stroke } from "../drawing/drawing.ts";
import { pieceGroup } from "../drawing/piece-group.ts";
import type { Remarks } from "../drawing/remarks.ts";
import type { CutNotch, CutPiece } from "../export/astm-piece.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { between, type Point, sameSpot } from "../geometry/point.ts";
import type { Garment, Piece } from "../working.ts";

/** A piece of a garment, moved by so much where all lie together; the remarks say of what size it is. */
export const cutPiece = (garment: Garment, piece: Piece, laid: Point, remarks: Remarks): CutPiece => {
  const group = pieceGroup(garment, piece, remarks);
  const cutting = cuttingLine(piece);
  // Of an edge that its neighbours' allowances cover, the cutting line has a single spot.
  const stretches = cutting?.stretches.filter(({ path }) => pathLength(path) > spot) ?? [];
  const onOutline = new Set(cutting?.stretches.map(({ path }) => path));
  const cuts = garment.cuts.filter((cut) => cut.piece === piece.name);
  const ofKind = (...kinds: readonly Stroke["kind"][]): Stroke[] =>
    group.strokes.filter(({ kind, path }) => kinds.includes(kind) && !onOutline.has(path));
  const paths = (...kinds: readonly Stroke["kind"][]) => ofKind(...kinds).map(({ path }) => path);
  const ticks = ofKind("notch").map((stroke) => ({ stroke, notch: notchAt(piece, stroke) }));
  return {
    name: piece.name,
    ...(remarks.size !== undefined && { size: remarks.size }),
    quantity: cuts.reduce((sum, { count }) => sum + count, 0),
    material: [...new Set(cuts.map(({ fabric }) => fabric))].join(", "),
    boundary: stretches.map(({ path }) => path),
    mirror: stretches.flatMap(({ fold, path }) => (fold ? [path] : [])),
    grain: paths("grain"),
    sewing: paths("sewing-line", "hem-line"),
    inner: [
      ...paths("inner-line", "dart-center", "fold"),
      ...ticks.flatMap(({ stroke, notch }) => (notch ? [] : [stroke.path])),
    ],
    cutouts: paths("cutting-line"),
    notches: ticks.flatMap(({ notch }) => (notch ? [notch] : [])),
    drills: drillsOf(group),
    texts: group.texts,
    laid,
  };
};

// Shorter than this, in mm, a stretch is a spot once it is written.
const spot = 0.001;

// Farther from the cutting line than this, in mm, a snip is none but a mark on a line inside the piece.
const onEdge = 0.01;

/** A notch from the edge inward; undefined where the stroke does not reach the edge that is cut. */
const notchAt = (piece: Piece, { path }: Stroke): CutNotch | undefined => {
  const cutting = cuttingLine(piece)?.path;
  if (!cutting) return undefined;
  const ends = [startOf(path), endOf(path)] as const;
  const edge = ends.findIndex((end) => nearest(cutting, end).distance <= onEdge);
  if (edge < 0) return undefined;
  return { at: ends[edge]!, to: ends[1 - edge]! };
};

/** The middle of every cross that marks a hole. */
const drillsOf = ({ strokes }: Group): Point[] =>
  strokes
    .filter(({ kind }) => kind === "drill")
    .map(({ path }) => between(startOf(path), endOf(path), 0.5))
    .filter((middle, index, all) => all.findIndex((other) => sameSpot(other, middle)) === index);
