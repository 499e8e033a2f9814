// How long working a recipe takes, against the same garment drawn by a program that was written for it alone; and its drawing.

import { readFileSync } from "node:fs";
import { draw } from "../../kernel/drawing/draw.ts";
import { svg } from "../../kernel/export/svg.ts";
import { kernel } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { longRecipe } from "./long-recipe.ts";
import { recipesFolder } from "./recipe-in.ts";
import { type Bench, type Row, sideBySide } from "./row.ts";
import { straightCoat } from "./straight-coat.ts";

export const evaluateBench: Bench = {
  name: "evaluate",
  rows: async (rounds) => {
    const chalk = kernel(vocabulary);
    const file = "blocks/straight-coat.chalk";
    const source = { file, text: readFileSync(`recipes/${file}`, "utf8") };
    const worked = sideBySide(
      () => chalk.draft(source, { sources: recipesFolder }),
      () => straightCoat(),
      rounds,
    );
    const { garment } = chalk.draft(source, { sources: recipesFolder });
    const drawn = sideBySide(
      () => svg(draw(garment).sheet),
      () => chalk.draft(source, { sources: recipesFolder }),
      rounds,
    );
    return [
      afterAnEdit(Math.min(rounds, 5)),
      {
        goal: "work the straight coat",
        ours: worked.ours,
        floor: { is: "a program for this coat alone", figure: worked.floor },
        bound: 5,
      },
      {
        goal: "draw it and write its SVG",
        ours: drawn.ours,
        floor: { is: "working the recipe", figure: drawn.floor },
        bound: 3,
      },
    ];
  },
};

/** One line of one panel is edited, to and fro, against a kernel that has seen none of it. */
const afterAnEdit = (rounds: number): Row => {
  const text = longRecipe(10_000);
  const edited = [text, text.replace("end - 12.5 cm double", "end - 12.6 cm double")];
  const chalk = kernel(vocabulary);
  let turn = 0;
  const times = sideBySide(
    () => {
      turn += 1;
      chalk.draft({ file: "curtain.chalk", text: edited[turn % 2]! });
    },
    () => {
      kernel(vocabulary).draft({ file: "curtain.chalk", text });
    },
    rounds,
  );
  // Of 399 panels one depends on it; a tenth leaves room for reading the text.
  return {
    goal: "work 10,000 lines again, one of them edited",
    ours: times.ours,
    floor: { is: "all of it anew", figure: times.floor },
    bound: 0.1,
  };
};
