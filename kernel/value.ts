// The values a recipe works with, and their arithmetic. Lengths in mm, areas in mm2, angles in radians, weights in g/m2.
import { withArticle } from "../grammar/article.ts";
import type { Path } from "./geometry/path.ts";
import type { Point } from "./geometry/point.ts";
import { Problem } from "./problem.ts";
import type { Dart, Fabric, Piece, Taken } from "./working.ts";

/** The kinds of amount that arithmetic works with. */
export const scalarKinds = ["length", "angle", "number", "area", "weight"] as const;

export type ScalarKind = (typeof scalarKinds)[number];

export interface Scalar {
  readonly kind: ScalarKind;
  readonly value: number;
  /** A 0 written without a unit, which may stand for a length, an angle, an area or a weight. */
  readonly bareZero?: boolean;
}

/** An edge as a value: an edge of a piece, a stretch of one, or a straight line between two places. */
export interface EdgeValue {
  readonly kind: "edge";
  readonly path: Path;
  /** The piece's edge it lies on, when it lies on one. */
  readonly of?: { readonly piece: string; readonly edge: string };
  /** Walked against the way the edge was drafted. */
  readonly turned: boolean;
  /** The edge from end to end, or only a stretch of it. */
  readonly whole: boolean;
  /** What sewing takes up along it. */
  readonly taken: readonly Taken[];
}

export interface PlaceOnPiece {
  readonly kind: "place";
  readonly point: Point;
  /** Its name, when the place is a named one. */
  readonly name?: string;
  /** The piece whose named place it is. */
  readonly of?: { readonly piece: string; readonly place: string };
  /** The edge that it was found on, when it was found by going along one. */
  readonly on?: string;
}

/** A direction of travel, as it was asked for; `headingAt` in direction.ts makes an angle of it where it is used. */
export type Direction =
  | { readonly kind: "direction"; readonly angle: number }
  | { readonly kind: "direction"; readonly toward: Point }
  | { readonly kind: "direction"; readonly along: Path }
  | { readonly kind: "direction"; readonly squareTo: Path };

/** A dart of a piece: its tip and its leg ends are places. */
export interface DartValue {
  readonly kind: "dart";
  readonly dart: Dart;
  readonly of: { readonly piece: string; readonly dart: string };
}

export interface PieceValue {
  readonly kind: "piece";
  readonly piece: Piece;
  /** How the recipe names it: "back", "straight.back". */
  readonly called: string;
  /** Names that failed lines of it would have given. */
  readonly withheld: ReadonlySet<string>;
}

/** The names that a `use` brings in. */
export interface BundleValue {
  readonly kind: "recipe";
  readonly called: string;
  readonly find: (name: string) => Value | undefined;
  readonly names: readonly string[];
}

export type Value =
  | Scalar
  | EdgeValue
  | PlaceOnPiece
  | Direction
  | PieceValue
  | BundleValue
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "truth"; readonly holds: boolean }
  | DartValue
  | { readonly kind: "fabric"; readonly fabric: Fabric };

export const number = (value: number): Scalar => ({ kind: "number", value });
export const length = (millimetres: number): Scalar => ({ kind: "length", value: millimetres });
export const angle = (radians: number): Scalar => ({ kind: "angle", value: radians });
export const truth = (holds: boolean): Value => ({ kind: "truth", holds });

/** What a value is, with its article: "a length", "an edge". */
export const kindInWords = (value: { readonly kind: Value["kind"] }): string => {
  if (value.kind === "number") return "a plain number";
  if (value.kind === "truth") return "a condition";
  return withArticle(value.kind);
};

export const isScalar = (value: Value): value is Scalar => isScalarKind(value.kind);

export const isScalarKind = (kind: string): kind is ScalarKind => (scalarKinds as readonly string[]).includes(kind);

/** The sum or difference of two values of one kind. */
export const added = (left: Value, right: Value, sign: 1 | -1): Scalar => {
  const verb = sign > 0 ? "added to" : "taken from";
  if (!isScalar(left) || !isScalar(right)) {
    const [first, second] = sign > 0 ? [left, right] : [right, left];
    throw new Problem("dimension", `${capital(kindInWords(first))} cannot be ${verb} ${kindInWords(second)}.`);
  }
  const kind = sharedKind(left, right);
  if (kind === undefined) {
    throw new Problem(
      "dimension",
      sign > 0
        ? `${capital(kindInWords(left))} and ${kindInWords(right)} cannot be added.`
        : `${capital(kindInWords(right))} cannot be taken from ${kindInWords(left)}.`,
      left.kind === "number" || right.kind === "number" ? { hint: "Give both sides a unit." } : {},
    );
  }
  return finite({ kind, value: left.value + sign * right.value });
};

export const multiplied = (left: Value, right: Value): Scalar => {
  if (isScalar(left) && isScalar(right)) {
    if (left.kind === "number") return finite({ kind: right.kind, value: left.value * right.value });
    if (right.kind === "number") return finite({ kind: left.kind, value: left.value * right.value });
    if (left.kind === "length" && right.kind === "length")
      return finite({ kind: "area", value: left.value * right.value });
  }
  throw new Problem("dimension", `${capital(kindInWords(left))} cannot be multiplied by ${kindInWords(right)}.`);
};

export const divided = (left: Value, right: Value): Scalar => {
  if (isScalar(left) && isScalar(right)) {
    if (right.value === 0) throw new Problem("division-by-zero", "Nothing can be divided by 0.");
    const value = left.value / right.value;
    if (right.kind === "number") return finite({ kind: left.kind, value });
    if (left.kind === right.kind) return finite({ kind: "number", value });
    if (left.kind === "area" && right.kind === "length") return finite({ kind: "length", value });
    if (left.bareZero) return { kind: "number", value: 0 };
  }
  throw new Problem("dimension", `${capital(kindInWords(left))} cannot be divided by ${kindInWords(right)}.`);
};

export const negated = (value: Value): Scalar => {
  if (!isScalar(value)) throw new Problem("dimension", `A minus cannot stand before ${kindInWords(value)}.`);
  return { ...value, value: value.value === 0 ? 0 : -value.value };
};

/** The kind that both scalars have, a bare 0 taking the other's; undefined when they differ. */
export const sharedKind = (left: Scalar, right: Scalar): ScalarKind | undefined => {
  if (left.kind === right.kind) return left.kind;
  if (left.bareZero) return right.kind;
  if (right.bareZero) return left.kind;
  return undefined;
};

/** Passes a scalar on, unless its value left the numbers. */
export const finite = (value: Scalar): Scalar => {
  if (!Number.isFinite(value.value))
    throw new Problem("number-too-large", "This comes out larger than any number that can be worked with.");
  return value;
};

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
