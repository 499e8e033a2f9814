// The front neck lies lower than the back neck by about as much as it does on a body.
import { defineCheck } from "../check.ts";
import { type ShoulderSeam, shoulderSeams } from "../shoulder-seams.ts";
import { lengthIn } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Garment, Judgement } from "../working.ts";

// mm by which the front neck point lies below the nape on the flat pattern: 2 to 3 in (trade handbook 4.15).
const usualLeast = 50;
const usualMost = 75;

// The neck width, from the center to the neck point, that these belong to; the narrow neck of a child and a very wide one
// are less deep and deeper in proportion (a fifth of a neck girth of 370, trade handbook 3.2; the proportion is our own rule).
const usualWidth = 74;

// A depth just at a limit is within it, whatever its last digits; mm.
const rounding = 1e-6;

const half = (name: string, neck: string, center: string, shoulder: string): string => `
piece ${name} {
  ${neck}
  line shoulder = (7.4 cm, -2.5 cm) to (20 cm, ${shoulder})
  curve armhole = (20 cm, ${shoulder}) to (27 cm, 24 cm) through (18 cm, 13 cm) heading down leaving square-to shoulder arriving right
  line side     = (27 cm, 24 cm) to (27 cm, 60 cm)
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, ${center}) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
}
`;

const back = half("back", "curve neck    = (0, 0) to (7.4 cm, -2.5 cm) leaving right arriving -72 deg", "0", "1.6 cm");

export const neckDepths = defineCheck({
  name: "neck-depths",
  since: "0.2",
  title: "The front neck point lies 5 to 7.5 cm below the nape.",
  why: "A neck comes forward from the body: with a front neck as high as the back one the garment slips backward and cuts in at the throat, and a front neck far below it gapes unless it is meant to be low.",
  passes: `chalkline 1
recipe "Vest whose front neck is cut out"
units cm
${back}${half("front", "curve neck    = (0, 6 cm) to (7.4 cm, -2.5 cm) leaving right arriving -72 deg", "6 cm", "1.6 cm")}
seam front.shoulder with back.shoulder
`,
  fails: `chalkline 1
recipe "Vest whose front has the neck of the back"
units cm
${back}${half("front", "curve neck    = (0, 0) to (7.4 cm, -2.5 cm) leaving right arriving -72 deg", "0", "1.6 cm")}
seam front.shoulder with back.shoulder
`,
  *judge(garment) {
    for (const seam of shoulderSeams(garment)) {
      // A front that is carried up past the neck, as a cascade is, has none to judge.
      if (seam.front.isCutOut && seam.back.isCutOut) yield judged(seam, garment);
    }
  },
});

const judged = ({ front, back: behind }: ShoulderSeam, garment: Garment): Judgement => {
  const least = usualLeast * Math.min(1, front.neckWidth / usualWidth);
  const most = usualMost * Math.max(1, front.neckWidth / usualWidth);
  const below = front.neckDepth - behind.neckDepth;
  const isWithin = below >= least - rounding && below <= most + rounding;
  const inWords = (mm: number): string => lengthIn(mm, garment.units);
  const about = {
    on: `${front.piece.name}.${front.neck.name}`,
    verdict: isWithin ? "pass" : "warning",
    found: below,
    wanted: `${Math.round(least)} to ${Math.round(most)}`,
    where: whereToMend(front.piece, front.neck),
  } as const;
  const message = `The neck of ${front.piece.name} ends ${inWords(below)} below the neck of ${behind.piece.name} at the center`;
  if (isWithin) return { ...about, message: `${message}, as is usual.` };
  const by = below < least ? least - below : below - most;
  const way = below < least ? "Lower" : "Raise";
  return {
    ...about,
    message: `${message}; ${inWords(least)} to ${inWords(most)} is usual.`,
    hint: `${way} the front neck by ${inWords(by)} or more, or accept neck-depths where the neck is meant to be ${below < least ? "high" : "low"}.`,
    related: [
      { where: whereToMend(behind.piece, behind.neck), message: `The neck of ${behind.piece.name} is drawn here.` },
    ],
  };
};
