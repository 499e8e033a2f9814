// What the record says of a piece made by its lengths.
import { angleInWords, lengthIn } from "../units.ts";
import type { Units } from "../working.ts";
import { type Sector, sectorOf } from "./sector-piece.ts";

/** "gore panel, top 12 cm, hem 40 cm, 70 cm deep: radius 30 cm, 22.9 deg". */
export const sectorInWords = (kind: string, name: string, sector: Sector, units: Units): string => {
  const { radius, angle } = sectorOf(sector);
  const bent = Number.isFinite(radius)
    ? `radius ${lengthIn(Math.abs(radius), units)}, ${angleInWords(Math.abs(angle))}`
    : "a straight strip";
  return `${kind} ${name}, top ${lengthIn(sector.top, units)}, hem ${lengthIn(sector.hem, units)}, ${lengthIn(sector.depth, units)} deep: ${bent}`;
};
