// The notches of a seam meet when it is sewn.
import { defineCheck } from "../check.ts";
import { lengthIn, plainNumber } from "../units.ts";
import { capital } from "../value.ts";
import { listInWords, type MarkPair, type SeamMark, seamName, soundSeams, walkSeam } from "../walk.ts";
import type { Garment, Judgement, Run, Seam } from "../working.ts";

// Sums of many stretches end in the last digits; a notch just at the tolerance is within it.
const rounding = 1e-6;

export const seamNotches = defineCheck({
  name: "seam-notches",
  since: "0.1",
  title: "Notches pair in order along a seam, and between the start and each pair no more than the ease is taken up.",
  why: "The sewer lays notch on notch. One that is off or has no partner twists the seam, or gathers it where nobody wants it.",
  passes: `chalkline 1
recipe "Vest sides with a notch each"
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
  notch side at 20 cm
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
  notch side at 20 cm
}

seam front.side with back.side
`,
  fails: `chalkline 1
recipe "Vest sides with a notch out of place"
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
  notch side at 20 cm
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
  notch side at 20.5 cm
}

seam front.side with back.side
`,

  *judge(garment) {
    for (const seam of soundSeams(garment)) {
      const { pairs, leftOver, tooManyMarks } = walkSeam(seam, garment);
      if (tooManyMarks) yield notPaired(seam);
      for (const pair of pairs) yield pairMeets(seam, pair, garment);
      for (const mark of leftOver.first) yield* hasNoPartner(seam, mark, seam.second, garment);
      for (const mark of leftOver.second) yield* hasNoPartner(seam, mark, seam.first, garment);
    }
  },
});

const pairMeets = (seam: Seam, pair: MarkPair, garment: Garment): Judgement => {
  const { first, second, difference, off } = pair;
  const inUnits = (length: number): string => lengthIn(length, garment.units);
  const stands =
    `From the start of the seam it is ${inUnits(first.at)} to the ${markInWords(first)} ` +
    `and ${inUnits(second.at)} to the ${markInWords(second)}`;
  const about = {
    on: seamName(seam),
    found: difference,
    wanted: seam.ease === 0 ? 0 : `from 0 to ${plainNumber(seam.ease, 2)} mm`,
    where: seam.drawnBy,
  };
  if (off <= seam.within + rounding) return { ...about, verdict: "pass", message: `${stands}.` };
  const ahead = `; the first may be up to ${inUnits(seam.ease)} ahead`;
  return {
    ...about,
    verdict: "warning",
    message: `${stands}, ${inUnits(Math.abs(difference))} ${difference < 0 ? "more" : "less"}${seam.ease > 0 ? ahead : ""}.`,
    hint: `Move one of them by ${inUnits(off)} along its edge.`,
    ...related([first, second]),
  };
};

// A joint may stay without a partner: the sewer sees it anyway.
function* hasNoPartner(seam: Seam, mark: SeamMark, others: readonly Run[], garment: Garment): Iterable<Judgement> {
  if (mark.kind === "joint") return;
  yield {
    on: seamName(seam),
    verdict: "warning",
    found: "no partner",
    wanted: mark.kind === "double" ? "a double notch" : "a single notch or a joint",
    where: seam.drawnBy,
    message:
      `The ${markInWords(mark)}, ${lengthIn(mark.at, garment.units)} from the start of the seam, ` +
      `has no partner on ${listInWords(others)}.`,
    hint: "Set a notch of the same kind on the other side, or take this one out.",
    ...related([mark]),
  };
}

const notPaired = (seam: Seam): Judgement => ({
  on: seamName(seam),
  verdict: "warning",
  found: "too many notches",
  wanted: "notches that can be paired",
  where: seam.drawnBy,
  message: `${capital(listInWords(seam.first))} and ${listInWords(seam.second)} have too many notches and joints to pair them.`,
  hint: "Keep the notches that the sewer needs, one every 20 to 40 cm.",
});

const markInWords = ({ kind, run }: SeamMark): string => {
  const place = `the ${run.edge} of ${run.piece}`;
  if (kind === "joint") return `joint after ${place}`;
  return `${kind === "double" ? "double notch" : "notch"} on ${place}`;
};

const related = (marks: readonly SeamMark[]): Pick<Judgement, "related"> => {
  const set = marks.flatMap((mark) =>
    mark.drawnBy ? [{ where: mark.drawnBy, message: `The ${markInWords(mark)} is set here.` }] : [],
  );
  return set.length > 0 ? { related: set } : {};
};
