// What is left of the stretches of a cutting line where they run over one another: the outer rim of all that they go round.
// Curves stay the curves they were; what falls away of them is cut off where they cross.
import { pathLength } from "../../geometry/arc-length.ts";
import { type Between, outermost } from "../../geometry/outermost.ts";
import { endOf, joined, line, type Path, startOf, straight } from "../../geometry/path.ts";
import { sameSpot } from "../../geometry/point.ts";
import { part } from "../../geometry/split.ts";
import type { CuttingStretch } from "./cutting-line.ts";

/** The stretches as one line that nowhere crosses itself; of an edge whose stretch falls away wholly a single spot is left. */
export const outerStretches = (stretches: readonly CuttingStretch[], clockwise: 1 | -1): readonly CuttingStretch[] => {
  const loop = closedLoop(stretches.map(({ path }) => path));
  const rim = outermost(loop, clockwise);
  if (!rim) return stretches;
  const kept = keptOfEach(stretches, rim);
  let at = startOf(part(loop, rim[0]!.from, rim[0]!.to));
  return stretches.map((stretch, index) => {
    const [spot, ...path] = joined([straight(at, at), ...kept[index]!.map(({ from, to }) => part(loop, from, to))]);
    at = endOf(path.length > 0 ? path : [spot!]);
    return { ...stretch, path: path.length > 0 ? path : [spot!] };
  });
};

/** Paths that follow one another as one closed path; the last joint moves onto the first start to the last bit. */
export const closedLoop = (paths: readonly Path[]): Path => {
  const path = joined(paths);
  const last = path[path.length - 1]!;
  if (!sameSpot(last.end, startOf(path))) return [...path, line(last.end, startOf(path))];
  return [...path.slice(0, -1), { ...last, end: startOf(path) }];
};

// Shorter than this, in mm, a stretch is only rounding.
const nothing = 1e-6;

/** What the rim keeps of each stretch, by arc length of the whole. */
const keptOfEach = (stretches: readonly CuttingStretch[], rim: readonly Between[]): Between[][] => {
  let end = 0;
  const reaches = stretches.map(({ path }, index) => {
    const start = end;
    end += pathLength(path);
    return { index, start, end };
  });
  const kept: Between[][] = stretches.map(() => []);
  let current = 0;
  for (const { from, to } of rim) {
    for (const { index, start, end } of reaches) {
      const own = { from: Math.max(from, start), to: Math.min(to, end) };
      if (own.to - own.from <= nothing) continue;
      // What comes out of turn, as where a far wider allowance stands out beyond a narrow one, counts to the one before it.
      current = Math.max(current, index);
      kept[current]!.push(own);
    }
  }
  return kept;
};
