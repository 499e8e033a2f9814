// A piece that is cut says how much cloth stands beyond each sewing line, be it none.
import { defineCheck } from "../check.ts";
import { walked } from "../outline.ts";
import { lengthIn } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Cut, Edge, Garment, Judgement, Piece, Units } from "../working.ts";

export const allowanceSaid = defineCheck({
  name: "allowance-said",
  since: "0.1",
  title: "Every edge of a piece that is cut says its allowance; a fold has none.",
  why: "An edge cut on the sewing line by mistake cannot be sewn. An edge that is bound needs no allowance, and says so.",
  passes: `chalkline 1
recipe "Cuff, bound along one edge"
units cm

fabric shell "gabardine" width 150 cm weight 260 gsm

piece cuff {
  point A = (0, 0)
  point B = A right 26 cm
  point C = B down 7 cm
  point D = A down 7 cm
  line seam-edge = A to B
  line front-end = B to C
  line bound-edge = D to C
  line back-end = A to D
  outline seam-edge, front-end, bound-edge, back-end
  grain along back-end
  allow seam-edge, front-end, back-end by 1 cm
  allow bound-edge by 0
}

cut cuff 2 from shell
`,
  fails: `chalkline 1
recipe "Cuff with an edge forgotten"
units cm

fabric shell "gabardine" width 150 cm weight 260 gsm

piece cuff {
  point A = (0, 0)
  point B = A right 26 cm
  point C = B down 7 cm
  point D = A down 7 cm
  line seam-edge = A to B
  line front-end = B to C
  line bound-edge = D to C
  line back-end = A to D
  outline seam-edge, front-end, bound-edge, back-end
  grain along back-end
  allow seam-edge, front-end, back-end by 1 cm
}

cut cuff 2 from shell
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      const cut = garment.cuts.find((each) => each.piece === piece.name);
      if (cut && !piece.doubtful) yield* saidOnEach(piece, cut, garment);
    }
  },
});

// A piece without a single allowance is one thing forgotten, and one finding.
function* saidOnEach(piece: Piece, cut: Cut, { units }: Garment): Iterable<Judgement> {
  const edges = walked(piece).flatMap(({ edge }) => (edge.role === "fold" ? [] : [edge]));
  if (edges.length > 1 && edges.every((edge) => !piece.allowances.has(edge.name))) {
    yield {
      on: piece.name,
      verdict: "warning",
      found: "no allowance",
      wanted: "an allowance on every edge",
      where: piece.drawnBy,
      message: `${piece.name} is cut from ${cut.fabric}, but no edge of it says its allowance.`,
      hint: `Add \`allow ${edges.map(({ name }) => name).join(", ")} by LENGTH\` to the piece.`,
      related: [{ where: cut.drawnBy, message: "It is cut here." }],
    };
    return;
  }
  for (const edge of edges) yield saidOn(piece, edge, cut, units);
}

const saidOn = (piece: Piece, edge: Edge, cut: Cut, units: Units): Judgement => {
  const on = `${piece.name}.${edge.name}`;
  const allowance = piece.allowances.get(edge.name);
  if (allowance) {
    const message = `The ${edge.name} of ${piece.name} has an allowance of ${lengthIn(allowance.width, units)}.`;
    return { on, verdict: "pass", found: allowance.width, wanted: "said", where: allowance.drawnBy, message };
  }
  return {
    on,
    verdict: "warning",
    found: "not said",
    wanted: "said",
    where: whereToMend(piece, edge),
    message: `The ${edge.name} of ${piece.name} does not say its allowance.`,
    hint: `Add \`allow ${edge.name} by LENGTH\` to the piece; \`by 0\` if it is to have none.`,
    related: [{ where: cut.drawnBy, message: `${piece.name} is cut here.` }],
  };
};
