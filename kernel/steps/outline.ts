// outline: the closed boundary of a piece.
import { phrase } from "../../grammar/phrase.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { distance, type Point, sameSpot } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { OutlinePart, Piece } from "../working.ts";

export const outline = pieceStep({
  name: "outline",
  since: "0.1",
  summary: "Closes the boundary of the piece out of its edges, in order.",
  details:
    "Each edge meets the next; edges are turned round where needed, and keep the direction they were drafted in.",
  phrase: [phrase`outline ${slot.ownEdges("edges", "the edges, in order around the piece")}`],
  example: `chalkline 1
units cm
piece belt {
  line top    = (0, 0) to (40 cm, 0)
  line tip    = (40 cm, 0) to (40 cm, 5 cm)
  line bottom = (0, 5 cm) to (40 cm, 5 cm)
  line center = (0, 0) to (0, 5 cm)
  outline center, top, tip, bottom
}`,
  work({ edges }, piece, { units }) {
    if (piece.outline.length > 0)
      throw new Problem("outline-twice", `${piece.name} already has its outline.`, {
        hint: "Use replace to change it.",
      });
    if (new Set(edges).size < edges.length)
      throw new Problem("outline-edge-twice", "An edge stands in the outline once.", {
        slot: "edges",
        value: edges.findIndex((edge, index) => edges.indexOf(edge) < index),
      });
    const parts = walkedRound(edges, piece);
    parts.forEach((part, index) => {
      const next = parts[(index + 1) % parts.length]!;
      const [from, to] = [lastPoint(piece, part), firstPoint(piece, next)];
      if (sameSpot(from, to)) return;
      throw new Problem(
        "outline-gap",
        `${part.edge} ends at ${spot(from, units)} and ${next.edge} starts at ${spot(to, units)}: a gap of ${lengthIn(distance(from, to), units)}.`,
        { slot: "edges", value: (index + 1) % parts.length, hint: "Let the two edges share a place." },
      );
    });
    return { now: { ...piece, outline: parts }, words: "" };
  },
});

/** Settles which way round each edge is walked, so that each meets the next as well as it can. */
const walkedRound = (names: readonly string[], piece: Piece): OutlinePart[] => {
  const ends = (name: string): [Point, Point] => {
    const { path } = piece.edges.get(name)!;
    return [startOf(path), endOf(path)];
  };
  const [first, second] = names;
  if (second === undefined) return [{ edge: first!, turned: false }];
  const [start, end] = ends(first!);
  const reach = (point: Point): number => Math.min(...ends(second).map((other) => distance(point, other)));
  const closing = (point: Point): number => Math.min(...ends(names.at(-1)!).map((other) => distance(point, other)));
  // With two edges both ends of the first meet the second, so the way it was drafted decides.
  const turnFirst = names.length > 2 && reach(start) + closing(end) < reach(end) + closing(start) - 1e-9;
  const parts: OutlinePart[] = [{ edge: first!, turned: turnFirst }];
  let at = turnFirst ? start : end;
  for (const name of names.slice(1)) {
    const [from, to] = ends(name);
    const turned = distance(at, to) < distance(at, from);
    parts.push({ edge: name, turned });
    at = turned ? from : to;
  }
  return parts;
};

const firstPoint = (piece: Piece, { edge, turned }: OutlinePart): Point => {
  const { path } = piece.edges.get(edge)!;
  return turned ? endOf(path) : startOf(path);
};

const lastPoint = (piece: Piece, { edge, turned }: OutlinePart): Point => firstPoint(piece, { edge, turned: !turned });

const spot = ({ x, y }: Point, units: "in" | "cm" | "mm"): string => `(${lengthIn(x, units)}, ${lengthIn(y, units)})`;
