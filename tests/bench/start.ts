// How long `chalkline check` takes from a cold start, against node that starts and does nothing: both spawned in turn.
import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { longRecipe } from "./long-recipe.ts";
import { type Bench, median, type Row } from "./row.ts";

export const startBench: Bench = {
  name: "start",
  rows: async (rounds) => [coldCheck(300, 1.5, rounds), coldCheck(10_000, 6, rounds)],
};

const coldCheck = (lines: number, bound: number, rounds: number): Row => {
  mkdirSync("out/bench", { recursive: true });
  const file = resolve(`out/bench/curtain-${lines}.chalk`);
  writeFileSync(file, longRecipe(lines));
  const [ours, floor]: [number[], number[]] = [[], []];
  for (let round = 0; round <= rounds; round += 1) {
    floor.push(spawned(["-e", "0"]));
    ours.push(spawned([resolve("dist/chalkline.js"), "check", file]));
  }
  return {
    goal: `cold check of ${lines.toLocaleString("en")} lines`,
    // The first of each fetched its files from the disk.
    ours: median(ours.slice(1)),
    floor: { is: "node -e 0", figure: median(floor.slice(1)) },
    bound,
  };
};

const spawned = (args: readonly string[]): number => {
  const began = performance.now();
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: "utf8" });
  if (status !== 0) throw new Error(`node ${args.join(" ")} ended with ${status}: ${stderr}`);
  return performance.now() - began;
};
