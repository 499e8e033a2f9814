// A sleeve in one piece comes apart into an upper and an under sleeve. Its underarm seam goes; what it came in from the underarm
// to the wrist is taken in at the new seams instead, half on either side, which makes their edges mirror images.
import type { Where } from "../../grammar/diagnostic.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { bounds } from "../geometry/bounds.ts";
import { hobbyCurve } from "../geometry/hobby.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, isStraight, joined, line, mapped, type Path, reversed, startOf } from "../geometry/path.ts";
import {
  distance,
  dot,
  minus,
  type Point,
  plus,
  quarterTurn,
  sameSpot,
  sameSpotTolerance,
  times,
  unit,
} from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { grainDirection } from "../grain-direction.ts";
import { boundary, walked } from "../outline.ts";
import { emptyPiece } from "../piece.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { Edge, Grain, Notch, OutlinePart, Piece, Units } from "../working.ts";
import { grainWithin } from "./grain-within.ts";

/** What a recipe asks for; lengths in mm. */
export interface SleeveAsked {
  readonly sleeve: Piece;
  readonly capEdge: string;
  /** From the back underarm to the front one. */
  readonly cap: Path;
  readonly capTurned: boolean;
  readonly hindarm: number;
  readonly forearm: number;
  readonly elbow: number;
  readonly where: Where;
}

/** The upper and the under sleeve; a Problem where the sleeve, or what is asked of it, does not allow them. */
export const partedSleeve = (
  asked: SleeveAsked,
  upperName: string,
  underName: string,
  units: Units,
): { readonly upper: Piece; readonly under: Piece } => {
  const frame = frameOf(asked, units);
  const seams = seamsOf(asked, frame, units);
  return { upper: upperSleeve(asked, frame, seams, upperName), under: underSleeve(asked, frame, seams, underName) };
};

/** The sleeve as it would lie on the table with its back underarm at (0, 0), its front one to the right, its wrist below. */
interface Frame {
  readonly toFrame: (point: Point) => Point;
  readonly fromFrame: (point: Point) => Point;
  readonly cap: Path;
  readonly wrist: Edge;
  /** From one underarm to the other, and from their level to the wrist and to the top of the cap, mm. */
  readonly width: number;
  readonly depth: number;
  readonly top: number;
  /** How far the wrist begins and ends within the underarms, mm; negative where it is the wider. */
  readonly backIn: number;
  readonly frontIn: number;
}

const frameOf = ({ sleeve, capEdge, cap }: SleeveAsked, units: Units): Frame => {
  const wrist = wristOf(sleeve, capEdge);
  const [back, front] = [startOf(cap), endOf(cap)];
  const across = unit(minus(front, back));
  const square = quarterTurn(across);
  const down = dot(square, minus(startOf(wrist.path), back)) >= 0 ? square : times(square, -1);
  const toFrame = (point: Point): Point => ({ x: dot(minus(point, back), across), y: dot(minus(point, back), down) });
  const fromFrame = ({ x, y }: Point): Point => plus(back, plus(times(across, x), times(down, y)));
  const ends = [toFrame(startOf(wrist.path)), toFrame(endOf(wrist.path))].sort((a, b) => a.x - b.x);
  const [left, right] = ends as [Point, Point];
  const off = Math.abs(left.y - right.y);
  if (!isStraight(wrist.path, levelWithin) || off > levelWithin) {
    const how = off > levelWithin ? `${lengthIn(off, units)} off that level` : "not straight";
    throw new Problem(
      "sleeve-wrist",
      `The ${wrist.name} of ${sleeve.name} has to be level with the underarms, and is ${how}.`,
      {
        hint: "Part the sleeve while its wrist is straight, and shape the wrist of both parts afterwards.",
      },
    );
  }
  const width = distance(back, front);
  const inFrame = mapped(cap, toFrame);
  const { top } = bounds([inFrame]);
  return {
    toFrame,
    fromFrame,
    cap: inFrame,
    wrist,
    width,
    depth: left.y,
    top,
    backIn: left.x,
    frontIn: width - right.x,
  };
};

// How far, in mm, a wrist may be off a level line: what a pencil line hides.
const levelWithin = 0.5;

/** The edge across from the cap. */
const wristOf = (sleeve: Piece, capEdge: string): Edge => {
  const walk = walked(sleeve);
  if (walk.length !== 4) {
    throw new Problem(
      "sleeve-edges",
      `${sleeve.name} has ${walk.length} edges, and a sleeve in one piece has four: a cap, two underarm seams and a wrist.`,
      { hint: "Join the edges of its outline that are one line, and leave plackets and vents for later." },
    );
  }
  const taken = ["hind-elbow", "fore-elbow"].find((place) => sleeve.places.has(place));
  if (taken !== undefined) {
    throw new Problem(
      "sleeve-name",
      `${taken} already names a place of ${sleeve.name}, and is to name one of its parts.`,
      {
        hint: "Give that place another name.",
      },
    );
  }
  if (sleeve.darts.size > 0 || sleeve.takeUps.length > 0) {
    throw new Problem("sleeve-taken", `${sleeve.name} has cloth taken up in it, by a dart, pleats or gathers.`, {
      hint: "Part the sleeve first, and take cloth up in its parts.",
    });
  }
  return walk[(walk.findIndex(({ edge }) => edge.name === capEdge) + 2) % 4]!.edge;
};

/** A new seam: where along the cap it starts, and its edges on the upper and on the under sleeve, from the cap to the wrist. */
interface ArmSeam {
  readonly at: number;
  readonly upper: Path;
  readonly under: Path;
}

interface ArmSeams {
  readonly hindarm: ArmSeam;
  readonly forearm: ArmSeam;
  /** The level of the elbow in the frame, mm. */
  readonly elbow: number;
}

const seamsOf = (asked: SleeveAsked, frame: Frame, units: Units): ArmSeams => {
  const { width, top, backIn, frontIn } = frame;
  const { hindarm, forearm } = asked;
  const elbow = top + asked.elbow;
  const underWrist = hindarm + forearm - (backIn + frontIn) / 2;
  const upperWrist = width - hindarm - forearm - (backIn + frontIn) / 2;
  if (hindarm <= 0 || forearm <= 0 || hindarm + forearm >= width) {
    throw new Problem(
      "sleeve-seams",
      `The two seams lie in from the underarm by lengths above 0 that leave something of the ${lengthIn(width, units)} between them.`,
      { hint: "By custom the under sleeve is the narrower part." },
    );
  }
  if (Math.min(underWrist, upperWrist, hindarm - backIn / 2, forearm - frontIn / 2) <= 0) {
    throw new Problem(
      "sleeve-narrow",
      `The underarm seams come in by ${lengthIn(backIn, units)} and ${lengthIn(frontIn, units)}; half of that is taken in at each seam, and the ${underWrist < upperWrist ? "under" : "upper"} sleeve has no wrist left.`,
      { hint: "Set the seams further from the underarm, or begin with a wider wrist." },
    );
  }
  return {
    hindarm: seamAt(frame, hindarm, elbow, backIn / 2, true, units),
    // Laid together, the front strip lies to the left of the old underarm.
    forearm: moved(seamAt(frame, width - forearm, elbow, -frontIn / 2, false, units), -width),
    elbow,
  };
};

const moved = ({ at, upper, under }: ArmSeam, by: number): ArmSeam => ({
  at,
  upper,
  under: mapped(under, ({ x, y }) => ({ x: x + by, y })),
});

/** A seam that leaves the cap straight down the sleeve and comes in toward the middle of its part by so many mm at the wrist. */
const seamAt = (frame: Frame, x: number, elbow: number, comesIn: number, isHind: boolean, units: Units): ArmSeam => {
  const { cap, depth, top } = frame;
  const [spot, ...others] = crossingsWithRay(cap, { x, y: 0 }, { x: 0, y: 1 });
  if (!spot || others.length > 0) {
    throw new Problem(
      "sleeve-cap",
      `A line straight up the sleeve ${lengthIn(x, units)} from the back underarm does not meet the cap once.`,
      { hint: "Set the seam further from the underarm." },
    );
  }
  if (spot.point.y >= elbow || elbow >= depth) throw elbowOff(elbow - top, units);
  const down = Math.PI / 2;
  const path = (sideways: number): Path =>
    hobbyCurve([
      { point: spot.point, leaving: down },
      // The forearm comes in all the way; over the elbow the hindarm keeps most of the room that the arm bends into.
      ...(isHind ? [{ point: { x: x + hindarmInAtElbow * sideways, y: elbow } }] : []),
      { point: { x: x + sideways, y: depth }, arriving: down },
    ]);
  return { at: spot.at, upper: path(comesIn), under: path(-comesIn) };
};

// How much of what it comes in to the wrist the hindarm has come in at the elbow (common practice, no source).
const hindarmInAtElbow = 1 / 4;

const elbowOff = (asked: number, units: Units): Problem =>
  new Problem("sleeve-elbow", `${lengthIn(asked, units)} below the top of the cap the seams do not run.`, {
    slot: "elbow",
    hint: "The elbow lies between cap and wrist, by custom 1 cm below the length of the upper arm.",
  });

const upperSleeve = (asked: SleeveAsked, frame: Frame, seams: ArmSeams, name: string): Piece => {
  const { hindarm, forearm } = seams;
  const cap = part(frame.cap, hindarm.at, forearm.at);
  const bare = sewnUp(asked, frame, seams, name, { cap, hindarm: hindarm.upper, forearm: forearm.upper });
  const onUpper = shownOn(asked, frame, bare, (point) => point);
  const isOnCap = (at: number): boolean => at >= hindarm.at - sameSpotTolerance && at <= forearm.at + sameSpotTolerance;
  const notches = notchesOf(
    asked,
    frame,
    isOnCap,
    (x) => x,
    (x) => (x >= endOf(hindarm.upper).x && x <= endOf(forearm.upper).x ? x : undefined),
  );
  const loop = boundary(bare)!;
  const edgeNow = (edge: string): string | undefined => (bare.edges.has(edge) ? edge : undefined);
  const { sleeve } = asked;
  const grain = sleeve.grain && grainWithin(sleeve, loop, edgeNow, sleeve.grain);
  const isInside = ({ path }: Edge): boolean =>
    [0, 1 / 2, 1].every((share) => isOnCloth(loop, pointAt(path, share * pathLength(path))));
  const inner = [...sleeve.edges.values()].filter(
    (edge) => !sleeve.outline.some((each) => each.edge === edge.name) && !bare.edges.has(edge.name) && isInside(edge),
  );
  return {
    ...onUpper,
    edges: new Map([...onUpper.edges, ...inner.map((edge) => [edge.name, edge] as const)]),
    notches: [...notches, ...onUpper.notches],
    labels: sleeve.labels.filter(({ at }) => at === undefined || isOnCloth(loop, at)),
    ...(grain && { grain }),
  };
};

const underSleeve = (asked: SleeveAsked, frame: Frame, seams: ArmSeams, name: string): Piece => {
  const { hindarm, forearm } = seams;
  const { width, depth, backIn, frontIn } = frame;
  const beside = ({ x, y }: Point): Point => ({ x: x - width, y });
  const frontCap = mapped(part(frame.cap, forearm.at, pathLength(frame.cap)), beside);
  const cap = joined([frontCap, part(frame.cap, 0, hindarm.at)]);
  const bare = sewnUp(asked, frame, seams, name, { cap, hindarm: hindarm.under, forearm: forearm.under });
  // What lies right of the middle of the whole belongs to the front strip.
  const onUnder = shownOn(asked, frame, bare, (point) => (point.x > width / 2 ? beside(point) : point));
  const isOnCap = (at: number): boolean => at < hindarm.at - sameSpotTolerance || at > forearm.at + sameSpotTolerance;
  const notches = notchesOf(
    asked,
    frame,
    isOnCap,
    (x) => (x > width / 2 ? x - width : x),
    (x) => {
      if (x < endOf(hindarm.upper).x) return x - backIn;
      return x > endOf(forearm.upper).x ? x - (width - frontIn) : undefined;
    },
  );
  const grain = grainOfUnder(asked, frame, { x: 0, y: depth / 2 });
  return { ...onUnder, notches: [...notches, ...onUnder.notches], ...(grain && { grain }) };
};

// The old underarm lies flat down its middle, and the threads stand to it as they stood to the sleeve.
const grainOfUnder = ({ sleeve }: SleeveAsked, { fromFrame, depth }: Frame, through: Point): Grain | undefined => {
  const direction = grainDirection(sleeve);
  if (!direction || !sleeve.grain) return undefined;
  const middle = fromFrame(through);
  const arm = times(direction, depth / 3);
  return { kind: "line", from: minus(middle, arm), to: plus(middle, arm), drawnBy: sleeve.grain.drawnBy };
};

interface NewEdges {
  /** From the hindarm to the forearm on the upper sleeve, from the forearm to the hindarm on the under one; in the frame. */
  readonly cap: Path;
  readonly hindarm: Path;
  readonly forearm: Path;
}

/** A part with its outline, notched at the elbow; all that comes in is in the frame. */
const sewnUp = (asked: SleeveAsked, frame: Frame, { elbow }: ArmSeams, name: string, drawn: NewEdges): Piece => {
  const { sleeve, capEdge, capTurned, where } = asked;
  const { wrist, fromFrame } = frame;
  const seam = (edge: string, path: Path): Edge => ({
    name: edge,
    path: mapped(path, fromFrame),
    role: "seam",
    drawnBy: where,
  });
  const [hind, fore] = [endOf(drawn.hindarm), endOf(drawn.forearm)];
  const level: Path = [line(hind, fore)];
  const runsForward = frame.toFrame(startOf(wrist.path)).x < frame.toFrame(endOf(wrist.path)).x === hind.x < fore.x;
  const cap = mapped(drawn.cap, fromFrame);
  const [hindarm, forearm] = [seam("hindarm", drawn.hindarm), seam("forearm", drawn.forearm)];
  const isForeNext = sameSpot(startOf(drawn.forearm), endOf(drawn.cap));
  const edges = [
    { ...sleeve.edges.get(capEdge)!, path: capTurned ? reversed(cap) : cap },
    isForeNext ? forearm : hindarm,
    { ...wrist, path: mapped(runsForward ? level : reversed(level), fromFrame) },
    isForeNext ? hindarm : forearm,
  ];
  refuseTwice(edges, name);
  const atElbow = (path: Path): Point =>
    fromFrame(crossingsWithRay(path, { x: 0, y: elbow }, { x: 1, y: 0 })[0]!.point);
  const elbows = [
    { name: "hind-elbow", edge: "hindarm", point: atElbow(drawn.hindarm) },
    { name: "fore-elbow", edge: "forearm", point: atElbow(drawn.forearm) },
  ];
  return {
    ...emptyPiece(name, where),
    edges: new Map(edges.map((edge) => [edge.name, edge])),
    outline: inOrder(edges, startOf(cap)),
    places: new Map(elbows.map(({ name: place, point }) => [place, { name: place, point, drawnBy: where }])),
    allowances: new Map([...sleeve.allowances].filter(([edge]) => edge === capEdge || edge === wrist.name)),
    notches: elbows.map(({ edge, point }) => ({ edge, point, double: false, drawnBy: where })),
    doubtful: sleeve.doubtful,
  };
};

const refuseTwice = (edges: readonly Edge[], piece: string): void => {
  const twice = edges.find(({ name }, index) => edges.findIndex((edge) => edge.name === name) < index);
  if (!twice) return;
  throw new Problem("sleeve-name", `${piece} would have two edges called ${twice.name}.`, {
    hint: "Give the cap or the wrist of the sleeve another name.",
  });
};

const inOrder = (edges: readonly Edge[], start: Point): OutlinePart[] => {
  let at = start;
  return edges.map(({ name, path }) => {
    const turned = !sameSpot(startOf(path), at);
    at = turned ? startOf(path) : endOf(path);
    return { edge: name, turned };
  });
};

const isOnCloth = (loop: Path, point: Point): boolean =>
  contains(loop, point) || nearest(loop, point).distance <= sameSpotTolerance;

/** The part with those places and drill holes of the sleeve that come to lie on it, moved as its cloth has been. */
const shownOn = (
  { sleeve }: SleeveAsked,
  { toFrame, fromFrame }: Frame,
  piece: Piece,
  move: (point: Point) => Point,
): Piece => {
  const loop = boundary(piece)!;
  const now = <T extends { readonly point: Point }>(thing: T): T[] => {
    const point = fromFrame(move(toFrame(thing.point)));
    return isOnCloth(loop, point) ? [{ ...thing, point }] : [];
  };
  return {
    ...piece,
    places: new Map([
      ...[...sleeve.places].flatMap(([name, place]) => now(place).map((each) => [name, each] as const)),
      ...piece.places,
    ]),
    drills: sleeve.drills.flatMap(now),
  };
};

/** The sleeve's notches on cap and wrist that belong to a part, where they are on it. */
const notchesOf = (
  { sleeve, capEdge }: SleeveAsked,
  { toFrame, fromFrame, cap, wrist, depth }: Frame,
  isOnCap: (at: number) => boolean,
  capAcross: (x: number) => number,
  wristAcross: (x: number) => number | undefined,
): Notch[] =>
  sleeve.notches.flatMap((notch) => {
    const { x, y } = toFrame(notch.point);
    if (notch.edge === capEdge) {
      return isOnCap(nearest(cap, { x, y }).at) ? [{ ...notch, point: fromFrame({ x: capAcross(x), y }) }] : [];
    }
    const across = notch.edge === wrist.name ? wristAcross(x) : undefined;
    return across === undefined ? [] : [{ ...notch, point: fromFrame({ x: across, y: depth }) }];
  });
