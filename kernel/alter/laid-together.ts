// Two pieces that lie edge to edge become one. Edges that run on across the joint under one name become one edge.
import { nearest } from "../geometry/nearest.ts";
import { joined, type Path, reversed, startOf } from "../geometry/path.ts";
import { type Point, sameSpot } from "../geometry/point.ts";
import { sense, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Dart, Edge, OutlinePart, Piece, TakeUp } from "../working.ts";
import { startingAt } from "./moved-edge.ts";
import { turnInOutline } from "./outline-spot.ts";
import { type Naming, renamed } from "./renamed.ts";
import { reshaped } from "./reshaped.ts";

/** A piece and the edge of it that lies against the other's. */
export interface Beside {
  readonly piece: Piece;
  readonly edge: string;
  /** What its edges, places and darts are called where the other piece has others of the same name. */
  readonly naming: Naming;
}

/** The whole, as the first piece goes on; the edge they lie together at stays as a line inside it. */
export const laidTogether = (first: Beside, second: Beside): Piece => {
  for (const { piece, edge } of [first, second]) refuseTaken(piece, edge);
  const meets = fittedTo(first, second);
  const shared = runningOn(first, { ...second, piece: meets });
  const [one, other] = [withNaming(first, meets, shared), withNaming({ ...second, piece: meets }, first.piece, shared)];
  return together(one, first.edge, other, second.edge, shared);
};

// A dart in a seam that is no more would have nothing to be sewn into.
const refuseTaken = (piece: Piece, edge: string): void => {
  const dart = [...piece.darts.values()].find((each) => each.edge === edge);
  const takesUp = dart
    ? `the dart ${dart.name}`
    : piece.takeUps.some((each) => each.edge === edge)
      ? "cloth taken up"
      : "";
  if (takesUp === "") return;
  throw new Problem("join-taken", `The ${edge} of ${piece.name} has ${takesUp} in it, and would be no edge any more.`, {
    hint: "Move or close it above this line.",
  });
};

/** The outline from behind an edge round to it again, the edge itself left out. */
const roundFrom = (piece: Piece, edge: string): OutlinePart[] => {
  const index = turnInOutline(piece, edge);
  return [...piece.outline.slice(index + 1), ...piece.outline.slice(0, index)];
};

const walkedWay = (piece: Piece, { edge, turned }: OutlinePart): Path => {
  const { path } = piece.edges.get(edge)!;
  return turned ? reversed(path) : path;
};

/** The parts of the second outline in the sense in which the first is walked, from where its edge ends. */
const roundLike = (piece: Piece, edge: string, like: Piece): OutlinePart[] => {
  const parts = roundFrom(piece, edge);
  if (sense(piece) === sense(like)) return parts;
  return parts.reverse().map((each) => ({ ...each, turned: !each.turned }));
};

/** The second piece with its edge laid right on the first's, and its neighbours drawn to the ends of that. */
const fittedTo = ({ piece: first, edge: firstEdge }: Beside, { piece, edge }: Beside): Piece => {
  const { path } = walked(first)[turnInOutline(first, firstEdge)]!;
  const parts = roundLike(piece, edge, first);
  const [next, last] = [parts[0]!, parts.at(-1)!];
  const paths = new Map<string, Path>();
  const draw = (part: OutlinePart, way: (path: Path) => Path): void => {
    const drafted = paths.get(part.edge) ?? piece.edges.get(part.edge)!.path;
    const walk = way(part.turned ? reversed(drafted) : drafted);
    paths.set(part.edge, part.turned ? reversed(walk) : walk);
  };
  // The second goes on where the first's edge starts, and comes back to where it ends.
  draw(next, (walk) => startingAt(walk, startOf(path)));
  draw(last, (walk) => reversed(startingAt(reversed(walk), startOf(reversed(path)))));
  const own = piece.edges.get(edge)!.path;
  paths.set(edge, sameSpot(startOf(own), startOf(path), hair) ? path : reversed(path));
  return reshaped(piece, paths);
};

// Edges that are laid together may be off by this many mm at their ends; see brought-together.ts.
const hair = 1;

/** The names of edges that run on from one piece into the other. */
const runningOn = (first: Beside, second: Beside): ReadonlySet<string> => {
  const own = roundFrom(first.piece, first.edge);
  const others = roundLike(second.piece, second.edge, first.piece);
  const runs = (a: OutlinePart, b: OutlinePart): boolean =>
    a.edge === b.edge && first.piece.edges.get(a.edge)!.role === second.piece.edges.get(b.edge)!.role;
  const pairs: [OutlinePart, OutlinePart][] = [[own.at(-1)!, others[0]!]];
  // One edge cannot close up with another at both of its ends.
  if (own.length > 1 || others.length > 1) pairs.push([own[0]!, others.at(-1)!]);
  return new Set(pairs.filter(([a, b]) => runs(a, b)).map(([a]) => a.edge));
};

const withNaming = ({ piece, edge, naming }: Beside, other: Piece, shared: ReadonlySet<string>): Piece =>
  renamed(
    piece,
    (name) => (name !== edge && other.edges.has(name) && !shared.has(name) ? naming(name) : name),
    (name) => {
      const [own, there] = [piece.places.get(name), other.places.get(name)];
      return own && there && !sameSpot(own.point, there.point) ? naming(name) : name;
    },
    (name) => (other.darts.has(name) ? naming(name) : name),
  );

const together = (
  first: Piece,
  firstEdge: string,
  second: Piece,
  secondEdge: string,
  shared: ReadonlySet<string>,
): Piece => {
  const own = roundFrom(first, firstEdge);
  const others = roundLike(second, secondEdge, first);
  const [closing, opening] = [others.at(-1)!, own[0]!];
  const edges = new Map<string, Edge>(first.edges);
  for (const [name, edge] of second.edges) {
    if (name === secondEdge) continue;
    if (edges.has(name) && !shared.has(name)) refuseTwice(name);
    if (!shared.has(name)) edges.set(name, edge);
  }
  edges.set(firstEdge, { ...edges.get(firstEdge)!, role: "seam" });
  const runsOnAtStart = shared.has(own.at(-1)!.edge) && own.at(-1)!.edge === others[0]!.edge;
  const runsOnAtEnd =
    (own.length > 1 || others.length > 1) && shared.has(opening.edge) && opening.edge === closing.edge;
  const runOn = (part: OutlinePart, before: Path, after: Path): void => {
    const walk = joined([before, after]);
    edges.set(part.edge, { ...first.edges.get(part.edge)!, path: part.turned ? reversed(walk) : walk });
  };
  const walkNow = (part: OutlinePart): Path => {
    const { path } = edges.get(part.edge)!;
    return part.turned ? reversed(path) : path;
  };
  if (runsOnAtStart) runOn(own.at(-1)!, walkNow(own.at(-1)!), walkedWay(second, others[0]!));
  if (runsOnAtEnd) runOn(opening, walkedWay(second, closing), walkNow(opening));
  const added = others.slice(runsOnAtStart ? 1 : 0, runsOnAtEnd ? -1 : undefined);
  const gone = (name: string): boolean => name === firstEdge || name === secondEdge;
  const kept = <T extends { readonly edge: string }>(things: readonly T[]): T[] =>
    things.filter(({ edge }) => !gone(edge));
  const labels = second.labels.filter(({ text }) => !first.labels.some((label) => label.text === text));
  const grain = first.grain ?? second.grain;
  return {
    ...first,
    edges,
    places: new Map([...second.places, ...first.places]),
    outline: startingLike([...own, ...added], first),
    allowances: new Map([...second.allowances, ...first.allowances].filter(([name]) => !gone(name))),
    notches: [...kept(first.notches), ...kept(second.notches)],
    drills: [...first.drills, ...second.drills],
    labels: [...first.labels, ...labels],
    hinges: [...kept(first.hinges), ...kept(second.hinges)],
    darts: new Map([
      ...first.darts,
      ...[...second.darts].map(([name, dart]) => [name, dartAsDrafted(dart, edges)] as const),
    ]),
    takeUps: [...kept(first.takeUps), ...kept(second.takeUps).map((takeUp) => takeUpAsDrafted(takeUp, edges))],
    turned: [...kept(first.turned ?? []), ...kept(second.turned ?? [])],
    doubtful: first.doubtful || second.doubtful,
    ...(grain && { grain }),
  };
};

type Edges = ReadonlyMap<string, Edge>;

/** An edge that runs on into the other piece may be walked there against the way it was drafted: what lies on it turns with it. */
const liesBackward = (from: Point, to: Point, edge: string, edges: Edges): boolean => {
  const path = edges.get(edge)?.path;
  return path !== undefined && nearest(path, from).at > nearest(path, to).at;
};

const dartAsDrafted = (dart: Dart, edges: Edges): Dart =>
  liesBackward(dart.first, dart.second, dart.edge, edges) ? { ...dart, first: dart.second, second: dart.first } : dart;

const takeUpAsDrafted = (takeUp: TakeUp, edges: Edges): TakeUp => {
  if (!liesBackward(takeUp.from, takeUp.to, takeUp.edge, edges)) return takeUp;
  const { from, to, laid } = takeUp;
  const facing = laid === "start" ? "end" : laid === "end" ? "start" : laid;
  return { ...takeUp, from: to, to: from, ...(facing !== undefined && { laid: facing }) };
};

const refuseTwice = (name: string): never => {
  throw new Problem("join-name", `Both pieces have something called ${name}, which would stand there twice.`, {
    hint: "Give one of them another name.",
  });
};

/** The outline still starts where the first piece's did, if that edge is still there. */
const startingLike = (parts: readonly OutlinePart[], { outline }: Piece): OutlinePart[] => {
  const start =
    outline.map(({ edge }) => parts.findIndex((part) => part.edge === edge)).find((index) => index >= 0) ?? 0;
  return [...parts.slice(start), ...parts.slice(0, start)];
};
