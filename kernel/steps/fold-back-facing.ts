// fold-back-facing: a facing in one with the front, folded back along the front edge.
import { phrase } from "../../grammar/phrase.ts";
import { turnInOutline } from "../alter/outline-spot.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { withEdge } from "../drawn.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { mirroredIn } from "../geometry/mirror.ts";
import { endOf, isStraight, mapped, type Path, reversed, startOf, straight } from "../geometry/path.ts";
import { dot, minus, type Point, plus, quarterTurn, times, unit } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { sense, type Walked, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Allowance, Piece, Units } from "../working.ts";

export const foldBackFacing = pieceStep({
  name: "fold-back-facing",
  since: "0.2",
  summary:
    "Adds a facing in one with the front: the mirror image of the front, as wide as said, beyond its front edge.",
  details: `The front edge becomes a line inside the piece, along which the facing is folded back; its ends are the corners of neck and hem as before.
Three new edges take its place in the outline: the free edge of the facing, which has the name given, and the mirror images of neck and hem,
called by that name and theirs (\`facing-neck\`, \`facing-hem\`). They carry the allowances of the edges they mirror. Change neck and hem first.`,
  example: `chalkline 1
units cm
piece front {
  curve neck    = (-2 cm, 6 cm) to (7.4 cm, -2.5 cm) handles (3 cm, 6 cm), (5.6 cm, 1.8 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20 cm, 2.7 cm)
  line side     = (20 cm, 2.7 cm) to (20 cm, 60 cm)
  line hem      = (-2 cm, 60 cm) to (20 cm, 60 cm)
  line opening  = (-2 cm, 6 cm) to (-2 cm, 60 cm)
  outline opening, neck, shoulder, side, hem
  mark opening as opening
  mark hem as hem
  fold-back-facing facing = opening by 7 cm
}`,
  phrase: [
    phrase`fold-back-facing ${slot.name("facing", "what its free edge is called")} = ${slot.ownEdge("edge", "the front edge, along which it is folded")}
      by ${slot.length("width", "how wide it is")}`,
  ],
  work({ facing, edge: name, width }, piece, { where, units }) {
    refuseUnlike("front edge", piece, { edge: name, slot: "edge" }, units);
    const index = turnInOutline(piece, name);
    const walk = walked(piece);
    const { edge, path } = walk[index]!;
    if (!isStraight(path, foldBow)) {
      throw new Problem("fold-bent", `${name} is not straight, and cloth folds along a straight line only.`, {
        hint: "Cut a facing of its own.",
      });
    }
    if (width <= 0) throw new Problem("facing-narrow", "A facing is wider than 0.", { hint: "Write a width above 0." });
    const before = walk[(index + walk.length - 1) % walk.length]!;
    const after = walk[(index + 1) % walk.length]!;
    const [start, end] = [startOf(path), endOf(path)];
    const line = {
      start,
      way: unit(minus(end, start)),
      inward: times(quarterTurn(unit(minus(end, start))), sense(piece)),
    };
    const fromBefore = reversed(mirrored(within(reversed(before.path), before, line, width, name, units), line));
    const toAfter = mirrored(within(after.path, after, line, width, name, units), line);
    // The outline now comes up to the fold line, and goes round the facing instead of along it.
    const first = { name: `${facing}-${before.edge.name}`, path: reversed(fromBefore), was: before };
    const last = { name: `${facing}-${after.edge.name}`, path: reversed(toAfter), was: after };
    const taken = [first, last].find((each) => piece.edges.has(each.name) || piece.places.has(each.name));
    if (taken) {
      throw new Problem("name-taken", `There is already something called ${taken.name}.`, {
        hint: "Give the facing another name.",
      });
    }
    const free: Path = straight(endOf(first.path), startOf(last.path));
    const withEdges = [
      { name: first.name, path: first.path, role: before.edge.role, drawnBy: where },
      { name: facing, path: free, role: edge.role, drawnBy: where },
      { name: last.name, path: last.path, role: after.edge.role, drawnBy: where },
    ].reduce<Piece>((now, each) => withEdge(now, each), piece);
    const outline = [
      ...piece.outline.slice(0, index),
      ...[first.name, facing, last.name].map((each) => ({ edge: each, turned: false })),
      ...piece.outline.slice(index + 1),
    ];
    const now: Piece = {
      // Inside the piece an opening would be cut; this line is only folded on.
      ...withEdge(withEdges, { ...edge, role: "seam" }),
      outline,
      allowances: allowancesFor(
        piece,
        [
          [first.name, before.edge.name],
          [last.name, after.edge.name],
        ],
        name,
      ),
      notches: piece.notches.filter((notch) => notch.edge !== name),
    };
    return { now, words: `added a facing of ${lengthIn(width, units)}, folded back along ${name}` };
  },
});

interface FoldLine {
  readonly start: Point;
  readonly way: Point;
  /** Square to it, into the piece. */
  readonly inward: Point;
}

/** The stretch of a neighbour, from the fold line on, that lies within the width of the facing. */
const within = (path: Path, { edge }: Walked, line: FoldLine, width: number, name: string, units: Units): Path => {
  const [hit] = crossingsWithRay(path, plus(line.start, times(line.inward, width)), line.way).sort(
    (a, b) => a.at - b.at,
  );
  if (hit) return part(path, 0, hit.at);
  const reach = dot(minus(endOf(path), line.start), line.inward);
  throw new Problem(
    "facing-wide",
    `${edge.name} reaches ${lengthIn(reach, units)} in from ${name}, and the facing is ${lengthIn(width, units)} wide.`,
    { hint: "Take a narrower facing." },
  );
};

const mirrored = (path: Path, { start, way }: FoldLine): Path =>
  mapped(path, (point) => mirroredIn(point, start, plus(start, way)));

const allowancesFor = (
  piece: Piece,
  copies: readonly (readonly [string, string])[],
  gone: string,
): ReadonlyMap<string, Allowance> => {
  const allowances = new Map(piece.allowances);
  allowances.delete(gone);
  for (const [name, of] of copies) {
    const allowance = piece.allowances.get(of);
    if (allowance) allowances.set(name, allowance);
  }
  return allowances;
};

// Cloth folds along a straight line only; this much bow, in mm, still folds flat.
const foldBow = 0.5;
