// lengthen-waist: makes a piece longer or shorter across a level line, with all below it as it was.
import { phrase } from "../../grammar/phrase.ts";
import { closedBoundary } from "../alter/outline-spot.ts";
import { alongBoundary, partsMoved, shifted, stays } from "../alter/parts-moved.ts";
import { reshaped } from "../alter/reshaped.ts";
import { trued } from "../alter/trued.ts";
import { turnAt } from "../alter/turned.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import type { Path } from "../geometry/path.ts";
import { between, dot, minus, type Point, plus, quarterTurn, sameSpotTolerance, times } from "../geometry/point.ts";
import { bearing } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Piece } from "../working.ts";

export const lengthenWaist = pieceStep({
  name: "lengthen-waist",
  since: "0.2",
  summary:
    "Makes a piece longer above the waist by letting cloth in across a level line; shorter by a negative length.",
  details: `The level line runs through the place, usually a place on the side or the center between underarm and waist. All below it goes down by the
length and keeps its shape, so the hem keeps its width; a shorter waist loses the cloth below the line. The edges that the line crosses are
made smooth where they were cut. Do the same to front and back, at the same depth below the underarm.`,
  example: `chalkline 1
units cm
piece back {
  curve neck    = (0, 0) to (7.4 cm, -2.5 cm) handles (4.4 cm, 0), (6.9 cm, -1.1 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20.5 cm, 1.8 cm)
  curve armhole = (20.5 cm, 1.8 cm) to (27 cm, 24 cm) through (19 cm, 13 cm) heading down arriving right
  curve side    = (27 cm, 24 cm) to (27 cm, 60 cm) through (24 cm, 41 cm) heading down arriving down
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, 0) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark center as fold
  lengthen-waist side at 30% by 2 cm
}`,
  phrase: [
    phrase`lengthen-waist ${slot.placeOnPiece("level", "a place on the level line")} by ${slot.length("longer", "how much longer; negative shortens")}`,
  ],
  work({ level, longer }, piece, { units }) {
    const whole = closedBoundary(piece, units);
    if (longer === 0) return { now: piece, words: "" };
    const edge = level.on ?? walked(piece)[0]!.edge.name;
    const down = bearing(
      Math.PI / 2 + turnAt(piece, piece.edges.has(edge) ? edge : walked(piece)[0]!.edge.name, level.point),
    );
    const across = quarterTurn(down);
    const ends = (height: number): readonly [Point, Point] => {
      const from = plus(level.point, times(down, height));
      const found = crossingsWithRay(whole, from, across);
      const insides = found.flatMap((hit, index) => {
        const next = found[index + 1];
        return next && contains(whole, between(hit.point, next.point, 0.5)) ? [[hit.point, next.point] as const] : [];
      });
      if (insides.length === 1) return insides[0]!;
      throw new Problem(
        "level-line",
        insides.length === 0
          ? `A level line ${height === 0 ? "there" : `${lengthIn(height, units)} lower`} does not cross ${piece.name}.`
          : `A level line there crosses ${piece.name} ${insides.length} times.`,
        { hint: "Choose a place between underarm and waist, and a length that fits in below it." },
      );
    };
    const cut = ends(0);
    const below = longer < 0 ? ends(-longer) : cut;
    const shift = shifted(times(down, longer));
    const at = (point: Point): number => alongBoundary(whole, point);
    // Walked on from the first end, the outline either goes down or up.
    const [first, second] = goesDown(whole, cut, down) ? [0, 1] : [1, 0];
    const lost = (from: Point, to: Point) => (longer < 0 ? [{ from: at(from), to: at(to), move: undefined }] : []);
    const now = partsMoved(
      piece,
      [
        { from: at(below[first]!), to: at(below[second]!), move: shift },
        ...lost(below[second]!, cut[second]!),
        { from: at(cut[second]!), to: at(cut[first]!), move: stays },
        ...lost(cut[first]!, below[first]!),
      ],
      (point) => (dot(minus(point, level.point), down) > 0 ? shift : stays),
    );
    return {
      now: smoothed(now, piece, cut),
      words: `made ${piece.name} ${lengthIn(Math.abs(longer), units)} ${longer > 0 ? "longer" : "shorter"} across a level line`,
    };
  },
});

const goesDown = (whole: Path, [first]: readonly [Point, Point], down: Point): boolean => {
  const ahead = pointAt(whole, (nearest(whole, first).at + look) % pathLength(whole));
  return dot(minus(ahead, first), down) > 0;
};

// A little way on along the boundary, in mm; shorter than any edge that a level line could cross to and fro.
const look = 0.1;

/** The edges that were cut, made smooth again; a straight line through a fold or a straight edge needs none. */
const smoothed = (now: Piece, before: Piece, cut: readonly [Point, Point]): Piece => {
  const names = walked(before)
    .filter(({ path }) => cut.some((point) => nearest(path, point).distance <= sameSpotTolerance))
    .map(({ edge }) => edge.name);
  const paths = new Map(
    names.map((name) => [name, trued(now.edges.get(name)!.path, { start: undefined, end: undefined })]),
  );
  return reshaped(now, paths);
};
