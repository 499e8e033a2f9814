// How the kernel comes by the text of recipes: somebody else reads files, and says in plain words when one cannot be read.

/** A recipe's text, and the name by which findings point at it. */
export interface Source {
  readonly file: string;
  readonly text: string;
}

/** Why a file is not there to be read. */
export interface Unreadable {
  readonly problem: { readonly code: string; readonly message: string; readonly hint?: string };
}

export interface Sources {
  /** The recipe at `path`, as written in the recipe `from`. The same file always has the same `file` name. */
  read(path: string, from: string): Source | Unreadable;
}

/** Sources for a recipe that stands alone. */
export const noSources: Sources = {
  read: () => ({ problem: { code: "use-unavailable", message: "No other recipes can be read here." } }),
};
