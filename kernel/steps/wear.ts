// wear: which edges of this garment go round which edges of another that is worn under it.
import { optional, phrase } from "../../grammar/phrase.ts";
import { Problem } from "../problem.ts";
import { sewnLength } from "../sewn.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import type { EdgeValue } from "../value.ts";
import type { Garment, Round } from "../working.ts";

export const wear = garmentStep({
  name: "wear",
  since: "0.2",
  summary: "Says which edges of this garment are worn over which edges of another.",
  details: `Of both garments the same part is named: the half that the pieces show, or the whole. The other garment is a recipe brought in with \`use\`,
or has its pieces in this one. A line inside a piece will do, such as a waist, or the level at which a shorter garment ends. Lengths are as sewn.
\`wider\` says by how much the outer edges are to be longer in all; where it is not said, the check \`worn-over\` has its own amounts.`,
  phrase: [
    phrase`wear ${slot.edges("outer", "edges of this garment")} over ${slot.edges("under", "edges of the one under it")} ${optional`wider ${slot.length("wider", "by how much the outer ones are to be longer in all")}`}`,
  ],
  example: `chalkline 1
units cm
piece skirt {
  line waist  = (0, 0) to (24 cm, 0)
  line side   = (24 cm, 0) to (30 cm, 60 cm)
  line hem    = (0, 60 cm) to (30 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline center, waist, side, hem
  mark hem as hem
  mark center as fold
  true-seam hem, waist
}
piece overskirt = skirt {
  spread-from waist at 50% to hem by 6 cm
  true-seam hem, waist
}
wear overskirt.hem over skirt.hem wider 4 cm`,
  work({ outer, under, wider }, garment, { where }) {
    outer.forEach(({ of }, value) => {
      if (!of || garment.pieces.has(of.piece)) return;
      throw new Problem(
        "wear-foreign",
        `${of.piece} is not a piece of this garment, and is not worn over another by it.`,
        {
          slot: "outer",
          value,
          hint: "Name the edges of this garment first, and behind `over` those of the one under it.",
        },
      );
    });
    const worn = {
      outer: roundOf(outer, "outer"),
      under: roundOf(under, "under"),
      ...(wider !== undefined && { wider }),
      isHem: outer.every(({ of }) => of !== undefined && isHem(garment, of)),
      drawnBy: where,
    };
    return { now: { ...garment, wornOver: [...(garment.wornOver ?? []), worn] }, words: "" };
  },
});

const roundOf = (edges: readonly EdgeValue[], at: "outer" | "under"): Round => ({
  edges: edges.map(({ of }, value) => {
    if (of) return `${of.piece}.${of.edge}`;
    throw new Problem("wear-loose", "A line between two places belongs to no piece, and nobody wears it.", {
      slot: at,
      value,
      hint: "Draw it in its piece, and name it.",
    });
  }),
  length: edges.reduce((sum, { path, taken }) => sum + sewnLength(path, taken), 0),
});

const isHem = ({ pieces }: Garment, { piece, edge }: { readonly piece: string; readonly edge: string }): boolean =>
  pieces.get(piece)?.edges.get(edge)?.role === "hem";
