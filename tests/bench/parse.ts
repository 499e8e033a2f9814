// How long reading a recipe takes, against JSON.parse of the tree that comes of it, and what spoiled lines add to it.
import { kernel } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { longRecipe, spoiledRecipe } from "./long-recipe.ts";
import { type Bench, type Row, sideBySide } from "./row.ts";

const chalk = kernel(vocabulary);

export const parseBench: Bench = {
  name: "parse",
  // 100,000 lines are more than one file may have, so they are read as four files, each nearly as large as a file may be.
  rows: async (rounds) => [parsed(10_000, 1, rounds), parsed(25_000, 4, rounds), ...spoiledLines(rounds)],
};

const parsed = (lines: number, files: number, rounds: number): Row => {
  const text = longRecipe(lines);
  const { tree } = chalk.parse({ file: "curtain.chalk", text });
  const json = JSON.stringify({ lines: tree.lines, comments: tree.comments });
  const times = sideBySide(
    () => chalk.parse({ file: "curtain.chalk", text }),
    () => JSON.parse(json),
    rounds,
  );
  return {
    goal: `parse ${(lines * files).toLocaleString("en")} lines${files > 1 ? ` in ${files} files` : ""}`,
    ours: times.ours * files,
    floor: { is: "JSON.parse of the tree", figure: times.floor * files },
    bound: 5,
  };
};

const spoiledLines = (rounds: number): Row[] => {
  const [clean, { text, spoiled }] = [longRecipe(10_000), spoiledRecipe(10_000)];
  const { diagnostics, untold } = chalk.parse({ file: "curtain.chalk", text });
  const times = sideBySide(
    () => chalk.parse({ file: "curtain.chalk", text }),
    () => chalk.parse({ file: "curtain.chalk", text: clean }),
    rounds,
  );
  return [
    {
      goal: "parse 10,000 lines, one in ten bad",
      ours: times.ours,
      floor: { is: "the same lines, all good", figure: times.floor },
      bound: 1.5,
    },
    {
      goal: "findings for bad lines",
      ours: diagnostics.length + untold,
      unit: "findings",
      floor: { is: "bad lines", figure: spoiled.length },
      bound: 1,
    },
  ];
};
