// The formats that a drawing can be written in. The list is the registry: commands and the page offer whatever stands here.
import type { Drawing } from "../drawing/drawing.ts";
import { svg } from "./svg.ts";

/** A way to write a drawing. */
export interface Format {
  /** How commands name it; the ending of its files too. */
  readonly name: string;
  /** What it is, for a menu. */
  readonly title: string;
  /** Its media type. */
  readonly type: string;
  write(drawing: Drawing): string;
}

export const formats: readonly Format[] = [
  { name: "svg", title: "SVG drawings, true to size", type: "image/svg+xml", write: svg },
];
