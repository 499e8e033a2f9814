// What the page and its worker say to each other. The page says what is on the table; the worker says what came of it.
import type { Scalar } from "../../../kernel/value.ts";
import type { Dial } from "../../assist/dials.ts";
import type { Finding } from "../../assist/findings.ts";
import type { Picture } from "../../picture/picture.ts";
import type { Answers } from "./answers.ts";

/** What a recipe is worked with besides its text. */
export interface GivenHere {
  readonly size?: string;
  /** Body measures by name. */
  readonly measures: readonly (readonly [string, Scalar])[];
}

export interface FileText {
  readonly file: string;
  readonly text: string;
}

/** What is on the table. */
export interface OnTheTable extends FileText {
  readonly given: GivenHere;
}

export type ToWorker =
  /** The recipes that a `use` line may name. */
  | { readonly kind: "shelf"; readonly files: readonly FileText[] }
  | { readonly kind: "work"; readonly turn: number; readonly table: OnTheTable }
  | { readonly kind: "ask"; readonly id: number; readonly what: keyof Answers; readonly with: unknown };

export type FromWorker =
  | { readonly kind: "ready" }
  | { readonly kind: "worked"; readonly turn: number; readonly worked: Worked }
  | { readonly kind: "answer"; readonly id: number; readonly answer: unknown }
  | { readonly kind: "failed"; readonly id?: number; readonly turn?: number; readonly words: string };

/** A line of the recipe's working, as its strip tells it. */
export interface WorkingStep {
  /** From 1, in the opened recipe. */
  readonly line: number;
  readonly piece: string;
  readonly words: string;
}

/** All that the page shows of a recipe. */
export interface Worked {
  /** The text that it came of. */
  readonly text: string;
  readonly picture: Picture;
  readonly findings: readonly Finding[];
  readonly dials: readonly Dial[];
  readonly steps: readonly WorkingStep[];
  readonly sizes: readonly string[];
  /** Measures that it and the recipes it uses ask for, with the value each was worked with, in words. */
  readonly measures: readonly { readonly name: string; readonly words: string }[];
  /** How long the working took in the worker, ms. */
  readonly took: number;
}
