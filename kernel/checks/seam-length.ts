// The two sides of a seam are as long as each other, but for the ease.
import type { Where } from "../../grammar/diagnostic.ts";
import { defineCheck } from "../check.ts";
import { lengthIn } from "../units.ts";
import { capital } from "../value.ts";
import { listInWords, type SeamWalk, seamName, soundSeams, walkSeam } from "../walk.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Garment, Judgement, Run, Seam, Units } from "../working.ts";

// Sums of many stretches end in the last digits; a difference just at the tolerance is within it.
const rounding = 1e-6;

export const seamLength = defineCheck({
  name: "seam-length",
  since: "0.1",
  title: "The first list of a seam is longer than the second by the ease, within the seam's tolerance.",
  why: "The sewer ends with cloth left over on one side: the seam puckers, or the hem steps.",
  passes: `chalkline 1
recipe "Vest sides of one length"
units mm

piece front {
  point A = (0, 0)
  point B = A right 25 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line opening = A to D
  outline yoke-edge, side, hem, opening
}

piece back {
  point A = (0, 0)
  point B = A right 27 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline yoke-edge, side, hem, center
}

seam front.side with back.side
`,
  fails: `chalkline 1
recipe "Vest front longer than its back"
units mm

piece front {
  point A = (0, 0)
  point B = A right 25 cm
  point C = B down 40.3 cm
  point D = A down 40.3 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line opening = A to D
  outline yoke-edge, side, hem, opening
}

piece back {
  point A = (0, 0)
  point B = A right 27 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline yoke-edge, side, hem, center
}

seam front.side with back.side
`,

  *judge(garment) {
    for (const seam of soundSeams(garment)) yield lengthsAgree(seam, walkSeam(seam, garment), garment);
  },
});

const lengthsAgree = (seam: Seam, walk: SeamWalk, garment: Garment): Judgement => {
  const about = { on: seamName(seam), found: walk.difference, wanted: seam.ease, where: seam.drawnBy };
  const [first, second] = [listInWords(seam.first), listInWords(seam.second)];
  if (Math.abs(walk.difference - seam.ease) <= seam.within + rounding) {
    const lengths = [walk.firstLength, walk.secondLength].map((length) => lengthIn(length, garment.units));
    return { ...about, verdict: "pass", message: capital(`${first} measures ${lengths[0]}, ${second} ${lengths[1]}.`) };
  }
  const instead = seam.ease === 0 ? "" : `; the seam says ${lengthIn(seam.ease, garment.units)} of ease`;
  return {
    ...about,
    verdict: "error",
    message: capital(`${first} is ${compared(walk, seam, garment.units)} ${second}${instead}.`),
    hint: hint(walk, seam, garment.units),
    related: drawnHere([...seam.first, ...seam.second], garment),
  };
};

const compared = ({ difference }: SeamWalk, { within }: Seam, units: Units): string => {
  if (Math.abs(difference) <= within) return "about as long as";
  return `${lengthIn(Math.abs(difference), units)} ${difference < 0 ? "shorter" : "longer"} than`;
};

const hint = ({ difference }: SeamWalk, { within }: Seam, units: Units): string => {
  const alter = "bring one of them to its length with `true-seam EDGE to LENGTH moving end`";
  const ease = `ease ${lengthIn(Math.abs(difference), units)}`;
  if (Math.abs(difference) <= within) return `Take the ease out if none is meant; otherwise ${alter}.`;
  if (difference > 0) return `Say \`${ease}\` if the longer side is to be eased in; otherwise ${alter}.`;
  return `Name the longer side first and say \`${ease}\` if it is to be eased in; otherwise ${alter}.`;
};

// An edge that stands twice in a seam is pointed at once.
const drawnHere = (runs: readonly Run[], garment: Garment): { where: Where; message: string }[] => {
  const places = new Map<string, Where>();
  for (const run of runs) {
    const piece = garment.pieces.get(run.piece);
    const edge = piece?.edges.get(run.edge);
    if (piece && edge) places.set(`The ${edge.name} of ${piece.name} is drawn here.`, whereToMend(piece, edge));
  }
  return [...places].map(([message, where]) => ({ where, message }));
};
