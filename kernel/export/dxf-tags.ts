// The alphabet of DXF: a file is a row of tags, each a group code and a value on two lines (DXF reference, "About the DXF format").

import type { Point } from "../geometry/point.ts";
import { number } from "./path-data.ts";

/** A group code and its value, as it is written. */
export type Tag = readonly [code: number, value: string];

/** Tags as the text of a file. */
export const tagText = (tags: readonly Tag[]): string =>
  tags.map(([code, value]) => `${String(code).padStart(3)}\n${value}\n`).join("");

/** A section with what is in it. */
export const section = (name: string, tags: readonly Tag[]): Tag[] => [
  [0, "SECTION"],
  [2, name],
  ...tags,
  [0, "ENDSEC"],
];

/** A header variable. */
export const variable = (name: string, ...tags: readonly Tag[]): Tag[] => [[9, name], ...tags];

/** A number as DXF writes one that need not be whole. */
export const real = (value: number): string => {
  const text = number(value);
  return text.includes(".") ? text : `${text}.0`;
};

/** A point under a group code: 10 and 20, 11 and 21. The pattern's y runs down the page, and that of DXF up. */
export const spot = (code: number, { x, y }: Point): Tag[] => [
  [code, real(x)],
  [code + 10, real(-y)],
];

/** A point with its height over the page, which is nought. */
export const spotInSpace = (code: number, point: Point): Tag[] => [...spot(code, point), [code + 20, "0.0"]];
