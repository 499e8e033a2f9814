// Where a line that was drawn in many stretches turns: at corners edges end, at bends a new part of an edge begins, and all else
// is smooth. A bent line that stands for a curve turns a little at every one of its points.
import { spanLength } from "../../kernel/geometry/arc-length.ts";
import { type Path, type Span, spanEndDirection, spanStartDirection } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { turnBetween } from "../../kernel/geometry/trig.ts";

/** What the file says of the points of an outline. */
export interface PointsTold {
  isTurn(p: Point): boolean;
  isOnCurve(p: Point): boolean;
}

export type Break = "corner" | "bend" | "smooth";

/** What each span of a path begins with; of an open path the first begins with a corner. */
export const breaksOf = (path: Path, isClosed: boolean, told: PointsTold): Break[] => {
  const lengths = path.map(spanLength);
  const turns = path.map((span, i) => {
    const before = path.at(i - 1)!;
    return i === 0 && !isClosed ? 0 : turnBetween(spanEndDirection(before), spanStartDirection(span));
  });
  return path.map((span, i) => {
    if (i === 0 && !isClosed) return "corner";
    if (told.isTurn(span.start)) return "corner";
    const turn = Math.abs(turns[i]!);
    const isSmooth =
      told.isOnCurve(span.start) ||
      turn < noTurn ||
      (bothLines(span, path.at(i - 1)!) ? isChorded(lengths, turns, i) : turn < kink);
    if (isSmooth && turn < cornerAnyway) return "smooth";
    return turn > corner ? "corner" : "bend";
  });
};

/** Whether the chords of a bent line are so long that a curve through its points rises over them by more than a drawing is exact. */
export const isCoarse = (path: Path): boolean =>
  path.some((span, i) => {
    const before = path[i - 1];
    if (!before) return false;
    const turn = Math.abs(turnBetween(spanEndDirection(before), spanStartDirection(span)));
    return rise(Math.max(spanLength(before), spanLength(span)), turn) > highestRise;
  });

// The rise of an arc over its chord is an eighth of the chord times the angle it turns through.
const rise = (chord: number, turn: number): number => (chord * turn) / 8;

const bothLines = (a: Span, b: Span): boolean => a.kind === "line" && b.kind === "line";

/**
 * Whether two chords meet as those of one curve do: the curve between them rises no higher over the shorter one than a
 * drawing is exact, and they turn no more than their neighbours let expect.
 */
const isChorded = (lengths: readonly number[], turns: readonly number[], i: number): boolean => {
  const count = lengths.length;
  const turn = Math.abs(turns[i]!);
  const before = lengths[(i - 1 + count) % count]!;
  const behind = lengths[i]!;
  const chord = Math.min(before, behind);
  if (rise(chord, turn) > highestRise) return false;
  const perLength = (at: number, a: number, b: number): number =>
    Math.abs(turns[(at + count) % count]!) / Math.min(a, b);
  const expected = Math.max(
    perLength(i - 1, lengths[(i - 2 + count) % count]!, before),
    perLength(i + 1, behind, lengths[(i + 1) % count]!),
  );
  return turn <= 3 * expected * chord + someTurn;
};

const degrees = Math.PI / 180;

// Beyond this a pattern turns a corner; what turns less is one edge, as a side seam at the waist is.
const corner = 20 * degrees;
// No curve of a drawing turns as much as this at one of its points.
const cornerAnyway = 45 * degrees;
// Where a curve meets a line or another curve, less than this is the drawing's own inexactness.
const kink = 2.5 * degrees;
const noTurn = 0.3 * degrees;
const someTurn = 2 * degrees;
// mm; programs that bend curves into lines keep within a tenth.
const highestRise = 0.12;
