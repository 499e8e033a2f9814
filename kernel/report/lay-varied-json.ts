// What `lay --most --json` and `lay --over --json` print: lengths in mm, angles in degrees. Fields are only ever added; anything
// else makes a new schema number.
import type { Diagnostic } from "../../grammar/diagnostic.ts";
import type { MostThatFits } from "../cloth/lay/most-that-fits.ts";
import type { Obstacle } from "../cloth/lay/obstacle.ts";
import type { ClothAt, OverValues } from "../cloth/lay/over-values.ts";
import type { Varied } from "../cloth/lay/varied.ts";
import { toDegrees } from "../geometry/trig.ts";
import type { Json } from "./json.ts";
import { layJson } from "./lay-json.ts";

const schema = 1;

/** The largest value as JSON data; `value` is null where none fits. */
export const layMostJson = (found: MostThatFits): Json => {
  const { varied, effort, atHand, largest, next, tried, isStopped } = found;
  return {
    schema,
    ...rangeJson(found),
    effort,
    atHand: new Map(atHand),
    stopped: isStopped,
    value: largest ? outside(varied, largest.value) : null,
    lay: largest ? layJson(largest.lay) : null,
    next: next ? triedJson(varied, next) : null,
    tried: tried.map((each) => triedJson(varied, each)),
  };
};

/** Every value with its lay as JSON data. */
export const layOverJson = (over: OverValues): Json => ({
  schema,
  ...rangeJson(over),
  effort: over.effort,
  stopped: over.isStopped,
  rows: over.rows.map((row) => rowJson(over.varied, row)),
});

const rangeJson = ({ varied, step }: { readonly varied: Varied; readonly step: number }) => {
  const { name, kind, of, least, most, range } = varied;
  return {
    varied: {
      name,
      kind,
      of,
      from: outside(varied, least),
      to: outside(varied, most),
      by: outside(varied, step),
      range,
    },
  };
};

/** A value as it leaves the kernel: radians as degrees. */
const outside = ({ of }: Varied, value: number): number => (of === "angle" ? toDegrees(value) : value);

const triedJson = (varied: Varied, { value, obstacle }: MostThatFits["tried"][number]): Json => ({
  value: outside(varied, value),
  fits: obstacle === undefined,
  obstacle: obstacle ? obstacleJson(obstacle) : null,
});

const obstacleJson = ({ kind, message, code, file, line, fabric, piece, takes, has }: Obstacle): Json => ({
  kind,
  message,
  ...(code !== undefined && { code }),
  ...(file !== undefined && { file }),
  ...(line !== undefined && { line }),
  ...(fabric !== undefined && { fabric }),
  ...(piece !== undefined && { piece }),
  ...(takes !== undefined && { takes }),
  ...(has !== undefined && { has }),
});

const rowJson = (varied: Varied, { value, lay, failures }: ClothAt): Json => ({
  value: outside(varied, value),
  cloths: lay.cloths.map(
    ({ fabric, width, usable, length, lengthNeeded, lengthToBuy, efficiency, widest, ...rest }) => ({
      fabric,
      width,
      usable: [usable.from, usable.to],
      fits: rest.tooWide.length + rest.notLaid.length === 0,
      length,
      lengthNeeded,
      lengthToBuy,
      efficiency,
      widest: widest ? { piece: widest.piece, width: widest.width } : null,
      tooWide: rest.tooWide.map(({ piece, width: found, usable: wanted, message }) => ({
        piece,
        width: found,
        usable: wanted,
        message,
      })),
      notLaid: rest.notLaid.map(({ piece, because }) => ({ piece, because })),
    }),
  ),
  none: lay.none.map(({ fabric, because }) => ({ fabric, because })),
  failures: failures.map(failureJson),
});

const failureJson = ({ code, message, where: { file, line } }: Diagnostic): Json => ({ code, message, file, line });
