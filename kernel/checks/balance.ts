// Front and back hang level: the front is as much longer over the bust as its darts take up, and no more.
import { defineCheck } from "../check.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { distance, dot, minus } from "../geometry/point.ts";
import { walked } from "../outline.ts";
import { type Shoulder, type ShoulderSeam, shoulderSeams } from "../shoulder-seams.ts";
import { lengthIn } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Garment, Judgement } from "../working.ts";

// mm by which a front without darts may be longer than the back, which a bust uses up, and shorter, which nobody sees
// (common practice, no source).
const longer = 25;
const shorter = 10;

// A front longer or shorter than this, in mm, is meant to be.
const onPurpose = 80;

const rounding = 1e-6;

const half = (name: string, center: string): string => `
piece ${name} {
  curve neck    = (0, ${name === "front" ? "6 cm" : "0"}) to (7.4 cm, -2.5 cm) leaving right arriving -72 deg
  line shoulder = (7.4 cm, -2.5 cm) to (20 cm, 1.6 cm)
  curve armhole = (20 cm, 1.6 cm) to (27 cm, 24 cm) through (18 cm, 13 cm) heading down leaving square-to shoulder arriving right
  line side     = (27 cm, 24 cm) to (27 cm, 70 cm)
  curve hem     = (0, ${center}) to (27 cm, 70 cm) leaving right arriving right
  line center   = (0, ${name === "front" ? "6 cm" : "0"}) to (0, ${center})
  outline center, neck, shoulder, armhole, side, hem
  mark hem as hem
}
`;

export const balance = defineCheck({
  name: "balance",
  since: "0.2",
  title: "From the neck point to the hem the front is longer than the back by no more than bust and darts use up.",
  why: "With the sides sewn together, a front that is too short kicks up at the hem and swings away from the body; one that is too long dips and lies in folds under the bust.",
  passes: `chalkline 1
recipe "Tunic that hangs level"
units cm
${half("back", "70 cm")}${half("front", "71.5 cm")}
seam front.shoulder with back.shoulder
seam front.side with back.side
`,
  fails: `chalkline 1
recipe "Tunic whose front kicks up"
units cm
${half("back", "70 cm")}${half("front", "67 cm")}
seam front.shoulder with back.shoulder
seam front.side with back.side
`,
  *judge(garment) {
    for (const seam of shoulderSeams(garment)) {
      const judgement = judged(seam, garment);
      if (judgement) yield judgement;
    }
  },
});

const judged = ({ seam, front, back }: ShoulderSeam, garment: Garment): Judgement | undefined => {
  const [frontLength, backLength] = [toHem(front), toHem(back)];
  if (frontLength === undefined || backLength === undefined) return undefined;
  const over = frontLength - backLength;
  const taken = dartsOver(front);
  if (over > taken + onPurpose || over < -onPurpose) return undefined;
  const inWords = (mm: number): string => lengthIn(mm, garment.units);
  const isWithin = over <= taken + longer + rounding && over >= -shorter - rounding;
  const about = {
    on: `${front.piece.name} with ${back.piece.name}`,
    verdict: isWithin ? "pass" : "warning",
    found: over,
    wanted: `-${shorter} to ${Math.round(taken + longer)}`,
    where: whereToMend(front.piece, front.center),
  } as const;
  const said =
    `From the neck point to the hem at the center ${front.piece.name} is ${inWords(Math.abs(over))} ` +
    `${over < 0 ? "shorter" : "longer"} than ${back.piece.name}`;
  if (isWithin) return { ...about, message: `${said}, and hangs level.` };
  const related = [{ where: seam.drawnBy, message: "Their shoulders are sewn together here." }];
  if (over < 0) {
    return {
      ...about,
      message: `${said}: its hem kicks up.`,
      hint: `Lengthen the front over the bust by ${inWords(-over - shorter)} or more, or shorten the back above the waist.`,
      related,
    };
  }
  const darts = taken > 0 ? `, and its darts take up ${inWords(taken)}` : "";
  return {
    ...about,
    message: `${said}${darts}: its hem dips.`,
    hint: `Shorten the front by ${inWords(over - taken - longer)} or more, or take that up in a bust dart.`,
    related,
  };
};

/** From the neck point straight down to the end of the center; undefined where center and side do not both end at a hem. */
const toHem = ({ piece, neckDepth, center, centerPath, armhole, down }: Shoulder): number | undefined => {
  const walk = walked(piece);
  const isAtHem = (edge: string): boolean => {
    const index = walk.findIndex((part) => part.edge.name === edge);
    return [1, walk.length - 1].some((step) => walk[(index + step) % walk.length]!.edge.role === "hem");
  };
  if (!isAtHem(center.name) || !isAtHem(armhole.side)) return undefined;
  return neckDepth + dot(minus(endOf(centerPath), startOf(centerPath)), down);
};

/** What the darts at side, armhole, shoulder and neck take up, mm. */
const dartsOver = ({ piece, armhole, neck }: Shoulder): number =>
  [...piece.darts.values()]
    .filter(({ edge }) => [armhole.side, armhole.name, armhole.shoulder, neck.name].includes(edge))
    .reduce((sum, { first, second }) => sum + distance(first, second), 0);
