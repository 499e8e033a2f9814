// fuller-arm: makes a sleeve wider at the upper arm with its cap as long as before.
import { phrase } from "../../grammar/phrase.ts";
import { followed } from "../alter/followed.ts";
import { closedBoundary, turnInOutline } from "../alter/outline-spot.ts";
import { reshaped } from "../alter/reshaped.ts";
import { solved } from "../alter/trued.ts";
import { turnAt } from "../alter/turned.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, mapped, type Path, reversed, startOf } from "../geometry/path.ts";
import { dot, minus, type Point, plus, quarterTurn, sameSpot, times } from "../geometry/point.ts";
import { bearing } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Piece } from "../working.ts";

export const fullerArm = pieceStep({
  name: "fuller-arm",
  since: "0.2",
  summary: "Makes a sleeve wider at the upper arm, or narrower by a negative length, with its cap as long as before.",
  details: `The cap gets wider on both sides of its crown in proportion, and lower, until it has the length it had, to a thousandth of a millimetre: it goes into
the same armhole with the same ease. The crown stays, and so does the other end of the sleeve; the two seams under the arm follow, and get longer by what
the cap lost in height. On the lower half of either side of the cap a notch keeps its distance from the underarm, since no ease lies there; above,
what the side gained or lost is spread evenly up to the crown.`,
  example: `chalkline 1
units cm
piece sleeve {
  curve cap-back  = (-16 cm, 0) to (0, -16 cm) handles (-9 cm, 0), (-9.6 cm, -16 cm)
  curve cap-front = (0, -16 cm) to (17 cm, 0) handles (8.5 cm, -16 cm), (7.6 cm, 0)
  join cap        = cap-back, cap-front
  curve under-front = (17 cm, 0) to (11.5 cm, 43 cm) leaving down arriving down
  line wrist        = (-10.5 cm, 43 cm) to (11.5 cm, 43 cm)
  curve under-back  = (-16 cm, 0) to (-10.5 cm, 43 cm) leaving down arriving down
  outline cap, under-front, wrist, under-back
  mark wrist as hem
  fuller-arm cap by 3 cm
}`,
  phrase: [
    phrase`fuller-arm ${slot.ownEdge("cap", "the cap")} by ${slot.length("width", "how much wider the sleeve gets; negative makes it narrower")}`,
  ],
  work({ cap: name, width }, piece, { units }) {
    closedBoundary(piece, units);
    const index = turnInOutline(piece, name);
    const { path: cap } = piece.edges.get(name)!;
    const length = pathLength(cap);
    const down = bearing(Math.PI / 2 + turnAt(piece, name, pointAt(cap, length / 2)));
    const out = quarterTurn(down);
    const crown = crownOf(cap, down);
    const biceps = Math.abs(dot(minus(endOf(cap), startOf(cap)), out));
    const height = (dot(startOf(cap), down) + dot(endOf(cap), down)) / 2 - dot(crown, down);
    if (height <= 0 || biceps <= 0) {
      throw new Problem("cap-upside-down", `${name} does not rise between its ends, so it is no cap.`, {
        hint: "Name the cap of the sleeve.",
      });
    }
    if (width === 0) return { now: piece, words: "" };
    const shaped = (tall: number): Path => scaled(cap, crown, { down, out }, (biceps + width) / biceps, tall);
    const off = (tall: number): number => pathLength(shaped(tall)) - length;
    const tall = biceps + width > 0 ? solved(off, 1, 0, 3) : undefined;
    if (tall === undefined || tall <= flattest) {
      throw new Problem(
        "cap-not-kept",
        `A sleeve ${lengthIn(biceps + width, units)} wide cannot have a cap ${lengthIn(length, units)} long.`,
        { hint: "Take a smaller length, or redraw the cap." },
      );
    }
    const path = shaped(tall);
    const walk = walked(piece);
    const beside = [walk[(index + walk.length - 1) % walk.length]!, walk[(index + 1) % walk.length]!];
    const paths = new Map<string, Path>([[name, path]]);
    for (const { edge } of beside) {
      const isStart = sameSpot(startOf(edge.path), startOf(cap)) || sameSpot(startOf(edge.path), endOf(cap));
      const at = isStart ? startOf(edge.path) : endOf(edge.path);
      const to = sameSpot(at, startOf(cap)) ? startOf(path) : endOf(path);
      paths.set(
        edge.name,
        isStart ? stretched(edge.path, to, { down, out }) : reversed(stretched(reversed(edge.path), to, { down, out })),
      );
    }
    const now = reshaped(piece, paths);
    return {
      now: { ...now, ...alongCap(piece, now, name, crown) },
      words:
        `made the sleeve ${lengthIn(Math.abs(width), units)} ${width > 0 ? "wider" : "narrower"}, ${lengthIn(biceps + width, units)} at the upper arm; ` +
        `the cap ${lengthIn(height, units)} to ${lengthIn(height * tall, units)} high`,
    };
  },
});

interface Axes {
  readonly down: Point;
  readonly out: Point;
}

const scaled = (path: Path, about: Point, { down, out }: Axes, wide: number, tall: number): Path =>
  mapped(path, (point) => {
    const from = minus(point, about);
    return plus(plus(about, times(out, dot(from, out) * wide)), times(down, dot(from, down) * tall));
  });

/** An edge with its start elsewhere; upright and level directions at its ends stay so. */
const stretched = (path: Path, to: Point, axes: Axes): Path => {
  const [start, end] = [startOf(path), endOf(path)];
  const ratio = (way: Point): number | undefined => {
    const was = dot(minus(start, end), way);
    return Math.abs(was) < least ? undefined : dot(minus(to, end), way) / was;
  };
  const [wide, tall] = [ratio(axes.out), ratio(axes.down)];
  return wide === undefined || tall === undefined ? followed(path, "start", to) : scaled(path, end, axes, wide, tall);
};

/** The highest place of the cap. */
const crownOf = (cap: Path, down: Point): Point => {
  const length = pathLength(cap);
  const looks = Array.from({ length: 257 }, (_, look) => pointAt(cap, (look / 256) * length));
  return [...looks, ...cap.map(({ start }) => start)].reduce((high, point) =>
    dot(point, down) < dot(high, down) ? point : high,
  );
};

/** The cap with its notches and places: no ease lies between underarm and notch (trade handbook 3.4), all of it lies above. */
const alongCap = (before: Piece, now: Piece, name: string, crown: Point): Pick<Piece, "notches" | "places"> => {
  const [old, path] = [before.edges.get(name)!.path, now.edges.get(name)!.path];
  const [oldTop, top] = [nearest(old, crown).at, nearest(path, crown).at];
  const [oldLength, length] = [pathLength(old), pathLength(path)];
  const carried = (point: Point): Point | undefined => {
    if (sameSpot(point, crown)) return crown;
    const { at, distance } = nearest(old, point);
    if (distance > least) return undefined;
    const along =
      at <= oldTop
        ? fromUnderarm(at, oldTop, top)
        : length - fromUnderarm(oldLength - at, oldLength - oldTop, length - top);
    return pointAt(path, along);
  };
  return {
    notches: now.notches.map((notch, index) =>
      notch.edge === name ? { ...notch, point: carried(before.notches[index]!.point) ?? notch.point } : notch,
    ),
    places: new Map(
      [...now.places].map(([key, place]) => [
        key,
        { ...place, point: carried(before.places.get(key)!.point) ?? place.point },
      ]),
    ),
  };
};

/** How far from its underarm, in mm, a mark lies on a side of the cap that has another length now. */
const fromUnderarm = (at: number, old: number, now: number): number =>
  at <= old / 2 ? at : old / 2 + ((at - old / 2) / (old / 2)) * (now - old / 2);

// A cap lower than this share of what it was is none.
const flattest = 0.05;

// Lengths, in mm, too small to count.
const least = 0.01;
