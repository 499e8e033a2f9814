// seam: which edges are sewn together, with how much ease.
import { optional, phrase } from "../../grammar/phrase.ts";
import { Problem, Withheld } from "../problem.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import type { EdgeValue } from "../value.ts";
import type { Garment, Run } from "../working.ts";

/** How far, in mm, sewn edges may be off when the recipe does not say: what nobody sees at the machine. */
const usualTolerance = 1;

export const seam = garmentStep({
  name: "seam",
  since: "0.1",
  summary: "Says which edges are sewn together.",
  details:
    "The edges of a list are laid end to end as written, each as it was drafted (`turned(EDGE)` otherwise), and the two lists start together. " +
    "The first list is longer by the ease; `within` is 1 mm where not said. Notches pair in order.",
  phrase: [
    phrase`seam ${slot.edges("first", "the edges of one side, in order")} with ${slot.edges("second", "the edges of the other side, in order")} ${optional`ease ${slot.length("ease", "how much longer the first side is")}`} ${optional`within ${slot.length("within", "how far they may be off")}`}`,
  ],
  example: `chalkline 1
units cm
piece front {
  line top  = (0, 0) to (30 cm, 0)
  line side = (30 cm, 0) to (30 cm, 60 cm)
  line hem  = (0, 60 cm) to (30 cm, 60 cm)
  line edge = (0, 0) to (0, 60 cm)
  outline edge, top, side, hem
}
piece back = front { }
seam front.side with back.side`,
  work({ first, second, ease = 0, within = usualTolerance }, garment, { where }) {
    if (ease < 0)
      throw new Problem("ease-negative", "The first list is the longer one.", {
        slot: "ease",
        hint: "Swap the two lists.",
      });
    if (within < 0) throw new Problem("within-negative", "A tolerance cannot be less than 0.", { slot: "within" });
    const seams = [
      ...garment.seams,
      {
        first: first.map((edge, value) => runOf(edge, garment, { slot: "first", value })),
        second: second.map((edge, value) => runOf(edge, garment, { slot: "second", value })),
        ease,
        within,
        drawnBy: where,
      },
    ];
    return { now: { ...garment, seams }, words: "" };
  },
});

const runOf = (
  { path, of, turned, whole, taken }: EdgeValue,
  garment: Garment,
  at: { readonly slot: string; readonly value: number },
): Run => {
  if (!of)
    throw new Problem("seam-loose", "A line between two places belongs to no piece, and cannot be sewn.", {
      ...at,
      hint: "Name an edge of a piece.",
    });
  if (!garment.pieces.has(of.piece)) {
    throw new Problem("seam-foreign", `${of.piece} is not a piece of this garment.`, {
      ...at,
      hint: `Copy it in first: piece ${of.piece.split(".").at(-1)} = ${of.piece} { }.`,
    });
  }
  const piece = garment.pieces.get(of.piece)!;
  // A piece with a failed line may have no outline yet, and its own finding has said why.
  if (piece.doubtful && piece.outline.length === 0) throw new Withheld();
  // A slit is a line inside the piece, and both its sides are cut edges.
  const isSlit = piece.edges.get(of.edge)?.role === "opening";
  if (!isSlit && !piece.outline.some(({ edge }) => edge === of.edge)) {
    throw new Problem("seam-inner", `${of.piece}.${of.edge} is not part of an outline, and cannot be sewn.`, at);
  }
  return { piece: of.piece, edge: of.edge, path, turned, whole, taken };
};
