// What `lay --json` prints: every cloth with its pieces where they are cut, in mm and degrees. Fields are only ever added;
// anything else makes a new schema number.
import { estimateOf } from "../cloth/lay/estimate.ts";
import type { LaidCloth, LaidPiece, Lay } from "../cloth/lay/lay-of.ts";
import { toDegrees } from "../geometry/trig.ts";
import type { Json } from "./json.ts";

const schema = 1;

/** A lay as JSON data; x runs along the cloth from its beginning, y across it from its edge or fold. */
export const layJson = ({ cloths, none }: Lay): Json => ({
  schema,
  cloths: cloths.map(clothJson),
  none: none.map(({ fabric, because }) => ({ fabric, because })),
});

const clothJson = (cloth: LaidCloth): Json => {
  const { fabric, title, spread, oneWay, width, usable, length, lengthNeeded, lengthToBuy, efficiency, area, widest } =
    cloth;
  const layers = spread === "flat" ? 1 : 2;
  const { least, most } = estimateOf(area, layers * (usable.to - usable.from));
  return {
    fabric,
    title,
    spread,
    oneWay,
    width,
    usable: [usable.from, usable.to],
    length,
    lengthNeeded,
    lengthToBuy,
    efficiency,
    area,
    widest: widest ? { piece: widest.piece, width: widest.width } : null,
    estimate: { least, most },
    placements: cloth.placements.map(placementJson),
    tooWide: cloth.tooWide.map(({ piece, width: found, usable: wanted, message, hint }) => ({
      piece,
      width: found,
      usable: wanted,
      message,
      hint,
    })),
    notLaid: cloth.notLaid.map(({ piece, because }) => ({ piece, because })),
  };
};

const placementJson = ({ piece, copy, mirrored, onFold, rotation, outline }: LaidPiece): Json => ({
  piece,
  copy,
  mirrored,
  onFold,
  rotation: toDegrees(rotation),
  outline: outline.map(({ x, y }) => [thousandths(x), thousandths(y)]),
});

// The rim follows the piece within some hundredths of a mm; more digits would say nothing.
const thousandths = (value: number): number => Math.round(value * 1000) / 1000 + 0;
