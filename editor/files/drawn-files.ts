// A garment's drawings with the names of the files they go to: one for each piece, and the sheet with all of them.
import type { Drawings } from "../../kernel/drawing/draw.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import type { Remarks } from "../../kernel/drawing/remarks.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { recipeVersion } from "../../kernel/recipe-version.ts";
import { valueInWords } from "../../kernel/report/amounts.ts";
import { counted } from "../../kernel/report/verdict.ts";
import { isScalar } from "../../kernel/value.ts";
import { drawingNames, sheetName } from "./drawing-names.ts";

/** What a garment was drafted with, besides its recipe. */
export interface DraftedWith {
  readonly size?: string;
  readonly person?: string;
  readonly body?: string;
}

/** A drawing and the name of its file, without the ending of the format. */
export interface DrawnFile {
  readonly name: string;
  readonly drawing: Drawing;
}

/** All drawings of a garment, the sheet last. */
export const drawnFiles = ({ pieces, sheet }: Drawings): DrawnFile[] => {
  const names = drawingNames(pieces.keys());
  return [
    ...[...pieces].map(([piece, drawing]) => ({ name: names.get(piece)!, drawing })),
    { name: sheetName, drawing: sheet },
  ];
};

/** What is said of how it was drafted: size, body, the recipe's own design choices and its version; and that it must not be cut. */
export const remarksOn = (outcome: Outcome, { size, person, body }: DraftedWith): Remarks => {
  const { values, garment, findings } = outcome;
  const errors = findings.filter(({ severity }) => severity === "error").length;
  const params = [...values].flatMap(([name, { kind, value }]) =>
    kind === "param" && isScalar(value) ? [`${name} ${valueInWords(value, garment.units)}`] : [],
  );
  const made = person === undefined ? body : person;
  return {
    ...(errors > 0 && { unfit: `NOT FIT TO CUT: ${counted(errors, "error")}` }),
    choices: [
      ...(size === undefined ? [] : [`size ${size}`]),
      ...(made === undefined ? [] : [`the body ${made}`]),
      ...params,
    ],
    ...(size !== undefined && { size }),
    version: recipeVersion(outcome),
  };
};
