// A change that is offered where the cursor stands.
import type { TextEdit } from "../text-edit.ts";

export interface CodeAction {
  readonly title: string;
  readonly kind: "quickfix" | "refactor.extract" | "refactor.rewrite";
  readonly edits: readonly TextEdit[];
  /** In the text of the opened file after the edits: what to type over next. */
  readonly select?: { readonly from: number; readonly to: number };
  /** The code of the finding that it answers. */
  readonly code?: string;
  /** Whether the garment stays the same shows only when it is worked again: ask `tried` before it is done. */
  readonly isUntried?: true;
  /** Why it cannot be done here; there are no edits then. */
  readonly refused?: string;
}
