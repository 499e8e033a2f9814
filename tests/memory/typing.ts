// A day's typing in one recipe: values that change, lines that are half written, remarks. No text comes twice, and none drifts
// away from the recipe, so that the last is worked as much as the first.
import { type Draw, seeded } from "../../kernel/stress/seeded.ts";

/** The texts that stand on the table, one after another, without end. */
export function* typing(recipe: string, seed: number): Generator<string, never> {
  const dice = seeded(seed);
  const lines = recipe.split("\n");
  for (let edit = 1; ; edit += 1) {
    const at = 1 + Math.floor(dice() * (lines.length - 1));
    const typed = [...lines];
    typed[at] = changed(lines[at]!, dice);
    // A line of its own keeps the texts apart.
    yield `${typed.join("\n")}\n# ${edit}\n`;
  }
}

const changed = (line: string, dice: Draw): string => {
  const turn = dice();
  if (turn < 0.6)
    return line.replace(/\d+(?= (?:cm|mm|deg))/, (number) => String(Number(number) + Math.floor(dice() * 5)));
  return turn < 0.8 ? line.slice(0, Math.floor(dice() * line.length)) : `${line} # let out`;
};
