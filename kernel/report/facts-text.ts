// The geometry of a garment as text that is made to be compared line by line: one fact a line, in a fixed order, rounded to what
// a cutter can tell, so that what did not change reads the same to the last letter.

import { dartMeasures } from "../dart-measures.ts";
import { nearest } from "../geometry/nearest.ts";
import { toDegrees } from "../geometry/trig.ts";
import { isHidden, plainName } from "../hidden-names.ts";
import type { Outcome } from "../kernel.ts";
import { boundary, cornersOf, gaps, walked } from "../outline.ts";
import { sewnLengthOf } from "../sewn.ts";
import type { Garment, Piece, Units } from "../working.ts";
import { valueInWords } from "./amounts.ts";
import { degrees, shortArea, shortLength } from "./compare-words.ts";
import { extentOf } from "./extent.ts";
import { measuredSeams } from "./measured-seam.ts";
import { readable } from "./readable.ts";
import { toldValues } from "./told-values.ts";

/** All facts of a worked recipe; those of a piece stand indented under it. */
export const factsText = (outcome: Outcome): string => {
  const { garment, judgements, findings } = outcome;
  const failing = judgements.filter(({ verdict }) => verdict === "warning" || verdict === "error");
  const unread = findings.filter(({ code }) => !failing.some(({ check }) => check === code));
  return [
    ...valueFacts(outcome),
    ...[...garment.pieces.values()].flatMap((piece) => pieceFacts(piece, garment)),
    ...seamFacts(outcome),
    ...failing.map(({ check, on, verdict, message }) => `${verdict} ${check} on ${on}: ${message}`),
    ...unread.map(({ code, severity, message }) => `${severity} ${code}: ${message}`),
  ]
    .map((line) => `${readable(line)}\n`)
    .join("");
};

const valueFacts = (outcome: Outcome): string[] =>
  [...toldValues(outcome)].flatMap(([name, { value, kind }]) => {
    const told = valueInWords(value, outcome.garment.units);
    return told === undefined ? [] : [`${kind} ${name} ${told}`];
  });

const pieceFacts = (piece: Piece, { cuts, units }: Garment): string[] => {
  const loop = boundary(piece);
  const own = cuts.filter((cut) => cut.piece === piece.name);
  const facts = [
    ...(piece.from === undefined ? [] : [`from ${piece.from}`]),
    ...own.map(({ count, fabric }) => `cut ${count} from ${fabric}`),
    ...(loop ? extentFacts(loop, units) : ["outline open"]),
    ...walked(piece).map(({ edge }) => edgeFact(piece, edge.name, units)),
    ...cornerFacts(piece),
    ...markFacts(piece, units),
    ...[...piece.places.values()].flatMap(({ name, point }) =>
      isHidden(name) ? [] : [`place ${name} ${shortLength(point.x, units)} right, ${shortLength(point.y, units)} down`],
    ),
  ];
  return [`piece ${piece.name}`, ...facts.map((fact) => `  ${fact}`)];
};

const extentFacts = (loop: Parameters<typeof extentOf>[0], units: Units): string[] => {
  const { area, width, height } = extentOf(loop);
  return [`${shortLength(width, units)} wide, ${shortLength(height, units)} high`, shortArea(area, units)];
};

const edgeFact = (piece: Piece, name: string, units: Units): string => {
  const allowance = piece.allowances.get(name);
  const parts = [
    `edge ${name} ${shortLength(sewnLengthOf(piece, name), units)}`,
    piece.edges.get(name)!.role,
    ...(allowance ? [`allowance ${shortLength(allowance.width, units)} ${allowance.corners}`] : []),
  ];
  return parts.join(", ");
};

const cornerFacts = (piece: Piece): string[] =>
  piece.outline.length === 0 || gaps(piece).length > 0
    ? []
    : cornersOf(piece).map(
        ({ before, after, interior }) =>
          `corner ${before.edge.name}/${after.edge.name} ${degrees(toDegrees(interior))}`,
      );

const markFacts = (piece: Piece, units: Units): string[] => [
  ...piece.notches.flatMap(({ edge: name, point, double }) => {
    const edge = piece.edges.get(name);
    if (!edge) return [];
    return [`notch ${name} at ${shortLength(nearest(edge.path, point).at, units)}${double ? ", double" : ""}`];
  }),
  ...[...piece.darts.values()].map((dart) => {
    const { width, legs } = dartMeasures(dart);
    const long = shortLength(Math.max(...legs), units);
    return `dart ${plainName(dart.name)} on ${dart.edge}, ${shortLength(width, units)} wide, ${long} long`;
  }),
  ...piece.takeUps.map(({ kind, edge, amount }) => `${kind} along ${edge}, ${shortLength(amount, units)}`),
  ...piece.labels.map(({ text }) => `label ${text}`),
];

const seamFacts = (outcome: Outcome): string[] => {
  const { units } = outcome.garment;
  return measuredSeams(outcome).map(({ first, second, firstLength, secondLength, ease, verdict }) => {
    const lengths = `${shortLength(firstLength, units)} on ${shortLength(secondLength, units)}`;
    const eased = ease === 0 ? "" : `, ease ${shortLength(ease, units)}`;
    return `seam ${first.join(", ")} with ${second.join(", ")}: ${lengths}${eased}, ${verdict ?? "not judged"}`;
  });
};
