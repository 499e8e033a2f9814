// A cloth and what is to be laid on it, before anything is laid: how much of it may be used, which pieces fit its width, and which
// do not.
import type { Fabric, Garment } from "../../working.ts";
import { type ClothPiece, clothPieces, type NotLaid } from "./cloth-pieces.ts";
import type { Asked, LaidCloth, NoCloth } from "./lay-of.ts";
import { type TooWide, tooWideOf, type Widest, widestOf } from "./too-wide.ts";

export interface ClothToLay {
  readonly fabric: Fabric;
  /** Of the cloth as it is sold and spread out, mm; and what of it may be covered with pieces. */
  readonly width: number;
  readonly usable: LaidCloth["usable"];
  /** The angles, in radians, that a piece off the fold may be turned by. */
  readonly turns: readonly number[];
  /** The pieces that fit the width. */
  readonly pieces: readonly ClothPiece[];
  readonly widest: Widest | undefined;
  readonly tooWide: readonly TooWide[];
  readonly notLaid: readonly NotLaid[];
}

/** The cloths that a garment is cut from, in the order of the recipe, and those of which nothing can be said. */
export const clothsToLay = (garment: Garment, asked: Asked): (ClothToLay | NoCloth)[] =>
  [...garment.fabrics.values()]
    .filter(({ name }) => garment.cuts.some(({ fabric }) => fabric === name))
    .map((fabric) => clothToLay(garment, fabric, asked));

const clothToLay = (garment: Garment, fabric: Fabric, asked: Asked): ClothToLay | NoCloth => {
  const width = asked.width ?? fabric.width;
  if (width === undefined)
    return { fabric: fabric.name, because: `The recipe does not say how wide ${fabric.name} is.` };
  const usable = usableOf(fabric, width, asked);
  const across = usable.to - usable.from;
  if (across <= 0) return { fabric: fabric.name, because: `Nothing of ${fabric.name} is left between its selvedges.` };
  const { pieces, notLaid } = clothPieces(garment, fabric.name, asked.spread);
  const turns = turnsOf(fabric, asked);
  const tooWide = tooWideOf(pieces, turns, across, garment.units);
  return {
    fabric,
    width,
    usable,
    turns,
    pieces: pieces.filter(({ piece }) => !tooWide.some((each) => each.piece === piece)),
    widest: widestOf(pieces, turns),
    tooWide,
    notLaid,
  };
};

/** What may be covered with pieces, across the cloth as it is spread and after it has shrunk. */
const usableOf = (fabric: Fabric, width: number, { spread, selvedge }: Asked): LaidCloth["usable"] => {
  const shrunk = width * (1 - (fabric.shrinkWidth ?? 0));
  if (spread === "flat") return { from: selvedge, to: shrunk - selvedge };
  // Folded, both selvedges lie on one another across from the fold; a tube has none.
  return { from: 0, to: shrunk / 2 - (spread === "folded" ? selvedge : 0) };
};

/** Either way along the grain or one way only, and aslant by as much as is allowed. */
const turnsOf = ({ oneWay }: Fabric, { tilt }: Asked): number[] => {
  const ways = oneWay ? [0] : [0, Math.PI];
  return ways.flatMap((way) => (tilt > 0 ? [way, way - tilt, way + tilt] : [way]));
};
