// What stands against cutting a garment from its cloths: it does not work, a piece is too wide, or the cloth at hand is too short.
import type { Diagnostic } from "../../../grammar/diagnostic.ts";
import type { Outcome } from "../../kernel.ts";
import type { PackTask } from "../../packing/pack-task.ts";
import type { Layout } from "../../packing/strip.ts";
import { lengthIn } from "../../units.ts";
import type { Garment } from "../../working.ts";
import { clothStrip, layers } from "./cloth-strip.ts";
import { type ClothToLay, clothsToLay } from "./cloth-to-lay.ts";
import type { Asked, Lay } from "./lay-of.ts";
import { lengthNeeded, longestLay } from "./length-to-buy.ts";

export interface Obstacle {
  readonly kind: "does-not-work" | "no-cloth" | "not-laid" | "too-wide" | "too-long";
  /** What is wrong, a sentence. */
  readonly message: string;
  /** What it is about: a check or the code of a finding with its line, a cloth, a piece. */
  readonly code?: string;
  readonly file?: string;
  readonly line?: number;
  readonly fabric?: string;
  readonly piece?: string;
  /** Too wide or too long: what it takes and what there is, mm. */
  readonly takes?: number;
  readonly has?: number;
}

/** The length of cloth at hand, mm, by the cloth's name; cloths that are not named may be as long as need be. */
export type AtHand = ReadonlyMap<string, number>;

/** Findings of a recipe for which nothing is cut from it. Whether pieces fit the cloth the lay knows better: it may be another one. */
export const failuresOf = ({ findings }: Pick<Outcome, "findings">): Diagnostic[] =>
  findings.filter(({ severity, code }) => severity === "error" && code !== "fits-cloth");

/** All that stands against a garment before anything is laid; a piece that is too wide first, for it is what one looks for. */
export const obstaclesOf = (outcome: Pick<Outcome, "findings" | "garment">, asked: Asked): Obstacle[] => {
  const cloths = clothsToLay(outcome.garment, asked);
  return [
    ...cloths.flatMap((cloth) => ("because" in cloth ? [] : tooWide(cloth))),
    ...failuresOf(outcome).map(
      ({ code, message, where: { file, line } }): Obstacle => ({ kind: "does-not-work", message, code, file, line }),
    ),
    ...cloths.flatMap((cloth) => ("because" in cloth ? [noCloth(cloth.fabric, cloth.because)] : notLaid(cloth))),
  ];
};

const tooWide = ({ fabric, tooWide: pieces }: ClothToLay): Obstacle[] =>
  pieces.map(({ piece, width, usable, message }) => ({
    kind: "too-wide",
    message,
    fabric: fabric.name,
    piece,
    takes: width,
    has: usable,
  }));

const notLaid = ({ fabric, notLaid: pieces }: ClothToLay): Obstacle[] =>
  pieces.map(({ piece, because }) => ({ kind: "not-laid", message: because, fabric: fabric.name, piece }));

const noCloth = (fabric: string, because: string): Obstacle => ({ kind: "no-cloth", message: because, fabric });

/** A cloth of which only so much is at hand: what is to be packed, and what a layout of it says. */
export interface HandTask extends PackTask {
  readonly obstacleOf: (layout: Layout) => Obstacle | undefined;
}

/** For every cloth at hand whether it is long enough; where the pieces cover more than there is, it is known without packing. */
export const handTasks = (garment: Garment, asked: Asked, atHand: AtHand): (HandTask | Obstacle)[] =>
  clothsToLay(garment, asked).flatMap((cloth) => {
    const has = "because" in cloth ? undefined : atHand.get(cloth.fabric.name);
    return "because" in cloth || has === undefined ? [] : [handTask(garment, cloth, asked, has)];
  });

const handTask = (garment: Garment, cloth: ClothToLay, asked: Asked, has: number): HandTask | Obstacle => {
  const { units } = garment;
  const { name, shrinkLength = 0 } = cloth.fabric;
  const { strip, seed, effort, clothOf } = clothStrip(garment, cloth, asked);
  const tooLong = (takes: number, what: string): Obstacle => ({
    kind: "too-long",
    message: `${what} ${lengthIn(takes, units)} of ${name} with its ends; ${lengthIn(has, units)} is at hand.`,
    fabric: name,
    takes,
    has,
  });
  const { area, spread } = clothOf({ length: 0, placements: [] });
  const covered = lengthNeeded(area / (layers(spread) * strip.width), shrinkLength);
  if (covered > has + rounding) return tooLong(covered, "Even with nothing left over the pieces take");
  return {
    strip,
    seed,
    effort,
    enough: longestLay(has, shrinkLength),
    obstacleOf: (layout) => {
      const { lengthNeeded: takes } = clothOf(layout);
      return takes > has + rounding ? tooLong(takes, "The shortest lay found takes") : undefined;
    },
  };
};

// What is just as long as the cloth fits it, mm.
const rounding = 1e-6;

/** Whether every piece of a lay is laid. */
export const isWhole = ({ cloths, none }: Lay): boolean =>
  none.length === 0 && cloths.every(({ tooWide: wide, notLaid: left }) => wide.length + left.length === 0);
