// true-seam: makes smooth lines of edges that slashes have left with bridges and corners.
import { optional, phrase } from "../../grammar/phrase.ts";
import { broughtToLength } from "../alter/brought-to-length.ts";
import { endsWanted, type Seen } from "../alter/ends-wanted.ts";
import { reshaped } from "../alter/reshaped.ts";
import { type Shut, shut } from "../alter/shut.ts";
import { type Ends, greatestMove, trued, truedHolding, withArcs } from "../alter/trued.ts";
import { pathLength } from "../geometry/arc-length.ts";
import type { Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { type Line, pieceStep, type Worked } from "../step.ts";
import { angleInWords, lengthIn, plainNumber } from "../units.ts";
import type { Piece, Units } from "../working.ts";

export const trueSeam = pieceStep({
  name: "true-seam",
  since: "0.1",
  summary: "Makes a smooth line of an edge: arcs for the openings of slashes, and a curve through each corner.",
  details: `Each bridge becomes the arc about its hinge, so that the cloth measures the same from hinge to edge all along the opening. A corner
over 0.1 deg that is left is replaced by one curve from 50 mm before it to 50 mm behind it. An edge meets a fold squarely, and a hem
meets seams and openings squarely; other ends keep their direction, and with \`keeping ends\` all do. The line says how far it moved
and what its length became.

\`holding length\` keeps the length to 0.001 mm: the curves reach to the ends of the edge, and the ends that are not at a fold turn
outward. \`to LENGTH moving start\` (or \`end\`) brings the edge to a length, that end moving along the edge next to it.

The darts of an edge are folded shut first, each to its side, the folded edge is trued, and the darts are opened again: their legs
end on the new line, and their mouths get the cap that meets the seam when they are sewn.`,
  example: `chalkline 1
units cm
piece panel {
  line waist = (0, 0) to (30 cm, 0)
  line side  = (30 cm, 0) to (30 cm, 100 cm)
  line hem   = (0, 100 cm) to (30 cm, 100 cm)
  line center = (0, 0) to (0, 100 cm)
  outline waist, side, hem, center
  mark hem as hem
  mark center as fold
  spread-from waist at 50% to hem by 20 cm
  true-seam waist holding length
  true-seam hem
  allow waist, side by 1.5 cm
  allow hem by 2 cm
}`,
  phrase: [
    phrase`true-seam ${slot.ownEdges("edges", "the edges to make smooth")}
      ${optional`holding ${slot.choice("holding", "keeps the length", ["length"])}`}
      ${optional`keeping ${slot.choice("keeping", "keeps the directions at the ends", ["ends"])}`}
      ${optional`to ${slot.length("length", "the length it is to have")} moving ${slot.choice("moving", "the end that moves", ["start", "end"])}`}`,
  ],
  work({ edges, holding, keeping, length, moving }, piece, line) {
    if (length !== undefined && (edges.length > 1 || holding !== undefined)) {
      const message =
        holding === undefined
          ? "One edge at a time is brought to a length."
          : "An edge cannot hold its length and be brought to another.";
      throw new Problem("true-to-length", message, { hint: "Write a line of its own for each edge." });
    }
    return edges.reduce<Worked<Piece>>(
      ({ now, words }, edge) => {
        const next =
          length !== undefined && moving !== undefined
            ? bringing(now, edge, length, moving, keeping !== undefined, line)
            : holding !== undefined
              ? holdingLength(now, edge, keeping !== undefined, line)
              : smoothing(now, edge, keeping !== undefined, line);
        return { now: next.now, words: [words, next.words].filter((each) => each !== "").join("; ") };
      },
      { now: piece, words: "" },
    );
  },
});

const smoothing = (piece: Piece, name: string, keepsEnds: boolean, { units }: Line): Worked<Piece> => {
  const folded = shut(piece, name);
  const line = smooth(piece, name, folded, folded.line, keepsEnds);
  return told(folded, line, withLine(piece, name, folded, line), name, units);
};

const smooth = (piece: Piece, name: string, folded: Shut, line: Path, keepsEnds: boolean): Path =>
  trued(line, endsOf(piece, name, folded, line, keepsEnds ? "none" : "all"));

/** The directions wanted at the ends of an edge that is folded shut: its neighbours lie turned with their end. */
const endsOf = (piece: Piece, name: string, { turns }: Shut, line: Path, seen: Seen): Ends => {
  const { start, end } = endsWanted(piece, piece.edges.get(name)!, line, seen);
  const turned = (direction: Point | undefined, turn: number): Point | undefined =>
    direction && (turn === 0 ? direction : rotated(direction, { x: 0, y: 0 }, turn));
  return { start: turned(start, turns.start), end: turned(end, turns.end) };
};

const holdingLength = (piece: Piece, name: string, keepsEnds: boolean, { units }: Line): Worked<Piece> => {
  const folded = shut(piece, name);
  const length = pathLength(withArcs(folded.line));
  const held = truedHolding(folded.line, endsOf(piece, name, folded, folded.line, "folds"), keepsEnds, length);
  if (!held) {
    throw new Problem(
      "length-not-held",
      `${name} cannot be made smooth and stay ${lengthIn(length, units)} long${keepsEnds ? " with its ends kept" : ""}.`,
      {
        hint: keepsEnds
          ? "Leave `keeping ends` out, or `holding length`."
          : "Leave `holding length` out, and look at what it becomes.",
      },
    );
  }
  const { now, words } = told(folded, held.path, withLine(piece, name, folded, held.path), name, units);
  const turn =
    Math.abs(held.turn) < 1e-9
      ? ""
      : `, its free ends turned ${held.turn < 0 ? "inward" : "outward"} ${angleInWords(Math.abs(held.turn))} to hold the length`;
  return { now, words: words === "" ? "" : `${words}${turn}` };
};

const bringing = (
  piece: Piece,
  name: string,
  length: number,
  moving: "start" | "end",
  keepsEnds: boolean,
  { units }: Line,
): Worked<Piece> => {
  // Folded to the end that moves, so that this end lies beside its neighbour.
  const folded = shut(piece, name, moving);
  const bare = bareWith(piece, name, withArcs(folded.line));
  const shaped = (now: Piece, path: Path): Path => smooth(now, name, folded, path, keepsEnds);
  const gathered = piece.takeUps.filter(({ edge }) => edge === name).reduce((sum, { amount }) => sum + amount, 0);
  const brought = broughtToLength(bare, name, length + gathered, moving, shaped, units);
  const line = pathOf(brought, name);
  const beside = new Map(
    [...brought.edges].flatMap(([each, { path }]) =>
      each === name || path === pathOf(piece, each) ? [] : [[each, path] as const],
    ),
  );
  return told(folded, line, withLine(piece, name, folded, line, beside), name, units);
};

/** The piece with nothing on it but its edges, one of them along another line. */
const bareWith = (piece: Piece, name: string, path: Path): Piece => ({
  ...piece,
  edges: new Map(piece.edges).set(name, { ...piece.edges.get(name)!, path }),
  places: new Map(),
  notches: [],
  hinges: [],
  darts: new Map(),
  takeUps: [],
});

const pathOf = (piece: Piece, name: string): Path => piece.edges.get(name)!.path;

/** The piece with an edge along a line that is folded shut, opened again; `beside` are new lines of its neighbours. */
const withLine = (
  piece: Piece,
  name: string,
  folded: Shut,
  line: Path,
  beside: ReadonlyMap<string, Path> = new Map(),
): Piece => {
  const open = folded.opened(piece, line);
  const now = reshaped(piece, new Map([...beside, [name, pathOf(open, name)]]));
  const own = [...open.darts].filter(([, { edge }]) => edge === name);
  if (own.length === 0) return now;
  // Where the legs end is known exactly, and need not be looked for again.
  return { ...now, edges: new Map(now.edges).set(name, open.edges.get(name)!), darts: new Map([...now.darts, ...own]) };
};

const told = (
  { line: old, length: was, turns }: Shut,
  path: Path,
  now: Piece,
  name: string,
  units: Units,
): Worked<Piece> => {
  const move = greatestMove(old, path);
  if (move < unseen) return { now, words: `${name} was true already` };
  const change = pathLength(path) - was;
  const length =
    Math.abs(change) < unseen
      ? "as long as before"
      : `${small(Math.abs(change), units)} ${change > 0 ? "longer" : "shorter"}`;
  const how = turns.start === turns.end ? "" : ", its darts folded shut";
  return { now, words: `trued ${name}${how}: moved ${small(move, units)} at most, ${length}` };
};

// Less than this, in mm, nobody sees.
const unseen = 0.005;

/** Under a millimetre the usual words for lengths are too coarse. */
const small = (millimetres: number, units: Units): string =>
  millimetres < 1 && units !== "in" ? `${plainNumber(millimetres, 2)} mm` : lengthIn(millimetres, units);
