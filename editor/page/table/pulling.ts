// Pulling at a place or an edge: the number in the text that governs it follows the hand. Which number that is, is found by the
// worker when the hand comes down, and settled by the direction in which the hand first moves.
import { signal } from "@preact/signals";
import { minus, type Point, plus, size } from "../../../kernel/geometry/point.ts";
import type { Governing, Spot } from "../../assist/governing.ts";
import {
  ask,
  chosen,
  dialsAtHand,
  finishedPicture,
  goTo,
  heldStill,
  type Pointed,
  picture,
  stepsShown,
} from "../desk.ts";
import { letGo, turn, withinReach } from "../dials/turning.ts";
import { linesBehind } from "./lit.ts";
import { partOfPath, pathAt } from "./svg-path.ts";

interface Pull {
  readonly spot: Spot;
  /** Where the hand came down, from where the spot was then, mm. */
  readonly grip: Point;
  readonly from: Point;
  choices: readonly Governing[] | undefined;
  chosen: Governing | undefined;
}

let now: Pull | undefined;

/** What is being turned by the pull, to be shown beside the hand. */
export const pulled = signal<{ readonly words: string; readonly at: Point } | undefined>(undefined);

export const pulling = {
  /** The hand comes down on a thing, at a spot of the table. */
  press(on: Pointed, at: Point): void {
    now = undefined;
    // Of a working that is shown half done, the numbers of the finished recipe cannot be pulled.
    if (stepsShown.value !== undefined) return;
    const spot = spotAt(on, at);
    const here = spot && whereNow(spot);
    if (!spot || !here) return;
    const pull: Pull = { spot, grip: minus(at, here), from: at, choices: undefined, chosen: undefined };
    now = pull;
    void ask("governing", { spot }).then((choices) => {
      pull.choices = choices ?? [];
    });
  },

  /** The hand has moved to another spot; false when nothing is pulled and the table may move instead. */
  pull(at: Point): boolean {
    if (!now) return false;
    if (now.choices === undefined) return true;
    now.chosen ??= along(now.choices, minus(at, now.from));
    const here = whereNow(now.spot);
    const dial = now.chosen && dialsAtHand.value.dials[now.chosen.dial];
    if (!now.chosen || !dial || !here) return false;
    heldStill.value ??= new Map((picture.peek()?.pieces ?? []).map((piece) => [piece.name, piece.at]));
    const { slope } = now.chosen;
    const missing = minus(minus(at, now.grip), here);
    const wanted = dial.value + (missing.x * slope.x + missing.y * slope.y) / (slope.x ** 2 + slope.y ** 2);
    turn(now.chosen.dial, withinReach(dial, wanted));
    const turned = dialsAtHand.value.dials[now.chosen.dial] ?? dial;
    pulled.value = { words: `${turned.label} ${Number(turned.value.toFixed(3))} ${turned.unit}`.trim(), at };
    return true;
  },

  /** The hand is lifted; true when something was pulled. */
  release(): boolean {
    const was = pulled.value !== undefined;
    letGo();
    now = undefined;
    pulled.value = undefined;
    heldStill.value = undefined;
    return was;
  },

  /** The hand tapped a thing: its line is shown. */
  click(on: Pointed): void {
    chosen.value = on;
    const shown = picture.value;
    const line = shown && linesBehind(shown, on).lines[0];
    if (line !== undefined) goTo({ line });
  },
};

/** Of numbers that move a spot, the one that moves it most nearly the way the hand goes; the first of equals. */
const along = (choices: readonly Governing[], way: Point): Governing | undefined => {
  const nearness = ({ slope }: Governing): number =>
    Math.abs(slope.x * way.x + slope.y * way.y) / (size(slope) * Math.max(size(way), 1e-9));
  return choices.reduce<Governing | undefined>(
    (best, each) => (best && nearness(best) > nearness(each) - 0.1 ? best : each),
    undefined,
  );
};

const spotAt = (on: Pointed, at: Point): Spot | undefined => {
  const piece = "piece" in on ? finishedPicture.value?.pieces.find(({ name }) => name === on.piece) : undefined;
  if (!piece) return undefined;
  if (on.kind === "place") return { piece: piece.name, place: on.name };
  if (on.kind !== "edge") return undefined;
  const edge = piece.edges.find(({ name }) => name === on.name);
  return edge && { piece: piece.name, edge: edge.name, part: partOfPath(edge.d, minus(at, originOf(piece.name))) };
};

/** Where a spot is seen now, mm on the table. */
const whereNow = (spot: Spot): Point | undefined => {
  const piece = finishedPicture.value?.pieces.find(({ name }) => name === spot.piece);
  if (!piece) return undefined;
  if ("place" in spot) {
    const place = piece.places.find(({ name }) => name === spot.place);
    return place && plus(place.at, originOf(piece.name));
  }
  const edge = piece.edges.find(({ name }) => name === spot.edge);
  return edge && plus(pathAt(edge.d, spot.part), originOf(piece.name));
};

const nowhere: Point = { x: 0, y: 0 };

const originOf = (name: string): Point => picture.value?.pieces.find((piece) => piece.name === name)?.at ?? nowhere;
