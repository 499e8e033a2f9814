// move: a named place of the outline moves, and straight edges follow it.
import { phrase } from "../../grammar/phrase.ts";
import { settled } from "../alter/outline-spot.ts";
import { reshaped } from "../alter/reshaped.ts";
import { withStraightFolds } from "../alter/straight-folds.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, isStraight, line, type Path, reversed, startOf, straight } from "../geometry/path.ts";
import { distance, type Point, sameSpot, sameSpotTolerance } from "../geometry/point.ts";
import { splitAt } from "../geometry/split.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Edge, Piece } from "../working.ts";

export const move = pieceStep({
  name: "move",
  since: "0.1",
  mayOpen: true,
  summary: "Moves a named place of the outline; straight edges follow it.",
  details: `Of a bent line the stretches next to the place follow. A curved edge does not: it leaves the outline open there until \`replace\` puts
another in its place, and the old curve can still be used for places.`,
  example: `chalkline 1
units cm
piece vest {
  point tip      = (14 cm, 0)
  point underarm = (22 cm, 22 cm)
  line neck     = (0, 0) to tip
  curve armhole = tip to underarm leaving down arriving right
  line side     = underarm to (22 cm, 50 cm)
  line hem      = (0, 50 cm) to (22 cm, 50 cm)
  line center   = (0, 0) to (0, 50 cm)
  outline neck, armhole, side, hem, center
  move tip to neck at end - 3 cm
  curve narrow  = tip to underarm leaving down arriving right
  replace armhole with narrow
}`,
  phrase: [phrase`move ${slot.ownPlace("name", "the place that moves")} to ${slot.place("to", "where it goes")}`],
  work({ name, to }, piece, { units }) {
    const from = piece.places.get(name)!.point;
    const touched = walked(piece).filter(({ edge }) => nearest(edge.path, from).distance <= sameSpotTolerance);
    if (touched.length === 0) {
      throw new Problem("move-off-outline", `${name} does not lie on the outline of ${piece.name}.`, {
        hint: "Name a place where edges meet.",
      });
    }
    if (distance(from, to) === 0) return { now: piece, words: "" };
    const changes = touched.flatMap(({ edge }) => {
      const path = followed(edge, from, to, name);
      return path ? [[edge.name, path] as const] : [];
    });
    const followers = reshaped({ ...piece, places: new Map() }, new Map(changes));
    const places = new Map(
      [...piece.places].map(([each, place]) => [
        each,
        { ...place, point: movedPlace(piece, followers, place.point, from, to) },
      ]),
    );
    const left = touched.map(({ edge }) => edge.name).filter((edge) => !changes.some(([changed]) => changed === edge));
    const open = left.length === 0 ? "" : `; ${left.join(" and ")} ${left.length === 1 ? "does" : "do"} not follow`;
    return {
      now: withStraightFolds({ ...followers, places }, piece),
      words: `moved ${name} ${lengthIn(distance(from, to), units)}${open}`,
    };
  },
});

/** The edge's path after its place has moved; undefined where it is curved and stays. */
const followed = ({ name: edge, path }: Edge, from: Point, to: Point, name: string): Path | undefined => {
  if (sameSpot(from, endOf(path))) return followedAtEnd(path, to);
  if (sameSpot(from, startOf(path))) {
    const turned = followedAtEnd(reversed(path), to);
    return turned && reversed(turned);
  }
  const [before, after] = splitAt(path, settled(path, nearest(path, from).at));
  const [first, second] = [followedAtEnd(before!, to), followedAtEnd(reversed(after!), to)];
  if (first && second) return [...first, ...reversed(second)];
  throw new Problem("move-inside-curve", `${name} lies inside ${edge}, which is curved, so it cannot move alone.`, {
    hint: `Draw another curve and write \`replace ${edge} with\` it.`,
  });
};

const followedAtEnd = (path: Path, to: Point): Path | undefined => {
  if (isStraight(path, straightEnough)) return straight(startOf(path), to);
  if (path.some(({ kind }) => kind === "cubic")) return undefined;
  return [...path.slice(0, -1), line(path.at(-1)!.start, to)];
};

// A curve this flat, in mm, is a straight line drawn as a curve.
const straightEnough = 0.01;

// What stood on the same spot moves along; other places of a straight edge go with it.
const movedPlace = (before: Piece, now: Piece, point: Point, from: Point, to: Point): Point => {
  if (sameSpot(point, from)) return to;
  const touched = walked(before).filter(({ path }) => nearest(path, point).distance <= sameSpotTolerance);
  const isEnd = touched.some(({ path }) => sameSpot(point, startOf(path)) || sameSpot(point, endOf(path)));
  const [changed] = touched.filter(({ edge }) => now.edges.get(edge.name)!.path !== edge.path);
  return isEnd || !changed ? point : nearest(now.edges.get(changed.edge.name)!.path, point).point;
};
