// The cap: how the edge runs across the mouth of a dart, so that the dart, folded shut and pressed to its side, meets the
// seam all the way. Cloth that is folded under an edge has to end where that edge does: it is the edge's mirror image.
import { dartMeasures } from "../dart-measures.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { mirroredIn } from "../geometry/mirror.ts";
import { nearest } from "../geometry/nearest.ts";
import { carriedOn } from "../geometry/offset.ts";
import { joined, mapped, type Path, reversed, straight } from "../geometry/path.ts";
import { plus } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import type { Dart, Piece } from "../working.ts";
import { foldedSide } from "./folded-side.ts";

/** The piece with a dart, new or altered, its mouth shaped as the folded dart is cut; its leg ends lie on its edge. */
export const withDart = (piece: Piece, dart: Dart): Piece => {
  // A double-ended dart ends in no seam, so its line runs straight on across it.
  if (dart.lower) return { ...piece, darts: new Map(piece.darts).set(dart.name, dart) };
  const edge = piece.edges.get(dart.edge)!;
  const length = pathLength(edge.path);
  const [from, to] = [nearest(edge.path, dart.first).at, nearest(edge.path, dart.second).at];
  const before = from > nothing ? part(edge.path, 0, from) : undefined;
  const after = length - to > nothing ? part(edge.path, to, length) : undefined;
  const path = joined([before ?? [], capOf(dart, foldedSide(piece, dart), before, after), after ?? []]);
  return {
    ...piece,
    edges: new Map(piece.edges).set(edge.name, { ...edge, path }),
    darts: new Map(piece.darts).set(dart.name, dart),
  };
};

const nothing = 1e-9;

/** The way across the mouth; straight where the edge beyond the leg never comes over the folded cloth. */
const capOf = (dart: Dart, side: "first" | "second", before: Path | undefined, after: Path | undefined): Path => {
  const { first, second, tip } = dart;
  const covering = side === "first" ? before && reversed(before) : after;
  if (!covering) return straight(first, second);
  const leg = side === "first" ? first : second;
  const { outward, width } = dartMeasures(dart);
  const under = carriedOn(
    mapped(plain(covering), (point) => mirroredIn(point, tip, leg)),
    "end",
    farthest * width,
  );
  const [peak] = crossingsWithRay(under, tip, outward)
    .filter(({ at, ahead }) => ahead > 0 && at <= farthest * width)
    .sort((a, b) => a.at - b.at);
  if (!peak || peak.at <= nothing) return straight(first, second);
  const half = part(under, 0, peak.at);
  const other = reversed(mapped(half, (point) => mirroredIn(point, tip, plus(tip, outward))));
  return side === "first" ? joined([half, other]) : joined([reversed(other), reversed(half)]);
};

// A cap that runs further than so many widths before it comes to the middle is no cap: the edge lies nearly along the leg.
const farthest = 3;

// The cap is no arc about the hinge that the edge beside it may swing about.
const plain = (path: Path): Path =>
  path.map((span) => {
    const { pivot, ...rest } = span;
    return pivot === undefined ? span : rest;
  });
