// grain: the line that lies along the lengthwise threads of the cloth.
import { phrase } from "../../grammar/phrase.ts";
import { sameSpot } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const grain = pieceStep({
  name: "grain",
  since: "0.1",
  summary: "Lays the grain line, which goes along the lengthwise threads of the cloth.",
  details:
    "`along` takes an edge's direction and goes wherever that edge goes. A piece with a fold has its grain along the fold where nothing is said.",
  phrase: [
    phrase`grain along ${slot.ownEdge("along", "the edge it is parallel to")}`,
    phrase`grain ${slot.place("from", "one end of the line")} to ${slot.place("to", "its other end")}`,
  ],
  example: `chalkline 1
units cm
piece panel {
  line top  = (0, 0) to (30 cm, 0)
  line side = (30 cm, 0) to (30 cm, 60 cm)
  line hem  = (30 cm, 60 cm) to (0, 60 cm)
  line back = (0, 60 cm) to (0, 0)
  outline top, side, hem, back
  grain (15 cm, 10 cm) to (15 cm, 50 cm)
}`,
  work(fill, piece, { where }) {
    if ("along" in fill)
      return { now: { ...piece, grain: { kind: "along", edge: fill.along, drawnBy: where } }, words: "" };
    const { from, to } = fill;
    if (sameSpot(from, to)) throw new Problem("grain-empty", "The two ends of the grain line are the same spot.");
    return { now: { ...piece, grain: { kind: "line", from, to, drawnBy: where } }, words: "" };
  },
});
