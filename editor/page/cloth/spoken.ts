// What the page and the layer say to each other: plain data.
import type { Lay } from "../../../kernel/cloth/lay/lay-of.ts";
import type { Garment } from "../../../kernel/working.ts";

/** A garment that is to be laid on its cloths. */
export type ToLayer = Garment;

/** How it lies, with the drawing of every cloth as SVG, in the order of the cloths; or what went wrong in the program. */
export type FromLayer = { readonly lay: Lay; readonly drawings: readonly string[] } | { readonly failed: string };
