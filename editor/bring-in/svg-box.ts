// The boxes of SVG: what a viewBox says, and how it is laid into the room that it is given.
import type { Affine } from "./affine.ts";
import { Refused } from "./refused.ts";
import type { SvgElement } from "./svg-tree.ts";

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The viewBox of an element, if it has one. */
export const boxOf = ({ attributes, line }: SvgElement): Box | undefined => {
  const written = attributes.get("viewBox");
  if (written === undefined) return undefined;
  const values = written
    .trim()
    .split(/\s*,\s*|\s+/)
    .map(Number);
  const [x, y, width, height] = values;
  if (values.length !== 4 || !values.every(Number.isFinite) || width! <= 0 || height! <= 0)
    throw new Refused("The viewBox has to be four numbers, of which the last two are above 0.", { line });
  return { x: x!, y: y!, width: width!, height: height! };
};

/** A box laid into another (W3C SVG 2, 8.2 "Computing the equivalent transform of an SVG viewport"). */
export const intoBox = (
  box: Box,
  { width, height }: { readonly width: number; readonly height: number },
  { attributes }: SvgElement,
): Affine => {
  const [align = "xMidYMid", how = "meet"] = (attributes.get("preserveAspectRatio") ?? "")
    .trim()
    .split(/\s+/)
    .filter(Boolean);
  const [across, down] = [width / box.width, height / box.height];
  const one = how === "slice" ? Math.max(across, down) : Math.min(across, down);
  const [sx, sy] = align === "none" ? [across, down] : [one, one];
  const share = (word: string): number => (align.includes(`${word}Min`) ? 0 : align.includes(`${word}Max`) ? 1 : 0.5);
  const spare = align === "none" ? [0, 0] : [width - box.width * sx, height - box.height * sy];
  return [sx, 0, 0, sy, spare[0]! * share("x") - box.x * sx, spare[1]! * share("Y") - box.y * sy];
};
