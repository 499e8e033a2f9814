// Which direction an edge is to have at its ends when it is trued: square to a fold, and a hem square to seams and openings.
import { endDirection, type Path, startDirection } from "../geometry/path.ts";
import { dot, type Point, quarterTurn, times } from "../geometry/point.ts";
import { walked } from "../outline.ts";
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
  // What is square to a neighbour does not ask which way the neighbour runs.
  const arriving = { role: before.edge.role, along: endDirection(before.path) };
  const leaving = { role: after.edge.role, along: startDirection(after.path) };
  const [atStart, atEnd] = walk[index]!.turned ? [leaving, arriving] : [arriving, leaving];
  const wanted = ({ role, along }: { role: Role; along: Point }, direction: Point): Point | undefined =>
    isWanted(role, edge.role, seen) ? squareTo(along, direction) : undefined;
  return { start: wanted(atStart, startDirection(path)), end: wanted(atEnd, endDirection(path)) };
};

/** Of the two directions square to a line the one nearer to a direction. */
const squareTo = (line: Point, direction: Point): Point => {
  const square = quarterTurn(line);
  return dot(square, direction) >= 0 ? square : times(square, -1);
};

const isWanted = (neighbour: Role, own: Role, seen: Seen): boolean => {
  if (seen === "none" || own === "fold") return false;
  if (neighbour === "fold") return true;
  return seen === "all" && own === "hem" && neighbour !== "hem";
};
