// What the harness throws recipes and drawings at: a part of the program, with what must hold whatever they say.
import type { DrawingKind } from "../../editor/bring-in/drawing-kinds.ts";
import type { Source } from "../../kernel/sources.ts";

/** What a text is: a recipe, or a drawing from elsewhere in one of its formats. */
export type Kind = "recipe" | DrawingKind;

/** A recipe or a drawing to try, and a recipe that is sound: the one it was made from. */
export interface Subject {
  readonly text: string;
  readonly from: Source;
  /** A recipe where nothing is said. */
  readonly kind?: Kind;
}

/** A part of the program; `run` throws where it fails, or where what must hold does not. */
export interface Target {
  readonly name: string;
  /** The kind of text it takes; recipes where nothing is said. */
  readonly takes?: Kind;
  /** Whether it takes so long that a long run gives it only some of the recipes. */
  readonly isDear?: true;
  run(subject: Subject): void | Promise<void>;
  /** Gives back what it holds open. */
  end?(): Promise<void>;
}

/** Whether a target takes a text of this kind. */
export const takes = (target: Target, { kind = "recipe" }: Subject): boolean => (target.takes ?? "recipe") === kind;

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
