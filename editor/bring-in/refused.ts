// Why a drawing cannot be brought in. Thrown where it is found and caught in brought-in.ts, nowhere else.

/** A drawing that is not read any further. */
export class Refused extends Error {
  /** The line of the file, counted from 1; undefined where it is about the file as a whole. */
  readonly line: number | undefined;
  /** What to try, as a sentence that begins with a verb. */
  readonly hint: string | undefined;

  constructor(message: string, where: { readonly line?: number; readonly hint?: string } = {}) {
    super(message);
    this.line = where.line;
    this.hint = where.hint;
  }
}
