// What `measure --as csv` prints: a row for each edge and each place of every piece, in mm and in the recipe's own unit.
// Columns are only ever added behind.
import { allowanceWidth } from "../cloth/allowances/cutting-line.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { isHidden } from "../hidden-names.ts";
import { walked } from "../outline.ts";
import { sewnLengthOf } from "../sewn.ts";
import { millimetresIn, plainNumber } from "../units.ts";
import type { Edge, Garment, Piece, Units } from "../working.ts";
import { type Cell, csvText } from "./csv.ts";

/** The measures of a garment as CSV. */
export const measuresCsv = ({ pieces, units }: Garment): string =>
  csvText([headings(units), ...[...pieces.values()].flatMap((piece) => rowsOf(piece, units))]);

// Where the recipe is in mm, its own unit says nothing new.
const unitsShown = (units: Units): Units[] => (units === "mm" ? ["mm"] : ["mm", units]);

const headings = (units: Units): string[] => [
  "piece",
  "kind",
  "name",
  "role",
  ...["length cut", "length sewn", "allowance", "x", "y"].flatMap((what) =>
    unitsShown(units).map((unit) => `${what} ${unit}`),
  ),
];

const rowsOf = (piece: Piece, units: Units): Cell[][] => {
  const outline = walked(piece);
  const outer = outline.map((part) => {
    const width = part.edge.role === "fold" ? undefined : allowanceWidth(piece, part);
    return edgeRow(piece, "edge", part.edge, width, units);
  });
  const inner = [...piece.edges.values()]
    .filter((edge) => !isHidden(edge.name) && !outline.some((part) => part.edge === edge))
    .map((edge) => edgeRow(piece, "inner line", edge, undefined, units));
  const places = [...piece.places.values()]
    .filter(({ name }) => !isHidden(name))
    .map(({ name, point: { x, y } }) => [
      piece.name,
      "place",
      name,
      undefined,
      ...[undefined, undefined, undefined, x, y].flatMap((value) => inUnits(value, units)),
    ]);
  return [...outer, ...inner, ...places];
};

const edgeRow = (piece: Piece, kind: string, edge: Edge, allowance: number | undefined, units: Units): Cell[] => [
  piece.name,
  kind,
  edge.name,
  edge.role,
  ...[pathLength(edge.path), sewnLengthOf(piece, edge.name), allowance, undefined, undefined].flatMap((value) =>
    inUnits(value, units),
  ),
];

// A thousandth of a mm, and as fine in the others: whoever adds rows up gets the sum that the report prints.
const decimals = new Map<Units, number>([
  ["mm", 3],
  ["cm", 4],
  ["in", 5],
]);

/** A length as the number that tables hold. */
export const tableLength = (millimetres: number, unit: Units): number =>
  Number(plainNumber(millimetres / millimetresIn.get(unit)!, decimals.get(unit)!));

const inUnits = (millimetres: number | undefined, units: Units): Cell[] =>
  unitsShown(units).map((unit) => (millimetres === undefined ? undefined : tableLength(millimetres, unit)));
