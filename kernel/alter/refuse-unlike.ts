// Refuses an edge that cannot be the shoulder, armhole, neck or front edge a step was told it is. Names tell nothing, so
// each is told by how it lies, by what it meets at its ends, and by folds and openings; what could be either is let pass.
import { endOf, isStraight, type Path, reversed, startOf } from "../geometry/path.ts";
import { dot, minus, type Point, size, times } from "../geometry/point.ts";
import { asin } from "../geometry/trig.ts";
import { outward, type Walked, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { angleInWords } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import { armholeOf, besideShoulder, downAt } from "./armhole.ts";
import { isMarkedCenter } from "./level-with.ts";
import { neckOf } from "./neck.ts";
import { closedBoundary, turnInOutline } from "./outline-spot.ts";

/** What a step wants an edge to be. A neck has a center at one end; what moves along a shoulder wants one at the other. */
export type Wanted = "shoulder" | "armhole" | "neck" | "neck at a shoulder" | "front edge" | "front edge at a neck";

/** An edge as a step was told of it. */
export interface Told {
  readonly edge: string;
  /** The slot of the step's sentence that it fills. */
  readonly slot: string;
  /** What stands before the names of this piece's edges in the recipe: "back." at the top level. */
  readonly prefix?: string;
}

/** A Problem where an edge of a closed outline cannot be what a step wants: it says why, and which edges can. */
export const refuseUnlike = (wanted: Wanted, piece: Piece, { edge, slot, prefix = "" }: Told, units: Units): void => {
  closedBoundary(piece, units);
  turnInOutline(piece, edge);
  if (piece.outline.length < 3) return;
  const { code, name, made, whyNot } = wants[wanted];
  const reason = whyNot(piece, edge);
  if (reason === undefined) return;
  const others = walked(piece).flatMap((other) =>
    other.edge.name === edge || whyNot(piece, other.edge.name) !== undefined ? [] : [`${prefix}${other.edge.name}`],
  );
  const naming = others.length > 0 ? `Name ${either(others)}` : `Draw ${piece.name} with ${made}`;
  const mayOpen =
    wanted === "front edge" && isStraight(piece.edges.get(edge)!.path, bow) && lieOf(piece, edge).slope >= steep;
  const marking = mayOpen ? `, or mark ${edge} as opening above this line if it opens there` : "";
  throw new Problem(code, `${prefix}${edge} is no ${name}: ${reason}.`, { hint: `${naming}${marking}.`, slot });
};

/** Why an edge cannot be a thing, as the end of a sentence; undefined where it can. */
type WhyNot = (piece: Piece, name: string) => string | undefined;

const whyNoShoulder: WhyNot = (piece, name) => {
  const { above, slope } = lieOf(piece, name);
  if (above < -half) return "the cloth lies above it";
  if (slope >= Math.PI / 4) return `it slopes by ${angleInWords(slope)}, and a shoulder by less than 45 deg`;
  const armhole = besideShoulder(piece, name);
  if (whyNoArmhole(piece, armhole) === undefined) return undefined;
  return `${armhole}, at its lower end, is no armhole`;
};

const whyNoArmhole: WhyNot = (piece, name) => {
  const armhole = armholeOf(piece, name);
  if (piece.edges.get(name)!.role === "fold") return "it is a fold";
  if (!armhole) return "its ends lie level";
  const { slope } = lieOf(piece, name);
  if (slope < steep) return `it slopes by ${angleInWords(slope)}, and an armhole falls by more than 30 deg`;
  const { shoulder, side } = armhole;
  const upper = lieOf(piece, shoulder);
  if (upper.slope >= Math.PI / 4 || upper.above < 0) return `${shoulder}, at its upper end, is no shoulder`;
  if (besideShoulder(piece, shoulder) !== name) return `it meets ${shoulder} at the upper end of that, like a neck`;
  const isSide = piece.edges.get(side)!.role !== "fold" && falls(armhole.sidePath, downAt(piece, side)) < -half;
  return isSide ? undefined : `${side}, at its lower end, is no side`;
};

const whyNoNeck: WhyNot = (piece, name) => {
  if (lieOf(piece, name).above < -half) return "the cloth lies above it";
  const { center, centerPath, shoulder, shoulderPath } = neckOf(piece, name);
  const isDown = falls(centerPath, downAt(piece, center)) > half;
  if (isDown && isMarkedCenter(piece.edges.get(center)!) && isStraight(centerPath, bow)) return undefined;
  if (whyNoArmhole(piece, name) === undefined) return "it is an armhole";
  // Above a center that is drawn in two a neck looks like a shoulder as well, but lies beside one.
  const isBesideShoulder = [center, shoulder].some((beside) => whyNoShoulder(piece, beside) === undefined);
  if (whyNoShoulder(piece, name) === undefined && !isBesideShoulder) return "it is a shoulder";
  if (!isDown) return `neither ${center} nor ${shoulder}, beside it, goes down as a center does`;
  if (falls(shoulderPath, downAt(piece, shoulder)) < -level) return `it meets ${shoulder} at the lower end of that`;
  // A shoulder over a side, as on a cape, lies just as a neck over a center does: the fold or opening beyond it tells.
  const told = [center, shoulder].find((next) => {
    const { edge, path } = beyondOf(piece, name, next);
    return isMarkedCenter(edge) && falls(path, downAt(piece, edge.name)) > half;
  });
  return told && `${told} lies between it and ${beyondOf(piece, name, told).edge.name}, which is the center`;
};

const whyNoNeckAtShoulder: WhyNot = (piece, name) => {
  const reason = whyNoNeck(piece, name);
  if (reason !== undefined) return reason;
  const { shoulder } = neckOf(piece, name);
  const { above, slope } = lieOf(piece, shoulder);
  return slope < Math.PI / 3 && above > 0 ? undefined : `${shoulder}, beside it, is no shoulder`;
};

const whyNoFrontEdge: WhyNot = (piece, name) => {
  const { edge } = walkedEdge(piece, name);
  if (edge.role === "opening" && isStraight(edge.path, bow)) return undefined;
  const { above, slope } = lieOf(piece, name);
  if (above < -half) return "the cloth lies above it";
  if (slope < steep) return `it slopes by ${angleInWords(slope)} only, and a front edge runs up and down`;
  if (whyNoNeck(piece, name) === undefined) return "it is a neck";
  const upper = upperNeighbour(piece, name);
  if (whyNoNeck(piece, upper) === undefined && neckOf(piece, upper).center === name) return undefined;
  if (whyNoArmhole(piece, name) === undefined) return "it is an armhole";
  if (whyNoArmhole(piece, upper) === undefined) return `it goes down from ${upper}, which is an armhole`;
  const marked = walked(piece).find(
    (other) => isMarkedCenter(other.edge) && lieOf(piece, other.edge.name).slope >= steep,
  );
  if (!marked || marked.edge.name === name) return undefined;
  return `${marked.edge.name} is ${marked.edge.role === "fold" ? "the fold" : "the opening"}, and ${upper} is no neck`;
};

const whyNoFrontEdgeAtNeck: WhyNot = (piece, name) => {
  const reason = whyNoFrontEdge(piece, name);
  if (reason !== undefined) return reason;
  const upper = upperNeighbour(piece, name);
  const isNeck = whyNoNeckAtShoulder(piece, upper) === undefined && neckOf(piece, upper).center === name;
  return isNeck ? undefined : `${upper}, at its upper end, is no neck`;
};

const wants: {
  readonly [wanted in Wanted]: {
    readonly code: string;
    readonly name: string;
    /** What a piece without such an edge is to be drawn with. */
    readonly made: string;
    readonly whyNot: WhyNot;
  };
} = {
  shoulder: {
    code: "no-shoulder",
    name: "shoulder",
    made: "a shoulder, and an armhole and a side below it",
    whyNot: whyNoShoulder,
  },
  armhole: {
    code: "no-armhole",
    name: "armhole",
    made: "an armhole between a shoulder and a side",
    whyNot: whyNoArmhole,
  },
  neck: { code: "no-neck", name: "neck", made: "a neck between a center and a shoulder", whyNot: whyNoNeck },
  "neck at a shoulder": {
    code: "no-neck",
    name: "neck",
    made: "a neck between a center and a shoulder",
    whyNot: whyNoNeckAtShoulder,
  },
  "front edge": {
    code: "no-front-edge",
    name: "front edge",
    made: "a front edge that goes down from its neck",
    whyNot: whyNoFrontEdge,
  },
  "front edge at a neck": {
    code: "no-front-edge",
    name: "front edge",
    made: "a front edge that goes down from its neck",
    whyNot: whyNoFrontEdgeAtNeck,
  },
};

/** How an edge lies, end to end, in cloth that may have turned. */
interface Lie {
  /** Radians from level, 0 to a right angle. */
  readonly slope: number;
  /** 1 where the cloth lies straight below it, -1 where it lies straight above. */
  readonly above: number;
  /** How far, in mm, its end lies below its start as the outline walks it. */
  readonly fall: number;
}

const lieOf = (piece: Piece, name: string): Lie => {
  const { path } = walkedEdge(piece, name);
  const down = downAt(piece, name);
  const chord = minus(endOf(path), startOf(path));
  const length = size(chord);
  // An edge that comes back to where it started lies neither way.
  if (length === 0) return { slope: Math.PI / 2, above: 0, fall: 0 };
  const way = times(chord, 1 / length);
  const fall = dot(way, down);
  return { slope: asin(Math.min(1, Math.abs(fall))), above: -dot(outward(piece, way), down), fall: fall * length };
};

/** Which share of its own straight length a path falls from start to end, 1 straight down. */
const falls = (path: Path, down: Point): number => {
  const chord = minus(endOf(path), startOf(path));
  return size(chord) === 0 ? 0 : dot(chord, down) / size(chord);
};

const walkedEdge = (piece: Piece, name: string): Walked => walked(piece)[turnInOutline(piece, name)]!;

const neighbour = (piece: Piece, name: string, steps: number): Walked => {
  const walk = walked(piece);
  return walk[(turnInOutline(piece, name) + steps + walk.length) % walk.length]!;
};

const upperNeighbour = (piece: Piece, name: string): string =>
  neighbour(piece, name, lieOf(piece, name).fall > 0 ? -1 : 1).edge.name;

/** The edge beyond a neighbour of an edge, walked away from that neighbour. */
const beyondOf = (piece: Piece, name: string, next: string): Walked => {
  const step = neighbour(piece, name, 1).edge.name === next ? 1 : -1;
  const beyond = neighbour(piece, next, step);
  return step === 1 ? beyond : { ...beyond, path: reversed(beyond.path) };
};

const either = (names: readonly string[]): string =>
  names.length === 1 ? names[0]! : `${names.slice(0, -1).join(", ")} or ${names.at(-1)}`;

// Shares of a length that lie across it: of a direction more than 30 degrees from level, or from square to level.
const half = 0.5;

// The share of a straight length below which its ends lie level.
const level = 0.02;

// Radians: a shoulder slopes by less, an armhole and a front edge by more.
const steep = Math.PI / 6;

// A line that bows by no more than this, in mm, is straight.
const bow = 0.5;
