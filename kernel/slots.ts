// The kinds of thing that a step may ask for: how a slot is declared, and how the value that fills it becomes a T.
import type { Slot, TypedSlot } from "../grammar/phrase.ts";
import type { Point } from "./geometry/point.ts";
import type { Direction, EdgeValue, PieceValue, PlaceOnPiece, Scalar, Value } from "./value.ts";
import type { Corners, Fabric, Role } from "./working.ts";

/** A slot that knows how to take a value; `undefined` says that the value does not fit. */
export interface KernelSlot<N extends string, T> extends TypedSlot<N, T> {
  /** What the slot accepts, so that the evaluator may look names up the right way. */
  readonly takes: Takes;
  readonly read?: (value: Value) => unknown;
}

export type Takes =
  | "place"
  | "edge"
  | "own-edge"
  | "own-place"
  | "own-dart"
  | "own-dart-of-any-form"
  | "toward-own-edge"
  | "edge-or-place"
  | "length"
  | "length-or-angle"
  | "angle"
  | "number"
  | "weight"
  | "text"
  | "piece"
  | "fabric"
  | "direction"
  | "name"
  | "choice";

type More = Partial<Pick<Slot, "many" | "choices" | "suffix" | "shape">>;

const slot = <N extends string, T>(
  name: N,
  note: string,
  wanted: string,
  takes: Takes,
  read?: (value: Value) => unknown,
  more: More = {},
): KernelSlot<N, T> => ({
  name,
  note,
  wanted,
  takes,
  shape: "value",
  many: false,
  ...(read && { read }),
  ...more,
});

/** A new name. */
export const name = <N extends string>(key: N, note: string): KernelSlot<N, string> =>
  slot(key, note, "a name", "name", undefined, { shape: "name" });

/** Several new names, with commas between them. */
export const names = <N extends string>(key: N, note: string): KernelSlot<N, readonly string[]> =>
  slot(key, note, "a name", "name", undefined, { shape: "name", many: true });

/** A place anywhere on the table. */
export const place = <N extends string>(key: N, note: string): KernelSlot<N, Point> =>
  slot(key, note, "a place", "place", readPoint);

/** A place, with what is known of where it was found. */
export const placeOnPiece = <N extends string>(key: N, note: string): KernelSlot<N, PlaceOnPiece> =>
  slot(key, note, "a place", "place", readPlace);

export const placesOnPiece = <N extends string>(key: N, note: string): KernelSlot<N, readonly PlaceOnPiece[]> =>
  slot(key, note, "a place", "place", readPlace, { many: true });

/** A place of this piece that has a name. */
export const ownPlace = <N extends string>(key: N, note: string): KernelSlot<N, string> =>
  slot(key, note, "a named place of this piece", "own-place");

/** A dart of this piece, by name, whether it opens on an edge or is double-ended. */
export const ownDartOfAnyForm = <N extends string>(key: N, note: string): KernelSlot<N, string> =>
  slot(key, note, "a dart of this piece", "own-dart-of-any-form");

/** A dart of this piece that opens on an edge, by name. */
export const ownDart = <N extends string>(key: N, note: string): KernelSlot<N, string> =>
  slot(key, note, "a dart of this piece", "own-dart");

/** An edge of this piece behind the word toward: `folded toward center`. */
export const towardEdge = <N extends string>(key: N, note: string): KernelSlot<N, string> =>
  slot(key, note, "toward an edge", "toward-own-edge", undefined, { shape: "direction" });

export const places = <N extends string>(key: N, note: string): KernelSlot<N, readonly Point[]> =>
  slot(key, note, "a place", "place", readPoint, { many: true });

/** An edge, or a stretch of one, or a line between two places: its path counts. */
export const edge = <N extends string>(key: N, note: string): KernelSlot<N, EdgeValue> =>
  slot(key, note, "an edge", "edge", readEdge);

export const edges = <N extends string>(key: N, note: string): KernelSlot<N, readonly EdgeValue[]> =>
  slot(key, note, "an edge", "edge", readEdge, { many: true });

/** An edge of this piece, by name. */
export const ownEdge = <N extends string>(key: N, note: string): KernelSlot<N, string> =>
  slot(key, note, "an edge of this piece", "own-edge");

export const ownEdges = <N extends string>(key: N, note: string): KernelSlot<N, readonly string[]> =>
  slot(key, note, "an edge of this piece", "own-edge", undefined, { many: true });

/** An edge of this piece by name, or a place. */
export const ownEdgeOrPlace = <N extends string>(
  key: N,
  note: string,
): KernelSlot<N, { readonly edge: string } | { readonly place: Point }> =>
  slot(key, note, "an edge of this piece or a place", "edge-or-place");

export const length = <N extends string>(key: N, note: string): KernelSlot<N, number> =>
  slot(key, note, "a length", "length", (value) => readScalar(value, "length"));

export const lengths = <N extends string>(key: N, note: string): KernelSlot<N, readonly number[]> =>
  slot(key, note, "a length", "length", (value) => readScalar(value, "length"), { many: true });

/** A length, or an angle. */
export const lengthOrAngle = <N extends string>(
  key: N,
  note: string,
): KernelSlot<N, { readonly length: number } | { readonly angle: number }> =>
  slot(key, note, "a length or an angle", "length-or-angle", (value) => {
    const millimetres = readScalar(value, "length");
    if (millimetres !== undefined) return { length: millimetres };
    const radians = readScalar(value, "angle");
    return radians === undefined ? undefined : { angle: radians };
  });

export const angle = <N extends string>(key: N, note: string): KernelSlot<N, number> =>
  slot(key, note, "an angle", "angle", (value) => readScalar(value, "angle"));

export const number = <N extends string>(key: N, note: string): KernelSlot<N, number> =>
  slot(key, note, "a plain number", "number", (value) => readScalar(value, "number"));

export const numbers = <N extends string>(key: N, note: string): KernelSlot<N, readonly number[]> =>
  slot(key, note, "a plain number", "number", (value) => readScalar(value, "number"), { many: true });

/** A whole number right behind the first operand: `cut front 2`. */
export const count = <N extends string>(key: N, note: string): KernelSlot<N, number> =>
  slot(key, note, "a whole number", "number", (value) => readScalar(value, "number"), { shape: "count" });

export const weight = <N extends string>(key: N, note: string): KernelSlot<N, number> =>
  slot(key, note, "a weight", "weight", (value) => readScalar(value, "weight"));

export const text = <N extends string>(key: N, note: string): KernelSlot<N, string> =>
  slot(key, note, "a text", "text", (value) => (value.kind === "text" ? value.text : undefined));

export const direction = <N extends string>(key: N, note: string): KernelSlot<N, Direction> =>
  slot(key, note, "a direction", "direction", readDirection, { shape: "direction" });

/** One word out of a few. */
export const choice = <N extends string, const C extends readonly string[]>(
  key: N,
  note: string,
  choices: C,
): KernelSlot<N, C[number]> => slot(key, note, "a word", "choice", undefined, { shape: "choice", choices });

export const role = <N extends string>(key: N): KernelSlot<N, Role> =>
  choice(key, "the part it plays", ["seam", "hem", "fold", "opening"]);

export const corners = <N extends string>(key: N): KernelSlot<N, Corners> =>
  choice(key, "how the cutting lines meet at its ends", ["point", "square", "turned", "cut"]);

export const piece = <N extends string>(key: N, note: string): KernelSlot<N, PieceValue> =>
  slot(key, note, "a piece", "piece", (value) => (value.kind === "piece" ? value : undefined));

export const fabric = <N extends string>(key: N, note: string): KernelSlot<N, Fabric> =>
  slot(key, note, "a fabric", "fabric", (value) => (value.kind === "fabric" ? value.fabric : undefined));

/** Places to pass through, each with the direction of travel there where it is said. */
export const waypoints = <N extends string>(
  key: N,
  note: string,
): KernelSlot<N, readonly { readonly value: Point; readonly suffix?: Direction }[]> => ({
  ...slot<N, readonly { readonly value: Point; readonly suffix?: Direction }[]>(
    key,
    note,
    "a place",
    "place",
    readPoint,
    {
      many: true,
    },
  ),
  suffix: { word: "heading", slot: direction("heading", "the direction of travel there") },
});

const readPlace = (value: Value): PlaceOnPiece | undefined => (value.kind === "place" ? value : undefined);
const readPoint = (value: Value): Point | undefined => (value.kind === "place" ? value.point : undefined);
const readEdge = (value: Value): EdgeValue | undefined => (value.kind === "edge" ? value : undefined);

const readDirection = (value: Value): Direction | undefined => {
  if (value.kind === "direction") return value;
  const radians = readScalar(value, "angle");
  return radians === undefined ? undefined : { kind: "direction", angle: radians };
};

const readScalar = (value: Value, kind: Scalar["kind"]): number | undefined => {
  if (value.kind === kind) return (value as Scalar).value;
  return value.kind === "number" && (value as Scalar).bareZero ? 0 : undefined;
};
