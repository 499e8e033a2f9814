// unfold: makes a whole piece of a half that lies on a fold.
import { phrase } from "../../grammar/phrase.ts";
import { laidTogether } from "../alter/laid-together.ts";
import { movedPiece } from "../alter/moved-piece.ts";
import { closedBoundary } from "../alter/outline-spot.ts";
import { mirroredIn } from "../geometry/mirror.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const unfold = pieceStep({
  name: "unfold",
  since: "0.2",
  summary: "Opens a half piece on its fold into the whole.",
  details: `The half that was drafted keeps all its names; in the other half each edge, place and dart is called \`other-NAME\`. Edges that run on across the
fold, as neck and hem do, become one. The fold stays as a line inside the piece, and the grain along it.`,
  phrase: [phrase`unfold ${slot.ownEdge("fold", "the fold that is opened")}`],
  example: `chalkline 1
units cm
piece half-back {
  line neck   = (0, 0) to (8 cm, 0)
  line side   = (8 cm, 0) to (24 cm, 60 cm)
  line hem    = (0, 60 cm) to (24 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline center, neck, side, hem
  mark center as fold
}
piece back = half-back {
  unfold center
}`,
  work({ fold }, piece, { units }) {
    closedBoundary(piece, units);
    const edge = piece.edges.get(fold)!;
    if (!piece.outline.some((part) => part.edge === fold)) {
      throw new Problem(
        "unfold-twice",
        `${fold} lies inside ${piece.name}: it has been unfolded already, or was never an edge of it.`,
        {
          hint: "Take this line out, or name the fold of the outline.",
        },
      );
    }
    if (edge.role !== "fold") {
      throw new Problem("unfold-no-fold", `${fold} is no fold of ${piece.name}, so there is no other half beyond it.`, {
        hint: `Write \`mark ${fold} as fold\` above this line.`,
      });
    }
    const [a, b] = [startOf(edge.path), endOf(edge.path)];
    const whole = laidTogether(
      { piece, edge: fold, naming: (name) => name },
      { piece: movedPiece(piece, (point) => mirroredIn(point, a, b)), edge: fold, naming: (name) => `other-${name}` },
    );
    const grain = piece.grain ?? { kind: "along" as const, edge: fold, drawnBy: edge.drawnBy };
    return { now: { ...whole, grain }, words: `unfolded at the ${fold}` };
  },
});
