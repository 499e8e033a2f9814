// One half of a bodice is cut along its raglan line, and the shoulder that comes off is laid against the cap of the sleeve:
// on it where the line meets the armhole, its tip on the level that is asked for. What comes of it all is the sleeve's affair.
import type { Where } from "../../grammar/diagnostic.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { mirroredIn } from "../geometry/mirror.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, type Path, reversed, startOf } from "../geometry/path.ts";
import { distance, dot, minus, type Point, plus, sameSpot, sameSpotTolerance, times } from "../geometry/point.ts";
import { sense, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { EdgeValue } from "../value.ts";
import type { Garment, Notch, Piece, Units } from "../working.ts";
import { laidOn } from "./brought-together.ts";
import { cutAlong } from "./cut-across.ts";
import { type Move, movedPiece } from "./moved-piece.ts";
import { closedBoundary, turnInOutline } from "./outline-spot.ts";
import { type CutEdge, partOn } from "./parted.ts";
import type { Slash } from "./slash.ts";
import { otherSide, sideOfPoint } from "./two-parts.ts";

export type Half = "back" | "front";

/** A bodice cut along its raglan line, the shoulder still where it lay. */
export interface CutHalf {
  readonly half: Half;
  /** What the bodice is called now. */
  readonly name: string;
  readonly body: Piece;
  readonly shoulderPiece: Piece;
  /** The armhole of the bodice, and edges of the shoulder piece. */
  readonly armhole: string;
  readonly shoulder: string;
  readonly neck: string;
  readonly raglan: string;
  /** Where the line meets the armhole, and the tip of the shoulder. */
  readonly pitch: Point;
  readonly tip: Point;
  /** Length of the armhole from the underarm up to the line, mm. */
  readonly low: number;
  /** Whether its cloth lies on the right of its armhole, as that is sewn to the cap. */
  readonly clothOnRight: boolean;
}

/** An edge of a piece that the recipe has in hand, from end to end; a Problem with a code of its own otherwise. */
export const pieceWith = (
  { of, whole }: EdgeValue,
  garment: Garment,
  code: string,
  what: string,
  units: Units,
): { readonly piece: Piece; readonly edge: string } => {
  const piece = of && garment.pieces.get(of.piece);
  if (!of || !piece) {
    const message = of
      ? `${of.piece} is not a piece of this garment.`
      : `A line between two places is no ${what} of a piece.`;
    const copyIn = of && `Copy it in first: piece ${of.piece.split(".").at(-1)} = ${of.piece} { }.`;
    throw new Problem(code, message, { hint: copyIn ?? `Name the ${what}.` });
  }
  if (!whole) {
    throw new Problem(code, `Only part of the ${of.edge} of ${of.piece} is named, and the whole ${what} is needed.`, {
      hint: `Name ${of.piece}.${of.edge} itself.`,
    });
  }
  closedBoundary(piece, units);
  turnInOutline(piece, of.edge);
  return { piece, edge: of.edge };
};

/** Whether the cloth of a piece lies on the right of one of its edges, walked as it was drafted or turned. */
export const isClothOnRight = (piece: Piece, edge: string, turned: boolean): boolean =>
  sense(piece) > 0 === (piece.outline[turnInOutline(piece, edge)]!.turned === turned);

/** Cuts a bodice along its raglan line, from the neck to the armhole; the armhole runs as it is sewn to the cap. */
export const cutHalf = (
  half: Half,
  name: string,
  armhole: EdgeValue,
  line: EdgeValue,
  garment: Garment,
  where: Where,
): CutHalf => {
  const { units } = garment;
  const { piece, edge } = pieceWith(armhole, garment, "raglan-armhole", "armhole", units);
  const called = line.of?.edge ?? "the line";
  const slash = cutAlong(piece, line.path, called, units);
  const [tip, underarm] =
    half === "back" ? [endOf(armhole.path), startOf(armhole.path)] : [startOf(armhole.path), endOf(armhole.path)];
  const { shoulder, neck } = aboveArmhole(piece, edge, tip);
  const [pitch, mark] = endsOn(slash, armhole.path);
  const isOn = (name: string): boolean =>
    mark !== undefined && nearest(piece.edges.get(name)!.path, mark).distance <= sameSpotTolerance;
  if (!isOn(neck) && isOn(aboveArmhole(piece, edge, underarm).neck)) {
    throw new Problem(
      "raglan-armhole",
      `The ${edge} of ${piece.name} runs ${half === "back" ? "down to" : "up from"} the underarm, and is sewn to the cap the other way about.`,
      { hint: `Write ${armhole.turned ? `${piece.name}.${edge}` : `turned(${piece.name}.${edge})`}.` },
    );
  }
  const side = sideOfPoint(piece, slash, middleOf(piece.edges.get(shoulder)!.path));
  if (!pitch || !isOn(neck) || !side) {
    throw new Problem(
      "raglan-line",
      `${called} has to run from the ${neck} of ${piece.name} to its ${edge}, between the ends of both.`,
      { hint: `Draw it from a place on the ${neck} to one on the ${edge}, by custom a third of the way up.` },
    );
  }
  const raglan = line.of?.piece.split(".").at(-1) === piece.name ? line.of.edge : "raglan";
  const cut: CutEdge = {
    name: raglan,
    notches: notchesOn(piece, slash.path, raglan, where),
    drawnBy: piece.edges.get(raglan)?.drawnBy ?? where,
  };
  const shoulderPiece = partOn(piece, slash, side, cut, piece.name, where);
  refuseTaken(shoulderPiece);
  const at = nearest(armhole.path, pitch).at;
  return {
    half,
    name,
    body: partOn(piece, slash, otherSide(side), cut, name, where),
    shoulderPiece,
    armhole: edge,
    shoulder,
    neck,
    raglan,
    pitch,
    tip,
    low: sameSpot(underarm, startOf(armhole.path)) ? at : pathLength(armhole.path) - at,
    clothOnRight: isClothOnRight(piece, edge, armhole.turned),
  };
};

/** The shoulder is the neighbour of the armhole at its tip, and the neck the edge beyond that. */
const aboveArmhole = (piece: Piece, armhole: string, tip: Point): { shoulder: string; neck: string } => {
  const walk = walked(piece);
  if (walk.length < 5) {
    throw new Problem(
      "raglan-armhole",
      `${piece.name} has too few edges for a bodice: shoulder and neck lie above an armhole.`,
      {
        hint: "Draw the outline of center, neck, shoulder, armhole, side and hem.",
      },
    );
  }
  const index = walk.findIndex(({ edge }) => edge.name === armhole);
  const step = sameSpot(startOf(walk[index]!.path), tip) ? -1 : 1;
  const beyond = (steps: number): string => walk[(index + steps * step + 2 * walk.length) % walk.length]!.edge.name;
  return { shoulder: beyond(1), neck: beyond(2) };
};

const middleOf = (path: Path): Point => pointAt(path, pathLength(path) / 2);

/** The end of a cut that lies within the armhole, and its other end. */
const endsOn = ({ hinge, target }: Slash, armhole: Path): [Point, Point] | [] => {
  const length = pathLength(armhole);
  const isOn = (point: Point): boolean => {
    const { at, distance: off } = nearest(armhole, point);
    return off <= sameSpotTolerance && at > sameSpotTolerance && at < length - sameSpotTolerance;
  };
  if (isOn(hinge) === isOn(target)) return [];
  return isOn(hinge) ? [hinge, target] : [target, hinge];
};

/** Where a new seam is notched, as a share of its length. */
const notchAt = 2 / 5;

const notchesOn = (piece: Piece, path: Path, edge: string, drawnBy: Where): Notch[] => {
  const own = piece.notches.filter(
    (notch) => notch.edge === edge && nearest(path, notch.point).distance <= sameSpotTolerance,
  );
  if (own.length > 0) return own;
  const along = piece.edges.get(edge)?.path;
  const isTurned = along !== undefined && nearest(along, startOf(path)).at > nearest(along, endOf(path)).at;
  return [
    { edge, point: pointAt(isTurned ? reversed(path) : path, notchAt * pathLength(path)), double: false, drawnBy },
  ];
};

// What a dart or a pleat takes up would have no seam of its own on the sleeve.
const refuseTaken = ({ name, darts, takeUps }: Piece): void => {
  const [dart] = darts.keys();
  if (dart === undefined && takeUps.length === 0) return;
  const what = dart === undefined ? "Cloth is taken up" : `The dart ${dart} lies`;
  throw new Problem("raglan-taken", `${what} in the part of ${name} that goes over to the sleeve.`, {
    hint: "Move or close it above this line.",
  });
};

/** The cap that the shoulders are laid against. */
export interface Cap {
  /** From the back underarm over the top to the front underarm. */
  readonly path: Path;
  readonly clothOnRight: boolean;
  readonly crown: Point;
  /** Directions of length 1: down the sleeve, and square to it from back to front. */
  readonly down: Point;
  readonly across: Point;
}

/** Where a shoulder comes to lie on the sleeve. */
export interface Place {
  /** Where on the cap, mm from its start, the line meets it. */
  readonly at: number;
  readonly tipNow: Point;
  /** How far the tip lies from the middle, mm; negative beyond it. */
  readonly aside: number;
  readonly move: Move;
}

/** A cut bodice whose shoulder lies on the sleeve. */
export interface LaidHalf extends CutHalf, Place {
  readonly laid: Piece;
}

export const laidHalf = (cut: CutHalf, place: Place): LaidHalf => ({
  ...cut,
  ...place,
  laid: movedPiece(cut.shoulderPiece, place.move),
});

/** The shoulder laid against the cap: touching it as far from the underarm as on the bodice, the tip so many mm above its top. */
export const placeOnCap = (cut: CutHalf, cap: Cap, lift: number, units: Units): Place => {
  const { half, pitch, tip } = cut;
  const { at, spot, below, spare } = spotOnCap(cut, cap, lift, units);
  const reach = distance(pitch, tip);
  if (spare <= 0) {
    throw new Problem(
      "raglan-lift",
      `From where the line meets the cap up to ${lengthIn(lift, units)} above its top are ${lengthIn(Math.abs(below), units)}, and the shoulder tip of the ${half} reaches ${lengthIn(reach, units)}.`,
      { hint: "Lift the tips less, or lower the cap." },
    );
  }
  const toFront = half === "back" ? 1 : -1;
  const sideways = toFront * Math.sqrt(reach * reach - below * below);
  const tipNow = plus(plus(spot, times(cap.across, sideways)), times(cap.down, -below));
  const aside = -toFront * dot(minus(tipNow, cap.crown), cap.across);
  const flat: Move =
    cut.clothOnRight === cap.clothOnRight ? (point) => mirroredIn(point, pitch, tip) : (point) => point;
  const turned = laidOn(pitch, spot, tip, tipNow);
  return { at, tipNow, aside, move: (point) => turned(flat(point)) };
};

/** How much further than this, mm, the tip could be lifted. */
export const spareLift = (cut: CutHalf, cap: Cap, lift: number, units: Units): number =>
  spotOnCap(cut, cap, lift, units).spare;

/** Where the line meets the cap, how far below the level of the tip that lies, and how much higher the tip could come. */
const spotOnCap = ({ half, pitch, tip, low }: CutHalf, cap: Cap, lift: number, units: Units) => {
  const length = pathLength(cap.path);
  const toTop = nearest(cap.path, cap.crown).at;
  const room = half === "back" ? toTop : length - toTop;
  if (low >= room) {
    throw new Problem(
      "raglan-line",
      `The raglan line of the ${half} meets the armhole ${lengthIn(low, units)} from the underarm, and that side of the cap is ${lengthIn(room, units)} long.`,
      { hint: "Let the line meet the armhole further down, by custom a third of the way up." },
    );
  }
  const at = half === "back" ? low : length - low;
  const spot = pointAt(cap.path, at);
  const below = dot(minus(spot, cap.crown), cap.down) + lift;
  return { at, spot, below, spare: distance(pitch, tip) - Math.abs(below) };
};
