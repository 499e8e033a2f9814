// How far a hem turns round as one walks along it: what fullness comes to in the cloth.
import { directionAt, pathLength } from "./geometry/arc-length.ts";
import { corners, type Path, spanEndDirection, spanStartDirection } from "./geometry/path.ts";
import { turnBetween } from "./geometry/trig.ts";
import { sense, type Walked, walked } from "./outline.ts";
import type { Piece } from "./working.ts";

/** The hems of a piece as its outline walks them. */
export const hemsOf = (piece: Piece): readonly Walked[] => walked(piece).filter(({ edge }) => edge.role === "hem");

/** How far a path of the outline turns in all, radians; positive where the piece fans out toward it. */
export const turningOf = (piece: Piece, path: Path): number => {
  const inSpans = path.reduce((sum, span) => sum + turnBetween(spanStartDirection(span), spanEndDirection(span)), 0);
  const atCorners = corners(path, 0).reduce((sum, { turn }) => sum + turn, 0);
  return (inSpans + atCorners) * sense(piece);
};

/** The least radius, mm, that a path of the outline bends with over any so many mm of it, outward; undefined where it bends nowhere. */
export const tightestRadius = (piece: Piece, path: Path, over: number): number | undefined => {
  const length = pathLength(path);
  const window = Math.min(over, length);
  const looks = Math.max(1, Math.ceil((length - window) / (window / looksPerWindow)));
  const turns = Array.from({ length: looks + 1 }, (_, look) => {
    const from = ((length - window) * look) / looks;
    return turnBetween(directionAt(path, from), directionAt(path, from + window)) * sense(piece);
  });
  const most = Math.max(...turns);
  return most > noTurn ? window / most : undefined;
};

const looksPerWindow = 8;

// Less than this, in radians over a window, is straight.
const noTurn = 1e-6;
