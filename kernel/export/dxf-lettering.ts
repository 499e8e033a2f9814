// A text of a drawing as the tags of a TEXT entity, behind its layer.
import type { Text } from "../drawing/drawing.ts";
import { toDegrees } from "../geometry/trig.ts";
import { real, spotInSpace, type Tag } from "./dxf-tags.ts";
import { dxfText } from "./dxf-text.ts";

/** Place, height, words, turn and alignment (DXF reference, "TEXT"); undefined where nothing is left of the words. */
export const lettering = ({ text, at, size, turn, align }: Text): Tag[] | undefined => {
  const said = dxfText(text);
  if (said === "") return undefined;
  const side = { start: 0, middle: 1, end: 2 }[align];
  return [
    ...spotInSpace(10, at),
    [40, real(size * capitals)],
    [1, said],
    // The page is turned over on its way to a y that runs up, and so is every angle.
    [50, real(-toDegrees(turn))],
    [72, String(side)],
    ...(side === 0 ? [] : spotInSpace(11, at)),
  ];
};

// Capitals are this share of the size, as of most sans-serif letters; DXF speaks of the height of capitals.
const capitals = 0.73;
