// A piece cut into several parts along lines through it, each moved as a stiff sheet, and its outline put together again:
// straight across where the parts have drawn apart, without the cloth that is folded away.
import { dartCorners } from "../dart-halves.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { selfCrossingsOfLoop } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, joined, line, mapped, type Path, reversed, type Span, startOf } from "../geometry/path.ts";
import { between, distance, type Point, plus, sameSpotTolerance } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { boundary, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Dart, Edge, Piece, Turned } from "../working.ts";
import { followed } from "./followed.ts";
import { turnAlong, turnsOf, withoutRepeats } from "./turned.ts";

/** Where a part goes. */
export interface Move {
  readonly to: (point: Point) => Point;
  /** How far it turns, radians clockwise on the page. */
  readonly turn: number;
}

/** A stretch of the boundary, in mm from where the outline starts, round past its end where `to` is less than `from`. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Undefined for cloth that is taken out: there the edge closes up, or is bridged across the mouth of a dart. */
  readonly move: Move | undefined;
  readonly mouth?: true;
  /** Of cloth that is taken out: the part that takes up a step where the edge closes up. */
  readonly stepOn?: Move;
}

export const stays: Move = { to: (point) => point, turn: 0 };

export const shifted = (by: Point): Move => ({ to: (point) => plus(point, by), turn: 0 });

/** The piece put together again; the stretches make up the whole boundary, and `moveAt` says where other points go. */
export const partsMoved = (piece: Piece, stretches: readonly Stretch[], moveAt: (point: Point) => Move): Piece => {
  const whole = boundary(piece)!;
  const round = pathLength(whole);
  const pieces = stretches.flatMap((stretch) =>
    stretch.from <= stretch.to
      ? [stretch]
      : [
          { ...stretch, to: round },
          { ...stretch, from: 0 },
        ],
  );
  const moveOf = (point: Point): Move => {
    const { at, distance: off } = nearest(whole, point);
    if (off > sameSpotTolerance) return moveAt(point);
    // Where the outline starts it ends as well, so a place there lies on the stretches of both.
    const own = pieces.filter(({ from, to }) =>
      [at - round, at, at + round].some((each) => each >= from - sameSpotTolerance && each <= to + sameSpotTolerance),
    );
    const inside = own.find(({ from, to }) => at > from + sameSpotTolerance && at < to - sameSpotTolerance);
    const kept = own.filter(({ move }) => move !== undefined);
    // A place where two parts meet stays with the part that stays.
    return (inside ?? kept.find(({ move }) => move === stays) ?? kept[0])?.move ?? moveAt(point);
  };
  const laid = laidOut(piece, pieces);
  const placed = (point: Point): Point => {
    const to = moveOf(point).to(point);
    const { at, distance: off } = nearest(whole, point);
    if (off > sameSpotTolerance) return to;
    // What lies where an edge takes up a step goes with the edge.
    const stepped = laid.stepped.find(({ from, to: until }) => at > from && at < until);
    return stepped ? nearest(stepped.path, to).point : to;
  };
  const moved = <T extends { readonly point: Point }>(thing: T): T => ({ ...thing, point: placed(thing.point) });
  const now: Piece = {
    ...piece,
    edges: new Map([...piece.edges].map(([name, edge]) => [name, laid.edges.get(name) ?? movedLine(edge, moveAt)])),
    places: new Map([...piece.places].map(([name, place]) => [name, moved(place)])),
    notches: piece.notches.map(moved),
    drills: piece.drills.map(moved),
    labels: piece.labels.map((label) => (label.at ? { ...label, at: placed(label.at) } : label)),
    hinges: piece.hinges.map(moved),
    darts: new Map([...piece.darts].map(([name, dart]) => [name, movedDart(dart, moveOf)])),
    takeUps: piece.takeUps.map((takeUp) => ({
      ...takeUp,
      from: placed(takeUp.from),
      to: placed(takeUp.to),
    })),
    turned: laid.turned,
    ...(piece.grain?.kind === "line" && { grain: movedGrain(piece.grain, moveOf) }),
  };
  for (const dart of now.darts.values()) refuseOffLine(now, dart);
  if (selfCrossingsOfLoop(boundary(now) ?? []).length > 0 && selfCrossingsOfLoop(whole).length === 0) {
    throw new Problem("outline-crosses-itself", "This makes the outline cross itself.", {
      hint: "Take a smaller amount, or choose other places.",
    });
  }
  return now;
};

const movedGrain = <T extends { readonly from: Point; readonly to: Point }>(
  grain: T,
  moveOf: (point: Point) => Move,
): T => {
  // The grain is one straight line, so it goes with the part that holds its middle.
  const move = moveOf(between(grain.from, grain.to, 0.5));
  return { ...grain, from: move.to(grain.from), to: move.to(grain.to) };
};

// The legs go with their parts; a tip between two parts goes half way with each.
const movedDart = (dart: Dart, moveOf: (point: Point) => Move): Dart => {
  const [first, second] = [moveOf(dart.first), moveOf(dart.second)];
  if (dart.lower) return movedDoubleEnded(dart, dart.lower, moveOf);
  return {
    ...dart,
    first: first.to(dart.first),
    second: second.to(dart.second),
    tip: between(first.to(dart.tip), second.to(dart.tip), 0.5),
  };
};

// The line goes with one part only, and what a double-ended dart takes up is measured on it.
const refuseOffLine = ({ edges }: Piece, { name, edge, first, second, lower }: Dart): void => {
  const path = edges.get(edge)?.path;
  const isOn = (point: Point): boolean => path !== undefined && nearest(path, point).distance <= sameSpotTolerance;
  if (!lower || (isOn(first) && isOn(second))) return;
  throw new Problem("dart-off-edge", `The dart ${name} would not lie on ${edge} any more.`, {
    hint: `Draw ${edge} and ${name} below this line.`,
  });
};

const movedDoubleEnded = (dart: Dart, lower: Point, moveOf: (point: Point) => Move): Dart => {
  const { to } = moveOf(dart.first);
  const isStiff = dartCorners(dart).every((corner) => distance(moveOf(corner).to(corner), to(corner)) <= nothing);
  if (isStiff) {
    return { ...dart, first: to(dart.first), second: to(dart.second), tip: to(dart.tip), lower: to(lower) };
  }
  throw new Problem("slash-through-dart", `The parts that move meet in the dart ${dart.name}.`, {
    hint: `Draw ${dart.name} below this line.`,
  });
};

// A line inside the piece goes with the part that holds its middle.
const movedLine = (edge: Edge, moveAt: (point: Point) => Move): Edge => {
  const move = moveAt(pointAt(edge.path, pathLength(edge.path) / 2));
  return move === stays ? edge : { ...edge, path: mapped(edge.path, move.to) };
};

interface Laid {
  readonly path: Path;
  readonly move: Move;
  /** Where it lay on its edge as the outline walks it, mm. */
  readonly from: number;
  readonly to: number;
  /** It takes up a step. */
  readonly isStepped: boolean;
}

/** A stretch of the boundary that takes up a step, and how it runs now. */
interface Stepped {
  readonly from: number;
  readonly to: number;
  readonly path: Path;
}

const laidOut = (
  piece: Piece,
  stretches: readonly Stretch[],
): { readonly edges: Map<string, Edge>; readonly turned: Turned[]; readonly stepped: Stepped[] } => {
  const edges = new Map<string, Edge>();
  const turned: Turned[] = [];
  const stepped: Stepped[] = [];
  let start = 0;
  for (const { edge, turned: isTurned, path } of walked(piece)) {
    const length = pathLength(path);
    const begun = start;
    start += length;
    const apart = stretches
      .flatMap(({ from, to, move }): Laid[] => {
        const [low, high] = [Math.max(from - begun, 0), Math.min(to - begun, length)];
        if (move === undefined || high - low <= nothing) return [];
        const stretch =
          low <= nothing && high >= length - nothing ? path : part(path, Math.max(low, 0), Math.min(high, length));
        return [
          { path: move === stays ? stretch : mapped(stretch, move.to), move, from: low, to: high, isStepped: false },
        ];
      })
      .sort((a, b) => a.from - b.from);
    if (apart.length === 0) {
      throw new Problem("edge-used-up", `Nothing of ${edge.name} would be left.`, { hint: "Take a smaller amount." });
    }
    const lostAt = (at: number): Stretch | undefined =>
      stretches.find(
        ({ from, to, move }) => move === undefined && from - begun <= at + nothing && to - begun > at + nothing,
      );
    const own = closedUp(apart, lostAt);
    const whole = joined(own.flatMap((each, index) => [...bridged(own[index - 1]?.path, each.path), each.path]));
    edges.set(edge.name, { ...edge, path: isTurned ? reversed(whole) : whole });
    turned.push(...turnedOn(piece, edge, isTurned, length, own));
    stepped.push(
      ...own
        .filter(({ isStepped }) => isStepped)
        .map((each) => ({ from: begun + each.from, to: begun + each.to, path: each.path })),
    );
  }
  return { edges, turned, stepped };
};

/** The straight line over a gap between two stretches. */
const bridged = (before: Path | undefined, after: Path): Path[] => {
  if (!before) return [];
  const [from, to] = [endOf(before), startOf(after)];
  return distance(from, to) <= nothing ? [] : [[line(from, to)]];
};

/** Stretches between which cloth was taken out meet: a step between them goes out evenly along the one that is to take it up. */
const closedUp = (apart: readonly Laid[], lostAt: (at: number) => Stretch | undefined): Laid[] =>
  apart.map((each, index) => {
    const meets = (other: Laid | undefined, lost: Stretch | undefined): Path | undefined =>
      other && lost && lost.mouth !== true && lost.stepOn === each.move ? other.path : undefined;
    const [before, after] = [apart[index - 1], apart[index + 1]];
    const atStart = before && meets(before, lostAt(before.to));
    const atEnd = meets(after, lostAt(each.to));
    const start = atStart ? stepped(each.path, "start", endOf(atStart)) : each.path;
    const path = atEnd ? stepped(start, "end", startOf(atEnd)) : start;
    return path === each.path ? each : { ...each, path, isStepped: true };
  });

const stepped = (path: Path, which: "start" | "end", to: Point): Path =>
  distance(which === "start" ? startOf(path) : endOf(path), to) <= nothing ? path : followed(path, which, to);

const turnedOn = (piece: Piece, edge: Edge, isTurned: boolean, length: number, laid: readonly Laid[]): Turned[] => {
  const turns = turnsOf(piece, edge.name);
  const drafted = isTurned ? [...laid].reverse() : laid;
  const ranges = drafted.map(({ from, to }) => (isTurned ? { from: length - to, to: length - from } : { from, to }));
  const entries = drafted.flatMap(({ path, move }, index): Turned[] => {
    const range = ranges[index]!;
    const angle = turnAlong(turns, range.from + sameSpotTolerance) + move.turn;
    const inside = turns
      .filter(({ at }) => at > range.from + sameSpotTolerance && at < range.to - sameSpotTolerance)
      .map((entry) => ({
        edge: edge.name,
        from: move.to(pointAt(edge.path, entry.at)),
        angle: entry.angle + move.turn,
        here: entry.here + move.turn,
      }));
    // At a hinge the part that turns and the one that stays share a spot, and that counts as the staying part's.
    const before = drafted[index - 1];
    const staying = move.turn !== 0 && before?.move.turn === 0 ? ranges[index - 1] : undefined;
    const here = staying ? turnAlong(turns, staying.to - sameSpotTolerance) : angle;
    return [{ edge: edge.name, from: isTurned ? endOf(path) : startOf(path), angle, here }, ...inside];
  });
  return withoutRepeats(entries);
};

/** How far along the boundary, in mm, a point of it lies. */
export const alongBoundary = (whole: Path, point: Point): number => nearest(whole, point).at;

/** The boundary from one place on it round to another, in outline order. */
export const boundaryFrom = (whole: Path, from: number, to: number): readonly Span[] => {
  if (from <= to) return part(whole, from, to);
  const round = pathLength(whole);
  return joined([from < round - nothing ? part(whole, from, round) : [], to > nothing ? part(whole, 0, to) : []]);
};

// Stretches shorter than this, in mm, are none.
const nothing = 1e-9;
