// The one shape of everything the program has to say about a recipe: where, what is the matter, and what to try.

/** A stretch of a recipe's text, as offsets into it, with the line (from 1) it starts on. */
export interface Where {
  readonly file: string;
  readonly from: number;
  readonly to: number;
  readonly line: number;
  /** The call that led here, when the line stands inside a step of the recipe's own. */
  readonly calledBy?: Where;
}

/** Where in a file a thing was done: there, or at the outermost call in that file that led to it; undefined where none did. */
export const outermostIn = (file: string, where: Where): Where | undefined =>
  (where.calledBy && outermostIn(file, where.calledBy)) ?? (where.file === file ? where : undefined);

/** A change of the text that would mend what is the matter. */
export interface Fix {
  readonly title: string;
  readonly where: Where;
  readonly text: string;
}

/** One finding: a kebab-case code that never changes its meaning, a place, and words for a pattern maker. */
export interface Diagnostic {
  readonly code: string;
  readonly severity: "error" | "warning";
  readonly where: Where;
  readonly message: string;
  /** What to try; starts with a verb. */
  readonly hint?: string;
  readonly related?: readonly { readonly where: Where; readonly message: string }[];
  readonly fix?: Fix;
  /** How often it came up, word for word at the same place, where that was more than once: in a repeat, in a step called again. */
  readonly times?: number;
}

/** What a report may add to its message: what to try, and the text that would mend the stretch, or another stretch. */
export interface More {
  readonly hint?: string;
  readonly replace?: string;
  readonly over?: { readonly from: number; readonly to: number };
}
