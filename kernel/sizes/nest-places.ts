// Where the sizes of a piece are laid on one another: about a place or an edge that was chosen, else about the upper end of the
// fold or of the grain line, else as they were drafted. They are only shifted, so that the grain stays one.
import { grainLine } from "../drawing/grain-line.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { minus, type Point } from "../geometry/point.ts";
import { foldOf } from "../grain-direction.ts";
import type { Piece } from "../working.ts";

/** How far each of some sizes of one piece is shifted, mm; the one by index stays where it was drafted. */
export const nestShifts = (pieces: readonly Piece[], staying: number, nestAt?: string): Point[] => {
  const ways = [...(nestAt === undefined ? [] : [(piece: Piece) => namedSpot(piece, nestAt)]), foldTop, grainTop];
  for (const way of ways) {
    const spots = pieces.map(way);
    const stays = spots[staying];
    // One size that has no such place would lie anywhere, so that the next way has to do for all.
    if (stays && spots.every((spot) => spot !== undefined)) return spots.map((spot) => minus(stays, spot));
  }
  return pieces.map(() => ({ x: 0, y: 0 }));
};

/** The place of that name, or the upper end of that edge; undefined where a piece has neither. */
export const namedSpot = ({ places, edges }: Piece, name: string): Point | undefined => {
  const edge = edges.get(name);
  return places.get(name)?.point ?? (edge && upperEnd(edge.path));
};

const foldTop = (piece: Piece): Point | undefined => {
  const fold = foldOf(piece);
  return fold && upperEnd(fold.path);
};

const grainTop = (piece: Piece): Point | undefined => {
  const grain = grainLine(piece);
  return grain && upperEnd(grain);
};

/** The upper end of a path, and the left one where it is level. */
const upperEnd = (path: Path): Point => {
  const [start, end] = [startOf(path), endOf(path)];
  if (Math.abs(start.y - end.y) > level) return start.y < end.y ? start : end;
  return start.x <= end.x ? start : end;
};

// Ends that differ by less than this in height, in mm, lie level.
const level = 0.01;
