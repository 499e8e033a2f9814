// Where the sizes of a piece are laid on one another: about a place or an edge that was chosen, else about the upper end of the
// fold or of the grain line, else as they were drafted. They are only shifted, so that the grain stays one.
import { grainLine } from "../drawing/grain-line.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { minus, type Point } from "../geometry/point.ts";
import { foldOf } from "../grain-direction.ts";
import type { Piece } from "../working.ts";

/** How the sizes of one piece are laid. */
export interface NestPlace {
  /** How far each is shifted, mm; the one that stays, by nothing. */
  readonly shifts: readonly Point[];
  /** In words: "at nape", "at the upper end of the grain line", "as they were drafted". */
  readonly about: string;
}

/** Where some sizes of one piece are laid on one another; the one by index stays where it was drafted. */
export const nestPlace = (pieces: readonly Piece[], staying: number, nestAt?: string): NestPlace => {
  for (const { about, spot } of [...(nestAt === undefined ? [] : waysTo(nestAt)), foldTop, grainTop]) {
    const spots = pieces.map(spot);
    const stays = spots[staying];
    // One size that has no such place would lie anywhere, so that the next way has to do for all.
    if (stays && spots.every((each) => each !== undefined))
      return { shifts: spots.map((each) => minus(stays, each)), about };
  }
  return { shifts: pieces.map(() => ({ x: 0, y: 0 })), about: "as they were drafted" };
};

/** A place that a piece may have, and how one says that sizes are laid at it. */
interface Way {
  readonly about: string;
  spot(piece: Piece): Point | undefined;
}

/** The place of that name, and the upper end of the edge of that name. */
const waysTo = (name: string): Way[] => [
  { about: `at ${name}`, spot: ({ places }) => places.get(name)?.point },
  {
    about: `at the upper end of ${name}`,
    spot: ({ edges }) => {
      const edge = edges.get(name);
      return edge && upperEnd(edge.path);
    },
  },
];

/** Whether these pieces can be laid at a place or an edge of that name: all of them have the one, or all the other. */
export const canLieAt = (pieces: readonly Piece[], name: string): boolean =>
  waysTo(name).some(({ spot }) => pieces.every((piece) => spot(piece) !== undefined));

const foldTop: Way = {
  about: "at the upper end of the fold",
  spot: (piece) => {
    const fold = foldOf(piece);
    return fold && upperEnd(fold.path);
  },
};

const grainTop: Way = {
  about: "at the upper end of the grain line",
  spot: (piece) => {
    const grain = grainLine(piece);
    return grain && upperEnd(grain);
  },
};

/** The upper end of a path, and the left one where it is level. */
const upperEnd = (path: Path): Point => {
  const [start, end] = [startOf(path), endOf(path)];
  if (Math.abs(start.y - end.y) > level) return start.y < end.y ? start : end;
  return start.x <= end.x ? start : end;
};

// Ends that differ by less than this in height, in mm, lie level.
const level = 0.01;
