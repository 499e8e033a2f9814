// A text as the outlines of its letters, so that a cutter, a projector or a print shop sees the letters that were meant and needs
// no font. One path a text: every reader of SVG knows paths, and not all know elements that are drawn again.
import type { Text } from "../drawing/drawing.ts";
import { cos, sin, toDegrees } from "../geometry/trig.ts";
import type { Glyph, Lettering, Stroke } from "../lettering/lettering.ts";
import { written } from "../lettering/readable.ts";
import { plainNumber } from "../units.ts";
import { place } from "./path-data.ts";

/** Where letters stand, and their outlines there, as SVG writes both. */
export interface SvgLetters {
  readonly transform: string;
  readonly data: string;
}

/** A text in outlines; undefined where nothing is to be seen. What the font lacks stands as its number, as it does in print. */
export const svgLetters = (
  { text, at, size, turn, align, weight }: Text,
  lettering: Lettering,
): SvgLetters | undefined => {
  const glyphs = [...written(text, weight, lettering)].map((character) => lettering[weight].glyph(character)!);
  const data = outlineData(glyphs);
  if (data === "") return undefined;
  const width = glyphs.reduce((sum, glyph) => sum + glyph.width, 0);
  const back = width * (size / 1000) * { start: 0, middle: 0.5, end: 1 }[align];
  const from = { x: at.x - cos(turn) * back, y: at.y - sin(turn) * back };
  const turned = plainNumber(toDegrees(turn), 3);
  const rotation = turned === "0" ? "" : ` rotate(${turned})`;
  // Letters of every size are written in thousandths of it, which are the numbers of the font, and short.
  return { transform: `translate(${place(from)})${rotation} scale(${plainNumber(size / 1000, 6)})`, data };
};

/** Glyphs beside one another (W3C SVG 2, 9.3), y down; each place is told from the one before it, which keeps the numbers short. */
const outlineData = (glyphs: readonly Glyph[]): string => {
  const parts: string[] = [];
  let [x, y] = [0, 0];
  let start = [0, 0] as readonly [number, number];
  let left = 0;
  for (const { width, outline } of glyphs) {
    for (const stroke of outline) {
      // Closing a line goes back to where it began.
      if (stroke.kind === "move" && parts.length > 0) {
        parts.push("z");
        [x, y] = start;
      }
      parts.push(strokeData(stroke, ([toX, toY]) => [left + toX - x, -toY - y]));
      [x, y] = [left + stroke.to[0], -stroke.to[1]];
      if (stroke.kind === "move") start = [x, y];
    }
    left += width;
  }
  return parts.length === 0 ? "" : `${parts.join("")}z`;
};

const strokeData = (stroke: Stroke, step: (spot: Stroke["to"]) => Stroke["to"]): string => {
  switch (stroke.kind) {
    case "move":
      return `m${numbers([stroke.to].map(step))}`;
    case "line":
      return lineData(step(stroke.to));
    case "bend":
      return `q${numbers([stroke.handle, stroke.to].map(step))}`;
    case "curve":
      return `c${numbers([...stroke.handles, stroke.to].map(step))}`;
  }
};

const lineData = ([right, down]: Stroke["to"]): string => {
  if (down === 0) return `h${right}`;
  return right === 0 ? `v${down}` : `l${numbers([[right, down]])}`;
};

/** Numbers with a blank only where no minus parts them. */
const numbers = (spots: readonly Stroke["to"][]): string =>
  spots
    .flat()
    .map((value, index) => (index === 0 || value < 0 ? `${value}` : ` ${value}`))
    .join("");
