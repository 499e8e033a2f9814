// An edge is brought to a length: one of its ends moves along the neighbouring edge, and the edge follows in proportion.
import { pathLength } from "../geometry/arc-length.ts";
import { carriedOn } from "../geometry/offset.ts";
import { endOf, type Path, reversed } from "../geometry/path.ts";
import { part } from "../geometry/split.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { Edge, Piece, Units } from "../working.ts";
import { followed } from "./followed.ts";
import { turnInOutline } from "./outline-spot.ts";
import { reshaped } from "./reshaped.ts";
import { solved } from "./trued.ts";

/** The piece with an edge of a length in mm; `shaped` makes the line smooth before it is measured. */
export const broughtToLength = (
  piece: Piece,
  name: string,
  length: number,
  moving: "start" | "end",
  shaped: (piece: Piece, path: Path) => Path,
  units: Units,
): Piece => {
  const index = turnInOutline(piece, name);
  const walk = walked(piece);
  const { edge, turned } = walk[index]!;
  const isNext = (moving === "end") !== turned;
  const neighbour = walk[(index + (isNext ? 1 : walk.length - 1)) % walk.length]!;
  // The neighbour as it ends at the corner, whichever way it was drafted.
  const arriving = isNext ? reversed(neighbour.path) : neighbour.path;
  const endsAsDrafted = isNext === neighbour.turned;
  const pathsAt = (further: number): Map<string, Path> => {
    const ending =
      further > 0 ? carriedOn(arriving, "end", further) : part(arriving, 0, pathLength(arriving) + further);
    const beside = endsAsDrafted ? ending : reversed(ending);
    const now = withPath(piece, neighbour.edge, beside);
    return new Map([
      [name, shaped(now, followed(edge.path, moving, endOf(ending)))],
      [neighbour.edge.name, beside],
    ]);
  };
  const off = (further: number): number => pathLength(pathsAt(further).get(name)!) - length;
  const own = pathLength(arriving);
  // The last millimetre of the neighbour stays: an edge of no length is none.
  const further = solved(off, 0, Math.min(0, 1 - own), own + pathLength(edge.path));
  if (further !== undefined) return reshaped(piece, pathsAt(further));
  throw new Problem(
    "length-out-of-reach",
    `Moved along ${neighbour.edge.name}, the ${moving} of ${name} never brings it to ${lengthIn(length, units)}; it measures ${lengthIn(off(0) + length, units)}.`,
    { hint: "Move its other end, or take another length." },
  );
};

// While the length is being looked for, nothing but the edges needs to move.
const withPath = (piece: Piece, edge: Edge, path: Path): Piece => ({
  ...piece,
  edges: new Map(piece.edges).set(edge.name, { ...edge, path }),
});
