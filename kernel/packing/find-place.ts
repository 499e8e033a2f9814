// Looks for a place where a copy overlaps the others less: many places at chance all over the strip and around where it lies
// now, of which the best are followed downhill (J. Gardeyn, G. Vanden Berghe, T. Wauters 2025, "An open-source heuristic to
// reboot 2D nesting research", arXiv:2509.13329: sampling and coordinate descent).
import type { Draw } from "../stress/seeded.ts";
import { type Bed, type Place, weightedDepthAt } from "./bed.ts";
import { clamp } from "./clamp.ts";

/** A place and the weighted overlaps there. */
export interface Found extends Place {
  readonly loss: number;
}

// How many places at chance are looked at, all over the strip and around where the copy lies, and how many are followed.
const allOver = 40;
const around = 20;
const followed = 3;

/** The best place found for a copy; `loss` is at most that of where it lies now, which is looked at too. */
export const findPlace = (bed: Bed, copy: number, draw: Draw): Found => {
  const best: Found[] = [];
  const worst = (): number => (best.length < followed ? Number.POSITIVE_INFINITY : best[best.length - 1]!.loss);
  const look = (lies: number, x: number, y: number): void => {
    const loss = weightedDepthAt(bed, copy, lies, x, y, worst());
    if (loss < worst()) keep(best, { lies, x, y, loss });
  };
  const now = bed.turned[bed.lies[copy]!]!;
  const [x, y] = [bed.x[copy]!, bed.y[copy]!];
  look(bed.lies[copy]!, x, y);
  const choices = bed.choices[copy]!.filter((lies) => bed.turned[lies]!.long <= bed.length);
  const choose = (): number => choices[Math.floor(draw() * choices.length)]!;
  for (let i = 0; i < allOver; i += 1) {
    const lies = choose();
    const { long, least, most } = bed.turned[lies]!;
    look(lies, draw() * (bed.length - long), least + draw() * (most - least));
  }
  for (let i = 0; i < around; i += 1) {
    const lies = choose();
    const shape = bed.turned[lies]!;
    const dx = (draw() - 0.5) * now.long;
    const dy = (draw() - 0.5) * now.wide;
    look(lies, clamp(x + dx, 0, bed.length - shape.long), clamp(y + dy, shape.least, shape.most));
  }
  return best.map((place) => descended(bed, copy, place, draw)).reduce((a, b) => (b.loss < a.loss ? b : a));
};

const keep = (best: Found[], place: Found): void => {
  if (best.length === followed) best.pop();
  const at = best.findIndex(({ loss }) => place.loss < loss);
  best.splice(at < 0 ? best.length : at, 0, place);
};

// Steps downhill begin at this share of a shape's smaller measure and end at that one.
const firstStep = 0.1;
const lastStep = 0.001;

/** Downhill from a place in steps along, across or aslant, longer after a gain and shorter after none. */
const descended = (bed: Bed, copy: number, from: Found, draw: Draw): Found => {
  const { long, wide, least, most } = bed.turned[from.lies]!;
  const size = Math.min(long, wide);
  const farthest = bed.length - long;
  let { x, y, loss } = from;
  let [stepX, stepY] = [firstStep * size, firstStep * size];
  while (loss > 0 && Math.max(stepX, stepY) > lastStep * size) {
    const axis = Math.floor(draw() * 4);
    const [dx, dy] = [axis === 1 ? 0 : stepX, axis === 0 ? 0 : axis === 3 ? -stepY : stepY];
    const [aheadX, aheadY] = [clamp(x + dx, 0, farthest), clamp(y + dy, least, most)];
    const [backX, backY] = [clamp(x - dx, 0, farthest), clamp(y - dy, least, most)];
    const ahead = weightedDepthAt(bed, copy, from.lies, aheadX, aheadY, loss);
    const back = weightedDepthAt(bed, copy, from.lies, backX, backY, Math.min(loss, ahead));
    const isBetter = Math.min(ahead, back) < loss;
    if (isBetter) {
      [x, y, loss] = back < ahead ? [backX, backY, back] : [aheadX, aheadY, ahead];
    }
    const factor = isBetter ? 1.1 : 0.5;
    if (axis !== 1) stepX *= factor;
    if (axis !== 0) stepY *= factor;
  }
  return { lies: from.lies, x, y, loss };
};
