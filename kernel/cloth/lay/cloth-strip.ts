// A cloth as a strip to be packed: its pieces become shapes, and where the shapes lie becomes where to cut.
import { faultsOf } from "../../packing/is-valid-layout.ts";
import type { PackTask } from "../../packing/pack-task.ts";
import { type Layout, placedOutline, type Shape, type Strip, signedAreaOf } from "../../packing/strip.ts";
import type { Fabric, Garment } from "../../working.ts";
import type { ClothPiece, Spread } from "./cloth-pieces.ts";
import type { ClothToLay } from "./cloth-to-lay.ts";
import { effortOf } from "./efforts.ts";
import type { Asked, LaidCloth, LaidPiece } from "./lay-of.ts";
import { lengthNeeded, lengthToBuy } from "./length-to-buy.ts";
import { outerPolygon } from "./outer-polygon.ts";
import { give } from "./width-across.ts";

/** What is to be packed, and the cloth that a layout of it is; a layout of nothing is the cloth without its pieces. */
export interface ClothStrip extends PackTask {
  readonly clothOf: (layout: Layout) => LaidCloth;
}

/** The strip of a cloth with all the effort that is asked for. */
export const clothStrip = (
  garment: Garment,
  { fabric, width, usable, turns, pieces: laid, widest, tooWide, notLaid }: ClothToLay,
  asked: Asked,
): ClothStrip => {
  const { least, each, most, within } = effortOf(asked.effort);
  const strip: Strip = {
    width: usable.to - usable.from + give,
    shapes: laid.map((piece) => shapeOf(piece, fabric, turns, within)),
  };
  const count = laid.reduce((sum, piece) => sum + piece.count, 0);
  const area = areaOf(garment, laid, asked.spread);
  const shrink = fabric.shrinkLength ?? 0;
  const clothOf = (layout: Layout): LaidCloth => ({
    fabric: fabric.name,
    title: fabric.title,
    spread: asked.spread,
    oneWay: fabric.oneWay,
    width,
    usable,
    length: layout.length,
    lengthNeeded: layout.length === 0 ? 0 : lengthNeeded(layout.length, shrink),
    lengthToBuy: layout.length === 0 ? 0 : lengthToBuy(layout.length, shrink, garment.units),
    efficiency: layout.length === 0 ? 0 : area / (layers(asked.spread) * (usable.to - usable.from) * layout.length),
    area,
    widest,
    placements: placementsOf(laid, layout, usable.from - (asked.spread === "flat" ? give / 2 : 0)),
    tooWide,
    notLaid,
  });
  return { strip, seed: asked.seed, effort: Math.min(most, least + each * count), enough: 0, clothOf };
};

/** What no lay may have: it would be a mistake of this program, and the cloth would be cut wrong. */
export const refuseFaults = (strip: Strip, layout: Layout): void => {
  const [fault] = strip.shapes.length === 0 ? [] : faultsOf(strip, layout);
  if (fault) throw new Error(`the lay is not valid: ${JSON.stringify(fault)}`);
};

const shapeOf = (
  { rim, count, onFold }: ClothPiece,
  { oneWay }: Fabric,
  turns: readonly number[],
  within: number,
): Shape => {
  const outline = outerPolygon(rim, within);
  if (!onFold) return { outline, turns, count };
  // Turned by half a turn its fold would lie across the cloth; what the whole piece does when it is turned so, its half does
  // when it is flipped. Over the fold there is no cloth.
  const half = outline.map(({ x, y }) => ({ x, y: Math.max(0, y) }));
  return { outline: half, turns: [0], count, across: 0, flips: !oneWay };
};

/** How often the cloth lies over itself. */
export const layers = (spread: Spread): number => (spread === "flat" ? 1 : 2);

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
    // Opened out, a piece whose half is flipped is turned by half a turn.
    const rotation = placement.flipped ? Math.PI : placement.turn;
    return { piece, copy, mirrored, onFold, rotation, outline };
  });
};
