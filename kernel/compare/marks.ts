// What a piece says of itself beside its lines: the part that each edge plays, allowances, notches, darts, what sewing takes up,
// the grain, labels and drill holes. Each is one mark, which two pieces have, or one of them, or neither.
import { dartMeasures } from "../dart-measures.ts";
import { nearest } from "../geometry/nearest.ts";
import { angleOf, toDegrees } from "../geometry/trig.ts";
import { grainDirection } from "../grain-direction.ts";
import { plainName } from "../hidden-names.ts";
import { walked } from "../outline.ts";
import { plainNumber } from "../units.ts";
import type { Piece } from "../working.ts";
import type { ChangedMark } from "./comparison.ts";
import { type Laying, laidDirection } from "./laid-over.ts";
import { differs, tellableAngle, tellableLength } from "./rounding.ts";

/** The marks of two pieces that differ; edges of the earlier piece go by the names they have later. */
export const changedMarks = (before: Piece, after: Piece, laying: Laying): ChangedMark[] => [
  // Where the two sides of a garment or of its cloth differ, this is another piece.
  ...(laying.over ? [{ kind: "lies", on: "", measures: "words", before: "face up", after: "face down" } as const] : []),
  ...paired(single(before), single(after)),
  ...changedCorners(before, after),
  ...notches(before, after),
  ...grain(before, after, laying),
];

const widthOfDart = ", width";

type Mark = Omit<ChangedMark, "before" | "after"> & { readonly value: number | string };

/** Marks that a piece has once at most, by their kind and name. */
const single = (piece: Piece): ReadonlyMap<string, Mark> => {
  const marks: Mark[] = [
    ...walked(piece).map(({ edge }): Mark => ({ kind: "part", on: edge.name, measures: "words", value: edge.role })),
    ...[...piece.allowances].map(
      ([on, { width }]): Mark => ({ kind: "allowance", on, measures: "length", value: width }),
    ),
    ...[...piece.darts.values()].flatMap((dart): Mark[] => {
      const { width, legs, angle } = dartMeasures(dart);
      const name = plainName(dart.name);
      return [
        { kind: "dart", on: `${name}${widthOfDart}`, measures: "length", value: width },
        { kind: "dart", on: `${name}, longer leg`, measures: "length", value: Math.max(...legs) },
        { kind: "dart", on: `${name}, between the legs`, measures: "angle", value: toDegrees(angle) },
        { kind: "dart", on: `${name}, edge`, measures: "words", value: dart.edge },
      ];
    }),
    ...piece.takeUps.map(
      ({ kind, edge, amount }): Mark => ({
        kind: "taken up",
        on: `${edge}, by ${kind === "ease" ? "ease" : `a ${kind}`}`,
        measures: "length",
        value: amount,
      }),
    ),
    ...piece.labels.map(({ text }): Mark => ({ kind: "label", on: text, measures: "words", value: "there" })),
    ...piece.drills.map(
      ({ point }): Mark => ({
        kind: "drill",
        on: `${plainNumber(point.x, 1)}, ${plainNumber(point.y, 1)}`,
        measures: "words",
        value: "there",
      }),
    ),
  ];
  const times = new Map<string, number>();
  return new Map(
    marks.map((mark) => {
      const key = `${mark.kind} ${mark.on} ${mark.measures}`;
      times.set(key, (times.get(key) ?? 0) + 1);
      return [`${key} ${times.get(key)}`, mark];
    }),
  );
};

/** How the corners of an allowance are cut, where it is there before and after. */
const changedCorners = (before: Piece, after: Piece): ChangedMark[] =>
  [...after.allowances].flatMap(([on, { corners }]): ChangedMark[] => {
    const was = before.allowances.get(on)?.corners;
    if (was === undefined || was === corners) return [];
    return [{ kind: "corners", on, measures: "words", before: was, after: corners }];
  });

const paired = (before: ReadonlyMap<string, Mark>, after: ReadonlyMap<string, Mark>): ChangedMark[] =>
  [...new Set([...before.keys(), ...after.keys()])].sort().flatMap((key): ChangedMark[] => {
    const [was, is] = [before.get(key), after.get(key)];
    const { kind, on, measures } = (is ?? was)!;
    if (was && is && !isOther(was.value, is.value, measures)) return [];
    // An edge that came or went is told as such.
    if (kind === "part" && !(was && is)) return [];
    // A dart that came or went is told once, by its width.
    if (kind === "dart" && !(was && is) && !on.endsWith(widthOfDart)) return [];
    return [{ kind, on, measures, before: was?.value ?? null, after: is?.value ?? null }];
  });

const isOther = (was: number | string, is: number | string, measures: ChangedMark["measures"]): boolean =>
  typeof was === "number" && typeof is === "number"
    ? differs(was, is, measures === "angle" ? tellableAngle : tellableLength)
    : was !== is;

/** Notches of one edge pair in order; where one piece has more of them, those that lie where they lay pair first. */
const notches = (before: Piece, after: Piece): ChangedMark[] => {
  const [was, is] = [notchesByEdge(before), notchesByEdge(after)];
  return [...new Set([...was.keys(), ...is.keys()])]
    .sort()
    .flatMap((on) =>
      pairedSpots(was.get(on) ?? [], is.get(on) ?? []).map(
        ([from, to]): ChangedMark => ({ kind: "notch", on, measures: "length", before: from, after: to }),
      ),
    );
};

/** How far from the edge's start, as it was drafted, each of its notches lies, mm. */
const notchesByEdge = (piece: Piece): ReadonlyMap<string, number[]> => {
  const found = new Map<string, number[]>();
  for (const { edge: name, point, double } of piece.notches) {
    const edge = piece.edges.get(name);
    if (!edge) continue;
    const key = double ? `${name}, double` : name;
    found.set(
      key,
      [...(found.get(key) ?? []), nearest(edge.path, point).at].sort((a, b) => a - b),
    );
  }
  return found;
};

const pairedSpots = (before: readonly number[], after: readonly number[]): [number | null, number | null][] => {
  if (before.length === after.length)
    return before.flatMap((at, index) =>
      differs(at, after[index]!, tellableLength) ? [[at, after[index]!] as [number, number]] : [],
    );
  const left = [...after];
  const gone = before.filter((at) => {
    const index = left.findIndex((other) => !differs(at, other, tellableLength));
    if (index >= 0) left.splice(index, 1);
    return index < 0;
  });
  return [...gone.map((at): [number, null] => [at, null]), ...left.map((at): [null, number] => [null, at])];
};

/** The angle of the grain on the table of the earlier piece, degrees from pointing right; a grain line has no way up. */
const grain = (before: Piece, after: Piece, laying: Laying): ChangedMark[] => {
  const [was, is] = [grainDirection(before), grainDirection(after)];
  const from = was ? upTo180(toDegrees(angleOf(was))) : null;
  const to = is ? upTo180(toDegrees(angleOf(laidDirection(is, laying)))) : null;
  const turned = from === null || to === null ? null : Math.min(Math.abs(from - to), 180 - Math.abs(from - to));
  const isSame = turned === null ? from === to : turned < tellableAngle;
  return isSame ? [] : [{ kind: "grain", on: "", measures: "angle", before: from, after: to }];
};

const upTo180 = (degrees: number): number => ((degrees % 180) + 180) % 180;
