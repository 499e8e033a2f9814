// The value of an expression: arithmetic with units, places walked left to right, edges, directions and functions.
import type { BinaryValue, Expression, NameValue, NumberValue, Stretch } from "../grammar/tree.ts";
import { dartPlaces } from "./dart-halves.ts";
import { type FunctionEntry, functions, takesHowMany, WrongValue } from "./functions.ts";
import { pathLength, pointAt } from "./geometry/arc-length.ts";
import { endOf, startOf, straight } from "./geometry/path.ts";
import { between, distance, type Point, plus, sameSpot, times } from "./geometry/point.ts";
import { bearing, toRadians } from "./geometry/trig.ts";
import { shownNames } from "./hidden-names.ts";
import { Problem, Withheld } from "./problem.ts";
import { takenAlong } from "./sewn.ts";
import { lengthIn, millimetresIn, plainNumber } from "./units.ts";
import { unknown } from "./unknown-name.ts";
import {
  added,
  capital,
  type Direction,
  divided,
  type EdgeValue,
  isScalar,
  kindInWords,
  multiplied,
  negated,
  type Scalar,
  sharedKind,
  truth,
  type Value,
} from "./value.ts";
import { ownSpans } from "./within-limits.ts";
import type { Piece, Units } from "./working.ts";

/** What an expression may ask of the recipe around it. */
export interface Names {
  /** The value of a plain name; a Problem where it is unknown. */
  valueOf(name: string, at: Stretch): Value;
  /** Counts what a value costs; a LimitReached where it is too much. */
  spend?(effort: number): void;
  readonly units: Units;
}

/** Grams per square metre of one ounce per square yard: the international ounce over 0.9144 m squared. */
const gramsPerSquareMetre = 28.349523125 / (0.9144 * 0.9144);

/** Two lengths that differ by no more than this many mm count as equal in `if` and `check`. */
export const lengthTolerance = 0.5;
/** What the last digits of a sum may be off by; no tolerance is smaller, not even one of 0. */
const rounding = 1e-9;
/** Two angles: 0.1 deg. */
const angleTolerance = toRadians(0.1);

/** Evaluates; a mistake is a Problem that points at the smallest stretch of text to blame. */
export const evaluate = (expression: Expression, names: Names): Value =>
  pinned(expression, () => {
    names.spend?.(1);
    return worth(expression, names);
  });

/** Lets a Problem that does not say where it is point at a stretch of text. */
export const pinned = <T>(stretch: Stretch, work: () => T): T => {
  try {
    return work();
  } catch (problem) {
    if (problem instanceof Problem) throw problem.at(stretch);
    throw problem;
  }
};

const worth = (expression: Expression, names: Names): Value => {
  switch (expression.kind) {
    case "number":
      return numberOf(expression);
    case "text":
      return { kind: "text", text: expression.value };
    case "name":
      return named(expression, names);
    case "call":
      return called(expression, names);
    case "member":
      return memberOf(evaluate(expression.of, names), "this", expression.member.text, expression.member);
    case "unary": {
      const value = evaluate(expression.value, names);
      return expression.operator === "-" ? negated(value) : truth(!holds(value));
    }
    case "binary":
      return binaryOf(expression, names);
    case "place":
      return place({ x: lengthOf(expression.x, names), y: lengthOf(expression.y, names) });
    case "offset": {
      const from = placeOf(expression.origin, names);
      return place(plus(from, times(sideVector(expression.side), lengthOf(expression.amount, names))));
    }
    case "toward":
      return towardOf(expression, names);
    case "bearing": {
      const from = placeOf(expression.origin, names);
      const angle = scalarOf(expression.angle, names, "angle", "deg").value;
      return place(plus(from, times(bearing(angle), lengthOf(expression.amount, names))));
    }
    case "at":
      return alongOf(expression, names);
    case "join": {
      const [start, end] = [placeOf(expression.start, names), placeOf(expression.end, names)];
      if (sameSpot(start, end))
        throw new Problem("line-empty", "The two places are the same spot, so no line runs between them.");
      return { kind: "edge", path: straight(start, end), turned: false, whole: true, taken: [] };
    }
    case "direction":
      return directionOf(expression, names);
  }
};

const place = (point: Point): Value => ({ kind: "place", point });

const numberOf = ({ value, written, unit }: NumberValue): Value => {
  if (!Number.isFinite(value))
    throw new Problem("number-too-large", `${written} is not a number that can be worked with.`);
  if (!unit) return { kind: "number", value, ...(value === 0 && { bareZero: true }) };
  const millimetres = millimetresIn.get(unit.text);
  if (millimetres !== undefined) return { kind: "length", value: value * millimetres };
  switch (unit.text) {
    case "deg":
      return { kind: "angle", value: toRadians(value) };
    case "rad":
      return { kind: "angle", value };
    case "osy":
      return { kind: "weight", value: value * gramsPerSquareMetre };
    default:
      return { kind: "weight", value };
  }
};

const named = ({ path }: NameValue, names: Names): Value => {
  const [first, ...rest] = path;
  let value = names.valueOf(first!.text, first!);
  let called = first!.text;
  for (const word of rest) {
    value = memberOf(value, called, word.text, word);
    called = `${called}.${word.text}`;
  }
  return value;
};

const memberOf = (value: Value, called: string, member: string, at: Stretch): Value => {
  if (value.kind === "edge" && (member === "start" || member === "end")) {
    return place(member === "start" ? startOf(value.path) : endOf(value.path));
  }
  if (value.kind === "dart") {
    const corner = dartPlaces(value.dart).get(member);
    if (corner) return place(corner);
  }
  if (value.kind === "piece") {
    const found = partOf(value.piece, called, member);
    if (found) return found;
    // The line that would have drawn it failed and has said why.
    if (value.withheld.has(member)) throw new Withheld();
    throw unknown(member, `${called} has no edge, place or dart called ${member}.`, shownNames(value.piece), at);
  }
  if (value.kind === "recipe") {
    const found = value.find(member);
    if (found) return found;
    throw unknown(member, `The recipe ${called} has no piece or value called ${member}.`, value.names, at);
  }
  throw new Problem("member-missing", `${capital(kindInWords(value))} has no part called ${member}.`, {
    at,
    ...(value.kind === "dart" && {
      hint: `Write ${[...dartPlaces(value.dart).keys()].join(", ").replace(/, (?=\w+$)/, " or ")}.`,
    }),
  });
};

/** An edge, a place or a dart of a piece as a value; undefined when it has none of that name. */
export const partOf = (piece: Piece, called: string, member: string): Value | undefined => {
  const edge = piece.edges.get(member);
  if (edge) {
    const taken = takenAlong(piece, member);
    return { kind: "edge", path: edge.path, of: { piece: called, edge: member }, turned: false, whole: true, taken };
  }
  const dart = piece.darts.get(member);
  if (dart) return { kind: "dart", dart, of: { piece: called, dart: member } };
  const found = piece.places.get(member);
  return found && { kind: "place", point: found.point, name: member, of: { piece: called, place: member } };
};

const called = (expression: Expression & { kind: "call" }, names: Names): Value => {
  const { name, values } = expression;
  const entry = functions.get(name.text);
  if (!entry) throw unknown(name.text, `There is no function called ${name.text}.`, functions.keys(), name);
  checkCount(entry, values.length, name);
  const given = values.map((value) => evaluate(value, names));
  names.spend?.(perSpan * measuring(given));
  try {
    return entry.work(given, names.units);
  } catch (problem) {
    if (!(problem instanceof WrongValue)) throw problem;
    const at = values[given.indexOf(problem.value)] ?? expression;
    const unit = problem.kind === "length" ? names.units : problem.kind === "angle" ? "deg" : undefined;
    throw new Problem(problem.code, problem.message, {
      at,
      hint: `Write ${entry.form}.`,
      ...(unit !== undefined && missingUnit(problem.value, at, unit)),
    });
  }
};

// To measure a curve takes as long as this many sums.
const perSpan = 16;

/** What it costs to measure edges and pieces: the lines and curves of one, and of two each of the one with each of the other. */
const measuring = (values: readonly Value[]): number =>
  values.reduce((cost, value) => {
    if (value.kind === "edge") return Math.max(1, cost) * value.path.length;
    if (value.kind === "piece") return cost + ownSpans(value.piece);
    return cost;
  }, 0);

const checkCount = (entry: FunctionEntry, count: number, at: Stretch): void => {
  const { least, most } = takesHowMany(entry);
  if (count >= least && count <= most) return;
  throw new Problem("value-count", `${entry.name} takes ${least} value${least === 1 ? "" : "s"}, not ${count}.`, {
    at,
    hint: `Write ${entry.form}.`,
  });
};

const sideVector = (side: "left" | "right" | "up" | "down"): Point =>
  ({ left: { x: -1, y: 0 }, right: { x: 1, y: 0 }, up: { x: 0, y: -1 }, down: { x: 0, y: 1 } })[side];

const placeOf = (expression: Expression, names: Names): Point => {
  const value = evaluate(expression, names);
  if (value.kind === "place") return value.point;
  throw new Problem("value-kind", `A place is wanted here, and this is ${kindInWords(value)}.`, { at: expression });
};

/** A scalar of one kind; a bare number is refused with the unit it may have wanted. */
const scalarOf = (expression: Expression, names: Names, kind: Scalar["kind"], unit: string): Scalar => {
  const value = evaluate(expression, names);
  if (isScalar(value) && (value.kind === kind || value.bareZero)) return value;
  throw wrongScalar(value, expression, kind, unit);
};

const wrongScalar = (value: Value, expression: Expression, kind: Scalar["kind"], unit: string): Problem => {
  return new Problem(
    "value-kind",
    `${capital(kindInWords({ kind }))} is wanted here, and this is ${kindInWords(value)}.`,
    {
      at: expression,
      ...missingUnit(value, expression, unit),
    },
  );
};

/** The fix-it for a number without its unit: "write 8 cm". */
export const missingUnit = (
  value: Value,
  expression: Expression,
  unit: string,
): { hint?: string; replace?: string } => {
  if (value.kind !== "number") return {};
  if (expression.kind === "number") {
    const withUnit = `${expression.written} ${unit}`;
    return { hint: `Write ${withUnit}.`, replace: withUnit };
  }
  return { hint: `Give it a unit: a number times 1 ${unit}, for instance.` };
};

const lengthOf = (expression: Expression, names: Names): number =>
  scalarOf(expression, names, "length", names.units).value;

/** How far along a distance: a length, or a ratio between 0 and 1. */
const amountAlong = (expression: Expression, names: Names, whole: number, what: string): number => {
  const value = evaluate(expression, names);
  if (isScalar(value) && value.kind === "length") return value.value;
  if (isScalar(value) && value.kind === "number") {
    if (value.value >= 0 && value.value <= 1) return value.value * whole;
    const isPercentage = expression.kind === "number" && expression.written.endsWith("%");
    const { hint, replace } = isPercentage
      ? { hint: "Write a percentage up to 100%, or a length." }
      : percentOrUnit(value, expression, names.units);
    throw new Problem(
      "ratio-range",
      `A plain number here is a ratio between 0 and 1 of ${what}, and this is ${plainNumber(value.value, 4)}.`,
      {
        at: expression,
        ...(hint !== undefined && { hint }),
        ...(replace !== undefined && { replace }),
      },
    );
  }
  throw new Problem("value-kind", `A length or a ratio is wanted here, and this is ${kindInWords(value)}.`, {
    at: expression,
  });
};

/** 50 along an edge may have been meant as 50% or as 50 cm; a larger number only as a length. */
const percentOrUnit = (value: Scalar, expression: Expression, unit: string): { hint?: string; replace?: string } => {
  if (expression.kind !== "number" || value.value <= 1 || value.value > 100)
    return missingUnit(value, expression, unit);
  return { hint: `Write ${expression.written}% of the way, or ${expression.written} ${unit}.` };
};

const towardOf = (expression: Expression & { kind: "toward" }, names: Names): Value => {
  const from = placeOf(expression.origin, names);
  const aim = placeOf(expression.aim, names);
  const whole = distance(from, aim);
  const amount = amountAlong(expression.amount, names, whole, "the way");
  if (whole === 0) {
    if (amount === 0) return place(from);
    throw new Problem(
      "toward-nowhere",
      "Both places are the same spot, so there is no direction from one to the other.",
    );
  }
  return place(amount === whole ? aim : between(from, aim, amount / whole));
};

const alongOf = (expression: Expression & { kind: "at" }, names: Names): Value => {
  const value = evaluate(expression.edge, names);
  if (value.kind !== "edge") {
    throw new Problem("value-kind", `at goes along an edge, and this is ${kindInWords(value)}.`, {
      at: expression.edge,
    });
  }
  names.spend?.(perSpan * value.path.length);
  const whole = pathLength(value.path);
  const amount = expression.amount ? amountAlong(expression.amount, names, whole, "the edge") : 0;
  const at = expression.fromEnd ? whole - amount : amount;
  // A hair of rounding past an end is the end.
  if (at < -1e-6 || at > whole + 1e-6) {
    throw new Problem(
      "beyond-edge",
      `${lengthIn(Math.abs(amount), names.units)} ${amount < 0 ? "before its start" : "along"} lies beyond the edge, which is ${lengthIn(whole, names.units)} long.`,
      { at: expression.amount ?? expression },
    );
  }
  return {
    kind: "place",
    point: pointAt(value.path, Math.min(Math.max(at, 0), whole)),
    ...(value.of && { on: value.of.edge }),
  };
};

const directionOf = (expression: Expression & { kind: "direction" }, names: Names): Direction => {
  switch (expression.word) {
    case "right":
      return { kind: "direction", angle: 0 };
    case "down":
      return { kind: "direction", angle: Math.PI / 2 };
    case "left":
      return { kind: "direction", angle: Math.PI };
    case "up":
      return { kind: "direction", angle: -Math.PI / 2 };
    case "toward":
      return { kind: "direction", toward: placeOf(expression.aim!, names) };
    default: {
      const value = edgeOf(expression.aim!, names);
      return expression.word === "along"
        ? { kind: "direction", along: value.path }
        : { kind: "direction", squareTo: value.path };
    }
  }
};

const edgeOf = (expression: Expression, names: Names): EdgeValue => {
  const value = evaluate(expression, names);
  if (value.kind === "edge") return value;
  throw new Problem("value-kind", `An edge is wanted here, and this is ${kindInWords(value)}.`, { at: expression });
};

const binaryOf = (expression: Expression & { kind: "binary" }, names: Names): Value => {
  const { operator } = expression;
  if (operator === "and" || operator === "or") {
    const left = holds(evaluate(expression.left, names));
    if (operator === "and" ? !left : left) return truth(left);
    return truth(holds(evaluate(expression.right, names)));
  }
  const left = evaluate(expression.left, names);
  const right = evaluate(expression.right, names);
  switch (operator) {
    case "+":
    case "-":
      return together(expression, [left, right], names, () => added(left, right, operator === "+" ? 1 : -1));
    case "*":
      return multiplied(left, right);
    case "/":
      return divided(left, right);
    default:
      return truth(together(expression, [left, right], names, () => compare(left, right, operator)).holds);
  }
};

/** A sum or a comparison; a number that stands in it without the unit of the other side is what has to be mended. */
const together = <T>({ left, right }: BinaryValue, values: readonly [Value, Value], names: Names, work: () => T): T => {
  try {
    return work();
  } catch (problem) {
    if (!(problem instanceof Problem)) throw problem;
    for (const [at, bare, other] of [
      [left, values[0], values[1]],
      [right, values[1], values[0]],
    ] as const) {
      const unit = other.kind === "length" ? names.units : other.kind === "angle" ? "deg" : undefined;
      if (at.kind !== "number" || bare.kind !== "number" || unit === undefined) continue;
      throw new Problem(problem.code, problem.message, { at, ...missingUnit(bare, at, unit) });
    }
    throw problem;
  }
};

/** Both sides of a comparison, and whether it holds. */
export const compared = (expression: BinaryValue, names: Names, tolerance?: number): Comparison =>
  pinned(expression, () => {
    const values = [evaluate(expression.left, names), evaluate(expression.right, names)] as const;
    const operator = expression.operator as Comparing;
    return together(expression, values, names, () => compare(...values, operator, tolerance));
  });

export type Comparing = "=" | "<" | ">" | "<=" | ">=" | "<>";

/** A comparison with both of its sides, as `check` reports it. */
export interface Comparison {
  readonly holds: boolean;
  readonly left: Scalar;
  readonly right: Scalar;
  readonly kind: Scalar["kind"];
}

/** Compares two values of one kind; lengths and angles are equal within a tolerance. */
const compare = (left: Value, right: Value, operator: Comparing, tolerance?: number): Comparison => {
  const kind = isScalar(left) && isScalar(right) ? sharedKind(left, right) : undefined;
  if (!isScalar(left) || !isScalar(right) || kind === undefined) {
    throw new Problem("dimension", `${capital(kindInWords(left))} cannot be compared with ${kindInWords(right)}.`);
  }
  const off = left.value - right.value;
  const within = tolerance ?? (kind === "length" ? lengthTolerance : kind === "angle" ? angleTolerance : 0);
  const equal = Math.abs(off) <= within + rounding;
  // At most is less or equal, so it has the tolerance of equal; less is less by any amount.
  const result = {
    "=": equal,
    "<>": !equal,
    "<": off < 0,
    ">": off > 0,
    "<=": off < 0 || equal,
    ">=": off > 0 || equal,
  }[operator];
  return { holds: result, left, right, kind };
};

/** Whether a condition holds. */
export const holds = (value: Value): boolean => {
  if (value.kind === "truth") return value.holds;
  const hint =
    value.kind === "edge" || value.kind === "place" ? { hint: "Write a comma between two of them, not and." } : {};
  throw new Problem("value-kind", `A condition is wanted here, and this is ${kindInWords(value)}.`, hint);
};
