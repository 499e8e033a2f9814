// true-seam: makes smooth lines of edges that slashes have left with bridges and corners.
import { optional, phrase } from "../../grammar/phrase.ts";
import { broughtToLength } from "../alter/brought-to-length.ts";
import { endsWanted } from "../alter/ends-wanted.ts";
import { reshaped } from "../alter/reshaped.ts";
import { greatestMove, trued, truedHolding, withArcs } from "../alter/trued.ts";
import { pathLength } from "../geometry/arc-length.ts";
import type { Path } from "../geometry/path.ts";
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
outward. \`to LENGTH moving start\` (or \`end\`) brings the edge to a length, that end moving along the edge next to it.`,
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
  allow hem by 2.5 cm
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

const smoothing = (piece: Piece, name: string, keepsEnds: boolean, { units }: Line): Worked<Piece> =>
  told(piece, withLine(piece, name, smooth(piece, name, pathOf(piece, name), keepsEnds)), name, units);

const smooth = (piece: Piece, name: string, path: Path, keepsEnds: boolean): Path =>
  trued(path, endsWanted(piece, piece.edges.get(name)!, path, keepsEnds ? "none" : "all"));

const holdingLength = (piece: Piece, name: string, keepsEnds: boolean, { units }: Line): Worked<Piece> => {
  const path = pathOf(piece, name);
  const length = pathLength(withArcs(path));
  const held = truedHolding(path, endsWanted(piece, piece.edges.get(name)!, path, "folds"), keepsEnds, length);
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
  const { now, words } = told(piece, withLine(piece, name, held.path), name, units);
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
  const arcs = reshaped(piece, new Map([[name, withArcs(pathOf(piece, name))]]));
  const shaped = (now: Piece, path: Path): Path => smooth(now, name, path, keepsEnds);
  const now = broughtToLength(arcs, name, length, moving, shaped, units);
  return told(piece, now, name, units);
};

const pathOf = (piece: Piece, name: string): Path => piece.edges.get(name)!.path;

const withLine = (piece: Piece, name: string, path: Path): Piece => reshaped(piece, new Map([[name, path]]));

const told = (before: Piece, now: Piece, name: string, units: Units): Worked<Piece> => {
  const [old, path] = [pathOf(before, name), pathOf(now, name)];
  const move = greatestMove(old, path);
  if (move < unseen) return { now, words: `${name} was true already` };
  const change = pathLength(path) - pathLength(old);
  const length =
    Math.abs(change) < unseen
      ? "as long as before"
      : `${small(Math.abs(change), units)} ${change > 0 ? "longer" : "shorter"}`;
  return { now, words: `trued ${name}: moved ${small(move, units)} at most, ${length}` };
};

// Less than this, in mm, nobody sees.
const unseen = 0.005;

/** Under a millimetre the usual words for lengths are too coarse. */
const small = (millimetres: number, units: Units): string =>
  millimetres < 1 && units !== "in" ? `${plainNumber(millimetres, 2)} mm` : lengthIn(millimetres, units);
