// What the page hands to the full editor, which stands in a script of its own and shares nothing else with it.
import type { Finding } from "../../assist/findings.ts";
import type { TextHolder } from "../text-holder.ts";
import type { KernelLine } from "../worker/kernel-line.ts";

export interface OpenedWith {
  readonly place: HTMLElement;
  readonly file: string;
  readonly text: string;
  /** Offset of the cursor. */
  readonly cursor: number;
  readonly isDark: boolean;
  readonly ask: KernelLine["ask"];
  /** The user has typed. */
  typed(text: string): void;
  /** The cursor stands on this line, from 1; by the user's own hand, or because the page put it there. */
  onLine(line: number, isByHand: boolean): void;
  /** The hand is over a line of the text; undefined when it has left. */
  overLine(line: number | undefined): void;
  /** Lays another recipe on the table and shows a line of it. */
  openFile(file: string, line: number): void;
  /** The text of a recipe on the shelf. */
  textOf(file: string): string | undefined;
  /** Turns the number at an offset by so many of its strides; false when no number stands there. */
  turnAt(offset: number, strides: number): boolean;
  /** The hand lets go of the number. */
  letGo(): void;
  /** Tells the user why something was not done. */
  tell(words: string): void;
  /** Keys of the page's that work in the text too. */
  save(): void;
}

export interface FullEditor extends TextHolder {
  /** Findings as wavy lines, with their fixes. */
  find(findings: readonly Finding[]): void;
  /** Lines to light up because the hand is on something they drew; first the one that drew it. */
  light(lines: readonly number[]): void;
  /** Shows or hides the values at the ends of lines. */
  tellValues(isTold: boolean): void;
  dye(isDark: boolean): void;
  focus(): void;
}
