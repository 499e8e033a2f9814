// Whatever the user types in: a plain field at first, the full editor once it has loaded.
import type { TextPart } from "../assist/text-edit.ts";

export interface TextHolder {
  /** Takes another file; what was typed before cannot be undone into it. */
  lay(name: string, text: string): void;
  /** Changes stretches that do not overlap. From "begin" to "end" all changes are one to undo; "whole" is one by itself. */
  edit(parts: readonly TextPart[], stroke: "whole" | "begin" | "more" | "end"): void;
  /** Shows a line (from 1) or a stretch and puts the cursor there. */
  goTo(place: { readonly line: number } | { readonly from: number; readonly to: number }): void;
}
