// Laying on the cloth at the quickest effort: pieces that fit on it and on no other, figures that are numbers, and a drawing.
import { layDrawing, tenth } from "../../../kernel/cloth/lay/lay-drawing.ts";
import { type Asked, type LaidCloth, type Lay, layOf } from "../../../kernel/cloth/lay/lay-of.ts";
import { give } from "../../../kernel/cloth/lay/width-across.ts";
import { svg } from "../../../kernel/export/svg.ts";
import { jsonText } from "../../../kernel/report/json.ts";
import { layJson } from "../../../kernel/report/lay-json.ts";
import type { Garment } from "../../../kernel/working.ts";
import { dice } from "../dice.ts";
import { finite, plainlyTold } from "../figures-told.ts";
import { holds, type Target } from "../target.ts";
import { workedOnce } from "../worked-once.ts";
import { isXml } from "./exporting.ts";

// A lay of more copies than this takes seconds, which one recipe in a thousand is not worth.
const mostCopies = 40;

/** The target, around what lays. */
export const layingBy = (laid: (garment: Garment, asked: Asked) => Lay): Target => ({
  name: "lay",
  isDear: true,
  run({ text }) {
    const { garment } = workedOnce(text);
    const copies = garment.cuts.reduce((sum, { count }) => sum + count, 0);
    if (copies === 0 || copies > mostCopies) return;
    const roll = dice(text);
    const asked: Asked = {
      spread: (["flat", "folded", "tubular"] as const)[roll(3)]!,
      selvedge: [0, 10, 25][roll(3)]!,
      tilt: [0, 0, 0.05][roll(3)]!,
      effort: "quick",
      seed: 1,
    };
    const lay = laid(garment, asked);
    finite(lay, "the lay");
    for (const cloth of lay.cloths) {
      liesOnCloth(cloth);
      const drawn = svg(layDrawing(cloth, garment.units, tenth));
      isXml(drawn);
      plainlyTold(drawn, text, "the lay's drawing");
    }
    const told = jsonText(layJson(lay));
    JSON.parse(told);
    plainlyTold(told, text, "the lay's data");
  },
});

export const laying = layingBy((garment, asked) => {
  const search = layOf(garment, asked);
  for (;;) {
    const { done, value } = search.next();
    if (done) return value;
  }
});

/** A piece just as wide as the cloth fits, so that a rim may stand over by `give` (kernel/cloth/lay/width-across.ts), and rounding. */
const hair = give + 0.01;

const liesOnCloth = ({ usable, length, placements }: LaidCloth): void => {
  for (const { piece, outline, onFold } of placements) {
    const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
    const isWithin =
      Math.min(...xs) >= -hair &&
      Math.max(...xs) <= length + hair &&
      (onFold || Math.min(...ys) >= usable.from - hair) &&
      Math.max(...ys) <= usable.to + hair;
    holds(isWithin, "a piece lies beside the cloth", piece);
  }
};
