// What the sheet of a hung garment shows and says, from the formula alone: the same on every machine.
import type { Evaluated } from "../../evaluate.ts";
import { measuresAsked } from "../../measures-asked.ts";
import { isScalar } from "../../value.ts";
import { type Figure, figuresOf, type RoundPlan } from "./figures.ts";
import { figureTitle, type HangSheet } from "./hang-svg.ts";
import { assumptionsOf } from "./hung.ts";
import { rigged } from "./rigged.ts";

/** The pictures of a worked recipe as it hangs, with what they take for granted. */
export const hangSheet = (evaluated: Evaluated): HangSheet => {
  const { garment } = evaluated;
  return {
    title: `${garment.title}, as it hangs`,
    units: garment.units,
    rows: hungRounds(evaluated).map(({ figures }) => figures.map((figure) => ({ title: figureTitle(figure), figure }))),
    notes: [keyTo(garment.units), ...assumptionsOf(garment)],
  };
};

/** A round of a garment and its pictures: from both sides, and from below. */
export interface HungRound {
  readonly round: RoundPlan;
  readonly figures: readonly Figure[];
}

/** The rounds of a worked recipe that are worth a look; a straight sleeve is not, so arms are shown where there are folds. */
export const hungRounds = (evaluated: Evaluated): HungRound[] => {
  const { rounds, columns, straight } = rigged(evaluated.garment, hipOf(evaluated));
  return rounds
    .map((round) => ({ round, figures: figuresOf(round, columns, straight) }))
    .filter(({ round, figures }) => figures.some(({ folds }) => round.around !== "arm" || folds > 0));
};

/** The girth of the hip that the recipe was worked with, mm. */
export const hipOf = (evaluated: Evaluated): number | undefined => {
  const hip = measuresAsked(evaluated).get("hip-girth")?.value;
  return hip && isScalar(hip) && hip.kind === "length" ? hip.value : undefined;
};

/** What the lines and greys of the pictures mean. */
export const keyTo = (units: string): string =>
  `Dashed: before it was altered. Grey: cloth in folds, the darker the steeper; thin lines run down their crests, and the numbers say how deep they are at the hem, in ${units}. Drawn at a fifth of its size, not to be cut after.`;
