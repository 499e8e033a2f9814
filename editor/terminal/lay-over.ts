// chalkline lay --over: the cloth that a garment needs over the values of a param.
import { setImmediate } from "node:timers/promises";
import type { Asked } from "../../kernel/cloth/lay/lay-of.ts";
import { failuresOf } from "../../kernel/cloth/lay/obstacle.ts";
import { type ClothAt, layTasks, type OverValues } from "../../kernel/cloth/lay/over-values.ts";
import type { Rungs } from "../../kernel/cloth/lay/rungs.ts";
import type { Varied } from "../../kernel/cloth/lay/varied.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import type { Packers } from "./packers.ts";

/** Every value laid, smallest first; where somebody asks to stop, those that are laid by then. */
export const overValues = async (
  varied: Varied,
  step: number,
  rungs: Rungs,
  asked: Asked,
  workWith: (value: number) => Outcome,
  packers: Packers,
): Promise<OverValues> => {
  const begun: Promise<ClothAt | undefined>[] = [];
  for (let rung = 0; rung < rungs.count && !packers.isStopped; rung += 1) {
    const value = rungs.at(rung);
    begun.push(clothAt(value, workWith(value), asked, packers));
    // Working a recipe holds this thread, and others have something to tell it meanwhile.
    await setImmediate();
  }
  const laid = await Promise.all(begun);
  // Stopped, larger values may be known that took no packing: a table with a hole in it would be read wrong.
  const hole = laid.indexOf(undefined);
  const rows = (hole < 0 ? laid : laid.slice(0, hole)).flatMap((row) => row ?? []);
  return { varied, step, effort: asked.effort, rows, isStopped: rows.length < rungs.count };
};

/** How everything lies at a value; undefined where somebody asked to stop before that was known. */
const clothAt = async (
  value: number,
  outcome: Outcome,
  asked: Asked,
  packers: Packers,
): Promise<ClothAt | undefined> => {
  const { tasks, layOf } = layTasks(outcome, asked);
  const packed = await Promise.all(tasks.map(packers.pack));
  if (packed.some(({ isWhole }) => !isWhole)) return undefined;
  return { value, lay: layOf(packed.map(({ layout }) => layout)), failures: failuresOf(outcome) };
};
