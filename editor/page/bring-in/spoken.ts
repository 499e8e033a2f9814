// What the page asks of its tracer, and what comes of a drawing.
import type { Units } from "../../../kernel/working.ts";
import type { OutlineLine } from "../../bring-in/pieces-on.ts";

/** How a drawing is to be read, as the user chooses it. */
export interface Reading {
  /** Of the recipe, and of a drawing that does not say its own. */
  readonly units: Units | undefined;
  /** How many times larger than drawn, as it was written: "2", "1/4", "50%". */
  readonly scale: string;
  /** Which line becomes the outline where the drawing tells both. */
  readonly line: OutlineLine;
}

/** A drawing as it was dropped or chosen. */
export interface ToTrace extends Reading {
  readonly called: string;
  readonly bytes: Uint8Array;
}

export interface Traced {
  /** Nothing where the drawing is refused. */
  readonly recipe: string | undefined;
  /** How many pieces and how near to the drawing, or why there is no recipe. */
  readonly words: string;
  /** Everything else that is to be known of the reading, each a sentence. */
  readonly notes: readonly string[];
}
