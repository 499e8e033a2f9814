// A piece whose edges, places and darts go by other names, wherever the piece speaks of them.
import type { Piece } from "../working.ts";
import type { AllBut } from "./all-but.ts";

/** How names change; a name that stays is given back as it is. */
export type Naming = (name: string) => string;

/** The same piece with other names for its edges, places and darts. */
export const renamed = (piece: Piece, edge: Naming, place: Naming = same, dart: Naming = same): Piece => {
  const onEdge = <T extends { readonly edge: string }>(thing: T): T => ({ ...thing, edge: edge(thing.edge) });
  const { grain } = piece;
  const all: AllBut<WithoutNames | "turned" | "grain"> = {
    edges: called(piece.edges, edge),
    places: called(piece.places, place),
    outline: piece.outline.map(onEdge),
    allowances: new Map([...piece.allowances].map(([name, allowance]) => [edge(name), allowance])),
    notches: piece.notches.map(onEdge),
    hinges: piece.hinges.map(onEdge),
    keeps: piece.keeps.map(onEdge),
    takeUps: piece.takeUps.map(onEdge),
    darts: new Map(
      [...called(piece.darts, dart)].map(([name, each]) => [
        name,
        { ...onEdge(each), ...(each.folded !== undefined && { folded: edge(each.folded) }) },
      ]),
    ),
  };
  return {
    ...piece,
    ...all,
    ...(piece.turned && { turned: piece.turned.map(onEdge) }),
    ...(grain?.kind === "along" && { grain: onEdge(grain) }),
  };
};

/** These speak of no edge, place or dart by name; the pieces of before keep the names of then. */
type WithoutNames = "name" | "source" | "from" | "kept" | "drills" | "labels" | "doubtful" | "drawnBy";

const same: Naming = (name) => name;

const called = <T extends { readonly name: string }>(things: ReadonlyMap<string, T>, naming: Naming): Map<string, T> =>
  new Map([...things].map(([name, thing]) => [naming(name), { ...thing, name: naming(name) }]));
