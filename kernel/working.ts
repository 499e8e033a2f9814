// What is known of a garment while its recipe is worked through: plain readonly data, lengths in mm, y down.
// A step never changes a piece; it makes a new one that shares all that stayed the same.
import type { Where } from "../grammar/diagnostic.ts";
import type { Path } from "./geometry/path.ts";
import type { Point } from "./geometry/point.ts";

/** The part an edge plays on the finished piece. */
export type Role = "seam" | "hem" | "fold" | "opening";

/** A named line of a piece; its path runs as it was drafted, whatever way the outline walks it. */
export interface Edge {
  readonly name: string;
  readonly path: Path;
  readonly role: Role;
  readonly drawnBy: Where;
}

/** One edge's turn in the outline; `turned` when the outline walks it from its end. */
export interface OutlinePart {
  readonly edge: string;
  readonly turned: boolean;
}

export interface NamedPlace {
  readonly name: string;
  readonly point: Point;
  readonly drawnBy: Where;
}

export interface Notch {
  readonly edge: string;
  readonly point: Point;
  readonly double: boolean;
  readonly drawnBy: Where;
}

/** How the cutting lines of two allowances meet at a corner. */
export type Corners = "point" | "square" | "turned" | "cut";

export interface Allowance {
  /** Width in mm, square to the sewing line; 0 says on purpose that there is none. */
  readonly width: number;
  readonly corners: Corners;
  readonly drawnBy: Where;
}

/** A grain line between two places of the piece, or one that goes wherever an edge goes. */
export type Grain =
  | { readonly kind: "line"; readonly from: Point; readonly to: Point; readonly drawnBy: Where }
  | { readonly kind: "along"; readonly edge: string; readonly drawnBy: Where };

/** Where a slash was hinged inside an edge: the spot that has a corner until it is trued. */
export interface Hinge {
  readonly edge: string;
  readonly point: Point;
  readonly drawnBy: Where;
}

/** From a spot of an outline edge on, up to the next such spot or the edge's end as drafted, how far the cloth has turned. */
export interface Turned {
  readonly edge: string;
  readonly from: Point;
  /** Radians since it was drafted, clockwise on the page. */
  readonly angle: number;
  /** The same at the spot itself, where two parts may meet: that of the one which stayed. */
  readonly here: number;
}

/** A promise that an edge measures what it measured before. */
export interface Keep {
  readonly edge: string;
  /** Length in mm that the edge must have, and whose length that is ("straight.back"). */
  readonly wanted: number;
  readonly of: string;
  /** Held to a piece that the recipe named with `as`, and not to the piece's own past. */
  readonly as: boolean;
  readonly drawnBy: Where;
}

export interface Drill {
  readonly point: Point;
  readonly drawnBy: Where;
}

export interface Label {
  readonly text: string;
  /** Where it stands; where not said, the drawing chooses. */
  readonly at?: Point;
  readonly drawnBy: Where;
}

/** A wedge that is folded shut and stitched, so that its edge loses what lies between the two legs. */
export interface Dart {
  readonly name: string;
  /** The edge that its mouth lies on; the edge's path runs across the mouth, as it is cut. */
  readonly edge: string;
  /** The ends of its legs on the edge, in the direction in which the edge was drafted. */
  readonly first: Point;
  readonly second: Point;
  readonly tip: Point;
  /** Of a double-ended dart, whose mouth lies on a line inside the piece: its lower tip; `tip` is the upper one. */
  readonly lower?: Point;
  /** The edge it is pressed toward; where not said, down or toward the center as is the custom. */
  readonly folded?: string;
  readonly drawnBy: Where;
}

/** Cloth along an edge that sewing takes up: pleats, gathers or ease worked into it. */
export interface TakeUp {
  readonly kind: "pleat" | "gather" | "ease";
  readonly edge: string;
  /** The stretch of the edge it lies in, in the direction in which the edge was drafted. */
  readonly from: Point;
  readonly to: Point;
  /** How much shorter, in mm, the stretch is once sewn. */
  readonly amount: number;
  /** Of a pleat: the end of the edge that its fold is laid toward, and how far into the cloth its lines are drawn, mm. */
  readonly laid?: "start" | "end";
  readonly long?: number;
  readonly drawnBy: Where;
}

/** One part of a garment. */
export interface Piece {
  readonly name: string;
  /** The piece this one was copied from, whole, and how the recipe names it; the "before" of every comparison. */
  readonly source?: Piece;
  readonly from?: string;
  /** The piece that `keep` measures against: the source, or this piece as the last `strip` left it. */
  readonly kept?: Piece;
  /** All edges by name: those of the outline, and inner or construction lines. */
  readonly edges: ReadonlyMap<string, Edge>;
  readonly places: ReadonlyMap<string, NamedPlace>;
  /** The boundary in order; empty until it is drawn. */
  readonly outline: readonly OutlinePart[];
  readonly allowances: ReadonlyMap<string, Allowance>;
  readonly grain?: Grain;
  readonly notches: readonly Notch[];
  readonly drills: readonly Drill[];
  readonly labels: readonly Label[];
  readonly hinges: readonly Hinge[];
  readonly darts: ReadonlyMap<string, Dart>;
  readonly takeUps: readonly TakeUp[];
  /** How far parts of the outline have turned, edge by edge as drafted; what no entry speaks of lies as it was drafted. */
  readonly turned?: readonly Turned[];
  readonly keeps: readonly Keep[];
  /** A line of this piece failed: what follows from it is not judged, so that one mistake gives one message. */
  readonly doubtful: boolean;
  readonly drawnBy: Where;
}

export interface Fabric {
  readonly name: string;
  readonly title: string;
  /** Width in mm; undefined when the recipe does not say. */
  readonly width?: number;
  /** Weight in g/m2. */
  readonly weight?: number;
  /** Bending length in mm (ASTM D1388 sense). */
  readonly bendingLength?: number;
  /** Shrinkage as a ratio of the length and of the width. */
  readonly shrinkLength?: number;
  readonly shrinkWidth?: number;
  readonly oneWay: boolean;
  readonly drawnBy: Where;
}

/** A stretch of edge as one side of a seam walks it. */
export interface Run {
  /** Piece and edge it lies on. */
  readonly piece: string;
  readonly edge: string;
  /** The stretch in the direction it is sewn. */
  readonly path: Path;
  /** True when it is walked against the way it was drafted. */
  readonly turned: boolean;
  /** True when it is the edge from end to end. */
  readonly whole: boolean;
  /** Stretches of it that sewing takes up. */
  readonly taken: readonly Taken[];
}

/** A stretch of an edge that is shorter once sewn: the mouth of a dart, a pleat, gathers. */
export interface Taken {
  readonly from: Point;
  readonly to: Point;
  /** How much shorter, in mm. */
  readonly amount: number;
}

/** Two lists of edges that are sewn together; each list is laid end to end, and both start together. */
export interface Seam {
  readonly first: readonly Run[];
  readonly second: readonly Run[];
  /** By how much, in mm, the first list is longer on purpose. */
  readonly ease: number;
  /** How much, in mm, they may be off. */
  readonly within: number;
  readonly drawnBy: Where;
}

export interface Cut {
  readonly piece: string;
  readonly count: number;
  readonly fabric: string;
  readonly drawnBy: Where;
}

/** Edges that go round the body together, on one garment. */
export interface Round {
  /** By name: "back.hem", "coat.back.hem". */
  readonly edges: readonly string[];
  /** Their length as sewn, mm, all taken together. */
  readonly length: number;
}

/** A stretch of this garment that is worn over a stretch of another. */
export interface WornOver {
  readonly outer: Round;
  readonly under: Round;
  /** By how much, in mm, the outer one is to be longer; the check has its own where not said. */
  readonly wider?: number;
  /** Whether all edges of the outer one are hems. */
  readonly isHem: boolean;
  readonly drawnBy: Where;
}

/** What holds a piece in the hang preview where the recipe says so. */
export interface Hang {
  readonly piece: string;
  /** Stretches of outline edges that are held all along, each from one ratio of the edge's length as drafted to another. */
  readonly edges: readonly { readonly edge: string; readonly from: number; readonly to: number }[];
  /** Single spots that are held, each at a ratio of an outline edge's length as drafted. */
  readonly spots: readonly { readonly edge: string; readonly at: number }[];
  readonly drawnBy: Where;
}

/** A built-in check waived on purpose, with the reason. */
export interface Acceptance {
  readonly check: string;
  /** What it is waived on: "back", "back.hem" or "back.nape". */
  readonly on: string;
  readonly because: string;
  readonly drawnBy: Where;
}

export type Verdict = "pass" | "warning" | "error" | "accepted";

/** What a check found on one thing. */
export interface Judgement {
  /** The thing judged: "back", "back.hem", "front.side with back.side". */
  readonly on: string;
  readonly verdict: "pass" | "warning" | "error";
  /** What it is and what it ought to be: mm, degrees, a count, or words. */
  readonly found: number | string;
  readonly wanted: number | string;
  readonly where: Where;
  /** One sentence for a pattern maker, with number and unit: what is. */
  readonly message: string;
  readonly hint?: string;
  readonly related?: readonly { readonly where: Where; readonly message: string }[];
}

/** A judgement with the check it came from, after acceptances. */
export interface Judged extends Omit<Judgement, "verdict"> {
  readonly check: string;
  readonly verdict: Verdict;
  /** Why it was accepted. */
  readonly because?: string;
}

export type Units = "in" | "cm" | "mm";

/** A garment as a finished recipe leaves it. */
export interface Garment {
  readonly title: string;
  readonly file: string;
  readonly units: Units;
  readonly pieces: ReadonlyMap<string, Piece>;
  readonly fabrics: ReadonlyMap<string, Fabric>;
  readonly seams: readonly Seam[];
  readonly cuts: readonly Cut[];
  /** Over what it is worn; none where the recipe does not say. */
  readonly wornOver?: readonly WornOver[];
  /** What its pieces hang from; none where the recipe leaves it to the preview. */
  readonly hangs?: readonly Hang[];
  readonly accepts: readonly Acceptance[];
  /** A line failed: what is missing may be missing for that reason alone. */
  readonly incomplete: boolean;
}
