// join-pieces: lays two pieces together at an edge and makes one of them.
import { phrase } from "../../grammar/phrase.ts";
import { broughtTogether, type Sewn } from "../alter/brought-together.ts";
import { laidTogether } from "../alter/laid-together.ts";
import { movedPiece } from "../alter/moved-piece.ts";
import { closedBoundary } from "../alter/outline-spot.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { EdgeValue } from "../value.ts";
import type { Garment, Units } from "../working.ts";

export const joinPieces = garmentStep({
  name: "join-pieces",
  since: "0.2",
  summary: "Makes one piece of two that would be sewn together at an edge.",
  details: `The first piece stays where it lies; the second is brought against it as one stiff sheet, both edges from their starts
(\`turned(EDGE)\` otherwise), and is turned over where its cloth would lie on the first otherwise. The two edges must agree within 0.5 mm
in length and in shape. The joined edge stays in the new piece as a line, under the first one's name. Edges beside the joint that have the same name
and play the same part become one edge, as a neck or an armhole does. Of other edges, places and darts that both pieces have, each gets its piece's name in
front: front-side, back-side. The grain is the first one's.`,
  phrase: [
    phrase`join-pieces ${slot.name("name", "what the whole is called")} = ${slot.edge("first", "an edge of the piece that stays")}
      with ${slot.edge("second", "the edge that is laid against it")}`,
  ],
  example: `chalkline 1
units cm
piece front-yoke {
  line shoulder = (8 cm, 0) to (20 cm, 4 cm)
  line armhole  = (20 cm, 4 cm) to (21 cm, 12 cm)
  line lower    = (0, 12 cm) to (21 cm, 12 cm)
  line opening  = (0, 8 cm) to (0, 12 cm)
  curve neck    = (0, 8 cm) to (8 cm, 0) leaving right
  outline opening, neck, shoulder, armhole, lower
  grain along opening
}
piece back-yoke {
  line shoulder = (8 cm, 0) to (20 cm, 4 cm)
  line armhole  = (20 cm, 4 cm) to (21 cm, 12 cm)
  line lower    = (0, 12 cm) to (21 cm, 12 cm)
  line center   = (0, 2 cm) to (0, 12 cm)
  curve neck    = (0, 2 cm) to (8 cm, 0) leaving right
  outline center, neck, shoulder, armhole, lower
  mark center as fold
}
join-pieces yoke = back-yoke.shoulder with front-yoke.shoulder`,
  work({ name, first, second }, garment, { where, units }) {
    const [stays, comes] = [sewnOf(first, garment, units), sewnOf(second, garment, units)];
    if (stays.piece === comes.piece) {
      throw new Problem("join-self", `Both edges belong to ${stays.piece.name}.`, {
        hint: "Name edges of two pieces; a seam within one piece is a `seam`.",
      });
    }
    const { move, turnedOver } = broughtTogether(stays, comes, units);
    const whole = laidTogether(
      { piece: stays.piece, edge: stays.edge, naming: (own) => `${stays.piece.name}-${own}` },
      { piece: movedPiece(comes.piece, move), edge: comes.edge, naming: (own) => `${comes.piece.name}-${own}` },
    );
    const { source: _, from: __, kept: ___, ...rest } = whole;
    const pieces = new Map(garment.pieces).set(name, { ...rest, name, keeps: [], drawnBy: where });
    const over = turnedOver ? `, ${comes.piece.name} turned over` : "";
    return {
      now: { ...garment, pieces },
      words: `joined ${stays.piece.name} and ${comes.piece.name} along ${lengthIn(pathLength(stays.path), units)}${over}`,
    };
  },
});

const sewnOf = ({ of, path, turned, whole }: EdgeValue, garment: Garment, units: Units): Sewn => {
  const piece = of && garment.pieces.get(of.piece);
  if (!of || !piece) {
    throw new Problem(
      "join-foreign",
      `${of ? `${of.piece} is not a piece` : "A line between two places is no edge"} of this garment.`,
      {
        hint: of
          ? `Copy it in first: piece ${of.piece.split(".").at(-1)} = ${of.piece} { }.`
          : "Name an edge of a piece.",
      },
    );
  }
  if (!whole) {
    throw new Problem("join-part", `Only part of the ${of.edge} of ${of.piece} is named, and whole edges are joined.`, {
      hint: "Split the other piece first, or name the whole edge.",
    });
  }
  closedBoundary(piece, units);
  return { piece, edge: of.edge, path, turned };
};
