// Letters as outlines, so that a drawing looks the same wherever it is opened. The only file that knows how a font is read; the
// bytes of the font come from whoever calls.
import * as opentype from "opentype.js";

/** One letter of a face; lengths in thousandths of its size, y up from the baseline. */
export interface Glyph {
  readonly width: number;
  readonly outline: readonly Stroke[];
}

/** A move to a place, a line, or a curve with one handle or with two from there on; each move begins a closed line. */
export type Stroke =
  | { readonly kind: "move" | "line"; readonly to: readonly [number, number] }
  | { readonly kind: "bend"; readonly handle: readonly [number, number]; readonly to: readonly [number, number] }
  | {
      readonly kind: "curve";
      readonly handles: readonly [readonly [number, number], readonly [number, number]];
      readonly to: readonly [number, number];
    };

/** A face of a font. */
export interface Face {
  /** The glyph of a character; undefined where the font has none. */
  glyph(character: string): Glyph | undefined;
}

/** The two faces that drawings are lettered in. */
export interface Lettering {
  readonly plain: Face;
  readonly bold: Face;
}

/** Reads a face from the bytes of a TrueType or OpenType file; throws where they are none. */
export const faceFrom = (bytes: Uint8Array): Face => {
  const whole = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
  // Glyphs are read as they are asked for: a pattern needs a hundred of the thousands.
  const font = parse(whole, { lowMemory: true });
  const scale = 1000 / font.unitsPerEm;
  const known = new Map<string, Glyph | undefined>();
  return {
    glyph: (character) => {
      if (!known.has(character)) known.set(character, glyphOf(font, character, scale));
      return known.get(character);
    },
  };
};

// Node hands the package over whole, a bundler in its parts.
const { parse } = ("default" in opentype ? opentype.default : opentype) as typeof opentype;

const glyphOf = (font: opentype.Font, character: string, scale: number): Glyph | undefined => {
  const glyph = font.charToGlyph(character);
  // The first glyph of a font stands for all that it does not have.
  if (glyph.index === 0) return undefined;
  const at = (x: number, y: number): readonly [number, number] => [Math.round(x * scale), Math.round(y * scale)];
  const outline: Stroke[] = [];
  for (const command of glyph.path.commands) {
    if (command.type === "Z") continue;
    const to = at(command.x, command.y);
    const before = outline.at(-1)?.to;
    // Fonts close their outlines with lines of no length.
    if (command.type === "L" && before && before[0] === to[0] && before[1] === to[1]) continue;
    if (command.type === "M") outline.push({ kind: "move", to });
    else if (command.type === "L") outline.push({ kind: "line", to });
    else if (command.type === "Q") outline.push({ kind: "bend", handle: at(command.x1, command.y1), to });
    else outline.push({ kind: "curve", handles: [at(command.x1, command.y1), at(command.x2, command.y2)], to });
  }
  return { width: Math.round((glyph.advanceWidth ?? 0) * scale), outline };
};
