// keep: a promise that edges measure what they measured before the piece was altered.
import { optional, phrase } from "../../grammar/phrase.ts";
import { Problem } from "../problem.ts";
import { sewnLengthOf } from "../sewn.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const keep = pieceStep({
  name: "keep",
  since: "0.1",
  summary: "Promises that edges still measure what they measured in the piece this one was copied from.",
  details:
    "Judged when the piece is complete, within 0.5 mm, against the source after the last `strip`. `as` holds the edges to those of the same name in another piece.",
  phrase: [
    phrase`keep ${slot.ownEdges("edges", "the edges that must not change")} ${optional`as ${slot.piece("as", "the piece to hold them to")}`}`,
  ],
  example: `chalkline 1
units cm
piece straight {
  line top  = (0, 0) to (30 cm, 0)
  line side = (30 cm, 0) to (30 cm, 60 cm)
  line hem  = (30 cm, 60 cm) to (0, 60 cm)
  line back = (0, 60 cm) to (0, 0)
  outline top, side, hem, back
}
piece flared = straight {
  spread-from top at 50% to hem by 8 cm
  true-seam hem, top
  keep top, side, back
}`,
  work({ edges, as }, piece, { where }) {
    const model = as?.piece ?? piece.kept;
    if (!model) {
      throw new Problem(
        "keep-source",
        `${piece.name} is not a copy of another piece, so there is nothing to keep its edges to.`,
        {
          hint: "Name a piece to hold them to: keep neck as collar.",
        },
      );
    }
    const of = as?.called ?? piece.from ?? model.name;
    const keeps = edges.map((edge, value) => {
      const before = model.edges.get(edge);
      if (!before) throw new Problem("keep-edge", `${of} has no edge called ${edge}.`, { slot: "edges", value });
      return { edge, wanted: sewnLengthOf(model, edge), of, as: as !== undefined, drawnBy: where };
    });
    return { now: { ...piece, keeps: [...piece.keeps, ...keeps] }, words: "" };
  },
});
