// join: one edge out of several that meet end to end.
import { phrase } from "../../grammar/phrase.ts";
import { withNewEdge } from "../drawn.ts";
import { endOf, joined, type Path, reversed, startOf } from "../geometry/path.ts";
import { distance, sameSpot } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const join = pieceStep({
  name: "join",
  since: "0.1",
  summary: "Makes one edge out of several that meet end to end.",
  details: "They are turned round where needed; the first keeps its direction. The parts stop being edges.",
  phrase: [
    phrase`join ${slot.name("name", "what the whole edge is called")} = ${slot.ownEdges("edges", "the edges that are joined")}`,
  ],
  example: `chalkline 1
units cm
piece panel {
  line top      = (0, 0) to (20 cm, 0)
  curve hip     = (20 cm, 0) to (24 cm, 20 cm) arriving down
  line straight = (24 cm, 20 cm) to (24 cm, 60 cm)
  join side     = hip, straight
  line hem      = (24 cm, 60 cm) to (0, 60 cm)
  line center   = (0, 60 cm) to (0, 0)
  outline top, side, hem, center
}`,
  work({ name, edges: names }, piece, { where, units }) {
    const twice = names.findIndex((edge, index) => names.indexOf(edge) < index);
    if (twice > 0)
      throw new Problem("join-twice", "An edge cannot be joined to itself.", { slot: "edges", value: twice });
    const outline = new Set(piece.outline.map(({ edge }) => edge));
    const inOutline = names.findIndex((edge) => outline.has(edge));
    if (inOutline >= 0) {
      throw new Problem("join-outline", `${names[inOutline]} is part of the outline already.`, {
        slot: "edges",
        value: inOutline,
        hint: "Join edges before the outline line.",
      });
    }
    const paths = names.map((edge) => piece.edges.get(edge)!.path);
    const first = paths[0]!;
    const walk: Path[] = [headed(first, paths[1])];
    paths.slice(1).forEach((path, index) => {
      const end = endOf(walk.at(-1)!);
      if (sameSpot(end, startOf(path))) walk.push(path);
      else if (sameSpot(end, endOf(path))) walk.push(reversed(path));
      else {
        const gap = Math.min(distance(end, startOf(path)), distance(end, endOf(path)));
        throw new Problem(
          "join-gap",
          `${names[index]} and ${names[index + 1]} do not meet: ${lengthIn(gap, units)} lie between them.`,
          { slot: "edges", value: index + 1 },
        );
      }
    });
    const edges = new Map([...piece.edges].filter(([edge]) => !names.includes(edge)));
    const whole = joined(walk);
    const path = walk[0] === first ? whole : reversed(whole);
    return { now: withNewEdge({ ...piece, edges }, name, path, where), words: "" };
  },
});

/** The first edge as it is walked toward the next: from its end where only its start meets that. */
const headed = (first: Path, next: Path | undefined): Path => {
  if (!next) return first;
  const meets = [startOf(next), endOf(next)].some((point) => sameSpot(endOf(first), point));
  const meetsAtStart = [startOf(next), endOf(next)].some((point) => sameSpot(startOf(first), point));
  return !meets && meetsAtStart ? reversed(first) : first;
};
