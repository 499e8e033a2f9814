// godet: a piece made to fit into a slit or an open stretch of a seam.
import { optional, phrase } from "../../grammar/phrase.ts";
import { sectorPiece } from "../alter/sector-piece.ts";
import { asin, sin } from "../geometry/trig.ts";
import { Problem } from "../problem.ts";
import { sewnLength } from "../sewn.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { Units } from "../working.ts";

export const godet = garmentStep({
  name: "godet",
  since: "0.2",
  summary: "Makes a godet: a new piece that fits into a slit, or into a seam that is left open from the hem up.",
  details: `It is a sector of a circle whose radius is the length of the slit, so that its sides \`left-side\` and \`right-side\` are as long as what they are sewn
to. \`wide\` is measured straight across at the hem, or is the angle at the tip. Name one edge, the slit, or the two edges of the open seam
(\`part(front.side, …)\`), which have to be equally long. \`seams\` and \`turned-up\` give it its allowances.`,
  example: `chalkline 1
units cm
piece panel {
  line waist = (0, 0) to (30 cm, 0)
  line side  = (30 cm, 0) to (30 cm, 60 cm)
  line hem   = (0, 60 cm) to (30 cm, 60 cm)
  line front = (0, 0) to (0, 60 cm)
  outline waist, side, hem, front
  slit vent = hem at 50% to (15 cm, 35 cm)
  mark hem as hem
}
godet insert = panel.vent wide 20 cm seams 1 cm turned-up 0.5 cm
seam insert.left-side with panel.vent
seam insert.right-side with panel.vent`,
  phrase: [
    phrase`godet ${slot.name("name", "what the new piece is called")} = ${slot.edges("edges", "the slit, or the two edges of the open seam")}
      wide ${slot.lengthOrAngle("wide", "how wide it is at the hem, straight across, or the angle at its tip")}
      ${optional`seams ${slot.length("seams", "the allowance of its two sides")}`}
      ${optional`turned-up ${slot.length("turnUp", "its hem allowance")}`}`,
  ],
  work({ name, edges, wide, seams, turnUp }, garment, { where }) {
    const { units } = garment;
    const lengths = edges.map(({ path, taken }) => sewnLength(path, taken));
    const [depth, other] = [lengths[0]!, lengths[1] ?? lengths[0]!];
    if (edges.length > 2) {
      throw new Problem("godet-edges", "A godet has two sides, and more edges are named.", {
        hint: "Name the slit, or the two edges of the open seam.",
      });
    }
    if (Math.abs(depth - other) > within) {
      throw new Problem(
        "godet-uneven",
        `The two edges are ${lengthIn(depth, units)} and ${lengthIn(other, units)} long; a godet fits between equal ones.`,
        { hint: "Take stretches of one length with `part`." },
      );
    }
    const angle = "angle" in wide ? wide.angle : angleOf(wide.length, depth, units);
    if (angle <= 0) throw new Problem("godet-narrow", "A godet is wider than 0.", { hint: "Name a width above 0." });
    const piece = sectorPiece(name, { top: 0, hem: angle * depth, depth }, { seams, hem: turnUp }, where);
    return {
      now: { ...garment, pieces: new Map(garment.pieces).set(name, piece) },
      words: `godet ${name}, ${lengthIn(depth, units)} deep and ${lengthIn(2 * depth * sin(Math.min(angle, Math.PI) / 2), units)} wide, ${angleInWords(angle)}, hem ${lengthIn(angle * depth, units)}`,
    };
  },
});

// What nobody sees at the machine, mm.
const within = 1;

const angleOf = (across: number, radius: number, units: Units): number => {
  if (across <= 2 * radius) return 2 * asin(across / (2 * radius));
  throw new Problem(
    "godet-wide",
    `${lengthIn(radius, units)} deep, a godet is ${lengthIn(2 * radius, units)} wide at most; ${lengthIn(across, units)} is asked for.`,
    { hint: "Take a smaller width, or name the angle at its tip: `wide 200 deg`." },
  );
};
