// Which lines of the opened recipe drew a thing, and which changed it: read out of the record of the making.
import { outermostIn, type Where } from "../../grammar/diagnostic.ts";
import type { Evaluated } from "../../kernel/evaluate.ts";
import { distance } from "../../kernel/geometry/point.ts";
import { samePath } from "../../kernel/geometry/same-path.ts";
import type { Edge, NamedPlace } from "../../kernel/working.ts";
import type { InsideLine, Lines } from "./picture.ts";

/** What stands behind the things of a worked recipe. */
export interface LinesOf {
  ofEdge(piece: string, edge: string): Lines;
  ofPlace(piece: string, place: string): Lines;
  ofPiece(piece: string): Lines;
  /** Of a mark that was drawn there: in a piece that was copied with its marks, the line that copied it. */
  ofMark(piece: string, drawnBy: Where): Lines;
}

/** The lines behind everything in a worked recipe. What stands in a step of the recipe's own belongs to the line that calls it. */
export const linesOf = ({ records, tree: { file } }: Evaluated): LinesOf => {
  const edges = new Map<string, Noted>();
  const places = new Map<string, Noted>();
  const pieces = new Map<string, Noted>();
  for (const { where, changed } of records) {
    const line = lineIn(file, where);
    if (line === undefined) continue;
    const inside = insideCall(file, where);
    for (const { before, after } of changed) {
      note(pieces, after.name, line, inside);
      for (const name of drawn(before?.edges, after.edges, runsOn)) note(edges, keyOf(after.name, name), line, inside);
      for (const name of drawn(before?.places, after.places, liesStill))
        note(places, keyOf(after.name, name), line, inside);
    }
  }
  const ofPiece = (piece: string): Lines => pieces.get(piece) ?? nothing;
  return {
    ofEdge: (piece, edge) => edges.get(keyOf(piece, edge)) ?? nothing,
    ofPlace: (piece, place) => places.get(keyOf(piece, place)) ?? nothing,
    ofPiece,
    ofMark: (piece, drawnBy) => {
      const line = lineIn(file, drawnBy);
      if (line === undefined) return { lines: ofPiece(piece).lines.slice(0, 1), inside: [] };
      return { lines: [line], inside: insideCall(file, drawnBy).map((each) => ({ under: line, line: each })) };
    },
  };
};

const nothing: Lines = { lines: [], inside: [] };

interface Noted {
  readonly lines: number[];
  readonly inside: InsideLine[];
}

const note = (of: Map<string, Noted>, key: string, line: number, inside: readonly number[]): void => {
  const noted = of.get(key) ?? { lines: [], inside: [] };
  of.set(key, noted);
  if (!noted.lines.includes(line)) noted.lines.push(line);
  for (const each of inside)
    if (!noted.inside.some((known) => known.under === line && known.line === each))
      noted.inside.push({ under: line, line: each });
};

/** The lines of this file between a call and the line that did the work, the innermost last. */
const insideCall = (file: string, { file: at, line, calledBy }: Where): number[] =>
  calledBy ? [...insideCall(file, calledBy), ...(at === file ? [line] : [])] : [];

/** The line of this file that a place stands on, or the line of it whose call led there. */
export const lineIn = (file: string, where: Where): number | undefined => outermostIn(file, where)?.line;

// A slash cannot stand in a name.
const keyOf = (piece: string, name: string): string => `${piece}/${name}`;

/** The names under which a map holds a thing that it did not hold, or one that was drawn anew elsewhere. */
const drawn = <T>(
  before: ReadonlyMap<string, T> | undefined,
  after: ReadonlyMap<string, T>,
  stayed: (was: T, is: T) => boolean,
): string[] => {
  if (before === after) return [];
  return [...after].flatMap(([name, thing]) => {
    const was = before?.get(name);
    return was !== undefined && (was === thing || stayed(was, thing)) ? [] : [name];
  });
};

// What is drawn anew in its old place, to this many mm, has not changed.
const exactly = 1e-6;

const runsOn = (was: Edge, is: Edge): boolean => samePath(was.path, is.path, exactly);
const liesStill = (was: NamedPlace, is: NamedPlace): boolean => distance(was.point, is.point) <= exactly;
