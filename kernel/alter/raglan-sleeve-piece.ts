// The sleeve of a raglan: a sleeve whose cap, above where the raglan lines meet it, has given way to the shoulders laid on it.
// Whole, the shoulders leave a dart between them that is cut out; in two, the overarm seam goes straight on from them.
import type { Where } from "../../grammar/diagnostic.ts";
import { directionAt, pathLength, pointAt } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossingsWithRay, linesMeet } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import {
  type CubicSpan,
  cubic,
  endDirection,
  endOf,
  joined,
  mapped,
  type Path,
  reversed,
  startOf,
} from "../geometry/path.ts";
import {
  between,
  distance,
  dot,
  minus,
  type Point,
  plus,
  sameSpot,
  sameSpotTolerance,
  size,
  times,
  unit,
} from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { part } from "../geometry/split.ts";
import { turnBetween } from "../geometry/trig.ts";
import { grainDirection } from "../grain-direction.ts";
import { boundary, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Edge, Grain, NamedPlace, Notch, OutlinePart, Piece, Units } from "../working.ts";
import { kappa } from "./armhole.ts";
import { grainWithin } from "./grain-within.ts";
import { partOn } from "./parted.ts";
import { type Cap, type CutHalf, type LaidHalf, laidHalf, type Place, placeOnCap, spareLift } from "./raglan-half.ts";
import type { Slash } from "./slash.ts";
import { solved } from "./trued.ts";
import { sideOfPoint } from "./two-parts.ts";

/** A sleeve with two shoulders laid on its cap. */
export interface LaidSleeve {
  readonly sleeve: Piece;
  readonly cap: Cap;
  /** The edge of the sleeve that is its cap, and whether the cap runs against the way it was drafted. */
  readonly capEdge: string;
  readonly capTurned: boolean;
  readonly back: LaidHalf;
  readonly front: LaidHalf;
  /** Down the sleeve from the top of the cap to the wrist, and what it is called where it is a line of the sleeve. */
  readonly middle: Path;
  readonly middleName: string | undefined;
  /** How far down the middle the shaping over the shoulder ends, mm. */
  readonly reach: number;
  readonly where: Where;
}

/** What both shoulders are laid on. */
export interface LaidOn {
  readonly cap: Cap;
  readonly middle: Path;
  readonly reach: number;
  /** How far above the top of the cap the tips are to lie, mm, in the mean of both. */
  readonly lift: number;
}

/** Lays both shoulders so that from their tips on they run equally far to the middle, one tip a little above the other. */
export const evenlyLaid = (
  back: CutHalf,
  front: CutHalf,
  { cap, middle, reach, lift }: LaidOn,
  units: Units,
): { readonly back: LaidHalf; readonly front: LaidHalf } => {
  const placed = (half: CutHalf, more: number): Place => placeOnCap(half, cap, lift + more, units);
  const lengthOver = (half: CutHalf, more: number): number => {
    const { move, tipNow } = placed(half, more);
    const toTip = towardTip(mapped(half.shoulderPiece.edges.get(half.shoulder)!.path, move), tipNow);
    const over = overTip(toTip, middle, reach);
    return over ? pathLength([over]) : distance(tipNow, pointAt(middle, reach));
  };
  const most = (half: CutHalf): number => Math.min(mostApart, spareLift(half, cap, lift, units) * nearlyAll);
  const off = (each: number): number => lengthOver(back, each) - lengthOver(front, -each);
  const more = solved(off, 0, -most(front), most(back)) ?? 0;
  return { back: laidHalf(back, placed(back, more)), front: laidHalf(front, placed(front, -more)) };
};

// A tip may lie so many mm above or below what is asked for; the trade says "about" (handbook 3.5, rule 3).
const mostApart = 6;
// Lifted to the very last, a tip would stand right above where the line meets the cap.
const nearlyAll = 0.99;

/** One sleeve, with the dart over the shoulder cut out; its edges are told apart by the names of back and front. */
export const raglanWhole = (on: LaidSleeve, name: string): Piece => {
  const { sleeve, cap, capEdge, back, front } = on;
  const edgesOf = (half: LaidHalf): Edge[] => halfChain(on, half, (edge) => `${half.name}-${edge}`, "shoulder", []);
  const chain = [...edgesOf(back), ...edgesOf(front).reverse()];
  // What comes of it is a new piece, with no "before" of its own.
  const { source: _, from: __, kept: ___, ...own } = sleeve;
  const whole = { ...own, name, edges: middleShortened(on), hinges: [], keeps: [], drawnBy: on.where };
  const bare = withChain(whole, [capEdge], startOf(cap.path), chain);
  return [back, front].reduce(
    (now, half) => {
      const prefixed = (own: string): string => `${half.name}-${own}`;
      return withShoulder(on, now, half, prefixed, "shoulder", prefixed);
    },
    onCloth(bare, [capEdge], (loop) => sleeve.grain && grainWithin(sleeve, loop, edgeNowIn(bare), sleeve.grain)),
  );
};

/** One of the two parts of a sleeve that is cut down its middle, its shoulder and the middle being one edge, the overarm. */
export const raglanPart = (on: LaidSleeve, half: LaidHalf, slash: Slash, name: string): Piece => {
  const { sleeve, cap, capEdge, middle, middleName = "middle", reach, where } = on;
  const isBack = half.half === "back";
  // Halfway along what is left of the cap, well away from the cut.
  const onCap = pointAt(cap.path, isBack ? half.at / 2 : (half.at + pathLength(cap.path)) / 2);
  const cut = { name: middleName, notches: [], drawnBy: where };
  const cutOff = partOn(sleeve, slash, sideOfPoint(sleeve, slash, onCap)!, cut, name, where);
  const chain = halfChain(on, half, (edge) => edge, "overarm", part(middle, reach, pathLength(middle)));
  const gone = [capEdge, middleName];
  const bare = isBack
    ? withChain(cutOff, gone, startOf(cap.path), chain)
    : withChain(cutOff, gone, endOf(middle), [...chain].reverse());
  const placed = onCloth(bare, gone, (loop) => grainOfHalf(on, half, bare, loop));
  const isOther = (place: string): boolean => {
    const there = placed.places.get(place);
    return there !== undefined && !sameSpot(there.point, half.laid.places.get(place)!.point);
  };
  return withShoulder(
    on,
    placed,
    half,
    (edge) => edge,
    "overarm",
    (place) => (isOther(place) ? `${half.name}-${place}` : place),
  );
};

/** The bodice, notched where its line meets the armhole if the cap is notched there. */
export const bodyNotched = ({ sleeve, capEdge, cap }: LaidSleeve, { body, armhole, pitch, at }: LaidHalf): Piece => {
  const onCap = notchAt(sleeve, capEdge, pointAt(cap.path, at));
  if (!onCap || notchAt(body, armhole, pitch)) return body;
  return { ...body, notches: [...body.notches, { ...onCap, edge: armhole, point: pitch }] };
};

const notchAt = ({ notches }: Piece, on: string, spot: Point): Notch | undefined =>
  notches.find(({ edge, point }) => edge === on && distance(point, spot) <= sameNotch);

// Notches this near to each other, in mm, are one.
const sameNotch = 0.5;

type Naming = (name: string) => string;

/** What stands in place of one half of the cap, from its underarm on: the rest of the cap, raglan, neck, and the way over the shoulder. */
const halfChain = (on: LaidSleeve, half: LaidHalf, naming: Naming, over: string, further: Path): Edge[] => {
  const { sleeve, capEdge, capTurned, cap } = on;
  const { laid, raglan, neck, shoulder, at } = half;
  const low = half.half === "back" ? part(cap.path, 0, at) : part(cap.path, at, pathLength(cap.path));
  const brought = (edge: string): Edge => ({ ...laid.edges.get(edge)!, name: naming(edge) });
  return [
    { ...sleeve.edges.get(capEdge)!, name: naming(capEdge), path: capTurned ? reversed(low) : low },
    { ...brought(raglan), name: naming(raglan) },
    brought(neck),
    { ...laid.edges.get(shoulder)!, name: naming(over), path: joined([overShoulder(on, half), further]) },
  ];
};

/** From the neck along the shoulder and on over its tip, down to where it comes into the middle of the sleeve. */
const overShoulder = ({ middle, reach }: LaidSleeve, { laid, shoulder, tipNow, half }: LaidHalf): Path => {
  const toTip = towardTip(laid.edges.get(shoulder)!.path, tipNow);
  const over = overTip(toTip, middle, reach);
  if (over) return joined([toTip, [over]]);
  throw new Problem(
    "raglan-reach",
    `The shoulder of the ${half}, carried on over its tip, does not come into the middle of the sleeve by there.`,
    { slot: "reach", hint: "Let the shaping reach further down, or lift the tips less." },
  );
};

const towardTip = (shoulder: Path, tip: Point): Path =>
  sameSpot(endOf(shoulder), tip) ? shoulder : reversed(shoulder);

/** From the tip of a shoulder into the middle; undefined where the two directions do not cross on the way. */
const overTip = (shoulder: Path, middle: Path, reach: number): CubicSpan | undefined => {
  const [tip, on] = [endOf(shoulder), pointAt(middle, reach)];
  const [leaving, arriving] = [endDirection(shoulder), directionAt(middle, reach)];
  const bend = linesMeet(tip, leaving, on, arriving);
  if (!bend || dot(minus(bend, tip), leaving) <= 0 || dot(minus(on, bend), arriving) <= 0) return undefined;
  // Both handles lie short of where the two directions cross, so the line never swings beyond the middle.
  return cubic(tip, between(tip, bend, kappa), between(on, bend, kappa), on);
};

// Above the end of the dart the middle would lie in the dart.
const middleShortened = ({ sleeve, middle, middleName, reach }: LaidSleeve): Map<string, Edge> => {
  const edge = middleName === undefined ? undefined : sleeve.edges.get(middleName);
  if (!edge) return new Map(sleeve.edges);
  const below = part(middle, reach, pathLength(middle));
  const path = sameSpot(startOf(edge.path), startOf(middle)) ? below : reversed(below);
  return new Map(sleeve.edges).set(edge.name, { ...edge, path });
};

/** The piece with neighbouring edges of its outline taken out, and others put in that lead from a point of it to where they ended. */
const withChain = (piece: Piece, gone: readonly string[], from: Point, chain: readonly Edge[]): Piece => {
  const walk = walked(piece);
  const isGone = (index: number): boolean => gone.includes(walk[(index + walk.length) % walk.length]!.edge.name);
  const first = [...walk.keys()].find((index) => isGone(index) && !isGone(index - 1))!;
  const rest = [...walk.keys()].map((step) => (first + step) % walk.length).filter((index) => !isGone(index));
  let at = from;
  const turns = chain.map(({ name, path }): OutlinePart => {
    const turned = !sameSpot(startOf(path), at);
    at = turned ? startOf(path) : endOf(path);
    return { edge: name, turned };
  });
  const isAsWalked = sameSpot(startOf(walk[first]!.path), from);
  const parts = isAsWalked ? turns : turns.reverse().map(({ edge, turned }) => ({ edge, turned: !turned }));
  const edges = new Map([...piece.edges].filter(([name]) => !gone.includes(name)));
  for (const edge of chain) {
    if (edges.has(edge.name)) refuseTwice(edge.name, piece.name);
    edges.set(edge.name, edge);
  }
  return { ...piece, edges, outline: [...parts, ...rest.map((index) => piece.outline[index]!)] };
};

const refuseTwice = (name: string, piece: string): never => {
  throw new Problem("raglan-name", `${piece} would have two edges called ${name}.`, {
    hint: "Give the edge of the sleeve another name, or call back and front something else.",
  });
};

/** What lay on the edges that are gone is gone with them, and so are places that are off the cloth now. */
const onCloth = (piece: Piece, gone: readonly string[], grainOn: (loop: Path) => Grain | undefined): Piece => {
  const stays = ({ edge }: { readonly edge: string }): boolean => !gone.includes(edge);
  const loop = boundary(piece);
  const isOn = ({ point }: NamedPlace): boolean =>
    loop === undefined || contains(loop, point) || nearest(loop, point).distance <= sameSpotTolerance;
  const { grain: _, ...rest } = piece;
  const grain = loop && grainOn(loop);
  return {
    ...rest,
    places: new Map([...piece.places].filter(([, place]) => isOn(place))),
    allowances: new Map([...piece.allowances].filter(([edge]) => stays({ edge }))),
    notches: piece.notches.filter(stays),
    hinges: piece.hinges.filter(stays),
    ...(piece.turned && { turned: piece.turned.filter(stays) }),
    ...(grain && { grain }),
  };
};

const edgeNowIn =
  ({ edges }: Piece) =>
  (edge: string): string | undefined =>
    edges.has(edge) ? edge : undefined;

/** A half hangs by its own middle: its grain stands to that as the grain of the whole does to the middle of the sleeve. */
const grainOfHalf = (
  { sleeve, cap, middle }: LaidSleeve,
  { half }: LaidHalf,
  piece: Piece,
  loop: Path,
): Grain | undefined => {
  const direction = grainDirection(sleeve);
  if (!direction || !sleeve.grain) return undefined;
  const underarm = half === "back" ? startOf(cap.path) : endOf(cap.path);
  const wrist = walked(piece).flatMap(({ edge, path }) => {
    if (edge.name === "overarm") return [];
    if (sameSpot(startOf(path), endOf(middle))) return [endOf(path)];
    return sameSpot(endOf(path), endOf(middle)) ? [startOf(path)] : [];
  })[0]!;
  const from = between(underarm, nearest(middle, underarm).point, 0.5);
  const way = minus(between(wrist, endOf(middle), 0.5), from);
  const turn = turnBetween(minus(endOf(middle), startOf(middle)), direction);
  const along = rotated(unit(way), { x: 0, y: 0 }, turn);
  const through = plus(from, times(way, 0.5));
  const room = crossingsWithRay(loop, through, along).map(({ ahead }) => Math.abs(ahead));
  const arm = Math.min(size(way) / 2, ...room) * (3 / 4);
  return {
    kind: "line",
    from: plus(through, times(along, -arm)),
    to: plus(through, times(along, arm)),
    drawnBy: sleeve.grain.drawnBy,
  };
};

/** The piece with what lay on the shoulder and on the rest of the cap, and with the tip notched on the way over it. */
const withShoulder = (
  { sleeve, capEdge, cap, where }: LaidSleeve,
  piece: Piece,
  { half, body, laid, armhole, pitch, shoulder, raglan, neck, at, tipNow, name }: LaidHalf,
  naming: Naming,
  over: string,
  placeNaming: Naming,
): Piece => {
  const isLow = (point: Point): boolean => {
    const spot = nearest(cap.path, point).at;
    return half === "back" ? spot <= at + sameSpotTolerance : spot >= at - sameSpotTolerance;
  };
  const own = [
    ...sleeve.notches.filter(({ edge, point }) => edge === capEdge && isLow(point)),
    ...laid.notches.filter(({ edge }) => edge === raglan || edge === neck),
  ].map((notch) => ({ ...notch, edge: naming(notch.edge) }));
  const spot = pointAt(cap.path, at);
  const there = notchAt(body, armhole, pitch);
  const missed = there && !notchAt(sleeve, capEdge, spot) ? [{ ...there, edge: naming(capEdge), point: spot }] : [];
  const tip: Notch = { edge: naming(over), point: tipNow, double: false, drawnBy: where };
  const places = new Map(piece.places);
  for (const [place, each] of laid.places) {
    const called = placeNaming(place);
    const other = places.get(called);
    if (other && !sameSpot(other.point, each.point)) refuseTwice(called, `${piece.name}, with ${name} laid on it,`);
    places.set(called, { ...each, name: called });
  }
  const allowances = new Map(piece.allowances);
  const allowed: [string, string, Piece][] = [
    [capEdge, naming(capEdge), sleeve],
    [raglan, naming(raglan), laid],
    [neck, naming(neck), laid],
    [shoulder, naming(over), laid],
  ];
  for (const [was, now, from] of allowed) {
    const allowance = from.allowances.get(was);
    if (allowance) allowances.set(now, allowance);
  }
  const turned = (laid.turned ?? []).filter(({ edge }) => edge === raglan || edge === neck);
  return {
    ...piece,
    places,
    allowances,
    notches: [...piece.notches, ...own, ...missed, tip],
    turned: [...(piece.turned ?? []), ...turned.map((entry) => ({ ...entry, edge: naming(entry.edge) }))],
    doubtful: piece.doubtful || laid.doubtful,
  };
};
