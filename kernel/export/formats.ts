// The formats that a drawing can be written in as text. The list is the registry: commands and the page offer whatever stands here.
// What takes more than a drawing (a whole garment, a print on pages) is written where that is at hand.
import type { Drawing } from "../drawing/drawing.ts";
import type { Lettering } from "../lettering/lettering.ts";
import { dxf } from "./dxf.ts";
import { hpgl } from "./hpgl.ts";
import { svg } from "./svg.ts";
import { layeredSvg } from "./svg-layers.ts";

/** A way to write a drawing. */
export interface Format {
  /** How commands name it. */
  readonly name: string;
  /** What it is, for a menu. */
  readonly title: string;
  /** What its files end in. */
  readonly ending: string;
  /** Its media type. */
  readonly type: string;
  /** Whether its letters are outlines where a lettering is given; the others have letters of their own. */
  readonly isLettered: boolean;
  write(drawing: Drawing, lettering?: Lettering): string;
}

export const formats: readonly Format[] = [
  {
    name: "svg",
    title: "SVG drawings, true to size",
    ending: ".svg",
    type: "image/svg+xml",
    isLettered: true,
    write: svg,
  },
  {
    name: "layers",
    title: "SVG by layers, for cutters and projectors",
    ending: "-layers.svg",
    type: "image/svg+xml",
    isLettered: true,
    write: layeredSvg,
  },
  {
    name: "laser",
    title: "plain DXF, for laser cutters",
    ending: "-laser.dxf",
    type: "image/vnd.dxf",
    isLettered: false,
    write: dxf,
  },
  {
    name: "hpgl",
    title: "HPGL, for pen plotters",
    ending: ".plt",
    type: "application/vnd.hp-HPGL",
    isLettered: false,
    write: hpgl,
  },
];
