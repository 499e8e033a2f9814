// Which pieces go round the body together, told by the seams of real recipes.
import { expect, test } from "vitest";
import { hangers } from "../../kernel/cloth/hang/hanger.ts";
import { roundsOf } from "../../kernel/cloth/hang/rounds.ts";
import { workedRecipe } from "../worked-recipe.ts";

const rounds = (file: string): string[] => {
  const { garment } = workedRecipe(`${file}.chalk`);
  return roundsOf(hangers(garment), garment).map(
    ({ turns, around }) =>
      `${around}: ${turns.map(({ piece, isReversed }) => `${piece}${isReversed ? "'" : ""}`).join(" ")}`,
  );
};

test.each([
  [
    "a back on the fold and two fronts make four panels",
    "lobby-coat-swing",
    ["body: back' front front' back", "arm: sleeve"],
  ],
  ["gores alike go round as often as they are cut", "gored-skirt", [`body: ${Array(6).fill("panel").join(" ")}`]],
  [
    "sides drafted apart go round once, from one opening to the other",
    "uneven-jacket",
    ["body: left-front' left-back right-back' right-front", "arm: left-sleeve", "arm: right-sleeve"],
  ],
  ["a center seam brings a piece back in the mirror", "a-line-skirt", ["body: front' back back' front"]],
  [
    "a front with its facing folded back goes round without the facing",
    "stage-smock",
    ["body: back' front front' back", "arm: sleeve"],
  ],
  [
    "a cape goes round by itself above the coat",
    "conductors-cape-coat",
    ["body: back' front front' back", "body: cape-back' cape-front cape-front' cape-back"],
  ],
  [
    "a facing that ends in the air does not go round",
    "lobby-coat-collar",
    ["body: back' front front' back", "arm: sleeve"],
  ],
])("%s", (_, file, wanted) => {
  expect(rounds(file)).toEqual(wanted);
});
