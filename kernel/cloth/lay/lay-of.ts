// Lays the pieces of a garment on the cloths they are cut from, as short as a given effort finds; how much to buy follows. The
// packing itself knows no cloth: here pieces become shapes, and where the shapes lie becomes where to cut.

import type { Point } from "../../geometry/point.ts";
import { type Fault, faultsOf } from "../../packing/is-valid-layout.ts";
import { pack } from "../../packing/pack.ts";
import { type Layout, placedOutline, type Shape, type Strip, signedAreaOf } from "../../packing/strip.ts";
import type { Fabric, Garment } from "../../working.ts";
import { type ClothPiece, clothPieces, type NotLaid, type Spread } from "./cloth-pieces.ts";
import { type Effort, effortOf } from "./efforts.ts";
import { lengthToBuy } from "./length-to-buy.ts";
import { outerPolygon } from "./outer-polygon.ts";
import { type TooWide, tooWideOf } from "./too-wide.ts";
import { give } from "./width-across.ts";

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
  readonly lengthToBuy: number;
  /** The share of the usable cloth that the pieces take, all layers counted. */
  readonly efficiency: number;
  /** Of all pieces together, square mm. */
  readonly area: number;
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
  const fabrics = [...garment.fabrics.values()].filter(({ name }) =>
    garment.cuts.some(({ fabric }) => fabric === name),
  );
  let lay: Lay = { cloths: [], none: [] };
  for (const [at, fabric] of fabrics.entries()) {
    const width = asked.width ?? fabric.width;
    const because = width === undefined ? noWidth(fabric) : narrow(fabric, usableOf(fabric, width, asked));
    if (because !== undefined) {
      lay = { ...lay, none: [...lay.none, { fabric: fabric.name, because }] };
      continue;
    }
    const before = lay;
    for (const { done, cloth } of laidCloth(garment, fabric, width!, asked)) {
      lay = { ...before, cloths: [...before.cloths, cloth] };
      yield { done: (at + done) / fabrics.length, best: lay };
    }
  }
  return lay;
}

const noWidth = ({ name }: Fabric): string => `The recipe does not say how wide ${name} is.`;

const narrow = ({ name }: Fabric, { from, to }: LaidCloth["usable"]): string | undefined =>
  to - from > 0 ? undefined : `Nothing of ${name} is left between its selvedges.`;

/** What may be covered with pieces, across the cloth as it is spread and after it has shrunk. */
const usableOf = (fabric: Fabric, width: number, { spread, selvedge }: Asked): LaidCloth["usable"] => {
  const shrunk = width * (1 - (fabric.shrinkWidth ?? 0));
  if (spread === "flat") return { from: selvedge, to: shrunk - selvedge };
  // Folded, both selvedges lie on one another across from the fold; a tube has none.
  return { from: 0, to: shrunk / 2 - (spread === "folded" ? selvedge : 0) };
};

function* laidCloth(
  garment: Garment,
  fabric: Fabric,
  width: number,
  asked: Asked,
): Generator<{ readonly done: number; readonly cloth: LaidCloth }> {
  const usable = usableOf(fabric, width, asked);
  const { pieces, notLaid } = clothPieces(garment, fabric.name, asked.spread);
  const turns = turnsOf(fabric, asked);
  const tooWide = tooWideOf(pieces, turns, usable.to - usable.from, garment.units);
  const laid = pieces.filter(({ piece }) => !tooWide.some((each) => each.piece === piece));
  const { least, each, most, within } = effortOf(asked.effort);
  const strip: Strip = {
    width: usable.to - usable.from + give,
    shapes: laid.map((piece) => shapeOf(piece, turns, within)),
  };
  const count = laid.reduce((sum, piece) => sum + piece.count, 0);
  const area = areaOf(garment, laid, asked.spread);
  const clothOf = (layout: Layout): LaidCloth => ({
    fabric: fabric.name,
    title: fabric.title,
    spread: asked.spread,
    oneWay: fabric.oneWay,
    width,
    usable,
    length: layout.length,
    lengthToBuy: layout.length === 0 ? 0 : lengthToBuy(layout.length, fabric.shrinkLength ?? 0, garment.units),
    efficiency: layout.length === 0 ? 0 : area / (layers(asked.spread) * (usable.to - usable.from) * layout.length),
    area,
    placements: placementsOf(laid, layout, usable.from - (asked.spread === "flat" ? give / 2 : 0)),
    tooWide,
    notLaid,
  });
  const search = pack(strip, asked.seed, Math.min(most, least + each * count));
  let [layout, cloth]: [Layout | undefined, LaidCloth] = [undefined, clothOf({ length: 0, placements: [] })];
  for (;;) {
    const { done, value } = search.next();
    const found = done ? value : value.best;
    // Told often, it is seldom another one.
    if (found !== layout) [layout, cloth] = [found, clothOf(found)];
    if (done && count > 0) refuseFaults(faultsOf(strip, layout));
    yield { done: done ? 1 : value.done, cloth };
    if (done) return;
  }
}

/** What no lay may have: it would be a mistake of this program, and the cloth would be cut wrong. */
const refuseFaults = (faults: readonly Fault[]): void => {
  if (faults.length > 0) throw new Error(`the lay is not valid: ${JSON.stringify(faults[0])}`);
};

/** Either way along the grain or one way only, and aslant by as much as is allowed. */
const turnsOf = ({ oneWay }: Fabric, { tilt }: Asked): number[] => {
  const ways = oneWay ? [0] : [0, Math.PI];
  return ways.flatMap((way) => (tilt > 0 ? [way, way - tilt, way + tilt] : [way]));
};

const shapeOf = ({ rim, count, onFold }: ClothPiece, turns: readonly number[], within: number): Shape => {
  const outline = outerPolygon(rim, within);
  if (!onFold) return { outline, turns, count };
  // Turned by half a turn its fold would lie across the cloth; and cloth over the fold there is none.
  return { outline: outline.map(({ x, y }) => ({ x, y: Math.max(0, y) })), turns: [0], count, across: 0 };
};

const layers = (spread: Spread): number => (spread === "flat" ? 1 : 2);

/** All pieces that the recipe asks for; of a pair cut through two layers one copy may be over, which is not counted. */
const areaOf = (garment: Garment, pieces: readonly ClothPiece[], spread: Spread): number =>
  pieces.reduce((sum, { piece, rim, count, onFold }) => {
    const asked = garment.cuts.filter((cut) => cut.piece === piece).reduce((all, cut) => all + cut.count, 0);
    const cut = spread === "flat" ? count : onFold ? 2 * count : Math.min(2 * count, asked);
    return sum + cut * signedAreaOf(rim);
  }, 0);

const placementsOf = (pieces: readonly ClothPiece[], { placements }: Layout, from: number): LaidPiece[] => {
  const copies = new Map<string, number>();
  return placements.map((placement) => {
    const { piece, mirrored, onFold, rim } = pieces[placement.shape]!;
    const copy = (copies.get(piece) ?? 0) + 1;
    copies.set(piece, copy);
    const outline = placedOutline(rim, placement).map(({ x, y }) => ({ x, y: y + from }));
    return { piece, copy, mirrored, onFold, rotation: placement.turn, outline };
  });
};
