// One thing that could stand at the cursor, before it is known which stretch of the text it takes the place of.
import type { NameKind } from "../known-names.ts";

/** What kind of thing is offered. */
export type CompletionKind =
  | NameKind
  | "statement"
  | "step"
  | "own-step"
  | "clause"
  | "function"
  | "unit"
  | "word"
  | "choice"
  | "check"
  | "file"
  | "name"
  | "sign";

/** Something to offer. */
export interface Suggested {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail: string;
  /** What is written; the label where not said. */
  readonly insert?: string;
  /** `insert` holds placeholders: `${1:edge}`. */
  readonly isSnippet?: boolean;
  /** Markdown. */
  readonly documentation?: string;
  /** How likely it is what is wanted here: the smaller, the earlier it is shown. */
  readonly rank: number;
}

/** Plain text inside a snippet, where three signs have a meaning of their own. */
export const inSnippet = (text: string): string => text.replace(/[\\$}]/g, "\\$&");

/** A numbered hole of a snippet with what belongs in it. */
export const hole = (index: number, text: string): string => `\${${index}:${inSnippet(text)}}`;
