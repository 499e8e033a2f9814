// The functions a recipe may use in values, each declared with how it is written, what it gives, and its code.
import { pathLength } from "./geometry/arc-length.ts";
import { signedArea } from "./geometry/area.ts";
import { crossings } from "./geometry/intersect.ts";
import { mirroredIn } from "./geometry/mirror.ts";
import { feet, nearest } from "./geometry/nearest.ts";
import { endOf, isStraight, type Path, reversed, startOf } from "./geometry/path.ts";
import {
  between,
  distance,
  minus,
  type Point,
  plus,
  quarterTurn,
  sameSpot,
  sameSpotTolerance,
  times,
  unit,
} from "./geometry/point.ts";
import { part } from "./geometry/split.ts";
import { acos, asin, atan, cos, sin, tan, turnBetween } from "./geometry/trig.ts";
import { boundary } from "./outline.ts";
import { Problem } from "./problem.ts";
import { sewnLength } from "./sewn.ts";
import { lengthIn } from "./units.ts";
import {
  angle,
  capital,
  type EdgeValue,
  finite,
  isScalar,
  kindInWords,
  length,
  number,
  type Scalar,
  sharedKind,
  type Value,
} from "./value.ts";
import type { Units } from "./working.ts";

export interface FunctionEntry {
  readonly name: string;
  /** As the manual shows it. */
  readonly form: string;
  readonly summary: string;
  readonly work: (values: readonly Value[], units: Units) => Value;
}

const place = (point: Point): Value => ({ kind: "place", point });

/** A value that a function cannot take; the call knows where in the recipe it stands. */
export class WrongValue extends Problem {
  readonly value: Value;
  /** The kind of scalar that is wanted, where one is. */
  readonly kind: Scalar["kind"] | undefined;

  constructor(value: Value, wanted: string, kind?: Scalar["kind"]) {
    super("value-kind", `${wanted} is wanted here, and this is ${kindInWords(value)}.`);
    this.value = value;
    this.kind = kind;
  }
}

const wantPlace = (value: Value): Point => {
  if (value.kind !== "place") throw new WrongValue(value, "A place");
  return value.point;
};

const wantEdge = (value: Value): EdgeValue => {
  if (value.kind !== "edge") throw new WrongValue(value, "An edge");
  return value;
};

const wantScalar = (value: Value, kind?: Scalar["kind"]): Scalar => {
  const fits = isScalar(value) && (kind === undefined || value.kind === kind || value.bareZero === true);
  if (!fits) throw new WrongValue(value, kindWord(kind), kind);
  return value;
};

const kindWord = (kind: Scalar["kind"] | undefined): string =>
  kind === undefined ? "A number, length or angle" : capital(kindInWords({ kind }));

/** Several scalars of one kind; a plain number among values with units is the one to blame. */
const alike = (values: readonly Value[]): { kind: Scalar["kind"]; numbers: number[] } => {
  const scalars = values.map((value) => wantScalar(value));
  const { kind } = scalars.find((scalar) => scalar.kind !== "number") ?? scalars[0]!;
  const odd = scalars.find((scalar) => sharedKind(scalar, { kind, value: 0 }) === undefined);
  if (odd) throw new WrongValue(odd, kindWord(kind), kind);
  return { kind, numbers: scalars.map(({ value }) => value) };
};

const ofAngle =
  (work: (radians: number) => number) =>
  (values: readonly Value[]): Value =>
    number(work(wantScalar(values[0]!, "angle").value));

const toAngle =
  (name: string, work: (ratio: number) => number, most?: number) =>
  (values: readonly Value[]): Value => {
    const ratio = wantScalar(values[0]!, "number").value;
    if (most !== undefined && Math.abs(ratio) > most) {
      throw new Problem("ratio-range", `${name} takes a ratio between -1 and 1, and this is ${ratio}.`);
    }
    return angle(work(ratio));
  };

const entry = (form: string, summary: string, work: FunctionEntry["work"]): FunctionEntry => ({
  name: form.slice(0, form.indexOf("(")),
  form,
  summary,
  work,
});

/** Where on an edge a place lies; it has to lie on it. */
const placeOn = (edge: EdgeValue, point: Point, units: Units): number => {
  const { at, distance: off } = nearest(edge.path, point);
  if (off > sameSpotTolerance) throw new Problem("not-on-edge", `The place lies ${lengthIn(off, units)} off the edge.`);
  return at;
};

const meeting = ([first, second]: readonly Value[]): Value => {
  const [a, b] = [wantEdge(first!).path, wantEdge(second!).path];
  const crossed = crossings(a, b).map(({ point }) => point);
  const found = crossed.length > 0 ? crossed : [...endsOn(a, b), ...endsOn(b, a)].filter(isFirst);
  if (found.length === 1) return place(found[0]!);
  throw new Problem(
    "meet-count",
    found.length === 0
      ? "The two edges do not meet."
      : `The two edges meet at ${found.length} places, and one is wanted.`,
    {
      hint:
        found.length === 0
          ? "Draw one of them longer: nothing is carried on."
          : "Take a part of one of them: part(edge, a, b).",
    },
  );
};

/** The ends of a path that lie on another: an end that stops a hair short meets it all the same. */
const endsOn = (path: Path, other: Path): Point[] =>
  [startOf(path), endOf(path)]
    .map((end) => nearest(other, end))
    .filter(({ distance: off }) => off <= sameSpotTolerance)
    .map(({ point }) => point);

const isFirst = (point: Point, index: number, points: readonly Point[]): boolean =>
  points.findIndex((other) => sameSpot(other, point)) === index;

const footOn = ([from, onto]: readonly Value[]): Value => {
  const found = feet(wantEdge(onto!).path, wantPlace(from!));
  if (found.length > 0) return place(found[0]!.point);
  throw new Problem("foot-missing", "No point of the edge lies square to the place.");
};

/** Two tape lengths laid from two places meet at two spots; the side is that of somebody walking from a to b. */
const compassed = ([a, r1, b, r2, side]: readonly Value[], units: Units): Value => {
  const [from, to] = [wantPlace(a!), wantPlace(b!)];
  const [first, second] = [wantScalar(r1!, "length").value, wantScalar(r2!, "length").value];
  const apart = distance(from, to);
  if (apart === 0 || apart > first + second || apart < Math.abs(first - second)) {
    throw new Problem(
      "compass-miss",
      `The two lengths do not reach each other: the places are ${lengthIn(apart, units)} apart.`,
    );
  }
  const along = (apart * apart + first * first - second * second) / (2 * apart);
  const out = Math.sqrt(Math.max(0, first * first - along * along));
  const ahead = unit(minus(to, from));
  const rightHand = quarterTurn(ahead);
  return place(plus(plus(from, times(ahead, along)), times(rightHand, sideSign(side) * out)));
};

const sideSign = (side: Value | undefined): 1 | -1 => {
  if (side?.kind === "direction" && "angle" in side) {
    if (Math.abs(side.angle) < 1e-9) return 1;
    if (Math.abs(Math.abs(side.angle) - Math.PI) < 1e-9) return -1;
  }
  throw new WrongValue(side!, "left or right, as seen when walking from the first place to the second,");
};

const stretchOf = ([edge, a, b]: readonly Value[], units: Units): Value => {
  const whole = wantEdge(edge!);
  const from = placeOn(whole, wantPlace(a!), units);
  const to = placeOn(whole, wantPlace(b!), units);
  if (Math.abs(from - to) <= sameSpotTolerance)
    throw new Problem("part-empty", "The two places are the same spot of the edge.");
  const isWhole = whole.whole && Math.min(from, to) < 1e-9 && Math.max(from, to) > pathLength(whole.path) - 1e-9;
  return { ...whole, path: part(whole.path, from, to), turned: whole.turned !== from > to, whole: isWhole };
};

const cornerOf = ([first, second]: readonly Value[]): Value => {
  const [a, b] = [wantEdge(first!), wantEdge(second!)];
  const ends = (edge: EdgeValue): Point[] => [startOf(edge.path), endOf(edge.path)];
  const shared = ends(a).filter((end) => ends(b).some((other) => sameSpot(end, other)));
  if (shared.length === 1) return place(shared[0]!);
  throw new Problem(
    "corner-count",
    shared.length === 0 ? "The two edges do not meet at a corner." : "The two edges meet at both of their ends.",
  );
};

const mirroredPlace = ([from, over]: readonly Value[]): Value => {
  const edge = wantEdge(over!);
  if (!isStraight(edge.path, sameSpotTolerance))
    throw new Problem("mirror-bent", "A place is mirrored in a straight edge, and this one is not straight.");
  return place(mirroredIn(wantPlace(from!), startOf(edge.path), endOf(edge.path)));
};

const areaOf = ([value]: readonly Value[]): Value => {
  if (value?.kind !== "piece") throw new WrongValue(value!, "A piece");
  const loop = boundary(value.piece);
  if (!loop) throw new Problem("outline-open", `The outline of ${value.called} is not closed, so it has no area.`);
  return { kind: "area", value: Math.abs(signedArea(loop)) };
};

const cutLengthOf = ([value]: readonly Value[]): Value => length(pathLength(wantEdge(value!).path));

const sewnLengthOf = ([value]: readonly Value[]): Value => {
  const { path, taken } = wantEdge(value!);
  return length(sewnLength(path, taken));
};

const rooted = ([value]: readonly Value[]): Value => {
  const scalar = wantScalar(value!);
  if (scalar.value < 0) throw new Problem("root-negative", "There is no root of a negative number.");
  if (scalar.kind === "area") return length(Math.sqrt(scalar.value));
  return number(Math.sqrt(wantScalar(scalar, "number").value));
};

const rounded = (values: readonly Value[]): Value => {
  const { kind, numbers } = alike(values);
  const [value, step] = numbers;
  if (step === undefined || step <= 0) throw new Problem("round-step", "The step to round to is more than 0.");
  return finite({ kind, value: Math.round(value! / step) * step });
};

const clamped = (values: readonly Value[]): Value => {
  const { kind, numbers } = alike(values);
  const [value, least, most] = numbers;
  if (least! > most!) throw new Problem("clamp-order", "The smaller limit stands first.");
  return { kind, value: Math.min(Math.max(value!, least!), most!) };
};

/** All functions, in the order the manual lists them. */
export const functions: ReadonlyMap<string, FunctionEntry> = new Map(
  [
    entry("length(edge)", "length of an edge as sewn, its darts, pleats and gathers closed", sewnLengthOf),
    entry("cut-length(edge)", "length of an edge as cut", cutLengthOf),
    entry("distance(a, b)", "straight distance between two places", ([a, b]) =>
      length(distance(wantPlace(a!), wantPlace(b!))),
    ),
    entry("angle(a, b, c)", "angle at b between the ways to a and to c, 0 to 180 deg", ([a, b, c]) =>
      angle(Math.abs(turnBetween(minus(wantPlace(a!), wantPlace(b!)), minus(wantPlace(c!), wantPlace(b!))))),
    ),
    entry("area(piece)", "area within the sewing line", areaOf),
    entry("min(a, b, …)", "the smallest", (values) => {
      const { kind, numbers } = alike(values);
      return { kind, value: Math.min(...numbers) };
    }),
    entry("max(a, b, …)", "the largest", (values) => {
      const { kind, numbers } = alike(values);
      return { kind, value: Math.max(...numbers) };
    }),
    entry("abs(a)", "without its minus", ([value]) => {
      const scalar = wantScalar(value!);
      return { ...scalar, value: Math.abs(scalar.value) };
    }),
    entry("sqrt(a)", "the square root; of an area, a length", rooted),
    entry("sin(angle)", "sine", ofAngle(sin)),
    entry("cos(angle)", "cosine", ofAngle(cos)),
    entry("tan(angle)", "tangent", ofAngle(tan)),
    entry("asin(ratio)", "the angle with this sine", toAngle("asin", asin, 1)),
    entry("acos(ratio)", "the angle with this cosine", toAngle("acos", acos, 1)),
    entry("atan(ratio)", "the angle with this tangent", toAngle("atan", atan)),
    entry("clamp(a, least, most)", "a, but not under least nor over most", clamped),
    entry("round(a, step)", "a, to the nearest whole number of steps", rounded),
    entry("x(place)", "how far right of (0, 0) a place lies", ([value]) => length(wantPlace(value!).x)),
    entry("y(place)", "how far below (0, 0) a place lies", ([value]) => length(wantPlace(value!).y)),
    entry("meet(edge, edge)", "where two edges cross; none or several is an error", meeting),
    entry("foot(place, edge)", "the nearest point of an edge that lies square to a place", footOn),
    entry(
      "compass(a, length, b, length, left|right)",
      "where two tape lengths from a and b meet, left or right of the way from a to b",
      compassed,
    ),
    entry("middle(a, b)", "halfway between two places", ([a, b]) => place(between(wantPlace(a!), wantPlace(b!), 0.5))),
    entry("mirrored(place, edge)", "a place mirrored in a straight edge", mirroredPlace),
    entry("corner(edge, edge)", "where two neighbouring edges meet", cornerOf),
    entry("part(edge, a, b)", "the stretch of an edge from a to b", stretchOf),
    entry("turned(edge)", "the same edge, walked from its end", ([value]) => {
      const edge = wantEdge(value!);
      return { ...edge, path: reversed(edge.path), turned: !edge.turned };
    }),
  ].map((each) => [each.name, each]),
);

/** How many values a function takes: from its form; `…` takes one or more. */
export const takesHowMany = ({ form }: FunctionEntry): { least: number; most: number } => {
  const list = form.slice(form.indexOf("(") + 1, -1).split(", ");
  return list.at(-1) === "…" ? { least: 1, most: Number.POSITIVE_INFINITY } : { least: list.length, most: list.length };
};
