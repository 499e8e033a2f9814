// All measures of one garment in one row: what a table of many bodies has a column for.
import { pathLength } from "../geometry/arc-length.ts";
import { toDegrees } from "../geometry/trig.ts";
import type { Outcome } from "../kernel.ts";
import { boundary, walked } from "../outline.ts";
import { sewnLengthOf } from "../sewn.ts";
import { millimetresIn, plainNumber } from "../units.ts";
import { isScalar, type Scalar } from "../value.ts";
import type { Piece, Units } from "../working.ts";
import { extentOf } from "./extent.ts";
import { tableLength } from "./measures-csv.ts";
import { toldValues } from "./told-values.ts";

/**
 * Numbers by the heading of their column, lengths in the recipe's unit: body measures, design choices and named values, then
 * for each piece its width and height and its edges as sewn; as cut as well where that is another length.
 */
export const measuredRow = (outcome: Outcome): ReadonlyMap<string, number> => {
  const { pieces, units } = outcome.garment;
  const values = [...toldValues(outcome)].flatMap(([name, { value }]) =>
    isScalar(value) ? [valueCell(name, value, units)] : [],
  );
  return new Map([...values, ...[...pieces.values()].flatMap((piece) => pieceCells(piece, units))]);
};

type HeadedNumber = readonly [heading: string, value: number];

const valueCell = (name: string, { kind, value }: Scalar, units: Units): HeadedNumber => {
  switch (kind) {
    case "length":
      return [`${name} (${units})`, tableLength(value, units)];
    case "angle":
      return [`${name} (deg)`, Number(plainNumber(toDegrees(value), 4))];
    case "area": {
      // As reports have it: whoever works in mm still reads areas in square cm.
      const unit = units === "in" ? "in" : "cm";
      return [`${name} (${unit}2)`, Number(plainNumber(value / millimetresIn.get(unit)! ** 2, 4))];
    }
    case "weight":
      return [`${name} (gsm)`, Number(plainNumber(value, 4))];
    case "number":
      return [`${name} (number)`, Number(plainNumber(value, 6))];
  }
};

// Below this many mm it is the same length, written down twice.
const same = 0.0005;

const pieceCells = (piece: Piece, units: Units): HeadedNumber[] => {
  const sewing = boundary(piece);
  const extent = sewing && extentOf(sewing);
  const length = (name: string, millimetres: number): HeadedNumber => [
    `${piece.name}.${name} (${units})`,
    tableLength(millimetres, units),
  ];
  return [
    ...(extent
      ? [
          [`${piece.name} width (${units})`, tableLength(extent.width, units)] as const,
          [`${piece.name} height (${units})`, tableLength(extent.height, units)] as const,
        ]
      : []),
    ...walked(piece).flatMap(({ edge }) => {
      const [sewn, cut] = [sewnLengthOf(piece, edge.name), pathLength(edge.path)];
      return [length(edge.name, sewn), ...(Math.abs(cut - sewn) > same ? [length(`${edge.name} cut`, cut)] : [])];
    }),
  ];
};
