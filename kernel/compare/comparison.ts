// What changed between two garments, as data: lengths in mm, areas in square mm, angles in degrees. Only what differs by more
// than can be told is in it, so that two garments that are alike come out empty.
import type { Point } from "../geometry/point.ts";
import type { Json } from "../report/json.ts";
import type { Verdict } from "../working.ts";

/** A value before and after; null where it is not there. */
export interface BeforeAndAfter<T> {
  readonly before: T | null;
  readonly after: T | null;
}

export interface ChangedValue extends BeforeAndAfter<Json> {
  readonly name: string;
  /** Both in words, in units of the recipe. */
  readonly words: BeforeAndAfter<string>;
}

/** An edge that is longer or shorter as sewn, that runs elsewhere, or that only one of the pieces has. */
export interface ChangedEdge extends BeforeAndAfter<number> {
  readonly name: string;
  /** After less before; null where there is nothing to hold it against. */
  readonly difference: number | null;
  /** How far the edge has left where it ran, at most, among the spots looked at. */
  readonly moved: number | null;
  /** A construction line, and no part of the outline. */
  readonly isInner: boolean;
}

export interface ChangedPlace extends BeforeAndAfter<Point> {
  readonly name: string;
  /** How far it has moved once the two pieces are laid on one another. */
  readonly moved: number | null;
}

/** A corner where two neighbouring edges meet. */
export interface ChangedCorner {
  /** The two edges by name, in alphabetical order. */
  readonly edges: readonly [string, string];
  /** The angle inside the piece, degrees. */
  readonly angle: BeforeAndAfter<number>;
  readonly moved: number | null;
}

/** Anything else that a piece says of itself: "allowance of hem", "notch on side", with what it measures. */
export interface ChangedMark extends BeforeAndAfter<number | string> {
  readonly kind:
    | "lies"
    | "part"
    | "allowance"
    | "corners"
    | "notch"
    | "dart"
    | "taken up"
    | "grain"
    | "label"
    | "drill";
  /** The edge, dart or label that it is about; empty for the grain. */
  readonly on: string;
  /** What is measured: a length in mm, an angle in degrees, or words. */
  readonly measures: "length" | "angle" | "words";
}

export interface ChangedArea extends BeforeAndAfter<number> {
  /** Cloth inside the sewing lines of after that is not inside those of before, and the other way round. */
  readonly added: number;
  readonly removed: number;
}

export interface Renamed {
  readonly kind: "edge" | "place";
  readonly before: string;
  readonly after: string;
}

export interface ChangedPiece {
  /** Its name after; before, where it is gone. */
  readonly name: string;
  readonly status: "changed" | "added" | "removed" | "renamed";
  /** What it was called before: its own name, another, or null where it is new. */
  readonly from: string | null;
  readonly edges: readonly ChangedEdge[];
  readonly places: readonly ChangedPlace[];
  readonly corners: readonly ChangedCorner[];
  readonly marks: readonly ChangedMark[];
  readonly renamed: readonly Renamed[];
  /** Null while one of the outlines stands open. */
  readonly area: ChangedArea | null;
}

/** How a seam fits. */
export interface SeamFit {
  /** All in mm; the difference is the first list less the second. */
  readonly firstLength: number;
  readonly secondLength: number;
  readonly difference: number;
  readonly ease: number;
  readonly verdict: Verdict | null;
}

export interface ChangedSeam extends BeforeAndAfter<SeamFit> {
  /** "front.side with back.side". */
  readonly name: string;
}

/** A check that began to fail, or ceased to. */
export interface ChangedCheck {
  /** The check, or the code of what was the matter with a line that failed. */
  readonly check: string;
  /** What it is about; empty for a line that failed. */
  readonly on: string;
  readonly message: string;
  readonly severity: "warning" | "error";
  readonly file: string;
  readonly line: number;
}

/** A thing of the comparison by its kind and name, such as the edge "back.hem". */
export interface Fact {
  readonly kind: "value" | "piece" | "edge" | "place" | "corner" | "mark" | "area" | "seam" | "check" | "cut";
  readonly name: string;
}

/** An edited line, and what taking that one edit back would undo. */
export interface Cause {
  readonly file: string;
  /** The line after; where lines were only taken out, the line that now stands there. */
  readonly line: number;
  readonly text: string;
  /** The text of before; empty where lines were put in. */
  readonly was: string;
  /** Wholly undone; what is undone in part stands in `eases`. */
  readonly undoes: readonly Fact[];
  readonly eases: readonly Fact[];
  /** By how much, mm, less the length of an edge would have changed, by "piece.edge". */
  readonly shifts: ReadonlyMap<string, number>;
  /** The recipe does not work with this edit alone taken back; where others like it, taken back together, undo something, they are one cause. */
  readonly isBound: boolean;
}

export interface ChangedCut extends BeforeAndAfter<string> {
  /** The piece, or the cloth. */
  readonly name: string;
}

/** All that changed, the most consequential first. */
export interface Comparison {
  readonly values: readonly ChangedValue[];
  readonly pieces: readonly ChangedPiece[];
  readonly seams: readonly ChangedSeam[];
  /** What is cut out of which cloth, and the cloth itself, in words. */
  readonly cuts: readonly ChangedCut[];
  readonly checks: { readonly began: readonly ChangedCheck[]; readonly ceased: readonly ChangedCheck[] };
}

/** Whether nothing at all changed in the garment. */
export const isUnchanged = ({ values, pieces, seams, cuts, checks }: Comparison): boolean =>
  [values, pieces, seams, cuts, checks.began, checks.ceased].every((list) => list.length === 0);
