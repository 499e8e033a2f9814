// The way in to the hang preview: a garment's pieces as they hang, at once by the formula.
import type { Garment } from "../../working.ts";
import { bodyDepth } from "./body-depth.ts";
import type { Sheet } from "./exact.ts";
import { stiffnessOf } from "./fabric-stiffness.ts";
import { type Folds, foldsOf, wavelengthOf } from "./folds.ts";
import { fine, type Hanger, hangers, stationsOf } from "./hanger.ts";
import { roundNotes } from "./round-notes.ts";
import { type HungPlace, type Slack, slackAlong, withoutGaps } from "./slack.ts";
import { type Holding, widerBy } from "./supports.ts";

/** A piece as it hangs. */
export interface HungPiece {
  readonly name: string;
  readonly holding: Holding;
  readonly hem: Slack;
  /** What the slack comes to in this cloth; indicative. */
  readonly folds: Folds;
  /** Of the settled mesh only: longest link over its length, steps, and whether it came to rest. */
  readonly settled?: { readonly stretch: number; readonly steps: number; readonly converged: boolean };
  /** What makes the picture doubtful, a sentence each. */
  readonly warnings: readonly string[];
}

export interface Hung {
  readonly pieces: readonly HungPiece[];
  readonly assumptions: readonly string[];
}

/** Every piece that hangs, by the formula. */
export const hungExactly = (garment: Garment): Hung => {
  const hanging = hangers(garment);
  return {
    pieces: hanging.map((hanger) => ({
      name: hanger.piece.name,
      holding: hanger.holding,
      ...hemAndFolds(hanger, garment, withoutGaps(stationsOf(hanger, fine))),
      warnings: warningsOf(hanger.sheet),
    })),
    assumptions: assumptionsOf(garment, hanging),
  };
};

/** What is told of a hem that hangs like this. */
export const hemAndFolds = (
  { piece, holding }: Pick<Hanger, "piece" | "holding">,
  garment: Garment,
  line: readonly HungPlace[],
): Pick<HungPiece, "hem" | "folds"> => {
  const hem = slackAlong(line);
  const top = Math.min(...holding.supports.flatMap(({ from, to }) => [from.body.y, to.body.y]));
  const length = Math.max(0, Math.max(...line.map(({ hung }) => hung.y)) - top);
  const { bendingLength } = stiffnessOf(piece.name, garment);
  return { hem, folds: foldsOf(hem, wavelengthOf(bendingLength, length)) };
};

/** What is doubtful about a piece before it has hung. */
export const warningsOf = (sheet: Sheet): string[] => {
  const wider = widerBy(sheet);
  if (wider <= mostWider) return [];
  return [`What holds the piece lies ${Math.round(wider)} mm further apart on the body than the cloth reaches.`];
};

/** What the pictures of a garment take for granted: what all do, and what its recipe leaves open. */
export const assumptionsOf = (garment: Garment, hanging: readonly Hanger[] = hangers(garment)): readonly string[] => [
  ...assumptions,
  ...roundNotes(hanging, garment),
];

/** What every picture takes for granted. */
export const assumptions: readonly string[] = [
  "The body is unrolled: across is along its surface.",
  "Neck, shoulder and underarm, a waist or a cap, or what a `hang` line names, stay where they were on the piece before it was altered.",
  "The cloth neither stretches nor sags on the bias, and nothing rubs.",
  "How many folds there are and how deep is indicative: it follows from the bending length; where the recipe states none, from what is usual for a cloth of that name, or else 20 mm.",
  "Below what holds the cloth no body stands in its way.",
  `Seen from below, body and hem are ellipses ${bodyDepth} times as deep as they are wide, and folds stand outward.`,
];

// mm: what truing a bent shoulder takes off is less.
const mostWider = 3;
