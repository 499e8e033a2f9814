// A line's way to stop: thrown where a recipe asks for something that cannot be, caught in evaluate.ts and nowhere else.
import type { Stretch } from "../grammar/tree.ts";

export interface ProblemDetails {
  /** What to try; starts with a verb. */
  readonly hint?: string;
  /** The stretch of text that is to blame; the whole line where not said. */
  readonly at?: Stretch;
  /** The slot of the step's sentence that is to blame, where a step raises it, and which of its values if it takes several. */
  readonly slot?: string;
  readonly value?: number;
  /** Text that would mend the stretch. */
  readonly replace?: string;
  /** Another stretch of the same recipe that has a part in it. */
  readonly related?: readonly { readonly where: import("../grammar/diagnostic.ts").Where; readonly message: string }[];
}

/** A mistake in a recipe, in a pattern maker's words. */
export class Problem extends Error {
  readonly code: string;
  readonly details: ProblemDetails;

  constructor(code: string, message: string, details: ProblemDetails = {}) {
    super(message);
    this.code = code;
    this.details = details;
  }

  /** The same problem, pinned to a stretch of text unless it already has one. */
  at(stretch: Stretch): Problem {
    if (this.details.at) return this;
    const Kind = this.constructor as typeof Problem;
    return new Kind(this.code, this.message, { ...this.details, at: stretch });
  }
}

/** A line uses something that a failed line above would have made; it is passed over in silence, since that line has said why. */
export class Withheld extends Error {}

/** A recipe that cannot be worked at all; one that uses it goes on without it. */
export class RecipeRefused extends Problem {}

/** A limit of the language was reached: working stops, and what is there so far is shown. */
export class LimitReached extends Problem {}
