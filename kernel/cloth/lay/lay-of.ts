// Lays the pieces of a garment on the cloths they are cut from, as short as a given effort finds; how much to buy follows. The
// packing itself knows no cloth: clothStrip makes shapes of pieces, and a lay of where the shapes lie.

import type { Point } from "../../geometry/point.ts";
import { pack } from "../../packing/pack.ts";
import type { Layout } from "../../packing/strip.ts";
import type { Garment } from "../../working.ts";
import type { NotLaid, Spread } from "./cloth-pieces.ts";
import { type ClothStrip, clothStrip, refuseFaults } from "./cloth-strip.ts";
import { clothsToLay } from "./cloth-to-lay.ts";
import type { Effort } from "./efforts.ts";
import type { TooWide, Widest } from "./too-wide.ts";

/** How pieces are to be laid. */
export interface Asked {
  readonly spread: Spread;
  /** Width of every cloth in mm, where it is not to be as the recipe says. */
  readonly width?: number;
  /** Breadth of each selvedge in mm, which is not used. */
  readonly selvedge: number;
  /** By how much, in radians, the grain of a piece may lie aslant. */
  readonly tilt: number;
  readonly effort: Effort["name"];
  readonly seed: number;
}

/** One copy of a piece where it is to be cut. */
export interface LaidPiece {
  readonly piece: string;
  /** 1 for the first of its kind. */
  readonly copy: number;
  readonly mirrored: boolean;
  readonly onFold: boolean;
  /** Radians on the page, from lying with its top toward the beginning of the cloth. */
  readonly rotation: number;
  /** The line it is cut along, x along the cloth and y from its edge or fold, mm. */
  readonly outline: readonly Point[];
}

/** A cloth with its pieces on it; lengths in mm. */
export interface LaidCloth {
  readonly fabric: string;
  readonly title: string;
  readonly spread: Spread;
  readonly oneWay: boolean;
  /** Of the cloth as it is sold and spread out; and of what is covered with pieces, from one y to another. */
  readonly width: number;
  readonly usable: { readonly from: number; readonly to: number };
  /** From the first piece to the last. */
  readonly length: number;
  /** What has to be at hand for it: with its ends, and before the cloth has shrunk. */
  readonly lengthNeeded: number;
  /** The same as shops sell it. */
  readonly lengthToBuy: number;
  /** The share of the usable cloth that the pieces take, all layers counted. */
  readonly efficiency: number;
  /** Of all pieces together, square mm. */
  readonly area: number;
  /** The piece that takes most of the width, whether it fits or not; undefined where nothing can be laid. */
  readonly widest: Widest | undefined;
  readonly placements: readonly LaidPiece[];
  readonly tooWide: readonly TooWide[];
  readonly notLaid: readonly NotLaid[];
}

/** A cloth of which nothing can be said, and why, in a sentence. */
export interface NoCloth {
  readonly fabric: string;
  readonly because: string;
}

export interface Lay {
  readonly cloths: readonly LaidCloth[];
  readonly none: readonly NoCloth[];
}

/** How far a lay has come: 0 to 1 of all cloths, and what there is so far. */
export interface LayProgress {
  readonly done: number;
  readonly best: Lay;
}

/**
 * Lays a garment on its cloths. It may be stopped at every yield and has lost nothing by it; run to the end it is the same for
 * the same garment and the same question.
 */
export function* layOf(garment: Garment, asked: Asked): Generator<LayProgress, Lay> {
  const all = clothsToLay(garment, asked);
  const none = all.flatMap((each) => ("because" in each ? [each] : []));
  const searches = all.flatMap((each) => ("because" in each ? [] : [laidCloth(clothStrip(garment, each, asked))]));
  // Each cloth is begun before the first is finished, so that whoever stops has a lay of every one.
  const cloths: LaidCloth[] = [];
  for (const search of searches) {
    const begun = search.next();
    if (!begun.done) cloths.push(begun.value.cloth);
  }
  for (const [at, search] of searches.entries()) {
    for (const { done, cloth } of search) {
      cloths[at] = cloth;
      yield { done: (at + done) / searches.length, best: { cloths: [...cloths], none } };
    }
  }
  return { cloths, none };
}

function* laidCloth({
  strip,
  seed,
  effort,
  clothOf,
}: ClothStrip): Generator<{ readonly done: number; readonly cloth: LaidCloth }> {
  const search = pack(strip, seed, effort);
  let layout: Layout | undefined;
  let cloth: LaidCloth | undefined;
  for (;;) {
    const { done, value } = search.next();
    const found = done ? value : value.best;
    // Told often, it is seldom another one.
    if (found !== layout || cloth === undefined) [layout, cloth] = [found, clothOf(found)];
    if (done) refuseFaults(strip, layout);
    yield { done: done ? 1 : value.done, cloth };
    if (done) return;
  }
}
