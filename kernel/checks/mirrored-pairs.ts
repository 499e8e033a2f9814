// What is cut once for each side of the body is cut as a left one and a right one.
import { defineCheck } from "../check.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { middleOfArea } from "../geometry/middle-of-area.ts";
import { mirroredIn } from "../geometry/mirror.ts";
import { nearest } from "../geometry/nearest.ts";
import type { Path } from "../geometry/path.ts";
import { dot, minus, type Point, plus } from "../geometry/point.ts";
import { atan2, bearing } from "../geometry/trig.ts";
import { foldOf, grainDirection } from "../grain-direction.ts";
import { boundary, sense } from "../outline.ts";
import type { Cut, Garment, Judgement, Piece, Run } from "../working.ts";

// A piece whose mirror image keeps this near to it, in mm, is the same when it is turned over.
const sameWhenTurned = 2;

export const mirroredPairs = defineCheck({
  name: "mirrored-pairs",
  since: "0.2",
  title: "Pieces that are cut once each for two sides lie as mirror images of each other.",
  why: "Two pieces for the same side cannot be worn: turned over, one of them shows the wrong side of its cloth.",
  passes: `chalkline 1
recipe "Vest for two sides that differ"
units cm

fabric shell "satin" width 150 cm weight 200 gsm

piece left-front {
  line opening = (0, 0) to (0, 50 cm)
  line top = (0, 0) to (20 cm, 0)
  line side = (20 cm, 0) to (24 cm, 48 cm)
  line hem = (0, 50 cm) to (24 cm, 48 cm)
  outline opening, top, side, hem
  grain along opening
  allow opening, top, side, hem by 1 cm
}

piece right-front = left-front {
  mirror
}

cut left-front 1 from shell
cut right-front 1 from shell
`,
  fails: `chalkline 1
recipe "Vest with two left fronts"
units cm

fabric shell "satin" width 150 cm weight 200 gsm

piece left-front {
  line opening = (0, 0) to (0, 50 cm)
  line top = (0, 0) to (20 cm, 0)
  line side = (20 cm, 0) to (24 cm, 48 cm)
  line hem = (0, 50 cm) to (24 cm, 48 cm)
  outline opening, top, side, hem
  grain along opening
  allow opening, top, side, hem by 1 cm
}

piece right-front = left-front { }

cut left-front 1 from shell
cut right-front 1 from shell
`,

  *judge(garment) {
    const singles = [...garment.pieces.values()].flatMap((piece) => singleOf(piece, garment));
    for (const single of singles) if (single.axis) yield sameOnBothSides(single, garment);
    for (const group of groupsOf(singles.filter(({ axis }) => axis === undefined))) yield* judgedGroup(group);
  },
});

/** A piece of which one is left over once mirrored pairs are cut. */
interface Single {
  readonly piece: Piece;
  readonly cut: Cut;
  readonly count: number;
  /** The axis in which it is its own mirror image. */
  readonly axis: Axis | undefined;
}

interface Axis {
  readonly from: Point;
  readonly to: Point;
}

const timesCut = (piece: string, garment: Garment): number =>
  garment.cuts.filter((cut) => cut.piece === piece).reduce((sum, { count }) => sum + count, 0);

const singleOf = (piece: Piece, garment: Garment): Single[] => {
  const cut = garment.cuts.find((each) => each.piece === piece.name);
  const count = timesCut(piece.name, garment);
  const loop = boundary(piece);
  if (!cut || !loop || piece.doubtful || count % 2 === 0 || foldOf(piece)) return [];
  return [{ piece, cut, count, axis: axisOf(loop, grainDirection(piece)) }];
};

// A whole back is sewn to both fronts, at the edges on its two sides; a flap is sewn to one of them.
const sameOnBothSides = ({ piece, cut, count, axis }: Single, garment: Garment): Judgement => {
  const lists = garment.seams.flatMap(({ first, second }) => [
    [first, second],
    [second, first],
  ]);
  const partners = lists.flatMap(([own, others]) =>
    own!.some((run) => run.piece === piece.name && run.whole && liesInMiddle(piece, run, axis!)) ? once(others!) : [],
  );
  const pair = partners.find((run) => {
    const partner = garment.pieces.get(run.piece);
    return (
      partner && !foldOf(partner) && timesCut(run.piece, garment) % 2 === 0 && timesCut(run.piece, garment) > count
    );
  });
  const about = { on: piece.name, found: count, where: cut.drawnBy };
  if (!pair) {
    const message = `${piece.name} is the same on both sides, and may be cut once.`;
    return { ...about, verdict: "pass", wanted: count, message };
  }
  const wanted = timesCut(pair.piece, garment);
  return {
    ...about,
    verdict: "warning",
    wanted,
    message: `${piece.name} is sewn to ${pair.piece}, which is cut ${wanted} times, and is cut ${count === 1 ? "once" : `${count} times`} itself.`,
    hint: `Write \`cut ${piece.name} ${wanted} from ${cut.fabric}\`.`,
  };
};

/** The runs that stand in a list once: a band for both sides has those of the left and of the right. */
const once = (runs: readonly Run[]): Run[] =>
  runs.filter((run) => runs.filter(({ piece, edge }) => piece === run.piece && edge === run.edge).length === 1);

/** Whether an edge is its own mirror image, and so has no other on the other side. */
const liesInMiddle = (piece: Piece, { edge, path }: Run, { from, to }: Axis): boolean => {
  const mirrored = mirroredIn(pointAt(path, pathLength(path) / 3), from, to);
  const own = piece.edges.get(edge)?.path;
  return own !== undefined && nearest(own, mirrored).distance <= sameWhenTurned;
};

/** Pieces with the same edges, that may be the two sides of one thing. */
const groupsOf = (singles: readonly Single[]): Handed[][] => {
  const groups = new Map<string, Handed[]>();
  for (const single of singles) {
    const key = single.piece.outline
      .map(({ edge }) => edge)
      .sort()
      .join(" ");
    groups.set(key, [...(groups.get(key) ?? []), { ...single, hand: handOf(single.piece) }]);
  }
  return [...groups.values()];
};

interface Handed extends Single {
  readonly hand: 1 | -1;
}

/** Which way round the edges lie: walked in the order of their names, clockwise or not. */
const handOf = (piece: Piece): 1 | -1 => {
  const names = piece.outline.map(({ edge }) => edge);
  const [first, second] = [...names].sort();
  const from = names.indexOf(first!);
  const along = names.map((_, step) => names[(from + step) % names.length]!);
  const back = [along[0]!, ...along.slice(1).reverse()];
  // Of the two ways round from the first name, the one that comes to the second name sooner; a tie says nothing.
  const forward = along.indexOf(second!) <= back.indexOf(second!);
  return sense(piece) > 0 === forward ? 1 : -1;
};

function* judgedGroup(group: readonly Handed[]): Iterable<Judgement> {
  const rights = group.filter(({ hand }) => hand > 0);
  const lefts = group.filter(({ hand }) => hand < 0);
  const [more, fewer] = rights.length > lefts.length ? [rights, lefts] : [lefts, rights];
  const without = more.slice(fewer.length);
  const last = without.at(-1);
  for (const { piece, cut } of group) {
    if (without.some((each) => each.piece === piece)) continue;
    yield {
      on: piece.name,
      verdict: "pass",
      found: 0,
      wanted: 0,
      where: cut.drawnBy,
      message: `${piece.name} has its mirror image among the pieces that are cut.`,
    };
  }
  if (!last) return;
  const others = more.filter((each) => each !== last).map(({ piece }) => piece.name);
  const lone = others.length === 0;
  yield {
    on: last.piece.name,
    verdict: "warning",
    found: without.length,
    wanted: 0,
    where: last.cut.drawnBy,
    message: lone
      ? `${last.piece.name} is cut once, lies on no fold and is not the same on both sides, so only one side of the body gets it.`
      : `${[...others, last.piece.name].join(" and ")} are cut once each and lie the same way round, so they are all for one side.`,
    hint: lone
      ? `Write \`cut ${last.piece.name} 2 from ${last.cut.fabric}\`, or accept it where it is meant for one side.`
      : `Write \`mirror\` in ${last.piece.name}.`,
  };
}

const looks = 48;

/** The axis through its middle in which a closed line is its own mirror image; of several the one nearest to the grain. */
const axisOf = (loop: Path, grain: Point | undefined): Axis | undefined => {
  const length = pathLength(loop);
  const points = Array.from({ length: looks }, (_, look) => pointAt(loop, (length * look) / looks));
  const from = middleOfArea(loop);
  const along = ({ to }: Axis): number => (grain ? Math.abs(dot(minus(to, from), grain)) : 0);
  return anglesOf(points, from)
    .map((angle) => ({ from, to: plus(from, bearing(angle)) }))
    .filter(({ to }) => points.every((point) => nearest(loop, mirroredIn(point, from, to)).distance <= sameWhenTurned))
    .sort((a, b) => along(b) - along(a))[0];
};

/** The axes worth trying: the two main ones of the points, and every 15 deg, in which squares and rounds are symmetrical. */
const anglesOf = (points: readonly Point[], middle: Point): number[] => {
  let [xx, xy, yy] = [0, 0, 0];
  for (const { x, y } of points) {
    xx += (x - middle.x) * (x - middle.x);
    xy += (x - middle.x) * (y - middle.y);
    yy += (y - middle.y) * (y - middle.y);
  }
  const main = atan2(2 * xy, xx - yy) / 2;
  return [main, main + Math.PI / 2, ...Array.from({ length: 12 }, (_, step) => (step * Math.PI) / 12)];
};
