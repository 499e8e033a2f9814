// chalkline lay --most: the largest value of a param at which every piece fits its cloth.
import { setImmediate } from "node:timers/promises";
import { type Largest, largestRung } from "../../kernel/cloth/lay/largest-rung.ts";
import type { Asked, Lay } from "../../kernel/cloth/lay/lay-of.ts";
import { type MostThatFits, triedValues } from "../../kernel/cloth/lay/most-that-fits.ts";
import { type AtHand, handTasks, type Obstacle, obstaclesOf } from "../../kernel/cloth/lay/obstacle.ts";
import { layTasks } from "../../kernel/cloth/lay/over-values.ts";
import { rungsOf } from "../../kernel/cloth/lay/rungs.ts";
import type { Varied } from "../../kernel/cloth/lay/varied.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import type { Packers } from "./packers.ts";

/** Looks for it; where somebody asks to stop, what is known by then. */
export const mostThatFits = async (
  varied: Varied,
  step: number,
  asked: Asked,
  atHand: AtHand,
  workWith: (value: number) => Outcome,
  packers: Packers,
): Promise<MostThatFits> => {
  const rungs = rungsOf(varied.least, varied.most, step, 0);
  const obstacles = new Map<number, Obstacle>();
  const tried = new Map<number, boolean>();
  const look = async (rung: number): Promise<void> => {
    const obstacle = await obstacleAt(workWith(rungs.at(rung)), asked, atHand, packers);
    if (obstacle === stopped) return;
    if (obstacle) obstacles.set(rung, obstacle);
    tried.set(rung, obstacle === undefined);
  };
  const search = largestRung(rungs.count);
  let found = search.next();
  while (!found.done) {
    const looks: Promise<void>[] = [];
    for (const rung of found.value) {
      if (packers.isStopped) break;
      looks.push(look(rung));
      // Working a recipe holds this thread, and others have something to tell it meanwhile.
      await setImmediate();
    }
    await Promise.all(looks);
    if (packers.isStopped) break;
    found = search.next(found.value.map((rung) => tried.get(rung)!));
  }
  const { rung, next } = found.done ? found.value : soFar(tried);
  const sorted = new Map([...tried].sort(([a], [b]) => a - b));
  const largest = rung === undefined ? undefined : rungs.at(rung);
  return {
    varied,
    step,
    count: rungs.count,
    effort: asked.effort,
    atHand,
    largest: largest === undefined ? undefined : { value: largest, lay: await laid(workWith(largest), asked, packers) },
    next: next === undefined ? undefined : { value: rungs.at(next), obstacle: obstacles.get(next) },
    tried: triedValues({ tried: sorted }, rungs, obstacles),
    isStopped: !found.done,
  };
};

const stopped = Symbol("stopped");

/** The first thing that stands against cutting a garment from the cloth at hand; undefined where nothing does. */
const obstacleAt = async (
  outcome: Outcome,
  asked: Asked,
  atHand: AtHand,
  packers: Packers,
): Promise<Obstacle | undefined | typeof stopped> => {
  const [first] = obstaclesOf(outcome, asked);
  if (first) return first;
  const hands = handTasks(outcome.garment, asked, atHand);
  const hopeless = hands.find((each) => "kind" in each);
  if (hopeless) return hopeless;
  const judged = await Promise.all(
    hands.map(async (hand) => {
      if ("kind" in hand) return hand;
      const { layout, isWhole } = await packers.pack(hand);
      return hand.obstacleOf(layout) && !isWhole ? stopped : hand.obstacleOf(layout);
    }),
  );
  return judged.find((each) => each !== undefined);
};

const soFar = (tried: ReadonlyMap<number, boolean>): Pick<Largest, "rung" | "next"> => {
  const held = [...tried].filter(([, holds]) => holds).map(([rung]) => rung);
  return { rung: held.length === 0 ? undefined : Math.max(...held), next: undefined };
};

/** How everything lies at the value that was found: laid for itself, so that what is said of it is what anybody else gets. */
const laid = async (outcome: Outcome, asked: Asked, packers: Packers): Promise<Lay> => {
  const { tasks, layOf } = layTasks(outcome, asked);
  return layOf((await Promise.all(tasks.map(packers.pack))).map(({ layout }) => layout));
};
