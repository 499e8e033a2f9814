// What is the matter with a tracing, in words, and with which part of the work.
import type { Point } from "../../kernel/geometry/point.ts";

/** The parts of the work in their order. */
export type Part = "straighten" | "size" | "outline" | "edges" | "recipe";

export interface Fault {
  /** The part of the work in which it is put right. */
  readonly part: Part;
  readonly words: string;
  /** The spot of the paper where it shows, mm. */
  readonly spot?: Point;
}
