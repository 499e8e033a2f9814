// One piece becomes two along a cut. Each takes its stretches of the edges, and all that lies on its side of the cut.
import type { Where } from "../../grammar/diagnostic.ts";
import { dartCorners } from "../dart-halves.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { crossings } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { joined, type Path, reversed, startOf } from "../geometry/path.ts";
import { type Point, sameSpotTolerance } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { boundary, walked } from "../outline.ts";
import { emptyPiece } from "../piece.ts";
import { Problem } from "../problem.ts";
import type { Allowance, Dart, Edge, Notch, OutlinePart, Piece, TakeUp, Turned } from "../working.ts";
import type { AllBut } from "./all-but.ts";
import { grainWithin } from "./grain-within.ts";
import type { Slash } from "./slash.ts";
import { turnAlong, turnsOf, withoutRepeats } from "./turned.ts";
import { isOnSlash, otherSide, outlineOf, type Side, sideOfPoint, stretchesOf } from "./two-parts.ts";

/** The edge that a cut leaves on both of its sides. */
export interface CutEdge {
  readonly name: string;
  readonly allowance?: Allowance;
  /** Where it is notched, the same on both sides. */
  readonly notches: readonly Notch[];
  readonly drawnBy: Where;
}

/** A stretch of one of the old edges on one side, under its new name. */
interface Laid {
  readonly was: Edge;
  readonly name: string;
  /** As it was drafted, and from where to where of the old edge it ran, mm. */
  readonly path: Path;
  readonly from: number;
  readonly to: number;
  /** Its turn in the new outline; undefined for a line inside. */
  readonly turned?: boolean;
}

/** One side of the cut as a piece; an edge of which it has two stretches has them numbered, as drafted: hem-1 and hem-2. */
export const partOn = (piece: Piece, slash: Slash, side: Side, cut: CutEdge, name: string, drawnBy: Where): Piece => {
  const outer = outerStretches(piece, slash, side);
  const laid = [...outer, ...innerStretches(piece, slash, side, cut.name)];
  const taken = laid.find((each) => each.name === cut.name);
  if (taken) {
    throw new Problem("split-name", `${name} would have two edges called ${cut.name}.`, {
      hint: "Split along a line with a name of its own.",
    });
  }
  const here = (point: Point): boolean => isOnSlash(slash, point) || sideNear(piece, slash, point) === side;
  const onNew = <T extends { readonly edge: string; readonly point: Point }>(thing: T): T[] => {
    const on = laid.find(({ was, path }) => was.name === thing.edge && isOn(path, thing.point));
    return on ? [{ ...thing, edge: on.name }] : [];
  };
  const edges = new Map(laid.map((each) => [each.name, { ...each.was, name: each.name, path: each.path }]));
  edges.set(cut.name, { name: cut.name, path: slash.path, role: "seam", drawnBy: cut.drawnBy });
  const outline = outlineWith(piece, outer, { edge: cut.name, turned: side === "ahead" });
  const allowances = new Map(
    outer.flatMap(({ was, name: edge }) => {
      const allowance = piece.allowances.get(was.name);
      return allowance ? [[edge, allowance] as const] : [];
    }),
  );
  if (cut.allowance) allowances.set(cut.name, cut.allowance);
  const own: AllBut<BegunAnew | "grain"> = {
    edges,
    places: new Map([...piece.places].filter(([, { point }]) => here(point))),
    outline,
    allowances,
    notches: [...piece.notches.flatMap(onNew), ...cut.notches],
    drills: piece.drills.filter(({ point }) => here(point)),
    labels: piece.labels.filter(({ at }) => at === undefined || here(at)),
    hinges: piece.hinges.flatMap(onNew),
    darts: new Map([...piece.darts].flatMap(([dart, each]) => dartHere(piece, slash, side, laid, dart, each))),
    takeUps: piece.takeUps.flatMap((takeUp) => takeUpHere(takeUp, laid)),
    turned: [...outer.flatMap((each) => turnedOn(piece, each)), ...turnedAtCut(piece, slash, side, cut.name)],
    doubtful: piece.doubtful,
  };
  const bare: Piece = { ...emptyPiece(name, drawnBy), ...own };
  const renamedEdge = (edge: string): string | undefined => laid.find(({ was }) => was.name === edge)?.name;
  const grain = piece.grain && grainWithin(piece, boundary(bare)!, renamedEdge, piece.grain);
  return { ...bare, ...(grain && { grain }) };
};

/** A part is a piece of its own: it has no past, and has promised nothing. */
type BegunAnew = "name" | "source" | "from" | "kept" | "keeps" | "drawnBy";

const isOn = (path: Path, point: Point): boolean => nearest(path, point).distance <= sameSpotTolerance;

/** The side a point lies on; off the cloth, that of the nearer part. */
const sideNear = (piece: Piece, slash: Slash, point: Point): Side => {
  const found = sideOfPoint(piece, slash, point);
  if (found) return found;
  const away = (side: Side): number => nearest(outlineOf(stretchesOf(piece, slash), side), point).distance;
  return away("ahead") <= away("behind") ? "ahead" : "behind";
};

const outerStretches = (piece: Piece, slash: Slash, side: Side): (Laid & { readonly turned: boolean })[] => {
  const walk = walked(piece);
  const stretches = stretchesOf(piece, slash).filter((stretch) => stretch.side === side);
  return stretches.map(({ index, from, to, path }) => {
    const { edge, turned, path: whole } = walk[index]!;
    const length = pathLength(whole);
    const range = turned ? { from: length - to, to: length - from } : { from, to };
    const alike = stretches.filter((other) => other.index === index);
    const before = alike.filter((other) => (turned ? other.from > from : other.from < from)).length;
    return {
      was: edge,
      ...range,
      name: numbered(edge.name, before, alike.length),
      path: turned ? reversed(path) : path,
      turned,
    };
  });
};

const numbered = (name: string, before: number, all: number): string => (all > 1 ? `${name}-${before + 1}` : name);

/** Lines inside the piece, cut where they cross the cut. */
const innerStretches = (piece: Piece, slash: Slash, side: Side, cutName: string): Laid[] => {
  const inner = [...piece.edges.values()].filter(
    ({ name }) => name !== cutName && !piece.outline.some(({ edge }) => edge === name),
  );
  return inner.flatMap((was) => {
    const length = pathLength(was.path);
    const crossed = crossings(was.path, slash.path).map(({ onFirst }) => onFirst);
    const ends = [0, ...crossed.filter((at) => at > sameSpotTolerance && at < length - sameSpotTolerance), length];
    const stretches = ends.slice(1).map((to, index) => ({ from: ends[index]!, to }));
    const here = stretches.filter(
      ({ from, to }) => sideNear(piece, slash, pointAt(was.path, (from + to) / 2)) === side,
    );
    return here.map(({ from, to }, index) => ({
      was,
      from,
      to,
      name: numbered(was.name, index, here.length),
      path: stretches.length === 1 ? was.path : part(was.path, from, to),
    }));
  });
};

/** Starts with the edge that comes first in the whole outline. */
const outlineWith = (
  piece: Piece,
  outer: readonly (Laid & { readonly turned: boolean })[],
  cut: OutlinePart,
): OutlinePart[] => {
  const parts = [...outer.map(({ name, turned }) => ({ edge: name, turned })), cut];
  const first = piece.outline.find(({ edge }) => outer.some(({ was }) => was.name === edge));
  const start = Math.max(
    0,
    outer.findIndex(({ was }) => was.name === first?.edge),
  );
  return [...parts.slice(start), ...parts.slice(0, start)];
};

const dartHere = (
  piece: Piece,
  slash: Slash,
  side: Side,
  laid: readonly Laid[],
  name: string,
  dart: Dart,
): [string, Dart][] => {
  const corners = dartCorners(dart).filter((point) => !isOnSlash(slash, point));
  const sides = new Set(corners.map((point) => sideNear(piece, slash, point)));
  if (sides.size > 1) {
    throw new Problem("split-dart", `The line cuts through the dart ${name}.`, {
      hint: dart.lower
        ? "Split beside it, or draw the dart on the new pieces."
        : "Move or close the dart above this line, or let its tip lie on the line.",
    });
  }
  const on = laid.find(({ was, path }) => was.name === dart.edge && isOn(path, dart.first) && isOn(path, dart.second));
  if (!on || sides.has(otherSide(side))) return [];
  const folded = laid.find(({ was }) => was.name === dart.folded)?.name;
  const { folded: _, ...rest } = dart;
  return [[name, { ...rest, edge: on.name, ...(folded !== undefined && { folded }) }]];
};

// Pleats and gathers that the cut runs through are shared out by their length.
const takeUpHere = (takeUp: TakeUp, laid: readonly Laid[]): TakeUp[] =>
  laid
    .filter(({ was }) => was.name === takeUp.edge)
    .flatMap(({ was, name, from, to }) => {
      const [start, end] = [nearest(was.path, takeUp.from).at, nearest(was.path, takeUp.to).at];
      const [low, high] = [Math.max(Math.min(start, end), from), Math.min(Math.max(start, end), to)];
      if (high - low <= sameSpotTolerance) return [];
      const whole = Math.abs(end - start);
      if (high - low >= whole - sameSpotTolerance) return [{ ...takeUp, edge: name }];
      const share = (high - low) / whole;
      return [
        {
          ...takeUp,
          edge: name,
          from: pointAt(was.path, low),
          to: pointAt(was.path, high),
          amount: takeUp.amount * share,
        },
      ];
    });

const turnedOn = (piece: Piece, { was, name, path, from, to }: Laid): Turned[] => {
  const turns = turnsOf(piece, was.name);
  const angle = turnAlong(turns, from + sameSpotTolerance);
  const inside = turns
    .filter(({ at }) => at > from + sameSpotTolerance && at < to - sameSpotTolerance)
    .map((entry) => ({ edge: name, from: pointAt(was.path, entry.at), angle: entry.angle, here: entry.here }));
  return withoutRepeats([{ edge: name, from: startOf(path), angle, here: angle }, ...inside]);
};

// The new edge has turned with the cloth beside its start.
const turnedAtCut = (piece: Piece, slash: Slash, side: Side, name: string): Turned[] => {
  const stretches = stretchesOf(piece, slash).filter((stretch) => stretch.side === side);
  const beside = side === "ahead" ? stretches[0]! : stretches.at(-1)!;
  const { edge, turned, path } = walked(piece)[beside.index]!;
  const at = side === "ahead" ? beside.from + sameSpotTolerance : beside.to - sameSpotTolerance;
  const angle = turnAlong(turnsOf(piece, edge.name), turned ? pathLength(path) - at : at);
  return withoutRepeats([{ edge: name, from: slash.hinge, angle, here: angle }]);
};

/** The outline of one side, closed by the cut. */
export const loopOf = (piece: Piece, slash: Slash, side: Side): Path =>
  joined([outlineOf(stretchesOf(piece, slash), side), side === "ahead" ? reversed(slash.path) : slash.path]);
