// A whole piece moves as one stiff sheet, or is turned over: everything on it goes along.
import { mapped } from "../geometry/path.ts";
import { minus, type Point } from "../geometry/point.ts";
import { bearing, turnBetween } from "../geometry/trig.ts";
import type { Dart, Piece, Turned } from "../working.ts";
import type { AllBut } from "./all-but.ts";

/** A rule that takes every point of the table to its new place and keeps all distances. */
export type Move = (point: Point) => Point;

/** The piece with all that is on it in its new place. */
export const movedPiece = (piece: Piece, move: Move): Piece => {
  const moved = <T extends { readonly point: Point }>(thing: T): T => ({ ...thing, point: move(thing.point) });
  const { grain } = piece;
  const all: AllBut<WithoutPoints | "grain"> = {
    edges: new Map([...piece.edges].map(([name, edge]) => [name, { ...edge, path: mapped(edge.path, move) }])),
    places: new Map([...piece.places].map(([name, place]) => [name, moved(place)])),
    notches: piece.notches.map(moved),
    drills: piece.drills.map(moved),
    labels: piece.labels.map((label) => (label.at ? { ...label, at: move(label.at) } : label)),
    hinges: piece.hinges.map(moved),
    darts: new Map([...piece.darts].map(([name, dart]) => [name, movedDart(dart, move)])),
    takeUps: piece.takeUps.map((takeUp) => ({ ...takeUp, from: move(takeUp.from), to: move(takeUp.to) })),
    turned: turnedWith(piece, move),
  };
  return {
    ...piece,
    ...all,
    ...(grain?.kind === "line" && { grain: { ...grain, from: move(grain.from), to: move(grain.to) } }),
  };
};

/** These speak of the piece by names and amounts. */
type WithoutPoints = "name" | "source" | "from" | "kept" | "outline" | "allowances" | "keeps" | "doubtful" | "drawnBy";

const movedDart = (dart: Dart, move: Move): Dart => ({
  ...dart,
  first: move(dart.first),
  second: move(dart.second),
  tip: move(dart.tip),
  ...(dart.lower && { lower: move(dart.lower) }),
});

// What was down on the piece when it was drafted turns with it; an edge without an entry lay as it was drafted until now.
const turnedWith = ({ turned = [], outline, edges }: Piece, move: Move): Turned[] => {
  const turn = (angle: number): number => {
    const down = { x: 0, y: 1 };
    return turnBetween(down, minus(move(bearing(Math.PI / 2 + angle)), move({ x: 0, y: 0 })));
  };
  const entries = outline.flatMap(({ edge }): Turned[] => {
    const start = edges.get(edge)!.path[0]!.start;
    const own = turned.filter((entry) => entry.edge === edge);
    const [first] = own;
    const starts = first !== undefined && first.from.x === start.x && first.from.y === start.y;
    return starts ? own : [{ edge, from: start, angle: 0, here: 0 }, ...own];
  });
  const now = entries.map((entry) => ({
    ...entry,
    from: move(entry.from),
    angle: turn(entry.angle),
    here: turn(entry.here),
  }));
  return now.every(({ angle, here }) => Math.abs(angle) < noTurn && Math.abs(here) < noTurn) ? [] : now;
};

// Turns nearer than this to none, in radians, are none.
const noTurn = 1e-12;
