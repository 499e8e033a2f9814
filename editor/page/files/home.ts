// Where recipes live: in a folder that the local server has open, or, for a page that stands alone, in the recipes that came
// with it and whatever the user opens by hand.
import type { FileText } from "../worker/spoken.ts";

export interface KeptHere extends FileText {
  /** Tells one content on the disk from another; null when there is no file yet. */
  readonly mark: string | null;
}

export type SavedHere =
  | { readonly mark: string }
  /** The disk holds something else than was expected; null when the file is gone. */
  | { readonly differs: KeptHere | null }
  | { readonly problem: string };

export interface Home {
  /** What the folder is called. */
  readonly name: string;
  /** Files can be saved in place. */
  readonly saves: boolean;
  readonly recipes: readonly KeptHere[];
  /** The marks of all files now; undefined where nobody else could change them, or the server cannot be reached. */
  marks(): Promise<ReadonlyMap<string, string> | undefined>;
  read(file: string): Promise<KeptHere | undefined>;
  save(file: string, text: string, was: string | null): Promise<SavedHere>;
}
