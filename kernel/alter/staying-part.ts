// Which of the two parts of a slashed piece stays where it is.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { between, type Point, sameSpot } from "../geometry/point.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Edge, Piece } from "../working.ts";
import type { Slash } from "./slash.ts";
import { clothSide, isOnSlash, otherSide, type Side, sideOfPoint, sideOfSpot, stretchesOf } from "./two-parts.ts";

/** The part that stays; `moving` names an edge of the other, and it is a Problem when the slash cuts that edge. */
export const stayingPart = (piece: Piece, slash: Slash, moving: string | undefined): Side => {
  if (moving !== undefined) return otherSide(partOfEdge(piece, slash, moving));
  return besideEdge(piece, slash) ?? withFold(piece, slash) ?? withGrain(piece, slash) ?? withFirstStart(piece, slash);
};

const partOfEdge = (piece: Piece, slash: Slash, name: string): Side => {
  const side = wholeSide(piece, slash, name);
  if (side !== undefined) return side;
  throw new Problem("moving-edge-cut", `The slash cuts ${name}, so ${name} is on neither part alone.`, {
    hint: "Name an edge that lies wholly on the part that is to turn.",
  });
};

const wholeSide = (piece: Piece, slash: Slash, name: string): Side | undefined => {
  const index = piece.outline.findIndex(({ edge }) => edge === name);
  const sides =
    index >= 0
      ? stretchesOf(piece, slash)
          .filter((stretch) => stretch.index === index)
          .map(({ side }) => side)
      : sidesOfInnerLine(piece, slash, piece.edges.get(name)!);
  return new Set(sides).size === 1 ? sides[0] : undefined;
};

const sidesOfInnerLine = (piece: Piece, slash: Slash, { path }: Edge): (Side | undefined)[] => {
  const length = pathLength(path);
  return [0, 0.25, 0.5, 0.75, 1]
    .map((share) => pointAt(path, share * length))
    .filter((point) => !isOnSlash(slash, point))
    .map((point) => sideOfPoint(piece, slash, point));
};

// Along a fold or an opening the edge stays; along a seam the piece does.
const besideEdge = (piece: Piece, slash: Slash): Side | undefined => {
  const cloth = clothSide(slash);
  if (cloth === undefined) return undefined;
  const { role } = walked(piece)[slash.along!]!.edge;
  return role === "fold" || role === "opening" ? otherSide(cloth) : cloth;
};

const withFold = (piece: Piece, slash: Slash): Side | undefined => {
  const folds = walked(piece).filter(({ edge }) => edge.role === "fold");
  const sides = folds.map(({ edge }) => wholeSide(piece, slash, edge.name));
  return new Set(sides).size === 1 ? sides[0] : undefined;
};

const withGrain = (piece: Piece, slash: Slash): Side | undefined => {
  const middle = grainMiddle(piece);
  if (middle === undefined || isOnSlash(slash, middle) || sameSpot(middle, slash.hinge)) return undefined;
  return sideOfPoint(piece, slash, middle);
};

const grainMiddle = ({ grain, edges }: Piece): Point | undefined => {
  if (grain === undefined) return undefined;
  if (grain.kind === "line") return between(grain.from, grain.to, 0.5);
  const path = edges.get(grain.edge)?.path;
  return path && pointAt(path, pathLength(path) / 2);
};

// The start is the one it was drafted with; when hinge or target lie there, the edge itself decides.
const withFirstStart = (piece: Piece, slash: Slash): Side => {
  const { turned } = piece.outline[0]!;
  const stretches = stretchesOf(piece, slash)
    .filter(({ index }) => index === 0)
    .sort((a, b) => a.from - b.from);
  const { index, from, to } = (turned ? stretches.at(-1) : stretches[0])!;
  return sideOfSpot(piece, slash, { index, at: (from + to) / 2 });
};
