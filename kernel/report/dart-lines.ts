// The darts of a piece as a table, and what its edges have gathered or eased into them.
import { dartHalves } from "../dart-halves.ts";
import { dartMeasures } from "../dart-measures.ts";
import { nearest } from "../geometry/nearest.ts";
import { withoutHidden } from "../hidden-names.ts";
import { angleInWords, lengthIn } from "../units.ts";
import type { Dart, Piece, TakeUp, Units } from "../working.ts";
import { quiet, type SaidLine } from "./said.ts";
import { aligned, amount, type Cell, words } from "./table.ts";

/** One line a dart and one for each stretch that is taken up; nothing for a piece without either. */
export const dartLines = (piece: Piece, units: Units): SaidLine[] => {
  const darts = [...piece.darts.values()];
  const heads = ["dart", "on", "width", "leg", "angle"].map((text) => words(text, "quiet"));
  return [
    ...(darts.length === 0 ? [] : aligned([heads, ...darts.flatMap((dart) => rowsOf(dart, units))])),
    ...piece.takeUps.map((takeUp) => [quiet(`  ${takenInWords(piece, takeUp, units)}`)]),
  ];
};

/** A double-ended dart has a line for each of its halves. */
const rowsOf = (dart: Dart, units: Units): Cell[][] => {
  if (!dart.lower) return [rowOf(dart, "", units)];
  const [upper, lower] = dartHalves(dart);
  return [rowOf(upper, " upper", units), rowOf(lower!, " lower", units)];
};

const rowOf = (dart: Dart, half: string, units: Units): Cell[] => {
  const { width, legs, angle } = dartMeasures(dart);
  const [first, second] = legs.map((leg) => lengthIn(leg, units));
  return [
    words(`${withoutHidden(dart.name)}${half}`),
    words(dart.edge, "quiet"),
    amount(lengthIn(width, units)),
    first === second ? amount(first!) : words(`${first} and ${second}`),
    amount(angleInWords(angle)),
  ];
};

/** "gathered on the waist: 8 cm into 6.42 cm". */
export const takenInWords = (
  { edges }: Piece,
  { kind, edge, from, to, amount: less }: TakeUp,
  units: Units,
): string => {
  const path = edges.get(edge)?.path;
  const over = path ? Math.abs(nearest(path, to).at - nearest(path, from).at) : 0;
  return `${verbs.get(kind)!} on the ${edge}: ${lengthIn(over, units)} into ${lengthIn(over - less, units)}`;
};

const verbs = new Map([
  ["pleat", "pleated"],
  ["gather", "gathered"],
  ["ease", "eased"],
]);
