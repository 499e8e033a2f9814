// split: cuts a piece along a line into two, with matching notches.
import { optional, phrase } from "../../grammar/phrase.ts";
import { cutAlong } from "../alter/cut-across.ts";
import { type CutEdge, loopOf, partOn } from "../alter/parted.ts";
import type { Slash } from "../alter/slash.ts";
import { otherSide, type Side, sideOfPoint } from "../alter/two-parts.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { bounds } from "../geometry/bounds.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { minus, sameSpotTolerance } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { EdgeValue } from "../value.ts";
import type { Notch, Piece } from "../working.ts";

export const split = garmentStep({
  name: "split",
  since: "0.2",
  summary: "Cuts a piece along a line into two pieces, with a notch that matches them.",
  details: `The piece itself stays as it was; the two are new, and get the names in the order in which one reads: the upper before the
lower, or the left before the right where the line runs more up and down. \`first\` names an edge of the part that is to get the first
name instead. Each part takes along its edges under their own names, places, notches, marks, inner lines, darts, allowances and the
grain. An edge that is cut in two is called the same on both parts; where one part has both ends of an edge they are \`hem-1\` and \`hem-2\`,
as drafted. The new edge is called as the line is, or \`style-line\` where that has no name. Unless the line has notches of its own, one is
set two fifths along it, so that no part can be sewn in upside down; a line under 5 cm gets none. \`allow\` gives the new edges an allowance.`,
  phrase: [
    phrase`split ${slot.names("names", "what the two parts are called")} = ${slot.piece("piece", "the piece that is cut")}
      along ${slot.edge("line", "the line, from outline to outline")}
      ${optional`first ${slot.edge("first", "an edge of the part that gets the first name")}`}
      ${optional`allow ${slot.length("allowance", "seam allowance at the new edges")}`}`,
  ],
  example: `chalkline 1
units cm
piece back {
  line neck     = (0, 0) to (8 cm, 0)
  line shoulder = (8 cm, 0) to (20 cm, 4 cm)
  line armhole  = (20 cm, 4 cm) to (22 cm, 24 cm)
  line side     = (22 cm, 24 cm) to (22 cm, 50 cm)
  line hem      = (0, 50 cm) to (22 cm, 50 cm)
  line center   = (0, 0) to (0, 50 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark center as fold
  line yoke-line = (0, 12 cm) to armhole at 8 cm
}
split yoke, lower-back = back along back.yoke-line allow 1 cm
seam yoke.yoke-line with lower-back.yoke-line`,
  work({ names, piece: { piece }, line, first, allowance }, garment, { where, units }) {
    const [one, other, more] = names;
    if (one === undefined || other === undefined || more !== undefined) {
      throw new Problem(
        "split-names",
        `A line parts a piece in two, and here ${names.length === 1 ? "is one name" : `are ${names.length} names`}.`,
        {
          hint: "Write two names before the =, with a comma between them.",
        },
      );
    }
    if (one === other)
      throw new Problem("name-taken", `Both parts would be called ${one}.`, { hint: "Choose two names." });
    if (allowance !== undefined && allowance < 0) {
      throw new Problem("allowance-negative", "An allowance lies outside the sewing line, and cannot be less than 0.");
    }
    const slash = cutAlong(piece, line.path, line.of?.edge ?? "the line", units);
    const inner = line.of !== undefined && line.of.piece.split(".").at(-1) === piece.name;
    const cut: CutEdge = {
      name: inner ? line.of.edge : "style-line",
      ...(allowance !== undefined && { allowance: { width: allowance, corners: "point" as const, drawnBy: where } }),
      notches: notchesOn(piece, slash, inner ? line.of.edge : "style-line", where),
      drawnBy: inner ? piece.edges.get(line.of.edge)!.drawnBy : where,
    };
    const side = first ? sideOf(first, piece, slash) : upperOrLeft(piece, slash);
    const pieces = new Map(garment.pieces)
      .set(one, partOn(piece, slash, side, cut, one, where))
      .set(other, partOn(piece, slash, otherSide(side), cut, other, where));
    const length = lengthIn(pathLength(slash.path), units);
    return { now: { ...garment, pieces }, words: `split ${piece.name} into ${one} and ${other} along ${length}` };
  },
});

/** Where a new seam is notched, as a share of its length, and the shortest line, mm, that is notched at all. */
const notchAt = 2 / 5;
const leastNotched = 50;

const notchesOn = (piece: Piece, { path }: Slash, name: string, drawnBy: Notch["drawnBy"]): Notch[] => {
  const own = piece.notches.filter(
    ({ edge, point }) => edge === name && nearest(path, point).distance <= sameSpotTolerance,
  );
  const length = pathLength(path);
  if (own.length > 0 || length < leastNotched) return own;
  return [{ edge: name, point: pointAt(path, notchAt * length), double: false, drawnBy }];
};

const sideOf = ({ of, path }: EdgeValue, piece: Piece, slash: Slash): Side => {
  const side = of && sideOfPoint(piece, slash, pointAt(path, pathLength(path) / 2));
  if (side && of.piece.split(".").at(-1) === piece.name) return side;
  throw new Problem("split-first", "`first` names an edge of the piece that is cut.", {
    hint: `Name one of ${piece.outline.map(({ edge }) => `${piece.name}.${edge}`).join(", ")}.`,
  });
};

// A line nearer to level than to upright has a part above it.
const upperOrLeft = (piece: Piece, slash: Slash): Side => {
  const way = minus(endOf(slash.path), startOf(slash.path));
  const middle = (side: Side): number => {
    const { left, right, top, bottom } = bounds([loopOf(piece, slash, side)]);
    return Math.abs(way.x) >= Math.abs(way.y) ? top + bottom : left + right;
  };
  return middle("ahead") <= middle("behind") ? "ahead" : "behind";
};
