// Which direction an edge is to have at its ends when it is trued: square to a fold, and a hem square to seams and openings.
import { endDirection, type Path, startDirection } from "../geometry/path.ts";
import { dot, type Point, quarterTurn, times } from "../geometry/point.ts";
import { type Walked, walked } from "../outline.ts";
import type { Edge, Piece, Role } from "../working.ts";
import type { Ends } from "./trued.ts";

/** Which ends are seen to. */
export type Seen = "all" | "folds" | "none";

/** The directions of travel wanted at the ends of an edge as drafted; `path` is the line that it is to have. */
export const endsWanted = (piece: Piece, edge: Edge, path: Path, seen: Seen): Ends => {
  const index = piece.outline.findIndex((part) => part.edge === edge.name);
  if (index < 0) return { start: undefined, end: undefined };
  const walk = walked(piece);
  const before = walk[(index + walk.length - 1) % walk.length]!;
  const after = walk[(index + 1) % walk.length]!;
  const [atStart, atEnd] = walk[index]!.turned ? [after, before] : [before, after];
  return {
    start: squareTo(atStart, edge.role, startDirection(path), seen),
    end: squareTo(atEnd, edge.role, endDirection(path), seen),
  };

  function squareTo(neighbour: Walked, role: Role, direction: Point, which: Seen): Point | undefined {
    if (!isWanted(neighbour.edge.role, role, which)) return undefined;
    const along = neighbour === before ? endDirection(neighbour.path) : startDirection(neighbour.path);
    const square = quarterTurn(along);
    return dot(square, direction) >= 0 ? square : times(square, -1);
  }
};

const isWanted = (neighbour: Role, own: Role, seen: Seen): boolean => {
  if (seen === "none" || own === "fold") return false;
  if (neighbour === "fold") return true;
  return seen === "all" && own === "hem" && neighbour !== "hem";
};
