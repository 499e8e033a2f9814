// Lines that run across a seam run across it without a corner: the hem at the side, the neck at the shoulder.
import { defineCheck } from "../check.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { type Point, sameSpot } from "../geometry/point.ts";
import { toDegrees } from "../geometry/trig.ts";
import { boundary, type Corner, cornersOf } from "../outline.ts";
import { angleInWords } from "../units.ts";
import { listInWords, seamName, soundSeams } from "../walk.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Edge, Garment, Judgement, Piece, Run, Seam } from "../working.ts";

// Degrees by which the two corners may miss the straight line: over 3 it is seen, over 8 it is a fault
// (handbook of the trade 5.2).
const seen = 3;
const fault = 8;

// An angle just at the tolerance is within it, whatever its last digits.
const rounding = 1e-6;

export const seamSmooth = defineCheck({
  name: "seam-smooth",
  since: "0.1",
  title: "Where a seam ends, the corners of its two pieces make a straight line together.",
  why: "Otherwise the finished hem, neckline or armhole has a point or a dip at the seam.",
  passes: `chalkline 1
recipe "Vest hem level at the side"
units cm

piece front {
  point A = (0, 0)
  point B = A right 30 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line opening = A to D
  outline yoke-edge, side, hem, opening
  mark hem as hem
  mark opening as opening
}

piece back {
  point A = (0, 0)
  point B = A right 30 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline yoke-edge, side, hem, center
  mark hem as hem
}

seam front.side with back.side
`,
  // Each hem leans 2.3 degrees, which hem-square lets pass; together they make 4.6.
  fails: `chalkline 1
recipe "Vest hem with a point at the side"
units cm

piece front {
  point A = (0, 0)
  point B = A right 30 cm
  point C = B down 40 cm
  point D = A down 38.8 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line opening = A to D
  outline yoke-edge, side, hem, opening
  mark hem as hem
  mark opening as opening
}

piece back {
  point A = (0, 0)
  point B = A right 30 cm
  point C = B down 40 cm
  point D = A down 38.8 cm
  line yoke-edge = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline yoke-edge, side, hem, center
  mark hem as hem
}

seam front.side with back.side
`,

  *judge(garment) {
    const garmentSewn = { corners: cornersByEdge(garment), lists: listsByEdge(garment) };
    for (const seam of soundSeams(garment)) {
      for (const [first, second] of endsOf(seam, garmentSewn)) {
        if (runsAcross(first, second, seam, garmentSewn)) yield straightAcross(seam, first, second);
      }
    }
  },
});

/** What is looked up again for each seam, by "piece.edge". */
interface Sewn {
  /** The corners at the ends of an edge. */
  readonly corners: ReadonlyMap<string, readonly PieceCorner[]>;
  /** The lists of seams that an edge stands in. */
  readonly lists: ReadonlyMap<string, ReadonlySet<readonly Run[]>>;
}

interface PieceCorner extends Corner {
  readonly piece: Piece;
}

/** The corner in which one side of a seam ends, and the edge that goes on from there. */
interface SeamEnd {
  readonly run: Run;
  readonly piece: Piece;
  readonly neighbour: Edge;
  /** Interior angle of the corner, radians. */
  readonly interior: number;
}

const cornersByEdge = (garment: Garment): Sewn["corners"] => {
  const found = new Map<string, PieceCorner[]>();
  for (const piece of garment.pieces.values()) {
    if (piece.doubtful || boundary(piece) === undefined) continue;
    for (const corner of cornersOf(piece)) {
      for (const { edge } of new Set([corner.before, corner.after])) {
        const key = `${piece.name}.${edge.name}`;
        found.set(key, [...(found.get(key) ?? []), { ...corner, piece }]);
      }
    }
  }
  return found;
};

const listsByEdge = (garment: Garment): Sewn["lists"] => {
  const found = new Map<string, Set<readonly Run[]>>();
  for (const list of garment.seams.flatMap(({ first, second }) => [first, second])) {
    for (const { piece, edge } of list) {
      const key = `${piece}.${edge}`;
      found.set(key, (found.get(key) ?? new Set()).add(list));
    }
  }
  return found;
};

// The start and the end of the whole seam. A joint inside a list is the end of some other seam and judged there.
const endsOf = (seam: Seam, sewn: Sewn): [SeamEnd, SeamEnd][] => {
  const starts = [seam.first[0], seam.second[0]].map((run) => run && seamEnd(run, startOf(run.path), sewn));
  const ends = [seam.first.at(-1), seam.second.at(-1)].map((run) => run && seamEnd(run, endOf(run.path), sewn));
  return [starts, ends].flatMap(([first, second]): [SeamEnd, SeamEnd][] => (first && second ? [[first, second]] : []));
};

// A seam that ends within an edge, at the top of a slit say, meets no corner.
const seamEnd = (run: Run, at: Point, { corners }: Sewn): SeamEnd | undefined => {
  const corner = corners.get(`${run.piece}.${run.edge}`)?.find(({ point }) => sameSpot(point, at));
  if (!corner) return undefined;
  const { piece, before, after, interior } = corner;
  return { run, piece, neighbour: before.edge.name === run.edge ? after.edge : before.edge, interior };
};

// Two edges make one line in the finished garment when neither is sewn to anything, or when they are sewn on to something
// else in one list. Beyond a fold the edge goes on as its own mirror image; that is for fold-square to look at.
const runsAcross = (first: SeamEnd, second: SeamEnd, seam: Seam, { lists }: Sewn): boolean => {
  if (first.neighbour.role === "fold" || second.neighbour.role === "fold") return false;
  const [one, other] = [lists.get(nameOf(first)), lists.get(nameOf(second))];
  if (!one && !other) return true;
  if (!one || !other) return false;
  return [...one].some((list) => list !== seam.first && list !== seam.second && other.has(list));
};

/** The line that goes on from the corner: "front.hem". */
const nameOf = ({ piece, neighbour }: SeamEnd): string => `${piece.name}.${neighbour.name}`;

const straightAcross = (seam: Seam, first: SeamEnd, second: SeamEnd): Judgement => {
  const [one, other] = [nameOf(first), nameOf(second)];
  const interior = first.interior + second.interior;
  const off = Math.abs(interior - Math.PI);
  const offDegrees = toDegrees(off);
  const verdict = offDegrees <= seen + rounding ? "pass" : offDegrees <= fault + rounding ? "warning" : "error";
  const about = {
    on: `${one} with ${other} at ${first.piece.name}.${first.run.edge}`,
    found: toDegrees(interior),
    wanted: 180,
    verdict,
  } as const;
  const together = `Where ${sewnInWords(first, second)}, ${linesInWords(first, second)}`;
  if (verdict === "pass") return { ...about, where: seam.drawnBy, message: `${together} run on without a corner.` };
  const drawn = {
    where: whereToMend(second.piece, second.neighbour),
    message: `The ${inWords(second)} is drawn here.`,
  };
  return {
    ...about,
    where: whereToMend(first.piece, first.neighbour),
    message:
      `${together} make a corner of ${angleInWords(off)}: their angles are ${angleInWords(first.interior)} ` +
      `and ${angleInWords(second.interior)}, and should make 180 deg together.`,
    hint: "Turn the ends of the lines until they do; square to the seam is simplest.",
    related: [
      { where: seam.drawnBy, message: `They are sewn together here: ${seamName(seam)}.` },
      ...(one === other ? [] : [drawn]),
    ],
  };
};

const sewnInWords = (first: SeamEnd, second: SeamEnd): string =>
  isMirrored(first, second)
    ? `${listInWords([first.run])} is sewn to its mirror image`
    : `${listInWords([first.run])} is sewn to ${listInWords([second.run])}`;

const linesInWords = (first: SeamEnd, second: SeamEnd): string => {
  if (isMirrored(first, second)) return `the ${inWords(first)} and its mirror image`;
  if (inWords(first) === inWords(second)) return `the two ends of the ${inWords(first)}`;
  return `the ${inWords(first)} and the ${inWords(second)}`;
};

// A seam of an edge with itself joins the two pieces of a pair that is cut mirrored.
const isMirrored = (first: SeamEnd, second: SeamEnd): boolean =>
  first.piece === second.piece && first.run.edge === second.run.edge;

const inWords = ({ piece, neighbour }: SeamEnd): string => `${neighbour.name} of ${piece.name}`;
