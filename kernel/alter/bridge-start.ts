// Folding cloth away takes out first what an earlier slash opened at the same hinge: the slash is laid on that side of
// its bridge from which the wedge covers the bridge.
import { spanLength } from "../geometry/arc-length.ts";
import { type Span, straight } from "../geometry/path.ts";
import { distance, sameSpot } from "../geometry/point.ts";
import { walked } from "../outline.ts";
import type { Piece } from "../working.ts";
import { pointAtSpot, type Spot, settled } from "./outline-spot.ts";
import type { Slash } from "./slash.ts";
import type { Side } from "./two-parts.ts";

/** The slash, moved to the staying side of the bridge about its hinge that the target lies on, if it lies on one. */
export const bridgeStart = (piece: Piece, slash: Slash, moving: Side): Slash => {
  if (slash.along !== undefined) return slash;
  const [opened] = slash.targetsAt;
  const { path } = walked(piece)[opened.index]!;
  const bridges = bridgesAlong(path, slash);
  const isOn = ({ from, to }: Bridge): boolean => from < opened.at + rounding && to > opened.at - rounding;
  // The part ahead is walked up to the target, so it moves away on the side before the target.
  const touching = bridges.filter(isOn);
  const found = moving === "ahead" ? touching[0] : touching.at(-1);
  if (!found) return slash;
  const at = settled(path, moving === "ahead" ? found.to : found.from);
  const spot: Spot = { index: opened.index, at };
  const target = pointAtSpot(piece, spot);
  return { ...slash, target, targetsAt: [spot], path: straight(slash.hinge, target) };
};

interface Bridge {
  readonly from: number;
  readonly to: number;
}

/** The bridges about the hinge along a path, by arc length; a trued one is an arc of several spans. */
const bridgesAlong = (path: readonly Span[], { hinge }: Slash): Bridge[] => {
  const found: Bridge[] = [];
  let at = 0;
  let arc: Span | undefined;
  for (const span of path) {
    const from = at;
    at += spanLength(span);
    const isBridge = span.pivot !== undefined && sameSpot(span.pivot, hinge);
    const goesOn = isBridge && arc !== undefined && isSameArc(arc, span);
    if (goesOn) found.push({ from: found.pop()!.from, to: at });
    else if (isBridge) found.push({ from, to: at });
    arc = isBridge ? span : undefined;
  }
  return found;
};

const isSameArc = (before: Span, span: Span): boolean =>
  before.kind === "cubic" &&
  span.kind === "cubic" &&
  Math.abs(distance(before.start, before.pivot!) - distance(span.end, before.pivot!)) <= rounding;

const rounding = 1e-6;
