// Edges get new paths, and all that lies on them goes with them: places, notches, hinges, darts, gathers.
import { nearest } from "../geometry/nearest.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { type Point, sameSpot, sameSpotTolerance } from "../geometry/point.ts";
import { walked } from "../outline.ts";
import type { Edge, Piece } from "../working.ts";
import type { AllBut } from "./all-but.ts";
import { carriedDart } from "./carried-dart.ts";
import { withDart } from "./with-dart.ts";

/** The piece with new paths for some of its edges, as drafted; corner places go to the new corners, others to the nearest point. */
export const reshaped = (piece: Piece, paths: ReadonlyMap<string, Path>): Piece => {
  const edges = new Map(
    [...piece.edges].map(([name, edge]): [string, Edge] => [name, { ...edge, path: paths.get(name) ?? edge.path }]),
  );
  const carried = <T extends { readonly edge: string; readonly point: Point }>(thing: T): T => {
    const path = paths.get(thing.edge);
    const old = piece.edges.get(thing.edge);
    return path && old ? { ...thing, point: carriedPoint(old.path, path, thing.point) } : thing;
  };
  const turned = piece.turned?.map(({ from, ...entry }) => {
    const { point, ...rest } = carried({ ...entry, point: from });
    return { ...rest, from: point };
  });
  const all: AllBut<OffTheEdges | "turned" | "darts"> = {
    edges,
    places: new Map(
      [...piece.places].map(([name, place]) => [name, { ...place, point: carriedPlace(piece, paths, place.point) }]),
    ),
    notches: piece.notches.map(carried),
    hinges: piece.hinges.map(carried),
    takeUps: piece.takeUps.map(({ from, to, ...rest }) => ({
      ...rest,
      from: carried({ edge: rest.edge, point: from }).point,
      to: carried({ edge: rest.edge, point: to }).point,
    })),
  };
  const now: Piece = { ...piece, ...all, ...(turned && { turned }) };
  return [...piece.darts.values()]
    .filter(({ edge }) => paths.has(edge))
    .reduce((sofar, dart) => {
      const on = carriedDart(dart, piece.edges.get(dart.edge)!.path, paths.get(dart.edge)!);
      return withDart(sofar, on);
    }, now);
};

/** These lie on no edge, or speak of edges by name alone. */
type OffTheEdges =
  | "name"
  | "source"
  | "from"
  | "kept"
  | "outline"
  | "allowances"
  | "grain"
  | "drills"
  | "labels"
  | "keeps"
  | "doubtful"
  | "drawnBy";

/** Where a point of an edge goes when the edge gets a new path: an end stays an end, others go to the nearest point. */
const carriedPoint = (old: Path, path: Path, point: Point): Point => {
  if (sameSpot(point, startOf(old))) return startOf(path);
  if (sameSpot(point, endOf(old))) return endOf(path);
  return nearest(path, point).point;
};

// A place on the outline goes by the outline alone, wherever inner lines may run through it.
const carriedPlace = (before: Piece, paths: ReadonlyMap<string, Path>, point: Point): Point => {
  const isOn = ({ path }: Edge): boolean => nearest(path, point).distance <= sameSpotTolerance;
  const inOutline = walked(before).map(({ edge }) => edge);
  const others = [...before.edges.values()].filter(({ name }) => paths.has(name));
  const edge = [...inOutline, ...others].find(isOn);
  const path = edge && paths.get(edge.name);
  return path ? carriedPoint(edge.path, path, point) : point;
};
