// What the page and the settler say to each other: plain data.
import type { Figure, RoundPlan } from "../../../kernel/cloth/hang/figures.ts";
import type { Mesh } from "../../../kernel/cloth/hang/mesh.ts";

/** A garment that is to settle. */
export interface Hanging {
  readonly meshes: readonly { readonly piece: string; readonly mesh: Mesh }[];
  readonly rounds: readonly RoundPlan[];
}

/** What is to settle now, in the page's turn; nothing where whatever settles is to stop. */
export interface ToSettler {
  readonly turn: number;
  readonly hanging?: Hanging;
}

/** How it looks now, and once all is at rest what came of it. */
export interface FromSettler {
  readonly turn: number;
  readonly figures: readonly Figure[];
  readonly atRest?: { readonly steps: number; readonly stretch: number; readonly converged: boolean };
}
