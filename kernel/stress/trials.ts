// The bodies and design choices that a recipe is tried with: its defaults, every size, the corners of its ranges, and a sample.
import type { Evaluated, NamedValue } from "../evaluate.ts";
import { measuresAsked } from "../measures-asked.ts";
import { isScalar, type Scalar } from "../value.ts";
import { type Draw, drawBetween, seeded } from "./seeded.ts";

/** One way to work the recipe. */
export interface Trial {
  /** Where it comes from: "the defaults", "size M", "a corner", "usher 3", "usher 3, varied", "a made-up body". */
  readonly origin: string;
  readonly measures: ReadonlyMap<string, Scalar>;
  readonly params: ReadonlyMap<string, Scalar>;
}

/** A body as a table holds it. */
export interface NamedBody {
  readonly name: string;
  readonly measures: ReadonlyMap<string, Scalar>;
}

export interface StressPlan {
  /** How many sampled combinations are tried besides defaults, sizes and corners. */
  readonly tries: number;
  readonly seed: number;
  /** Real bodies: each is tried as it is, and samples are these, varied. */
  readonly bodies: readonly NamedBody[];
}

/** A value that may be varied, with the limits it has. */
export interface Variable {
  readonly name: string;
  readonly standard: Scalar;
  readonly least: number;
  readonly most: number;
}

/** With more params than this not every corner is tried, but as many of them as this many params have. */
const allCornersUpTo = 7;

// Real bodies vary together and a little apart (own figures: enough to leave the beaten track, too little for a body that cannot be).
const togetherShare = 0.03;
const apartShare = 0.015;

/** All trials, the same for the same plan. Only what has a range is varied. */
export const trialsFor = (evaluated: Evaluated, plan: StressPlan): Trial[] => {
  const draw = seeded(plan.seed);
  const params = variables(ownParams(evaluated));
  const measures = variables(measuresAsked(evaluated));
  const none = new Map<string, Scalar>();
  const wanted = new Set(measures.map(({ name }) => name));
  const bodies = plan.bodies.map(({ name, measures: given }) => ({
    name,
    measures: new Map([...given].filter(([measure]) => wanted.has(measure))),
  }));
  return [
    { origin: "the defaults", measures: none, params: none },
    ...[...evaluated.sizes.values()].map((size) => ({
      origin: `size ${size.name}`,
      measures: size.measures,
      params: none,
    })),
    ...corners(params, draw).map((corner) => ({ origin: "a corner of the ranges", measures: none, params: corner })),
    ...bodies.map(({ name, measures: body }) => ({ origin: name, measures: body, params: none })),
    ...Array.from({ length: plan.tries }, (_, index): Trial => {
      const body = bodies[Math.floor(draw() * bodies.length)];
      // Every other sample keeps the design as it is: then a failure is the body's.
      const chosen = index % 2 === 0 ? none : sampled(params, draw);
      return body
        ? { origin: `${body.name}, varied`, measures: varied(body.measures, draw), params: chosen }
        : { origin: "a made-up body", measures: madeUp(measures, draw), params: chosen };
    }),
  ];
};

const ownParams = ({ values }: Evaluated): Map<string, NamedValue> =>
  new Map([...values].filter(([, { kind }]) => kind === "param"));

const variables = (values: ReadonlyMap<string, NamedValue>): Variable[] =>
  [...values].flatMap(([name, { value, range }]) =>
    range && isScalar(value) && range.most.value > range.least.value
      ? [{ name, standard: value, least: range.least.value, most: range.most.value }]
      : [],
  );

const corners = (params: readonly Variable[], draw: Draw): Map<string, Scalar>[] => {
  if (params.length === 0) return [];
  const count = Math.min(params.length, allCornersUpTo);
  const every = params.length <= allCornersUpTo;
  const alone = every ? [] : params.flatMap((param) => [cornerOf([param], () => false), cornerOf([param], () => true)]);
  const together = Array.from({ length: 2 ** count }, (_, number) =>
    cornerOf(params, (index) => (every ? ((number >> index) & 1) === 1 : draw() < 0.5)),
  );
  return [...alone, ...together];
};

const cornerOf = (params: readonly Variable[], isMost: (index: number) => boolean): Map<string, Scalar> =>
  new Map(
    params.map(({ name, standard, least, most }, index) => [
      name,
      { kind: standard.kind, value: isMost(index) ? most : least },
    ]),
  );

const sampled = (params: readonly Variable[], draw: Draw): Map<string, Scalar> =>
  new Map(
    params.map(({ name, standard, least, most }) => [
      name,
      { kind: standard.kind, value: drawBetween(draw, least, most) },
    ]),
  );

const varied = (body: ReadonlyMap<string, Scalar>, draw: Draw): Map<string, Scalar> => {
  const together = 1 + drawBetween(draw, -togetherShare, togetherShare);
  return new Map(
    [...body].map(([name, { kind, value }]) => {
      const apart = 1 + drawBetween(draw, -apartShare, apartShare);
      return [name, { kind, value: kind === "length" ? value * together * apart : value }];
    }),
  );
};

// Without real bodies to go by: girths vary much and together, widths half as much, lengths with the height and little with
// the girth (own figures, for trying a recipe only).
const girthShares = { least: -0.18, most: 0.45 };
const heightShare = 0.1;
const followsGirth = (name: string): number => (name.includes("girth") ? 1 : name.includes("width") ? 0.5 : 0.15);
const followsHeight = (name: string): number => (/girth|width/.test(name) ? 0 : 1);

const madeUp = (measures: readonly Variable[], draw: Draw): Map<string, Scalar> => {
  const girth = drawBetween(draw, girthShares.least, girthShares.most);
  const height = drawBetween(draw, -heightShare, heightShare);
  return new Map(
    measures.map(({ name, standard, least, most }) => {
      const share =
        1 + girth * followsGirth(name) + height * followsHeight(name) + drawBetween(draw, -apartShare, apartShare);
      return [name, { kind: standard.kind, value: Math.min(most, Math.max(least, standard.value * share)) }];
    }),
  );
};
