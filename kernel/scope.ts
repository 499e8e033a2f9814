// Names and what they stand for, block within block. A name is given once, and only lines below may use it.
import type { Value } from "./value.ts";

export type Bound =
  | { readonly kind: "value"; readonly value: Value }
  /** Another way to say the name of an edge or place of the piece, as it is at the time. */
  | { readonly kind: "alias"; readonly of: string }
  /** The line that would have made it failed. */
  | { readonly kind: "withheld" };

/**
 * How a block stands to the piece at hand: it is the piece's own block; a block of another kind within or outside of one;
 * or that of a step of the recipe's own, which sees the piece it is called in, and may use its names for things of its own.
 */
export type Sight = "piece" | "through" | "called";

/** One block's names. */
export class Scope {
  readonly names = new Map<string, Bound>();
  readonly outer: Scope | undefined;
  readonly sight: Sight;
  /** Names of edges and places drawn here stay inside: the piece keeps them under hidden names. */
  readonly hidesDrawn: boolean;

  constructor(outer: Scope | undefined, sight: Sight, hidesDrawn: boolean) {
    this.outer = outer;
    this.sight = sight;
    this.hidesDrawn = hidesDrawn;
  }

  /** What a name stands for here or in the blocks around, asking the piece where its turn comes. */
  find(name: string, inPiece: (name: string) => Bound | undefined): Bound | undefined {
    for (let scope: Scope | undefined = this; scope; scope = scope.outer) {
      const bound = scope.names.get(name) ?? (scope.sight === "through" ? undefined : inPiece(name));
      if (bound) return bound;
    }
    return undefined;
  }

  /** Whether the name is already given in this block, or in those around it up to the piece or the file. */
  isGiven(name: string, inPiece: (name: string) => Bound | undefined): boolean {
    for (let scope: Scope | undefined = this; scope; scope = scope.outer) {
      if (isThere(scope.names.get(name))) return true;
      if (scope.sight === "piece") return isThere(inPiece(name));
      if (scope.sight === "called") return false;
    }
    return false;
  }

  /** The innermost block that gives the name; this one where none does. */
  whereGiven(name: string): Scope {
    for (let scope: Scope | undefined = this; scope; scope = scope.outer) {
      if (scope.names.has(name)) return scope;
    }
    return this;
  }

  /** The names that are given here by now; later ones are not seen. */
  asItIs(): Scope {
    const copy = new Scope(this.outer, this.sight, this.hidesDrawn);
    for (const [name, bound] of this.names) copy.names.set(name, bound);
    return copy;
  }

  /** All names that can be used here, for suggestions. */
  visible(pieceNames: readonly string[]): string[] {
    const names: string[] = [];
    for (let scope: Scope | undefined = this; scope; scope = scope.outer) {
      names.push(...scope.names.keys(), ...(scope.sight === "through" ? [] : pieceNames));
    }
    return names;
  }
}

/** A failed line gave nothing: the name is free for a line below that gives it. */
const isThere = (bound: Bound | undefined): boolean => bound !== undefined && bound.kind !== "withheld";
