// The names of the sizes beside their cutting lines, where the lines lie far enough apart to tell whose name it is, and
// where none does beside the piece.
import { baselineBeside, readable } from "../drawing/beside.ts";
import { type Box, type Line, rim, room } from "../drawing/box.ts";
import type { Stroke, Text } from "../drawing/drawing.ts";
import { boxOf, textWidth } from "../drawing/lettering.ts";
import { directionAt, pathLength, pointAt } from "../geometry/arc-length.ts";
import type { Path } from "../geometry/path.ts";
import { type Point, times } from "../geometry/point.ts";
import { angleOf } from "../geometry/trig.ts";
import { type Led, ledNames } from "./size-leaders.ts";

/** One size of a piece, as its name is to be written along it. */
export interface SizeToName {
  readonly size: string;
  /** The stretches of the cutting line, mm, where they lie in the nest. */
  readonly stretches: readonly Path[];
  /** All its lines in the nest, bent. */
  readonly lines: readonly Line[];
  /** The direction, square to a direction of travel along a stretch, that points out of the piece. */
  readonly outward: (travel: Point) => Point;
}

/** What is written for a size, and the lines that lead from it where there are any. */
export interface SizeNames {
  readonly texts: readonly Text[];
  readonly strokes: readonly Stroke[];
}

/** The names, size by size: one along every stretch that lies apart and has room for it, and at least one each. */
export const sizeLabels = (sizes: readonly SizeToName[]): SizeNames[] => {
  const written: Line[] = [];
  const free = sizes.map((size, index) => {
    const others = sizes.filter((each) => each !== size).flatMap(({ lines }) => lines);
    return size.stretches.flatMap((path) => {
      const tried = candidates(size, path, sizes.length === 1 ? 0.5 : index / (sizes.length - 1));
      const found = tried.find((each) => roomFor(each, size, others) > 1 && isLegible(each, written));
      if (!found) return [];
      written.push(rim(boxOf(found.text)));
      return [found.text];
    });
  });
  const unnamed = sizes.filter((_, index) => free[index]!.length === 0);
  const led = unnamed.length === 0 ? [] : (ledNames(unnamed, sizes, written) ?? overLines(unnamed, sizes, written));
  return sizes.map((size, index) => {
    const leading = led[unnamed.indexOf(size)];
    return leading ? { texts: [leading.text], strokes: leading.strokes } : { texts: free[index]!, strokes: [] };
  });
};

/** Where there is no place beside the piece either: names over the lines, where these leave them most room. */
const overLines = (unnamed: readonly SizeToName[], sizes: readonly SizeToName[], written: Line[]): Led[] =>
  unnamed.flatMap((size) => {
    const others = sizes.filter((each) => each !== size).flatMap(({ lines }) => lines);
    const tried = size.stretches
      .flatMap((path) => candidates(size, path, 0.5))
      .filter((each) => isLegible(each, written))
      .map((each) => ({ ...each, room: roomFor(each, size, others) }));
    const [first, ...rest] = tried;
    if (!first) return [];
    const { text } = rest.reduce((best, each) => (each.room > best.room ? each : best), first);
    written.push(rim(boxOf(text)));
    return [{ text, strokes: [] }];
  });

/** By what factor a name could grow before it touches a line, or another size's line comes near its own; under 1 it has no room. */
const roomFor = ({ text, onLine }: Candidate, size: SizeToName, others: readonly Line[]): number => {
  const box = withHalo(boxOf(text));
  // Where two sizes share a line, a name beside it would say that it is the line of one of them.
  return Math.min(room(box, others), room(box, size.lines), room(onLine, others));
};

const isLegible = ({ text }: Candidate, written: readonly Line[]): boolean => room(withHalo(boxOf(text)), written) > 1;

// Capitals of 3 mm, which are 0.73 of the size, are the lowest that one can read.
const size = 4.2;
const gap = 1.2;

// The white around letters reaches this far, mm.
const halo = 0.6;

// How far a name's place along its stretch wanders from that of the size before it, and how finely one looks for another.
const firstShare = 0.3;
const lastShare = 0.7;
const tries = 24;

interface Candidate {
  readonly text: Text;
  /** The stretch of the line that it stands beside, as a band in which no other size's line should run. */
  readonly onLine: Box;
}

// Lines of two sizes that are nearer than this, mm, are taken for one.
const apart = 2;

/** The names that one could write along a stretch, those near the share of it that is this size's own first. */
const candidates = ({ size: said, outward }: SizeToName, path: Path, place: number): Candidate[] => {
  const length = pathLength(path);
  const half = textWidth(said, size, "plain") / 2;
  const wanted = (firstShare + (lastShare - firstShare) * place) * length;
  return Array.from({ length: tries }, (_, i) => ((i + 0.5) / tries) * length)
    .concat(wanted)
    .filter((at) => at > half && at < length - half)
    .sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted) || a - b)
    .map((at): Candidate => {
      const on = pointAt(path, at);
      const travel = directionAt(path, at);
      const turn = readable(angleOf(travel));
      const inward = times(outward(travel), -1);
      return {
        text: {
          text: said,
          at: baselineBeside(on, inward, turn, size, gap),
          size,
          turn,
          align: "middle",
          weight: "plain",
        },
        onLine: { center: on, turn, halfWidth: half, halfHeight: apart },
      };
    });
};

const withHalo = (box: Box): Box => ({ ...box, halfWidth: box.halfWidth + halo, halfHeight: box.halfHeight + halo });
