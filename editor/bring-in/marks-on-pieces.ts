// What else was drawn, given to the piece that it lies on: inner lines, notches, drill holes, grain, texts.
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import { type Bounds, bounds } from "../../kernel/geometry/bounds.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, type Path, reversed, startOf } from "../../kernel/geometry/path.ts";
import { distance, type Point } from "../../kernel/geometry/point.ts";
import type { Chain } from "./chained.ts";
import { drawingLimits } from "./drawing-limits.ts";
import { holds, Inside } from "./inside.ts";
import type { PieceOnSheet } from "./pieces-on.ts";
import type { DrawnLine, DrawnSpot, DrawnWords, LeftOut } from "./sheet.ts";

interface Filling {
  readonly chain: Chain;
  readonly outline: Path;
  cutting: Path | undefined;
  readonly inner: Path[];
  readonly notches: Point[];
  readonly drills: Point[];
  grain: { readonly from: Point; readonly to: Point } | undefined;
  readonly words: { readonly text: string; readonly at: Point }[];
  readonly remarks: string[];
  readonly spots: DrawnSpot[];
}

/** How far from its edge a notch may begin where it stands on the outline, mm. */
export const atEdge = 3;

/** The same where the outline is not the line that notches were drawn on, but an allowance away from it, mm. */
export const farFromEdge = 60;

/** Pieces being filled with what lies on them. */
export class PiecesInHand {
  private readonly fillings: readonly Filling[];
  private readonly byGroup = new Map<string, Filling[]>();
  private readonly asked = new Inside();
  private readonly tally = new Map<string, { count: number; line: number }>();

  constructor(outlines: readonly Chain[]) {
    this.fillings = outlines.map((chain) => ({
      chain,
      outline: signedArea(chain.path) < 0 ? reversed(chain.path) : chain.path,
      cutting: undefined,
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

  /** Gives a closed cutting line to the sewing line that it was drawn round, and says whether there is one without. */
  cutting(chain: Chain): boolean {
    const holder = this.fillings.find(
      (filling) =>
        filling.cutting === undefined &&
        filling.chain.means === "sewing" &&
        chain.isClosed &&
        this.asked.isRoundAbout(chain.path, filling.outline),
    );
    if (holder) holder.cutting = chain.path;
    return holder !== undefined;
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
    if (/^[\d\s.,/]+(?:mm|cm|in|["”″])?$/.test(text)) {
      this.leaveOut("texts that are only a measure", row);
      return;
    }
    const holder = this.holder(at);
    if (!holder) {
      this.leaveOut("texts outside of every piece", row);
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
export const clusters = (lines: readonly DrawnLine[]): DrawnLine[][] => {
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

/** The middle of the box around lines. */
export const middleOf = (lines: readonly { readonly path: Path }[]): Point => {
  const { left, top, right, bottom } = bounds(lines.map(({ path }) => path));
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
};
