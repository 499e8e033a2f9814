// trace: draws an edge of another piece, or part of one, into this piece.
import { phrase } from "../../grammar/phrase.ts";
import { withNewEdge } from "../drawn.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const trace = pieceStep({
  name: "trace",
  since: "0.2",
  summary: "Traces an edge of another piece, or part of one, into this piece where it lies.",
  details:
    "The line is drawn as it is now, and stays when the other piece is altered. `part`, `turned` and A--B can be traced too.",
  phrase: [phrase`trace ${slot.name("name", "what the line is called here")} = ${slot.edge("edge", "what is traced")}`],
  example: `chalkline 1
units cm
piece back {
  line neck     = (0, 0) to (8 cm, 0)
  line shoulder = (8 cm, 0) to (20 cm, 4 cm)
  line side     = (20 cm, 4 cm) to (22 cm, 50 cm)
  line hem      = (0, 50 cm) to (22 cm, 50 cm)
  line center   = (0, 0) to (0, 50 cm)
  outline center, neck, shoulder, side, hem
}
piece neck-band {
  trace lower = back.neck
  line center = lower.start to lower.start up 3 cm
  line front  = lower.end to lower.end up 3 cm
  line upper  = center.end to front.end
  outline center, upper, front, lower
}`,
  work: ({ name, edge }, piece, { where }) => ({ now: withNewEdge(piece, name, edge.path, where), words: "" }),
});
