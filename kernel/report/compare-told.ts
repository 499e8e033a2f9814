// What a review of an alteration holds, and the form in which terminal, Markdown and page are told it: sections of tables and sentences.
import type { Blamed } from "../compare/blame.ts";
import type { Causes } from "../compare/causes.ts";
import type { ComparedCloth } from "../compare/compare-cloth.ts";
import type { Comparison } from "../compare/comparison.ts";
import type { Units } from "../working.ts";
import type { Tone } from "./said.ts";
import { type Cell, words } from "./table.ts";

/** All that a review of an alteration tells. */
export interface Review {
  readonly title: string;
  /** What is held against what: "coat.chalk at 1a2b3c4", "straight.back". */
  readonly before: string;
  readonly after: string;
  readonly units: Units;
  readonly comparison: Comparison;
  /** The cloth needed before and after; not there where nothing was laid. */
  readonly cloth?: readonly ComparedCloth[];
  readonly causes: Causes;
  /** The line that did most to an edge, by "piece.edge". */
  readonly blame: ReadonlyMap<string, Blamed>;
  /** Whether the two texts differ at all. */
  readonly isSameText: boolean;
  /** What could not be compared, and why. */
  readonly remarks: readonly string[];
}

export interface Section {
  readonly heading: string;
  readonly remark: string;
  /** The first row is its head; no rows, no table. */
  readonly rows: readonly (readonly Cell[])[];
  readonly sentences: readonly { readonly text: string; readonly tone: Tone }[];
  /** The piece it tells of, which a page shows a picture of. */
  readonly piece?: string;
}

/** What a terminal, a pull request or a page tells: sections under a title and one sentence over all. */
export interface Told {
  readonly title: string;
  readonly before: string;
  readonly after: string;
  readonly summary: string;
  readonly remarks: readonly string[];
  readonly sections: readonly Section[];
}

/** The head of a table. */
export const headOf = (...names: string[]): Cell[] => names.map((name) => words(name, "quiet"));

/** A sentence as it is. */
export const plainly = (text: string): Section["sentences"][number] => ({ text, tone: "plain" });

// A list of names longer than this is cut short, and how many are left out is said.
const mostNamed = 8;

/** Names in a row, no more of them than one reads. */
export const listed = (names: readonly string[]): string =>
  names.length <= mostNamed
    ? names.join(", ")
    : `${names.slice(0, mostNamed - 1).join(", ")} and ${names.length - mostNamed + 1} more`;
