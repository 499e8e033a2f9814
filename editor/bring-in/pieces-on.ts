// The pieces on a sheet: which closed lines are outlines, and what of all else belongs to which of them.
import { limits } from "../../grammar/limits.ts";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { contains, signedArea } from "../../kernel/geometry/area.ts";
import { type Bounds, bounds } from "../../kernel/geometry/bounds.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, line, type Path, reversed, startOf } from "../../kernel/geometry/path.ts";
import { cross, distance, minus, type Point, unit } from "../../kernel/geometry/point.ts";
import { type Chain, chained, drawnOnce, endsMeetWithin } from "./chained.ts";
import { drawingLimits } from "./drawing-limits.ts";
import { Refused } from "./refused.ts";
import type { DrawnLine, DrawnSpot, DrawnWords, LeftOut, Meaning, Sheet } from "./sheet.ts";

/** One piece as it was drawn, mm, where it lay on the sheet. */
export interface PieceOnSheet {
  readonly called: string | undefined;
  /** Which line the file says this is; undefined where it says nothing. */
  readonly along: "cutting" | "sewing" | undefined;
  /** Closed, clockwise on the page. */
  readonly outline: Path;
  /** The straight lines that lie on the fold of the cloth. */
  readonly folds: readonly Path[];
  readonly inner: readonly Path[];
  readonly notches: readonly Point[];
  readonly drills: readonly Point[];
  readonly grain: { readonly from: Point; readonly to: Point } | undefined;
  readonly words: readonly { readonly text: string; readonly at: Point }[];
  /** What the file says of the piece: how many, of which cloth. */
  readonly remarks: readonly string[];
  /** Corners and points of a curve, as far as the file names them. */
  readonly spots: readonly DrawnSpot[];
}

/** Which of two told lines becomes the outline. */
export type OutlineLine = "cutting" | "sewing";

/** The pieces in the order in which they were drawn, and what belongs to none of them. */
export const piecesOn = (
  sheet: Sheet,
  along: OutlineLine,
): {
  readonly pieces: readonly PieceOnSheet[];
  readonly leftOut: readonly LeftOut[];
  readonly notes: readonly string[];
} => {
  const { once, twice } = drawnOnce(sheet.lines);
  const told = (means: Meaning | undefined): DrawnLine[] => once.filter((each) => each.means === means);
  const folds = told("fold");
  const found = outlinesOf(told, folds, along);
  if (found.outlines.length === 0) throw nothingClosed(found.rest, sheet);
  if (found.outlines.length > limits.pieces)
    throw new Refused(
      `There are ${found.outlines.length} closed outlines, and a recipe has at most ${limits.pieces} pieces.`,
    );
  const sorting = new Sorting(found.outlines);
  const other = along === "cutting" ? "sewing" : "cutting";
  for (const chain of found.rest) {
    if (chain.means === other) sorting.leaveOut(`${other} lines (--line ${other} makes them the outline)`, chain.line);
    else sorting.inner(chain);
  }
  for (const each of told("grain")) sorting.grain(each);
  for (const each of told("notch")) sorting.notchStroke(each, found.isBoth ? farFromEdge : atEdge);
  for (const each of sheet.spots) sorting.spot(each);
  for (const cluster of clusters(told("drill"))) sorting.drill(middleOf(cluster), cluster[0]!);
  for (const each of sheet.words) sorting.words(each);
  const notes =
    twice > 0 ? [`${twice === 1 ? "1 line was" : `${twice} lines were`} drawn twice, and counted once.`] : [];
  return { pieces: sorting.pieces(folds), leftOut: sorting.leftOut(), notes };
};

interface Outlines {
  readonly outlines: readonly Chain[];
  /** Lines that are no outlines: open ones, and closed ones inside an outline. */
  readonly rest: readonly Chain[];
  /** Whether the file draws cutting and sewing lines. */
  readonly isBoth: boolean;
}

const outlinesOf = (
  told: (means: Meaning | undefined) => DrawnLine[],
  folds: readonly DrawnLine[],
  along: OutlineLine,
): Outlines => {
  const other = along === "cutting" ? "sewing" : "cutting";
  const [wanted, unwanted] = [closedOf(told(along), folds), closedOf(told(other), folds)];
  const untold = closedOf(told(undefined), folds);
  const inner = closedOf(told("inner"), []);
  const outlines: Chain[] = [...wanted.closed];
  const rest: Chain[] = [...wanted.open, ...unwanted.open, ...untold.open, ...inner.closed, ...inner.open];
  // What is told as the other line is an outline too where the piece has no line of the wanted kind.
  const asked = new Asked();
  for (const chain of unwanted.closed) {
    const isOther = wanted.closed.some(
      (each) => asked.isInside(each.path, chain.path) || asked.isInside(chain.path, each.path),
    );
    (isOther ? rest : outlines).push(chain);
  }
  const byArea = [...untold.closed].sort((a, b) => Math.abs(signedArea(b.path)) - Math.abs(signedArea(a.path)));
  const outermost: Chain[] = [...outlines];
  for (const chain of byArea) {
    const isInner = outermost.some((each) => asked.isInside(each.path, chain.path)) || isTooSmall(chain.path);
    if (!isInner) outermost.push(chain);
    else rest.push(chain);
  }
  const inOrder = outermost.sort((a, b) => a.line - b.line);
  return { outlines: inOrder, rest, isBoth: wanted.closed.length > 0 && unwanted.closed.length > 0 };
};

/** Closed chains, those of one group first, and what stays open; a chain that ends on a fold line is closed along it. */
const closedOf = (lines: readonly DrawnLine[], folds: readonly DrawnLine[]): { closed: Chain[]; open: Chain[] } => {
  const groups = new Map<string, DrawnLine[]>();
  for (const each of lines) {
    const group = groups.get(each.group);
    if (group) group.push(each);
    else groups.set(each.group, [each]);
  }
  const inGroups = [...groups.values()].flatMap((group) => chained(group));
  const all = [
    ...inGroups.filter(({ isClosed }) => isClosed),
    ...chained(inGroups.filter(({ isClosed }) => !isClosed)),
  ];
  if (all.length > drawingLimits.lines) throw new Refused(`There are more than ${drawingLimits.lines} separate lines.`);
  const closed: Chain[] = [];
  const open: Chain[] = [];
  for (const chain of all) {
    if (chain.isClosed) {
      closed.push(chain);
      continue;
    }
    const fold = folds.find(({ path }) => ends(chain.path).every((p) => nearest(path, p).distance <= endsMeetWithin));
    if (fold)
      closed.push({ ...chain, path: [...chain.path, line(endOf(chain.path), startOf(chain.path))], isClosed: true });
    else open.push(chain);
  }
  return { closed, open };
};

const ends = (path: Path): readonly Point[] => [startOf(path), endOf(path)];

// A closed line that lies on less than a square centimetre is a mark and no piece; mm2. Its box is asked and not its area, which
// an outline that crosses itself may have none of.
const smallestPiece = 100;

const isTooSmall = (path: Path): boolean => {
  const { left, top, right, bottom } = bounds([path]);
  return (right - left) * (bottom - top) < smallestPiece;
};

/** Counts how often it is asked what lies inside what. */
class Asked {
  private count = 0;
  private readonly boxes = new Map<Path, Bounds>();

  isInside(outline: Path, other: Path): boolean {
    const [around, box] = [this.boxOf(outline), this.boxOf(other)];
    if (!holds(around, { x: box.left, y: box.top }) || !holds(around, { x: box.right, y: box.bottom })) return false;
    // By its middle: the ends of an inner line often lie on the outline itself.
    return this.holdsPoint(outline, pointAt(other, pathLength(other) * 0.43));
  }

  holdsPoint(outline: Path, p: Point): boolean {
    if (!holds(this.boxOf(outline), p)) return false;
    this.count += 1 + outline.length / 64;
    if (this.count > drawingLimits.insideAsked)
      throw new Refused("There are too many lines inside one another to tell which belongs to which.");
    return contains(outline, p);
  }

  boxOf(path: Path): Bounds {
    let box = this.boxes.get(path);
    if (box === undefined) {
      box = bounds([path]);
      this.boxes.set(path, box);
    }
    return box;
  }
}

const holds = ({ left, top, right, bottom }: Bounds, { x, y }: Point): boolean =>
  x >= left - endsMeetWithin &&
  x <= right + endsMeetWithin &&
  y >= top - endsMeetWithin &&
  y <= bottom + endsMeetWithin;

interface Filling {
  readonly chain: Chain;
  readonly outline: Path;
  readonly inner: Path[];
  readonly notches: Point[];
  readonly drills: Point[];
  grain: { readonly from: Point; readonly to: Point } | undefined;
  readonly words: { readonly text: string; readonly at: Point }[];
  readonly remarks: string[];
  readonly spots: DrawnSpot[];
}

// How far from an edge a notch may begin, mm: a hair where it stands on the outline, an allowance where the outline is not
// the line that it was drawn on.
const atEdge = 3;
const farFromEdge = 60;

/** Everything else, sorted to the outlines. */
class Sorting {
  private readonly fillings: readonly Filling[];
  private readonly byGroup = new Map<string, Filling[]>();
  private readonly asked = new Asked();
  private readonly tally = new Map<string, { count: number; line: number }>();

  constructor(outlines: readonly Chain[]) {
    this.fillings = outlines.map((chain) => ({
      chain,
      outline: signedArea(chain.path) < 0 ? reversed(chain.path) : chain.path,
      inner: [],
      notches: [],
      drills: [],
      grain: undefined,
      words: [],
      remarks: [],
      spots: [],
    }));
    for (const filling of this.fillings) {
      const { group } = filling.chain;
      this.byGroup.set(group, [...(this.byGroup.get(group) ?? []), filling]);
    }
  }

  leaveOut(what: string, at: number): void {
    const before = this.tally.get(what);
    this.tally.set(what, { count: (before?.count ?? 0) + 1, line: before?.line ?? at });
  }

  leftOut(): LeftOut[] {
    return [...this.tally].map(([what, { count, line: at }]) => ({ what, count, line: at }));
  }

  inner(chain: Chain): void {
    const holder = this.fillings.find(({ outline }) => this.asked.isInside(outline, chain.path));
    if (!holder)
      this.leaveOut(
        chain.isClosed ? "closed lines too small for a piece" : "open lines outside of every piece",
        chain.line,
      );
    else if (chain.means === undefined && isRoundMark(chain)) holder.drills.push(middleOf([chain]));
    else holder.inner.push(chain.path);
  }

  grain({ path, line: at }: DrawnLine): void {
    const holder = this.holder(pointAt(path, pathLength(path) / 2));
    if (!holder) {
      this.leaveOut("grain lines outside of every piece", at);
      return;
    }
    const now = { from: startOf(path), to: endOf(path) };
    const before = holder.grain;
    if (before === undefined || distance(now.from, now.to) > distance(before.from, before.to)) holder.grain = now;
  }

  notchStroke({ path, line: at }: DrawnLine, within: number): void {
    const spots = path.flatMap(({ start, end }) => [start, end]);
    this.notch(spots, within, at);
  }

  spot(spot: DrawnSpot): void {
    const { at, means } = spot;
    if (means === "notch") {
      this.notch([at], atEdge, spot.line);
      return;
    }
    if (means === "drill") {
      this.drill(at, spot);
      return;
    }
    if (means !== "turn" && means !== "curve" && spot.called === undefined) {
      this.leaveOut("points without a meaning", spot.line);
      return;
    }
    // Points of the outline are told to every piece of their own group; which of them it has is seen by where they lie.
    for (const filling of this.byGroup.get(spot.group) ?? []) filling.spots.push(spot);
  }

  drill(at: Point, { line: row }: { readonly line: number }): void {
    const holder = this.holder(at);
    if (holder) holder.drills.push(at);
    else this.leaveOut("drill holes outside of every piece", row);
  }

  words({ text, at, group, isRemark, line: row }: DrawnWords): void {
    if (isRemark) {
      for (const filling of this.byGroup.get(group) ?? []) filling.remarks.push(text);
      return;
    }
    const holder = this.holder(at);
    if (!holder) {
      this.leaveOut("texts outside of every piece", row);
      return;
    }
    if (/^[\d\s.,/]+(?:mm|cm|in|["”″])?$/.test(text)) {
      this.leaveOut("texts that are only a measure", row);
      return;
    }
    if (holder.words.length >= drawingLimits.labels) {
      this.leaveOut(`texts beyond ${drawingLimits.labels} in one piece`, row);
      return;
    }
    holder.words.push({ text, at });
  }

  pieces(folds: readonly DrawnLine[]): PieceOnSheet[] {
    return this.fillings.map(({ chain, outline, ...rest }) => ({
      ...rest,
      called: chain.called,
      along: chain.means === "cutting" || chain.means === "sewing" ? chain.means : undefined,
      outline,
      folds: folds.map(({ path }) => path),
    }));
  }

  private holder(p: Point): Filling | undefined {
    return this.fillings.find(({ outline }) => this.asked.holdsPoint(outline, p));
  }

  /** Puts a notch on the nearest edge of all pieces. */
  private notch(spots: readonly Point[], within: number, row: number): void {
    let best: { readonly filling: Filling; readonly point: Point; readonly distance: number } | undefined;
    for (const filling of this.fillings) {
      for (const spot of spots) {
        if (!holds(grownBy(this.asked.boxOf(filling.outline), within), spot)) continue;
        const foot = nearest(filling.outline, spot);
        if (foot.distance <= (best?.distance ?? within)) best = { filling, point: foot.point, distance: foot.distance };
      }
    }
    if (best) best.filling.notches.push(best.point);
    else this.leaveOut("notches beside every edge", row);
  }
}

const grownBy = ({ left, top, right, bottom }: Bounds, by: number): Bounds => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

// A circle up to this radius, mm, marks a hole.
const largestHole = 6;

const isRoundMark = ({ path, isClosed }: Chain): boolean => {
  const center = path[0]?.pivot;
  if (!isClosed || center === undefined || distance(center, startOf(path)) > largestHole) return false;
  return path.every(({ pivot }) => pivot !== undefined && distance(pivot, center) < 1e-6);
};

/** Strokes whose boxes touch, as one mark each. */
const clusters = (lines: readonly DrawnLine[]): DrawnLine[][] => {
  const found: { box: Bounds; lines: DrawnLine[] }[] = [];
  for (const each of lines) {
    const box = bounds([each.path]);
    // Strokes of one mark follow one another in every file that we know of.
    const last = found.at(-1);
    if (last && touch(last.box, box)) {
      last.lines.push(each);
      last.box = bounds(last.lines.map(({ path }) => path));
    } else found.push({ box, lines: [each] });
  }
  return found.map((cluster) => cluster.lines);
};

const touch = (a: Bounds, b: Bounds): boolean =>
  a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;

const middleOf = (lines: readonly { readonly path: Path }[]): Point => {
  const { left, top, right, bottom } = bounds(lines.map(({ path }) => path));
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
};

/** What to say where no line is closed: how near the nearest of them comes to it. */
const nothingClosed = (rest: readonly Chain[], { lines, spots, words }: Sheet): Refused => {
  if (lines.length === 0) {
    const others = spots.length + words.length > 0 ? " besides points and texts" : "";
    return new Refused(`There is no line in this drawing that a recipe could hold${others}.`);
  }
  if (rest.some(({ isClosed }) => isClosed))
    return new Refused("No closed line in this drawing is as large as a square centimetre, and a piece is larger.", {
      hint: "Look whether the units are right; --units and --scale change them.",
    });
  const open = rest.filter(({ isClosed, path }) => !isClosed && path.length > 1);
  const nearestEnds = [...open].sort((a, b) => gapOf(a) - gapOf(b))[0];
  if (!nearestEnds) return new Refused("No line in this drawing is closed, so there is no outline to trace.");
  const gap = gapOf(nearestEnds).toFixed(1);
  return new Refused(`No line in this drawing is closed. The one that begins here lacks ${gap} mm between its ends.`, {
    line: nearestEnds.line,
    hint: `Close it in the drawing; ends within ${endsMeetWithin} mm count as meeting.`,
  });
};

const gapOf = ({ path }: Chain): number => distance(startOf(path), endOf(path));

/** Whether a straight line lies along a fold line. */
export const liesOnFold = (from: Point, to: Point, folds: readonly Path[]): boolean =>
  folds.some((path) => {
    const [a, b] = [startOf(path), endOf(path)];
    const along = unit(minus(b, a));
    const off = (p: Point): number => Math.abs(cross(along, minus(p, a)));
    return (
      off(from) <= endsMeetWithin &&
      off(to) <= endsMeetWithin &&
      nearest(path, middle(from, to)).distance <= endsMeetWithin
    );
  });

const middle = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
