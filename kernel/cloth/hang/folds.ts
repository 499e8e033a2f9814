// Into how many folds the slack of a hem falls, and how deep they are: indicative only, for the sheet does not know its cloth.
import { distance } from "../../geometry/point.ts";
import type { Slack } from "./slack.ts";

/** The folds along one hem. */
export interface Folds {
  /** Length of cloth in one fold, mm. */
  readonly wavelength: number;
  readonly count: number;
  /** How far a fold stands out from crest to hollow, mm. */
  readonly depth: number;
}

/**
 * The natural length of cloth in one fold at the hem of a strip that hangs so long, mm: 2 pi (2/3 c^3 L)^(1/4), c the bending
 * length (trade handbook, the hang preview: each strip swings as a pendulum, and bending holds it back).
 */
export const wavelengthOf = (bendingLength: number, length: number): number =>
  wave * Math.sqrt(Math.sqrt((2 / 3) * bendingLength * bendingLength * bendingLength * length));

// The thin-sheet wrinkling law has the same form and another constant, which would go here.
const wave = 2 * Math.PI;

/** The folds that a hem's slack makes at a wavelength; the cloth goes straight out and back in each. */
export const foldsOf = ({ places, slack }: Slack, wavelength: number): Folds => {
  const folded = places.slice(1).flatMap((to, index) => {
    const from = places[index]!;
    const [flat, hung] = [distance(from.flat, to.flat), distance(from.hung, to.hung)];
    return flat - hung > foldedShare * flat ? [{ flat, hung }] : [];
  });
  const flat = folded.reduce((sum, each) => sum + each.flat, 0);
  const hung = folded.reduce((sum, each) => sum + each.hung, 0);
  if (slack < leastSlack || flat === 0) return { wavelength, count: 0, depth: 0 };
  const count = Math.max(1, Math.round(flat / wavelength));
  return { wavelength, count, depth: Math.sqrt(Math.max(0, flat * flat - hung * hung)) / (2 * count) };
};

// Cloth that lies fuller than by this share of itself folds; less is ease.
const foldedShare = 0.05;

// Less slack along a hem than this, in mm, makes no fold.
const leastSlack = 20;
