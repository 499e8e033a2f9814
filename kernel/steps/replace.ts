// replace: other edges take the place of some in the outline.
import { phrase } from "../../grammar/phrase.ts";
import { carriedDart } from "../alter/carried-dart.ts";
import { turnInOutline } from "../alter/outline-spot.ts";
import { withStraightFolds } from "../alter/straight-folds.ts";
import { turnAlong, turnsOf, withoutRepeats } from "../alter/turned.ts";
import { withDart } from "../alter/with-dart.ts";
import { dartMeasures } from "../dart-measures.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, reversed, startOf } from "../geometry/path.ts";
import { distance, type Point, sameSpot } from "../geometry/point.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Edge, OutlinePart, Piece, Turned, Units } from "../working.ts";

export const replace = pieceStep({
  name: "replace",
  since: "0.1",
  summary: "Lets other edges take the place of some in the outline.",
  details: `The new edges meet end to end and meet the edges that stay; they are turned round where needed. Where one replaces one, the
part it plays, its allowance and a grain line along it pass on. Notches on the old edges go to the new. The old edges stay as lines
inside the piece, so that places can still be taken from them.`,
  example: `chalkline 1
units cm
piece vest {
  line neck     = (0, 0) to (12 cm, 0)
  curve armhole = (12 cm, 0) to (20 cm, 22 cm) leaving down arriving right
  line side     = (20 cm, 22 cm) to (20 cm, 50 cm)
  line hem      = (0, 50 cm) to (20 cm, 50 cm)
  line center   = (0, 0) to (0, 50 cm)
  outline neck, armhole, side, hem, center
  curve deeper  = (12 cm, 0) to (20 cm, 22 cm) through (13 cm, 15 cm) leaving down arriving right
  replace armhole with deeper
}`,
  phrase: [
    phrase`replace ${slot.ownEdges("olds", "the edges that leave the outline")} with ${slot.ownEdges("news", "the edges that take their place")}`,
  ],
  work({ olds, news }, piece, { units }) {
    const run = runOf(piece, olds);
    const taken = news.find((edge) => !olds.includes(edge) && piece.outline.some((part) => part.edge === edge));
    if (taken !== undefined || new Set(news).size < news.length) {
      throw new Problem("replace-taken", `${taken ?? news[0]} would stand in the outline twice.`, {
        hint: "Name edges that are not in the outline yet.",
      });
    }
    const parts = fitted(piece, run, news, units);
    // The outline still starts where it did, as long as the edges that left were not the ones it started with.
    const kept = piece.outline.filter(({ edge }) => !olds.includes(edge));
    const outline =
      run.start + olds.length > piece.outline.length
        ? [...parts, ...kept]
        : [...kept.slice(0, run.start), ...parts, ...kept.slice(run.start)];
    const passed =
      olds.length === 1 && news.length === 1
        ? passedOn(piece, olds[0]!, news[0]!)
        : withoutAllowances(piece, olds, news);
    const notches = piece.notches.map((notch) => (olds.includes(notch.edge) ? carried(passed, news, notch) : notch));
    const now: Piece = {
      ...passed,
      // An edge that has left the outline is no line of the piece any more: drawn, it would be cut or sewn by mistake.
      edges: new Map([...passed.edges].filter(([name]) => !olds.includes(name) || news.includes(name))),
      outline,
      notches,
      hinges: piece.hinges.filter(({ edge }) => !olds.includes(edge)),
      turned: [
        ...(piece.turned ?? []).filter(({ edge }) => !olds.includes(edge)),
        ...news.flatMap((edge) => turnedBeside(piece, olds, edge)),
      ],
    };
    const sewn = withDartsCarried(piece, now, olds, news);
    return { now: withStraightFolds(sewn, piece), words: `replaced ${olds.join(", ")} with ${news.join(", ")}` };
  },
});

/** The edges that leave, as a run of the outline. */
interface RunOfOutline {
  readonly start: number;
  /** Where the outline arrives before them, and where it goes on; undefined when nothing of it stays. */
  readonly from: Neighbour | undefined;
  readonly to: Neighbour | undefined;
}

interface Neighbour {
  readonly edge: string;
  readonly point: Point;
}

const runOf = (piece: Piece, olds: readonly string[]): RunOfOutline => {
  const turns = olds.map((edge) => turnInOutline(piece, edge));
  const walk = walked(piece);
  const isIn = (index: number): boolean => turns.includes((index + walk.length) % walk.length);
  const starts = turns.filter((index) => !isIn(index - 1));
  if (new Set(turns).size === walk.length) return { start: 0, from: undefined, to: undefined };
  if (starts.length !== 1 || new Set(turns).size < turns.length) {
    throw new Problem("replace-apart", `${olds.join(" and ")} do not follow each other in the outline.`, {
      hint: "Replace each in a line of its own.",
    });
  }
  const start = starts[0]!;
  const before = walk[(start + walk.length - 1) % walk.length]!;
  const after = walk[(start + turns.length) % walk.length]!;
  return {
    start,
    from: { edge: before.edge.name, point: endOf(before.path) },
    to: { edge: after.edge.name, point: startOf(after.path) },
  };
};

/** The new edges in outline order, each walked so that it goes on where the one before ends. */
const fitted = (piece: Piece, run: RunOfOutline, news: readonly string[], units: Units): OutlinePart[] => {
  const first = chained(piece, run.from?.point, news);
  const last = chained(piece, run.from?.point, [...news].reverse());
  const gapsOf = (parts: readonly OutlinePart[]) => gapsAlong(piece, run, parts);
  const parts = gapsOf(last).length < gapsOf(first).length ? last : first;
  const [gap] = gapsOf(parts);
  if (!gap) return parts;
  throw new Problem(
    "replace-gap",
    `${gap.before} and ${gap.after} do not meet: their ends are ${lengthIn(distance(gap.from, gap.to), units)} apart.`,
    { hint: "Let the new edges start and end where the old ones did, or where the edges that stay now end." },
  );
};

const chained = (piece: Piece, from: Point | undefined, names: readonly string[]): OutlinePart[] => {
  let at = from;
  return names.map((edge) => {
    const { path } = piece.edges.get(edge)!;
    const turned = at !== undefined && distance(at, endOf(path)) < distance(at, startOf(path));
    at = turned ? startOf(path) : endOf(path);
    return { edge, turned };
  });
};

const gapsAlong = (piece: Piece, { from, to }: RunOfOutline, parts: readonly OutlinePart[]) => {
  const walk = parts.map(({ edge, turned }) => {
    const { path } = piece.edges.get(edge)!;
    const way = turned ? reversed(path) : path;
    return { edge, start: startOf(way), end: endOf(way) };
  });
  const [first, last] = [walk[0]!, walk.at(-1)!];
  const arrivals = [
    from ?? { edge: last.edge, point: last.end },
    ...walk.map(({ edge, end }) => ({ edge, point: end })),
  ];
  const departures = [
    ...walk.map(({ edge, start }) => ({ edge, point: start })),
    to ?? { edge: first.edge, point: first.start },
  ];
  return arrivals.flatMap((before, index) => {
    const after = departures[index]!;
    return sameSpot(before.point, after.point)
      ? []
      : [{ before: before.edge, after: after.edge, from: before.point, to: after.point }];
  });
};

/** Role, allowance and grain pass on, unless the new edge was given its own. */
const passedOn = (piece: Piece, old: string, name: string): Piece => {
  const [was, edge] = [piece.edges.get(old)!, piece.edges.get(name)!];
  const now: Edge = { ...edge, role: edge.role === "seam" ? was.role : edge.role };
  const allowances = new Map(piece.allowances);
  const allowance = allowances.get(name) ?? allowances.get(old);
  allowances.delete(old);
  if (allowance) allowances.set(name, allowance);
  const { grain } = piece;
  return {
    ...piece,
    edges: new Map(piece.edges).set(name, now),
    allowances,
    ...(grain?.kind === "along" && grain.edge === old && { grain: { ...grain, edge: name } }),
  };
};

const withoutAllowances = (piece: Piece, olds: readonly string[], news: readonly string[]): Piece => ({
  ...piece,
  allowances: new Map([...piece.allowances].filter(([edge]) => !olds.includes(edge) || news.includes(edge))),
});

const carried = <T extends { readonly edge: string; readonly point: Point }>(
  piece: Piece,
  news: readonly string[],
  thing: T,
): T => {
  const feet = news.map((edge) => ({ edge, ...nearest(piece.edges.get(edge)!.path, thing.point) }));
  const [near] = feet.sort((a, b) => a.distance - b.distance);
  return { ...thing, edge: near!.edge, point: near!.point };
};

// Darts, and what is gathered, go to the new edge that lies nearest.
const withDartsCarried = (piece: Piece, now: Piece, olds: readonly string[], news: readonly string[]): Piece => {
  const nearestTo = (point: Point): string => carried(piece, news, { edge: "", point }).edge;
  const takeUps = piece.takeUps.map((takeUp) => {
    if (!olds.includes(takeUp.edge)) return takeUp;
    const edge = nearestTo(takeUp.from);
    const on = (point: Point): Point => nearest(piece.edges.get(edge)!.path, point).point;
    return { ...takeUp, edge, from: on(takeUp.from), to: on(takeUp.to) };
  });
  const darts = [...piece.darts.values()].filter(({ edge }) => olds.includes(edge));
  return darts.reduce<Piece>(
    (sofar, dart) => {
      const edge = nearestTo(dartMeasures(dart).middle);
      const on = carriedDart({ ...dart, edge }, piece.edges.get(dart.edge)!.path, piece.edges.get(edge)!.path);
      return withDart(sofar, on);
    },
    { ...now, takeUps, darts: foldedToward(now, olds, news) },
  );
};

// What was pressed toward the one edge is pressed toward the other.
const foldedToward = ({ darts }: Piece, olds: readonly string[], news: readonly string[]): Piece["darts"] => {
  const [old, name] = [olds[0]!, news[0]!];
  if (olds.length > 1 || news.length > 1) return darts;
  return new Map([...darts].map(([key, dart]) => [key, dart.folded === old ? { ...dart, folded: name } : dart]));
};

// A new edge lies on the cloth of the old edge beside it, and has turned with it.
const turnedBeside = (piece: Piece, olds: readonly string[], name: string): Turned[] => {
  const { path } = piece.edges.get(name)!;
  const middle = pointAt(path, pathLength(path) / 2);
  const feet = olds.map((edge) => ({ edge, ...nearest(piece.edges.get(edge)!.path, middle) }));
  const [near] = feet.sort((a, b) => a.distance - b.distance);
  const angle = turnAlong(turnsOf(piece, near!.edge), near!.at);
  return withoutRepeats([{ edge: name, from: startOf(path), angle, here: angle }]);
};
