// What the harness throws recipes at: a part of the program, with what must hold whatever the recipe says.
import type { Source } from "../../kernel/sources.ts";

/** A recipe to try, and the recipe it was made from, which is sound. */
export interface Subject {
  readonly text: string;
  readonly from: Source;
}

/** A part of the program; `run` throws where it fails, or where what must hold does not. */
export interface Target {
  readonly name: string;
  run(subject: Subject): void | Promise<void>;
  /** Gives back what it holds open. */
  end?(): Promise<void>;
}

/** A property that does not hold; `what` is the same for every recipe that breaks it, `detail` is not. */
export class Broken extends Error {
  readonly what: string;

  constructor(what: string, detail = "") {
    super(detail === "" ? what : `${what}: ${detail}`);
    this.what = what;
  }
}

/** Throws unless the property holds. */
export const holds = (it: boolean, what: string, detail = ""): void => {
  if (!it) throw new Broken(what, detail);
};
