// Several slashes in one go. All are laid out on the piece as it stands, then opened one after another, so that the order
// in which they are named makes no difference.

import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { crossings } from "../geometry/intersect.ts";
import { straight } from "../geometry/path.ts";
import { distance, type Point, sameSpot } from "../geometry/point.ts";
import { asin } from "../geometry/trig.ts";
import { Problem } from "../problem.ts";
import type { Line, Worked } from "../step.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { PlaceOnPiece } from "../value.ts";
import type { NamedPlace, Piece, Units } from "../working.ts";
import { turnInOutline } from "./outline-spot.ts";
import { type Slash, slashOn } from "./slash.ts";
import { spread } from "./spread.ts";

export interface SlashesAsked {
  readonly hinges: readonly PlaceOnPiece[];
  /** The edge that opens. */
  readonly edge: string;
  /** How far each opens there, straight across, mm; negative folds cloth away. */
  readonly each: number;
}

/** The piece with all slashes opened; each runs down from its hinge, as `spread-from` lets it run. */
export const slashedDown = (piece: Piece, { hinges, edge, each }: SlashesAsked, line: Line): Worked<Piece> => {
  const slashes = hinges.map((hinge) => slashOn(piece, { hinge, target: { edge }, along: undefined }, line.units));
  return opened(piece, slashes, edge, each, line);
};

/** The piece with so many slashes, which divide both edges evenly, half a share before the first and behind the last. */
export const slashedEvenly = (
  piece: Piece,
  asked: { readonly from: string; readonly edge: string; readonly count: number; readonly each: number },
  line: Line,
): Worked<Piece> => {
  const { from, edge, count, each } = asked;
  const alike = runsAlike(piece, from, edge);
  const slashes = Array.from({ length: count }, (_, index) => {
    const share = (index + 0.5) / count;
    const { point } = placeAlong(piece, edge, alike ? share : 1 - share);
    const hinge = placeAlong(piece, from, share);
    return slashOn(piece, { hinge, target: { place: point }, along: undefined }, line.units);
  });
  return opened(piece, slashes, edge, each, line);
};

const placeAlong = (piece: Piece, edge: string, share: number): PlaceOnPiece => {
  const { path } = piece.edges.get(edge)!;
  return { kind: "place", point: pointAt(path, share * pathLength(path)), on: edge };
};

/** Whether two edges were drafted the same way across the piece: one is then walked from its end, the other from its start. */
const runsAlike = (piece: Piece, first: string, second: string): boolean =>
  piece.outline[turnInOutline(piece, first)]!.turned !== piece.outline[turnInOutline(piece, second)]!.turned;

const opened = (piece: Piece, slashes: readonly Slash[], edge: string, each: number, line: Line): Worked<Piece> => {
  refuseCrossing(slashes, line.units);
  if (each === 0 || slashes.length === 0) return { now: piece, words: "" };
  // Hinges and targets stand on the piece as places while it is worked, so that they go with the cloth.
  const marked = withPlaces(piece, slashes, line);
  const now = slashes.reduce((sofar, slash, index) => {
    const [hinge, target] = [sofar.places.get(hingeOf(index))!.point, sofar.places.get(targetOf(index))!.point];
    const rest = withoutPlaces(sofar, [hingeOf(index), targetOf(index)]);
    const asked = {
      hinge: { kind: "place" as const, point: hinge, on: slash.hingeEdge },
      target: { place: target },
      opening: { length: each },
      along: undefined,
      moving: undefined,
    };
    return spread(rest, asked, line).now;
  }, marked);
  return { now, words: inWords(slashes, edge, each, line.units), amount: each * slashes.length };
};

// Names that no recipe can write, and that read well in a finding.
const hingeOf = (index: number): string => `The hinge of slash ${index + 1}`;
const targetOf = (index: number): string => `The far end of slash ${index + 1}`;

const withPlaces = (piece: Piece, slashes: readonly Slash[], { where }: Line): Piece => {
  const places = new Map<string, NamedPlace>(piece.places);
  const put = (name: string, point: Point): void => {
    places.set(name, { name, point, drawnBy: where });
  };
  slashes.forEach(({ hinge, target }, index) => {
    put(hingeOf(index), hinge);
    put(targetOf(index), target);
  });
  return { ...piece, places };
};

const withoutPlaces = (piece: Piece, names: readonly string[]): Piece => ({
  ...piece,
  places: new Map([...piece.places].filter(([name]) => !names.includes(name))),
});

const refuseCrossing = (slashes: readonly Slash[], units: Units): void => {
  slashes.forEach((first, index) => {
    slashes.slice(index + 1).forEach((second, further) => {
      const other = index + 2 + further;
      if (sameSpot(first.hinge, second.hinge)) {
        throw new Problem("slash-twice", `Slashes ${index + 1} and ${other} start at one place.`, {
          hint: "Name each place once, and open it further.",
        });
      }
      const [met] = crossings(straight(first.hinge, first.target), straight(second.hinge, second.target));
      if (met && !sameSpot(first.target, second.target)) {
        throw new Problem(
          "slashes-cross",
          `Slashes ${index + 1} and ${other} cross, ${lengthIn(distance(first.hinge, met.point), units)} from where the first starts.`,
          { hint: "Start them in the order in which they reach the edge." },
        );
      }
    });
  });
};

const inWords = (slashes: readonly Slash[], edge: string, each: number, units: Units): string => {
  const count = slashes.length;
  const size = Math.abs(each);
  const did = each > 0 ? "opened" : "folded away";
  const radii = slashes.map(({ hinge, target }) => distance(hinge, target));
  const angle = radii.reduce((sum, radius) => sum + 2 * asin(Math.min(1, size / (2 * radius))), 0);
  const slashed = count === 1 ? "1 slash" : `${count} slashes`;
  return `${slashed} ${did} ${lengthIn(size, units)} each at the ${edge}, ${lengthIn(size * count, units)} and ${angleInWords(angle)} in all`;
};
