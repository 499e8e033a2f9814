// Where the grain line goes on a part of a piece: its direction stays, and it lies on the cloth.
import { contains } from "../geometry/area.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { middleOfArea } from "../geometry/middle-of-area.ts";
import type { Path } from "../geometry/path.ts";
import { between, type Point, plus, times } from "../geometry/point.ts";
import { grainDirection } from "../grain-direction.ts";
import type { Grain, Piece } from "../working.ts";

/** The grain of a piece for a part of it with this boundary; `edgeNow` tells what an edge is called there, if it has it. */
export const grainWithin = (
  piece: Piece,
  loop: Path,
  edgeNow: (edge: string) => string | undefined,
  grain: Grain,
): Grain | undefined => {
  if (grain.kind === "along") {
    const edge = edgeNow(grain.edge);
    if (edge !== undefined) return { ...grain, edge };
  } else if (contains(loop, grain.from) && contains(loop, grain.to)) return grain;
  const direction = grainDirection(piece);
  if (!direction) return undefined;
  const spot = grain.kind === "line" ? between(grain.from, grain.to, 0.5) : undefined;
  const through = spot && contains(loop, spot) ? spot : middleOfArea(loop);
  return lyingOn(loop, through, direction, grain);
};

/** Two thirds of the way across the cloth there, which is what a cutter needs to measure from. */
const lyingOn = (loop: Path, through: Point, direction: Point, { drawnBy }: Grain): Grain | undefined => {
  const stations = crossingsWithRay(loop, through, direction).map(({ ahead }) => ahead);
  const stretches = stations.slice(1).flatMap((to, index) => {
    const from = stations[index]!;
    return contains(loop, plus(through, times(direction, (from + to) / 2))) ? [{ from, to }] : [];
  });
  const own = stretches.find(({ from, to }) => from <= 0 && to >= 0);
  const longest = stretches.sort((a, b) => b.to - b.from - (a.to - a.from))[0];
  const stretch = own ?? longest;
  if (!stretch) return undefined;
  const { from, to } = stretch;
  const at = (share: number): Point => plus(through, times(direction, from + (to - from) * share));
  return { kind: "line", from: at(1 / 6), to: at(5 / 6), drawnBy };
};
