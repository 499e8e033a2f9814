// lining: makes a lining of an outer piece: shorter at its hems, with a pleat of ease where the piece is to have one.
import { optional, phrase } from "../../grammar/phrase.ts";
import { movedEdge } from "../alter/moved-edge.ts";
import { closedBoundary, turnInOutline } from "../alter/outline-spot.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { distance, sameSpotTolerance } from "../geometry/point.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Piece, TakeUp, Units } from "../working.ts";

export const lining = pieceStep({
  name: "lining",
  since: "0.2",
  summary: "Makes the piece a lining: shorter at its hems, with a pleat of ease down one edge.",
  details: `Every edge marked as hem moves in by the length. \`pleat\` is the cloth of the whole pleat in the garment, by custom 2 to 4 cm down the center back;
the edge that it lies at, a fold or a center seam, moves out by half of it. The edges at its ends grow by that, and by more where they meet it at a slant;
those that are no hems take up again what they grew, so the neck is still sewn to the same length. By custom the lining is cut 1 to 2 cm longer than it ends up, for a pleat at its hem: \`shorter\` says what is left after that.`,
  phrase: [
    phrase`lining shorter ${slot.length("shorter", "how far its hems end above those of the outer piece")}
      ${optional`pleat ${slot.length("pleat", "the cloth of the whole pleat")} at ${slot.ownEdge("at", "the edge that it lies at")}`}`,
  ],
  example: `chalkline 1
units cm
piece back {
  line neck   = (0, 0) to (8 cm, 0)
  line side   = (8 cm, 0) to (8 cm, 60 cm)
  line hem    = (0, 60 cm) to (8 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline center, neck, side, hem
  mark center as fold
  mark hem as hem
}
piece back-lining = back {
  lining shorter 1.5 cm pleat 3 cm at center
}`,
  work({ shorter, pleat, at }, piece, { where, units }) {
    closedBoundary(piece, units);
    if (shorter < 0 || (pleat ?? 0) < 0) {
      throw new Problem(
        "lining-negative",
        "A lining is no longer than its outer piece, and a pleat takes some cloth.",
        {
          hint: "Write lengths of 0 or more; `extend-hem` lengthens.",
        },
      );
    }
    const hems = walked(piece).filter(({ edge }) => edge.role === "hem");
    if (hems.length === 0 && shorter > 0) {
      throw new Problem("lining-hem", `${piece.name} has no edge that is marked as hem.`, {
        hint: "Mark one above this line, as in `mark hem as hem`, or write `shorter 0`.",
      });
    }
    const short = shorter === 0 ? piece : hems.reduce((now, { edge }) => movedEdge(now, edge.name, -shorter), piece);
    const wide = pleat !== undefined && at !== undefined && pleat > 0 ? withPleat(short, at, pleat / 2, where) : short;
    return { now: wide, words: inWords(shorter, pleat, at, units) };
  },
});

const withPleat = (piece: Piece, edge: string, half: number, drawnBy: TakeUp["drawnBy"]): Piece => {
  const wide = movedEdge(piece, edge, half);
  const index = turnInOutline(piece, edge);
  const walk = walked(wide);
  const was = walked(piece)[index]!.path;
  const [before, after] = [walk[(index + walk.length - 1) % walk.length]!, walk[(index + 1) % walk.length]!];
  const takeUps: TakeUp[] = [
    { edge: before.edge, from: startOf(was), to: endOf(before.path) },
    { edge: after.edge, from: endOf(was), to: startOf(after.path) },
  ].flatMap(({ edge: { name, role, path }, from, to }) => {
    if (role === "hem") return [];
    // Where the old corner is no longer on the neighbour, that was cut shorter: there is nothing to fold.
    if (nearest(path, from).distance > sameSpotTolerance) refuseShorter(name, edge);
    // The neighbour is carried on straight, so what it has grown lies between its old end and its new one.
    return [
      { kind: "pleat" as const, edge: name, ...asDrafted(wide, name, from, to), amount: distance(from, to), drawnBy },
    ];
  });
  return { ...wide, takeUps: [...wide.takeUps, ...takeUps] };
};

const refuseShorter = (neighbour: string, edge: string): never => {
  throw new Problem(
    "lining-pleat-corner",
    `The outline turns in where ${neighbour} meets ${edge}, so a pleat there would make ${neighbour} shorter.`,
    { hint: "Lay the pleat at an edge whose corners point outward." },
  );
};

/** The ends of a stretch at the end of an edge, in the direction in which the edge was drafted. */
const asDrafted = (
  piece: Piece,
  edge: string,
  inner: TakeUp["from"],
  outer: TakeUp["to"],
): Pick<TakeUp, "from" | "to"> => {
  const start = startOf(piece.edges.get(edge)!.path);
  return start.x === outer.x && start.y === outer.y ? { from: outer, to: inner } : { from: inner, to: outer };
};

const inWords = (shorter: number, pleat: number | undefined, at: string | undefined, units: Units): string => {
  const short = shorter > 0 ? `lining ${lengthIn(shorter, units)} shorter` : "lining";
  return pleat ? `${short}, a pleat of ${lengthIn(pleat, units)} at the ${at}` : short;
};
