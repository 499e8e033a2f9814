// Where a garment has shoulders: seams of a front and a back between a neck and an armhole, found by how the pieces lie
// together and not by what they are called.
import { type Armhole, armholeOf, besideShoulder } from "./alter/armhole.ts";
import { turnAt } from "./alter/turned.ts";
import { pathLength, pointAt } from "./geometry/arc-length.ts";
import { endOf, type Path, reversed, startDirection, startOf } from "./geometry/path.ts";
import { dot, minus, type Point, unit } from "./geometry/point.ts";
import { bearing } from "./geometry/trig.ts";
import { boundary, type Walked, walked } from "./outline.ts";
import { soundSeams } from "./walk.ts";
import type { Edge, Garment, Piece, Run, Seam } from "./working.ts";

/** The upper part of one piece, around its shoulder. */
export interface Shoulder {
  readonly piece: Piece;
  readonly armhole: Armhole;
  readonly neck: Edge;
  readonly center: Edge;
  readonly neckPoint: Point;
  /** From the neck point to the center. */
  readonly neckPath: Path;
  /** From the neck down. */
  readonly centerPath: Path;
  /** Down the cloth at the center, length 1. */
  readonly down: Point;
  /** How far the center end of the neck lies below the neck point, mm. */
  readonly neckDepth: number;
  /** From the center line, a lap not counted, to the neck point, mm. */
  readonly neckWidth: number;
  /** The neck goes down from the neck point; the top of a front that is carried up past it does not. */
  readonly isCutOut: boolean;
  /** From the center line, a lap not counted, to the shoulder tip, mm. */
  readonly halfWidth: number;
}

export interface ShoulderSeam {
  readonly seam: Seam;
  /** The piece with the deeper neck is the front, or that which is carried up past its neck. */
  readonly front: Shoulder;
  readonly back: Shoulder;
}

/** The shoulder seams of a garment. */
export const shoulderSeams = (garment: Garment): readonly ShoulderSeam[] => {
  const known = found.get(garment) ?? shoulderSeamsIn(garment);
  found.set(garment, known);
  return known;
};

// A garment never changes, and several checks ask for its shoulders.
const found = new WeakMap<Garment, readonly ShoulderSeam[]>();

const shoulderSeamsIn = (garment: Garment): ShoulderSeam[] =>
  soundSeams(garment).flatMap((seam) => {
    const [first, second] = [seam.first[0], seam.second[0]];
    if (seam.first.length !== 1 || seam.second.length !== 1 || !first || !second || first.piece === second.piece)
      return [];
    const [one, other] = [shoulderOf(first, garment), shoulderOf(second, garment)];
    if (!one || !other) return [];
    const isFirstFront = one.isCutOut === other.isCutOut ? one.neckDepth >= other.neckDepth : !one.isCutOut;
    return [isFirstFront ? { seam, front: one, back: other } : { seam, front: other, back: one }];
  });

const shoulderOf = ({ piece: name, edge, whole }: Run, garment: Garment): Shoulder | undefined => {
  const piece = garment.pieces.get(name);
  if (!piece || !whole || boundary(piece) === undefined || piece.outline.length < 5) return undefined;
  const walk = walked(piece);
  const index = walk.findIndex((part) => part.edge.name === edge);
  if (index < 0) return undefined;
  const armhole = armholeOf(piece, besideShoulder(piece, edge));
  if (!armhole || armhole.shoulder !== edge || !isLevelish(armhole)) return undefined;
  const isNeckBefore = walk[(index + 1) % walk.length]!.edge.name === armhole.name;
  const step = isNeckBefore ? -1 : 1;
  const at = (steps: number): Walked => walk[(index + step * steps + 2 * walk.length) % walk.length]!;
  const away = ({ path }: Walked): Path => (isNeckBefore ? reversed(path) : path);
  const [neck, center] = [at(1), at(2)];
  const [neckPath, centerPath] = [away(neck), away(center)];
  const down = bearing(Math.PI / 2 + turnAt(piece, center.edge.name, startOf(centerPath)));
  if (isUpright(neckPath, down) || !isUpright(centerPath, down) || neck.edge.role === "fold") return undefined;
  const neckPoint = startOf(neckPath);
  // A slash hinged at the nape turns neck and shoulder away from the center: the depth of the neck turns with its cloth.
  const middle = pointAt(neckPath, pathLength(neckPath) / 2);
  const neckDown = bearing(Math.PI / 2 + turnAt(piece, neck.edge.name, middle));
  return {
    piece,
    armhole,
    neck: neck.edge,
    center: center.edge,
    neckPoint,
    neckPath,
    centerPath,
    down,
    neckDepth: dot(minus(endOf(neckPath), neckPoint), neckDown),
    neckWidth: dot(minus(neckPoint, centerLine(neckPath)), armhole.out),
    isCutOut: dot(startDirection(neckPath), neckDown) > level,
    halfWidth: dot(minus(armhole.tip, centerLine(neckPath)), armhole.out),
  };
};

// A line this near to level, in radians, does not go down.
const level = 0.1;

// A straight stretch of the neck at its center end runs across a lap.
const centerLine = (neckPath: Path): Point => {
  const last = neckPath.at(-1)!;
  return neckPath.length > 1 && last.kind === "line" ? last.start : last.end;
};

// A shoulder slopes by less than half a right angle, where sides and centers are upright.
const isLevelish = ({ shoulderPath, down }: Armhole): boolean =>
  Math.abs(dot(unit(minus(endOf(shoulderPath), startOf(shoulderPath))), down)) < Math.SQRT1_2;

// Within some 6 degrees of the way down.
const isUpright = (path: Path, down: Point): boolean => dot(unit(minus(endOf(path), startOf(path))), down) > 0.995;
