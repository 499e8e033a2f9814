// The pictures of a hung garment as data: every round of it from both sides and from below, with the straight version behind.
// Plain numbers and names, so that they can cross from a worker to a page, and be made of a mesh that is still settling.
import type { Point } from "../../geometry/point.ts";
import { bodyDepth } from "./body-depth.ts";
import type { Turn } from "./chains.ts";
import { elevation, type Shape, silhouette } from "./elevation.ts";
import { onEllipse } from "./ellipse.ts";
import type { RoundOfPieces } from "./rounds.ts";
import type { HungPlace } from "./slack.ts";
import { hemSeenFromBelow, type Line, standing } from "./standing.ts";

/** What a round is made of, and the body in it. */
export interface RoundPlan {
  readonly turns: readonly Turn[];
  readonly around: RoundOfPieces["around"];
  /** Length of cloth in one fold at the hem, mm. */
  readonly wavelength: number;
  /** Girth of the hip inside it, mm, where the recipe knows it. */
  readonly hip?: number;
}

/** The columns of every piece that hangs, by its name. */
export type ColumnsByPiece = ReadonlyMap<string, readonly (readonly HungPlace[])[]>;

/** Where a fold stands out furthest at the hem, seen from below, and how far, mm. */
export interface Crest {
  readonly at: Point;
  readonly depth: number;
  readonly piece: string;
}

/** A round of a garment as someone sees it. */
export interface Figure {
  /** The pieces that one sees. */
  readonly pieces: readonly string[];
  readonly from: "front" | "behind" | "below";
  readonly around: RoundOfPieces["around"];
  /** How many folds there are all round, and their crests. */
  readonly folds: number;
  readonly crests: readonly Crest[];
  /** In the order in which they are laid on the paper. */
  readonly shapes: readonly Shape[];
  /** The same garment before it was altered, in outline. */
  readonly straight: readonly Point[];
  /** From below, the hip inside. */
  readonly hip: readonly Point[];
  /** How far the hem stands out on both sides together, and the hip, mm. */
  readonly width: number;
  readonly hipWidth?: number;
}

/** The pictures of a round, none where a piece of it does not hang; `straight` are the columns of the pieces it was made from. */
export const figuresOf = (round: RoundPlan, columns: ColumnsByPiece, straight: ColumnsByPiece): Figure[] => {
  const lines = linesOf(round, columns);
  if (lines.length === 0) return [];
  const before = linesOf(round, straight);
  const hem = hemSeenFromBelow(lines);
  const hip = hipOf(round);
  const crests = lines.flatMap(({ isCrest, depths, panel }, index): Crest[] =>
    isCrest ? [{ at: hem[index]!, depth: depths.at(-1)!, piece: round.turns[panel]!.piece }] : [],
  );
  const about = {
    around: round.around,
    folds: crests.length,
    crests,
    width: widthOf(hem),
    ...(hip.length > 0 && { hipWidth: widthOf(hip) }),
  };
  const names = [...new Set(round.turns.map(({ piece }) => piece))];
  const side = (from: "front" | "behind"): Figure => {
    const facing = lines.filter((line) => faces(line, from)).map(({ panel }) => round.turns[panel]!.piece);
    const share = (name: string): number => facing.filter((each) => each === name).length / facing.length;
    return {
      pieces: names.filter((name) => share(name) >= leastSeen),
      from,
      shapes: elevation(lines, from),
      straight: silhouette(before, from),
      hip: [],
      ...about,
    };
  };
  const shapes: Shape[] = [
    { kind: "rim", along: [...hem, hem[0]!] },
    ...crests.map(({ at, depth }): Shape => ({ kind: "crest", along: [at], depth })),
  ];
  return [
    side("front"),
    side("behind"),
    { pieces: names, from: "below", shapes, straight: hemSeenFromBelow(before), hip, ...about },
  ];
};

/** The round in the room; no line where a piece of it does not hang. */
const linesOf = ({ turns, wavelength }: RoundPlan, columns: ColumnsByPiece): Line[] => {
  const panels = turns.flatMap(({ piece, isReversed }) => {
    const own = columns.get(piece) ?? [];
    return own.length < 2 ? [] : [{ piece, columns: isReversed ? [...own].reverse() : own }];
  });
  return panels.length < turns.length ? [] : standing({ panels, depth: bodyDepth, wavelength });
};

/** Whether most of a column is on the side that one sees. */
const faces = ({ spots }: Line, from: "front" | "behind"): boolean => spots.at(-1)!.z > 0 === (from === "front");

const hipOf = ({ hip }: RoundPlan): Point[] =>
  hip === undefined
    ? []
    : Array.from({ length: hipSpots + 1 }, (_, index) => onEllipse(index / hipSpots, hip, bodyDepth).at);

const widthOf = (line: readonly Point[]): number =>
  Math.max(...line.map(({ x }) => x)) - Math.min(...line.map(({ x }) => x));

const hipSpots = 72;

// A piece that takes up less of a side than this only comes round its corner.
const leastSeen = 0.2;
