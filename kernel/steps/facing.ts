// facing: keeps of a piece only the strip along some of its edges, as a shaped facing.
import { phrase } from "../../grammar/phrase.ts";
import { cutThrough } from "../alter/cut-across.ts";
import { closedBoundary, turnInOutline } from "../alter/outline-spot.ts";
import { partOn } from "../alter/parted.ts";
import { reachOf } from "../alter/reach-of.ts";
import { sideOfPoint } from "../alter/two-parts.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { carriedOn, offsetPath } from "../geometry/offset.ts";
import { endOf, joined, type Path, startOf } from "../geometry/path.ts";
import { type Point, sameSpotTolerance } from "../geometry/point.ts";
import { cornersOf, sense, type Walked, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";

export const facing = pieceStep({
  name: "facing",
  since: "0.2",
  summary: "Keeps only a strip of even width along edges: a facing that matches them.",
  details: `The edges follow each other in the outline. The inner edge of the strip runs at the width beside them, is carried on to end on the two
edges next to them, and is called \`free-edge\`; where it would miss one of those, that edge is to be faced too. The facing keeps notches, grain, allowances and all names that lie on it, so it is sewn on as the garment's
edge is. By custom a neck is faced 5 to 7.5 cm deep, an armhole 5 to 6.5 cm, a front edge 6 to 9 cm. To let the seam roll inside, shorten the free edge by
1 to 3 mm: \`spread-from neck at 50% to free-edge by -2 mm\`.`,
  phrase: [
    phrase`facing ${slot.ownEdges("edges", "the edges that are faced, in a row")} by ${slot.length("width", "how wide")}`,
  ],
  example: `chalkline 1
units cm
piece back {
  curve neck    = (0, 2 cm) to (8 cm, 0) leaving right
  line shoulder = (8 cm, 0) to (20 cm, 4 cm)
  line side     = (20 cm, 4 cm) to (22 cm, 50 cm)
  line hem      = (0, 50 cm) to (22 cm, 50 cm)
  line center   = (0, 2 cm) to (0, 50 cm)
  outline center, neck, shoulder, side, hem
  mark center as fold
}
piece neck-facing = back {
  facing neck by 6 cm
  allow neck, shoulder by 1 cm
  allow free-edge by 0
}`,
  work({ edges, width }, piece, { where, units }) {
    closedBoundary(piece, units);
    if (width <= 0) {
      throw new Problem("facing-width", `A facing has some width, and this is ${lengthIn(width, units)}.`, {
        hint: "Write a length above 0.",
      });
    }
    const { run, before, after } = inARow(piece, edges);
    const inside = offsetPath(run, -width * sense(piece));
    const reach = reachOf(piece);
    const line = carriedOn(carriedOn(inside, "start", reach), "end", reach);
    const slash = cutThrough(piece, line, reach + pathLength(inside) / 2, units);
    const wanted = { piece, edges, width, units };
    if (!slash || !keepsAway(inside, run, width)) return refuseNarrow(wanted);
    endsOn(wanted, startOf(slash.path), before, "before");
    endsOn(wanted, endOf(slash.path), after, "after");
    if (!keepsAway(slash.path, run, width)) return refuseNarrow(wanted);
    const { path } = walked(piece)[turnInOutline(piece, edges[0]!)]!;
    const side = sideOfPoint(piece, slash, pointAt(path, pathLength(path) / 2))!;
    const cut = { name: "free-edge", notches: [], drawnBy: where };
    const strip = partOn(piece, slash, side, cut, piece.name, piece.drawnBy);
    return {
      now: asBefore(strip, piece),
      words: `a facing of ${lengthIn(width, units)} along ${edges.join(", ")}, ${lengthIn(pathLength(slash.path), units)} at its free edge`,
    };
  },
});

interface Row {
  /** The edges as one line, as the outline walks them. */
  readonly run: Path;
  /** The edges next to it. */
  readonly before: Walked;
  readonly after: Walked;
}

const inARow = (piece: Piece, edges: readonly string[]): Row => {
  const walk = walked(piece);
  const turns = [...new Set(edges.map((edge) => turnInOutline(piece, edge)))];
  const before = (index: number): number => (index + walk.length - 1) % walk.length;
  const starts = turns.filter((index) => !turns.includes(before(index)));
  const [start] = starts;
  if (start === undefined) {
    throw new Problem(
      "facing-all",
      `All edges of ${piece.name} are named, so nothing is left for the facing to end at.`,
      {
        hint: "Face some of them, or copy the whole piece.",
      },
    );
  }
  if (starts.length > 1) {
    throw new Problem("facing-apart", `${edges.join(" and ")} do not follow each other in the outline.`, {
      hint: "Make a facing for each in a piece of its own.",
    });
  }
  return {
    run: joined(turns.map((_, step) => walk[(start + step) % walk.length]!.path)),
    before: walk[before(start)]!,
    after: walk[(start + turns.length) % walk.length]!,
  };
};

/** Whether a line is nowhere nearer to the run than the width, so that the strip is not pinched where the run comes back on itself. */
const keepsAway = (line: Path, run: Path, width: number): boolean =>
  Array.from({ length: looks + 1 }, (_, look) => pointAt(line, (pathLength(line) * look) / looks)).every(
    (point) => nearest(run, point).distance >= width - sameSpotTolerance,
  );

const looks = 64;

interface Wanted {
  readonly piece: Piece;
  readonly edges: readonly string[];
  readonly width: number;
  readonly units: Units;
}

const refuseNarrow = ({ piece, edges, width, units }: Wanted): never => {
  throw new Problem(
    "facing-too-wide",
    `${piece.name} is narrower, along ${edges.join(", ")}, than ${lengthIn(width, units)}.`,
    { hint: "Take a smaller width." },
  );
};

/** Refuses a strip whose inner edge does not end on the edge next to what is faced, which stands before it or after it in the outline. */
const endsOn = ({ piece, edges, width, units }: Wanted, end: Point, next: Walked, stands: "before" | "after"): void => {
  if (nearest(next.path, end).distance <= sameSpotTolerance) return;
  const missed = next.edge.name;
  const there = walked(piece).find(({ path }) => nearest(path, end).distance <= sameSpotTolerance)!.edge.name;
  if (edges.includes(there)) {
    throw new Problem(
      "facing-cut",
      `At ${lengthIn(width, units)} the inner edge of the facing would pass ${missed} and cut through ${there}.`,
      { hint: `Face ${missed} too, or fewer edges.` },
    );
  }
  const corner = cornersOf(piece).find((each) => each[stands].edge.name === missed)!;
  const turnsIn = corner.interior > Math.PI - straightOn;
  throw new Problem(
    "facing-ends",
    `At ${lengthIn(width, units)} the inner edge of the facing would pass ${missed} and end on ${there}.`,
    {
      hint: turnsIn
        ? `Face ${missed} too: the outline does not turn outward there, so the strip has to go round.`
        : `Take a smaller width, or face ${missed} too.`,
    },
  );
};

// A corner that turns by less than this, in radians, runs straight on.
const straightOn = 1e-6;

/** Still the copy that it was: compared with its source, and held to it by `keep`. */
const asBefore = (strip: Piece, { source, from, kept, keeps }: Piece): Piece => ({
  ...strip,
  ...(source && { source }),
  ...(from !== undefined && { from }),
  ...(kept && { kept }),
  keeps: keeps.filter(({ edge }) => strip.edges.has(edge)),
});
