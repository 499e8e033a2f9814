// The one body that a whole garment is drafted for: what measures are worth, across all recipes that are used.
import type { Where } from "../grammar/diagnostic.ts";
import type { Scalar } from "./value.ts";

/** A measure as a recipe declared it. */
export interface DeclaredMeasure {
  readonly standard: Scalar;
  readonly where: Where;
}

/** Values given from outside (a body file, a size, the command line), and the defaults of the recipes. */
export class Body {
  /** Measures given from outside, by name; they win over every default. */
  readonly given: ReadonlyMap<string, Scalar>;
  /** Declared by the recipe that was opened: its default reaches every recipe it uses. */
  readonly root = new Map<string, DeclaredMeasure>();
  /** Declared by used recipes only. */
  readonly used = new Map<string, DeclaredMeasure>();

  constructor(given: ReadonlyMap<string, Scalar>) {
    this.given = given;
  }

  /** What a measure is worth, a recipe's own default being the last resort. */
  worth(name: string, standard: Scalar): Scalar {
    return this.given.get(name) ?? this.root.get(name)?.standard ?? this.used.get(name)?.standard ?? standard;
  }
}
