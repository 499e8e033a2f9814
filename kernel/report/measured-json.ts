// What `measure --json` prints: everything measured, in mm and degrees at full precision. Fields are only ever added;
// anything else makes a new schema number.

import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import { dartMeasures } from "../dart-measures.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, startOf } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { toDegrees } from "../geometry/trig.ts";
import { isHidden, withoutHidden } from "../hidden-names.ts";
import type { Outcome } from "../kernel.ts";
import { boundary, walked } from "../outline.ts";
import { sewnLength, sewnLengthOf } from "../sewn.ts";
import { isScalar, type Value } from "../value.ts";
import type { Dart, Edge, Judged, Notch, Piece } from "../working.ts";
import { extentOf } from "./extent.ts";
import type { Json } from "./json.ts";
import { type MeasuredSeam, measuredSeams } from "./measured-seam.ts";
import { stepWords } from "./step-words.ts";
import { toldValues } from "./told-values.ts";

export const schema = 1;

/** A worked recipe as JSON data. */
export const measuredJson = (outcome: Outcome): Json => ({
  schema,
  recipe: { title: outcome.garment.title, file: outcome.garment.file },
  values: valuesOf(outcome),
  pieces: [...outcome.garment.pieces.values()].map(pieceOf),
  seams: measuredSeams(outcome).map(seamOf),
  checks: outcome.judgements.map(checkOf),
  // That a piece begins is in the record, and no step.
  steps: outcome.records
    .filter(({ step }) => step !== "piece")
    .map((record) => ({
      line: record.where.line,
      piece: record.piece,
      step: record.step,
      words: stepWords(record, outcome),
    })),
});

const valuesOf = (outcome: Outcome): ReadonlyMap<string, Json> => {
  const told = [...toldValues(outcome)].map(([name, { value }]): [string, Json | undefined] => [name, dataOf(value)]);
  return new Map(told.filter((entry): entry is [string, Json] => entry[1] !== undefined));
};

/** Scalars, texts, conditions, places and the lengths of edges; what is no measurement is left out. */
const dataOf = (value: Value): Json | undefined => {
  if (isScalar(value))
    return { kind: value.kind, value: value.kind === "angle" ? toDegrees(value.value) : value.value };
  if (value.kind === "text") return { kind: "text", value: value.text };
  if (value.kind === "truth") return { kind: "truth", value: value.holds };
  if (value.kind === "place") return { kind: "place", value: spot(value.point) };
  if (value.kind === "edge") return { kind: "edge", value: sewnLength(value.path, value.taken) };
  return undefined;
};

const spot = ({ x, y }: Point): readonly number[] => [x, y];

const pieceOf = (piece: Piece): Json => {
  const sewing = boundary(piece);
  const cutting = cuttingLine(piece);
  return {
    name: piece.name,
    from: piece.from ?? null,
    ...extentOrNull(sewing),
    edges: walked(piece).map(({ edge }) => edgeOf(edge, piece)),
    places: new Map(
      [...piece.places].filter(([name]) => !isHidden(name)).map(([name, { point }]) => [name, spot(point)]),
    ),
    notches: piece.notches.map((notch) => notchOf(notch, piece)),
    darts: [...piece.darts.values()].map(dartOf),
    takenUp: piece.takeUps.map(({ kind, edge, from, to, amount }) => ({
      kind,
      edge,
      from: spot(from),
      to: spot(to),
      amount,
    })),
    cutting: cutting ? extentOrNull(cutting.path) : null,
  };
};

// A piece whose outline is not drawn, or stands open, has no extent.
const extentOrNull = (loop: Parameters<typeof extentOf>[0] | undefined): { readonly [key: string]: Json } => {
  if (!loop) return { area: null, perimeter: null, width: null, height: null };
  const { area, perimeter, width, height } = extentOf(loop);
  return { area, perimeter, width, height };
};

// As sewn, and as cut where darts, pleats or gathers make that another length.
const edgeOf = ({ name, role, path }: Edge, piece: Piece): Json => ({
  name,
  role,
  length: sewnLengthOf(piece, name),
  cutLength: pathLength(path),
  start: spot(startOf(path)),
  end: spot(endOf(path)),
});

const dartOf = (dart: Dart): Json => {
  const { width, legs, angle } = dartMeasures(dart);
  const { name, edge, first, second, tip, lower } = dart;
  return {
    name: withoutHidden(name),
    edge,
    first: spot(first),
    second: spot(second),
    tip: spot(tip),
    width,
    legs,
    angle: toDegrees(angle),
    ...(lower && { lower: lowerHalfOf(dart, lower) }),
  };
};

/** Of a double-ended dart the tip, legs and angle are those of its upper half. */
const lowerHalfOf = (dart: Dart, tip: Point): Json => {
  const { legs, angle } = dartMeasures({ ...dart, tip });
  return { tip: spot(tip), legs, angle: toDegrees(angle) };
};

const notchOf = ({ edge: name, point, double }: Notch, piece: Piece): Json => {
  const edge = piece.edges.get(name);
  return { edge: name, at: edge ? nearest(edge.path, point).at : null, point: spot(point), double };
};

const seamOf = ({ first, second, ease, firstLength, secondLength, difference, verdict }: MeasuredSeam): Json => ({
  first,
  second,
  ease,
  firstLength,
  secondLength,
  difference,
  verdict: verdict ?? null,
});

const checkOf = ({ check, on, verdict, found, wanted, where, message, because }: Judged): Json => ({
  check,
  on,
  verdict,
  found,
  wanted,
  file: where.file,
  line: where.line,
  message,
  ...(because !== undefined && { because }),
});
