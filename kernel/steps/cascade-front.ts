// cascade-front: a front carried up past its neck, that falls open as a soft lapel.
import { optional, phrase } from "../../grammar/phrase.ts";
import { neckNamed } from "../alter/neck.ts";
import { turnInOutline } from "../alter/outline-spot.ts";
import { refuseUnlike } from "../alter/refuse-unlike.ts";
import { reshaped } from "../alter/reshaped.ts";
import { withNewEdge } from "../drawn.ts";
import { arcAbout } from "../geometry/arc.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { carriedOn } from "../geometry/offset.ts";
import { endOf, joined, type Path, reversed, startOf, straight } from "../geometry/path.ts";
import { cross, distance, dot, minus, plus, quarterTurn, sameSpot, times, unit } from "../geometry/point.ts";
import { atan2, tan, turnBetween } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Drill, Piece, Units } from "../working.ts";

export const cascadeFront = pieceStep({
  name: "cascade-front",
  since: "0.2",
  summary:
    "Carries the front edge up past the neck to the level of the neck point, so that the corner falls as a soft lapel.",
  details: `The neck curve is left out of the outline and stays as a line inside. The front edge goes straight on upward; the new top edge, which has the
name given, runs from the neck point at the shoulder out to it, square to the front edge, or higher by \`rising\` at its outer end. \`rounded\` rounds
the corner; the round belongs to the top edge. The front edge is notched level with the old front neck point, where the front fastens; with a lap that point
itself is drilled, on the center line. Worn open, the fall shows its wrong side: cut a facing of the same shape.`,
  example: `chalkline 1
units cm
piece front {
  line neck-in  = (-2 cm, 6 cm) to (0, 6 cm)
  curve neck-out = (0, 6 cm) to (7.4 cm, -2.5 cm) handles (4 cm, 6 cm), (5.6 cm, 1.8 cm)
  join neck     = neck-in, neck-out
  line shoulder = (7.4 cm, -2.5 cm) to (20 cm, 2.7 cm)
  line side     = (20 cm, 2.7 cm) to (20 cm, 60 cm)
  line hem      = (-2 cm, 60 cm) to (20 cm, 60 cm)
  line opening  = (-2 cm, 6 cm) to (-2 cm, 60 cm)
  outline opening, neck, shoulder, side, hem
  mark opening as opening
  cascade-front fall = opening rounded 4 cm
}`,
  phrase: [
    phrase`cascade-front ${slot.name("top", "what the new top edge is called")} = ${slot.ownEdge("edge", "the front edge")}
      ${optional`rounded ${slot.length("radius", "the radius of the corner")}`}
      ${optional`rising ${slot.length("rise", "how much higher than the neck point the top ends")}`}`,
  ],
  work({ top: name, edge: front, radius = 0, rise = 0 }, piece, { where, units }) {
    refuseUnlike("front edge at a neck", piece, { edge: front, slot: "edge" }, units);
    const neck = neckBeside(piece, front, units);
    const { down, out, path, lapSpans, centerPath } = neck;
    const neckPoint = endOf(path);
    const [corner, from] = [startOf(path), startOf(centerPath)];
    const height = dot(minus(corner, neckPoint), down) + rise;
    if (radius < 0 || height <= 0) {
      throw new Problem("cascade-low", "The top of the fall would lie below the neck.", {
        hint: "Take a radius and a rise that are not negative.",
      });
    }
    const outer = plus(from, times(down, -height));
    const top = rounded(piece, { neckPoint, outer, foot: endOf(centerPath), radius }, units);
    const carried = carriedOn(centerPath, "start", height - distance(outer, endOf(top)));
    const fastening = path[lapSpans]?.start ?? corner;
    const level = nearest(carried, plus(fastening, times(out, dot(minus(corner, fastening), out)))).point;
    const { turned } = walked(piece)[turnInOutline(piece, neck.name)]!;
    const grown = reshaped(
      { ...piece, notches: piece.notches.filter(({ edge }) => edge !== neck.name) },
      new Map([[front, sameSpot(startOf(piece.edges.get(front)!.path), from, 1e-9) ? carried : reversed(carried)]]),
    );
    const allowances = new Map(grown.allowances);
    allowances.delete(neck.name);
    const drill: Drill[] = lapSpans > 0 ? [{ point: fastening, drawnBy: where }] : [];
    const isNeckFromCenter = sameSpot(startOf(piece.edges.get(neck.name)!.path), corner, 1e-9) !== turned;
    const now: Piece = {
      ...withNewEdge(grown, name, top, where),
      // Places at the old corner stay where the front fastens.
      places: new Map(
        [...grown.places].map(([key, place]) => [key, { ...place, point: stayed(piece, key, corner) ?? place.point }]),
      ),
      outline: grown.outline.map((part) => (part.edge === neck.name ? { edge: name, turned: isNeckFromCenter } : part)),
      allowances,
      hinges: grown.hinges.filter(({ edge }) => edge !== neck.name),
      notches: [...grown.notches, { edge: front, point: level, double: false, drawnBy: where }],
      drills: [...grown.drills, ...drill],
    };
    return {
      now,
      words:
        `carried ${front} up ${lengthIn(height, units)}, past the neck; the top is ${lengthIn(pathLength(top), units)} long, ` +
        `and it fastens ${lengthIn(dot(minus(fastening, neckPoint), down), units)} below the neck point`,
    };
  },
});

const stayed = (piece: Piece, key: string, corner: { x: number; y: number }) => {
  const { point } = piece.places.get(key)!;
  return sameSpot(point, corner) ? point : undefined;
};

/** The neck at the upper end of a front edge. */
const neckBeside = (piece: Piece, front: string, units: Units): ReturnType<typeof neckNamed> => {
  const index = turnInOutline(piece, front);
  const walk = walked(piece);
  const neighbours = [walk[(index + walk.length - 1) % walk.length]!, walk[(index + 1) % walk.length]!];
  const neck = neighbours
    .map(({ edge }) => neckNamed(piece, edge.name, units))
    .find(({ center, path, down }) => center === front && dot(minus(endOf(path), startOf(path)), down) < 0);
  if (neck) return neck;
  throw new Problem("cascade-no-neck", `The neck beside ${front} does not rise to a neck point.`, {
    hint: "Draw it deeper above this line, with draw-neck.",
    slot: "edge",
  });
};

interface TopWanted {
  readonly neckPoint: { readonly x: number; readonly y: number };
  readonly outer: { readonly x: number; readonly y: number };
  readonly foot: { readonly x: number; readonly y: number };
  readonly radius: number;
}

/** The top edge from the neck point to the front edge, with its corner rounded. */
const rounded = (piece: Piece, { neckPoint, outer, foot, radius }: TopWanted, units: Units): Path => {
  if (radius === 0) return straight(neckPoint, outer);
  const [inWay, downWay] = [unit(minus(outer, neckPoint)), unit(minus(foot, outer))];
  const turn = turnBetween(inWay, downWay);
  const reach = radius * tan(Math.abs(turn) / 2);
  const room = Math.min(distance(neckPoint, outer), distance(outer, foot));
  if (reach >= room) {
    throw new Problem(
      "corner-too-round",
      `The corner of ${piece.name} has room for a round of ${lengthIn(room / tan(Math.abs(turn) / 2), units)}.`,
      {
        hint: "Take a smaller radius.",
      },
    );
  }
  const [start, end] = [minus(outer, times(inWay, reach)), plus(outer, times(downWay, reach))];
  const center = plus(start, times(quarterTurn(inWay), Math.sign(cross(inWay, downWay)) * radius));
  const swing = atan2(cross(minus(start, center), minus(end, center)), dot(minus(start, center), minus(end, center)));
  return joined([straight(neckPoint, start), arcAbout(center, start, end, swing)]);
};
