// A dart that is not stitched: its cloth is gathered or eased into the seam over a stretch of its edge.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { joined, straight } from "../geometry/path.ts";
import { between } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { Problem } from "../problem.ts";
import type { Line, Worked } from "../step.ts";
import { lengthIn, plainNumber } from "../units.ts";
import type { Piece, TakeUp } from "../working.ts";

/** The piece with a dart's width taken up over a stretch of the edge, mm as cut, with the mouth in its middle. */
export const dartTakenUp = (
  piece: Piece,
  name: string,
  kind: "gather" | "ease",
  over: number,
  { where, units }: Line,
): Worked<Piece> => {
  const dart = piece.darts.get(name)!;
  const edge = piece.edges.get(dart.edge)!;
  const length = pathLength(edge.path);
  const [from, to] = [nearest(edge.path, dart.first).at, nearest(edge.path, dart.second).at];
  // Without its cap the mouth is as wide as it is straight across: that much is taken up.
  const path = joined([
    from > nothing ? part(edge.path, 0, from) : [],
    straight(dart.first, dart.second),
    length - to > nothing ? part(edge.path, to, length) : [],
  ]);
  const width = pathLength(straight(dart.first, dart.second));
  const middle = nearest(path, between(dart.first, dart.second, 0.5)).at;
  const [start, end] = [middle - over / 2, middle + over / 2];
  if (over <= width) {
    throw new Problem(
      "stretch-too-short",
      `${name} is ${lengthIn(width, units)} wide, and a stretch of ${lengthIn(over, units)} would be sewn to nothing.`,
      { hint: "Take a longer stretch.", slot: "over" },
    );
  }
  if (start < -nothing || end > pathLength(path) + nothing) {
    throw new Problem(
      "stretch-beyond-edge",
      `${lengthIn(over / 2, units)} on either side of ${name} reaches beyond the end of ${dart.edge}.`,
      { hint: "Take a shorter stretch.", slot: "over" },
    );
  }
  const takeUp: TakeUp = {
    kind,
    edge: edge.name,
    from: pointAt(path, Math.max(start, 0)),
    to: pointAt(path, end),
    amount: width,
    drawnBy: where,
  };
  const now: Piece = {
    ...piece,
    edges: new Map(piece.edges).set(edge.name, { ...edge, path }),
    darts: new Map([...piece.darts].filter(([each]) => each !== name)),
    takeUps: [...piece.takeUps, takeUp],
  };
  const share = plainNumber((100 * width) / (over - width), 0);
  const did = kind === "gather" ? "gathered" : "eased";
  return {
    now,
    words: `${did} ${lengthIn(over, units)} of the ${edge.name} into ${lengthIn(over - width, units)}, ${share}% more cloth`,
  };
};

const nothing = 1e-9;
