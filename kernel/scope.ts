// Names and what they stand for, block within block. A name is given once, and only lines below may use it.
import type { Value } from "./value.ts";

export type Bound =
  | { readonly kind: "value"; readonly value: Value }
  /** Another way to say the name of an edge or place of the piece, as it is at the time. */
  | { readonly kind: "alias"; readonly of: string }
  /** The line that would have made it failed. */
  | { readonly kind: "withheld" };

/** One block's names. */
export class Scope {
  readonly names = new Map<string, Bound>();
  readonly outer: Scope | undefined;
  /** A piece's own names come right after this block's, before those outside. */
  readonly seesPiece: boolean;
  /** Names of edges and places drawn here stay inside: the piece keeps them under hidden names. */
  readonly hidesDrawn: boolean;

  constructor(outer: Scope | undefined, seesPiece: boolean, hidesDrawn: boolean) {
    this.outer = outer;
    this.seesPiece = seesPiece;
    this.hidesDrawn = hidesDrawn;
  }

  /** What a name stands for here or in the blocks around, asking the piece where its turn comes. */
  find(name: string, inPiece: (name: string) => Bound | undefined): Bound | undefined {
    for (let scope: Scope | undefined = this; scope; scope = scope.outer) {
      const bound = scope.names.get(name) ?? (scope.seesPiece ? inPiece(name) : undefined);
      if (bound) return bound;
    }
    return undefined;
  }

  /** Whether the name is already given in this block, or in those around it up to the piece or the file. */
  isGiven(name: string, inPiece: (name: string) => Bound | undefined): boolean {
    for (let scope: Scope | undefined = this; scope; scope = scope.outer) {
      if (scope.names.has(name) || (scope.seesPiece && inPiece(name))) return true;
      if (scope.seesPiece) return false;
    }
    return false;
  }

  /** All names that can be used here, for suggestions. */
  visible(pieceNames: readonly string[]): string[] {
    const names: string[] = [];
    for (let scope: Scope | undefined = this; scope; scope = scope.outer) {
      names.push(...scope.names.keys(), ...(scope.seesPiece ? pieceNames : []));
    }
    return names;
  }
}
