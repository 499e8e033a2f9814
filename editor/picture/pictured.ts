// Makes the picture of a garment: each piece drawn by the kernel's own drawing, with its edges, places, notches and other
// marks beside it so that they can be pointed at.
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { type Group, type Mark, strokeKinds } from "../../kernel/drawing/drawing.ts";
import { extentOf } from "../../kernel/drawing/paper.ts";
import { pieceGroup } from "../../kernel/drawing/piece-group.ts";
import type { Evaluated } from "../../kernel/evaluate.ts";
import { pathData } from "../../kernel/export/path-data.ts";
import { directionAt, pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import type { Path } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { isHidden } from "../../kernel/hidden-names.ts";
import { boundary } from "../../kernel/outline.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import { lengthIn } from "../../kernel/units.ts";
import type { Edge, Garment, Piece } from "../../kernel/working.ts";
import { laidOut } from "./laid-out.ts";
import { type LinesOf, linesOf } from "./lines-of.ts";
import type { Picture, PictureOfEdge, PictureOfPiece, PictureOfThing } from "./picture.ts";

/** The picture of a worked recipe. */
export const pictured = (evaluated: Evaluated): Picture => picturedAs(evaluated, evaluated.garment);

/** The picture of a garment that the recipe's lines lead to, such as the one it is after some of its steps. */
export const picturedAs = (evaluated: Evaluated, garment: Garment): Picture => {
  const lines = linesOf(evaluated);
  const drawn = [...garment.pieces.values()].map((piece) => pieceOf(garment, piece, lines));
  const places = laidOut(drawn.map(({ box }) => box));
  return {
    title: garment.title,
    units: garment.units,
    complete: !garment.incomplete,
    pieces: drawn.map((piece, index) => ({ ...piece, at: places[index]! })),
  };
};

const pieceOf = (garment: Garment, piece: Piece, lines: LinesOf): Omit<PictureOfPiece, "at"> => {
  const known = drawnBefore.get(piece);
  const group = known ?? pieceGroup(garment, piece);
  drawnBefore.set(piece, group);
  const box = extentOf([group]);
  const loop = boundary(piece);
  const shape = cuttingLine(piece)?.path ?? loop;
  const outline = new Set(piece.outline.map(({ edge }) => edge));
  return {
    name: piece.name,
    words: group.words,
    doubtful: piece.doubtful,
    ...lines.ofPiece(piece.name),
    box,
    shape: shape ? pathData(shape) : "",
    strokes: strokeKinds.flatMap((kind) => {
      const own = group.strokes.filter((stroke) => stroke.kind === kind);
      return own.length === 0 ? [] : [{ kind, d: own.map(({ path }) => pathData(path)).join(" ") }];
    }),
    texts: group.texts,
    middle: { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 },
    edges: [...piece.edges.values()]
      .filter(({ name }) => !isHidden(name))
      .map((edge) => edgeOf(garment, piece, edge, outline.has(edge.name), lines)),
    places: [...piece.places.values()]
      .filter(({ name }) => !isHidden(name))
      .map(({ name, point }) => ({ name, at: point, ...lines.ofPlace(piece.name, name) })),
    notches: piece.notches.map(({ edge, point, drawnBy }) => ({
      edge,
      at: point,
      ...lines.ofMark(piece.name, drawnBy),
    })),
    things: thingsIn(group, lines),
  };
};

// A piece never changes, and many lines of a recipe leave most pieces alone.
const drawnBefore = new WeakMap<Piece, Group>();

const thingsIn = ({ name: piece, strokes }: Group, lines: LinesOf): PictureOfThing[] => {
  const marks = new Map<Mark, string[]>();
  for (const { of, path } of strokes) if (of) marks.set(of, [...(marks.get(of) ?? []), pathData(path)]);
  return [...marks].map(([{ kind, name, drawnBy }, paths]) => ({
    kind,
    name,
    d: paths.join(" "),
    ...lines.ofMark(piece, drawnBy),
  }));
};

const edgeOf = (garment: Garment, piece: Piece, edge: Edge, inOutline: boolean, lines: LinesOf): PictureOfEdge => {
  const half = pathLength(edge.path) / 2;
  const length = sewnLengthOf(piece, edge.name);
  return {
    name: edge.name,
    role: edge.role,
    inOutline,
    d: pathData(edge.path),
    length,
    lengthInWords: lengthIn(length, garment.units),
    middle: pointAt(edge.path, half),
    outward: outward(piece, edge, half),
    ...lines.ofEdge(piece.name, edge.name),
  };
};

/** The direction square to an edge at a spot that leads away from the piece; to the left of travel where it bounds nothing. */
const outward = (piece: Piece, edge: Edge, at: number): Point => {
  const along = directionAt(edge.path, at);
  const part = piece.outline.find(({ edge: name }) => name === edge.name);
  const loop: Path | undefined = part && boundary(piece);
  // Clockwise on the page, the piece lies to the right of travel.
  const isLeft = !part || !loop || signedArea(loop) > 0 !== part.turned;
  return isLeft ? { x: along.y, y: -along.x } : { x: -along.y, y: along.x };
};
