// What `chalk-off --as csv` prints: a row for each point round every piece, and one for each mark, in mm and in the recipe's
// own unit. Across is positive to the right, the top of the piece away from one. Columns are only ever added behind.
import { type ChalkedPiece, chalkOff } from "../chalk/chalk-off.ts";
import { millimetresIn, plainNumber } from "../units.ts";
import type { Garment, Units } from "../working.ts";
import { type Cell, csvText } from "./csv.ts";

/** The points of a garment as CSV; the outline of a piece is its points in order of number, and back to the first. */
export const chalkOffCsv = (garment: Garment): string =>
  csvText([headings(garment.units), ...chalkOff(garment).pieces.flatMap((piece) => rowsOf(piece, garment.units))]);

// Where the recipe is in mm, its own unit says nothing new.
const unitsShown = (units: Units): Units[] => (units === "mm" ? ["mm"] : ["mm", units]);

const headings = (units: Units): string[] => [
  "piece",
  "kind",
  "point",
  "name",
  ...["down", "across"].flatMap((what) => unitsShown(units).map((unit) => `${what} ${unit}`)),
  "line to next off by at most mm",
  "measured from",
  "level with",
];

const rowsOf = ({ name, frame, edges, marks }: ChalkedPiece, units: Units): Cell[][] => {
  const row = (
    kind: string,
    number: number | undefined,
    on: string,
    taped: { readonly down: number; readonly across: number },
    off: number | undefined,
  ): Cell[] => [
    name,
    kind,
    number,
    on,
    ...[taped.down, taped.across].flatMap((mm) => unitsShown(units).map((unit) => inUnit(mm, unit))),
    // Told upward, so that the bound holds.
    off === undefined ? undefined : Number(plainNumber(Math.ceil(off * 1000) / 1000, 3)),
    frame.from,
    frame.level,
  ];
  return [
    ...edges.flatMap((edge) => edge.points.map((point) => row("outline", point.number, edge.name, point, point.off))),
    ...marks.map((mark) => row(mark.kind, undefined, mark.name, mark, undefined)),
  ];
};

// An eighth of an inch is 3.175 mm.
const inUnit = (mm: number, unit: Units): number => Number(plainNumber(mm / millimetresIn.get(unit)!, 4));
