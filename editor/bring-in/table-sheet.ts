// A table of measured points as a sheet: columns x and y, and perhaps a name and a kind. The points go round one outline in turn.
import { minus, type Point, sameSpot } from "../../kernel/geometry/point.ts";
import { turnBetween } from "../../kernel/geometry/trig.ts";
import { millimetresIn } from "../../kernel/units.ts";
import { type Cells, tableCells } from "../files/table-cells.ts";
import { loopOf, stretchesOf, type TracedPoint } from "../paper/traced-edges.ts";
import { drawingLimits } from "./drawing-limits.ts";
import { Refused } from "./refused.ts";
import { type DrawnSpot, type Sheet, SheetInHand } from "./sheet.ts";

/** Reads a table; `unit` is how many mm one unit is where the headings do not say. */
export const tableSheet = (text: string, unit: number | undefined): Sheet => {
  const table = tableCells(text);
  if ("problem" in table) throw new Refused(`${table.problem.charAt(0).toUpperCase()}${table.problem.slice(1)}`);
  if (table.cells.length > drawingLimits.rows)
    throw new Refused(`The table has more than ${drawingLimits.rows} rows.`, { line: drawingLimits.rows + 1 });
  const { columns, rows } = headed(table.cells);
  const millimetres = columns.unit ?? unit;
  const sheet = new SheetInHand();
  if (millimetres === undefined)
    sheet.notes.push(
      "The table does not say its units: 1 is taken as 1 cm. Write x (mm) as a heading, or --units mm, where that is wrong.",
    );
  const points = rows.map((row) => pointIn(row, columns, millimetres ?? 10));
  const round = points.filter(({ kind }) => kind === "" || kind === "corner" || kind === "curve");
  const last = round.at(-1);
  // A table that comes back to its first point is closed by hand.
  if (last && round.length > 1 && sameSpot(last.at, round[0]!.at)) round.pop();
  const doubled = round.find(({ at }, i) => i > 0 && sameSpot(at, round[i - 1]!.at));
  if (doubled)
    throw new Refused("This point lies on the same spot as the one before it.", {
      line: doubled.row,
      hint: "Take one of them out.",
    });
  if (round.length < 3)
    throw new Refused(`An outline needs 3 points or more, and the table has ${round.length} of them.`);
  const outline: TracedPoint[] = round.map(({ at, kind }, i) => ({
    at,
    kind:
      kind === ""
        ? isCorner(round.at(i - 1)!.at, at, round[(i + 1) % round.length]!.at)
          ? "corner"
          : "curve"
        : (kind as "corner" | "curve"),
    edge: "",
    isFold: false,
    allowance: "",
  }));
  const line = rows[0]!.row;
  const path = loopOf(stretchesOf(outline));
  sheet.line({ path, means: undefined, group: "", called: undefined, isMeasured: true, line });
  for (const [i, { at, name, row }] of round.entries()) {
    const means = outline[i]!.kind === "corner" ? "turn" : undefined;
    if (means !== undefined || name !== "")
      sheet.spot({ at, means, group: "", called: name === "" ? undefined : name, line: row });
  }
  for (const { at, kind, name, row } of points)
    if (kind === "notch" || kind === "drill")
      sheet.spot({ at, means: kind, group: "", called: name === "" ? undefined : name, line: row });
  return sheet.finished(columns.unit === undefined ? undefined : columns.units);
};

interface Columns {
  readonly x: number;
  readonly y: number;
  readonly name: number;
  readonly kind: number;
  /** mm in one unit, where the headings say. */
  readonly unit: number | undefined;
  readonly units: "in" | undefined;
}

interface MeasuredPoint {
  readonly at: Point;
  readonly name: string;
  readonly kind: "" | "corner" | "curve" | NonNullable<DrawnSpot["means"]>;
  readonly row: number;
}

// What is longer is no heading of ours, and to look for a unit in it would take long.
const longestHeading = 60;

/** Which column holds what, by a row of headings or, without one, by their order. */
const headed = (cells: readonly Cells[]): { readonly columns: Columns; readonly rows: readonly Cells[] } => {
  const [first] = cells;
  const inOrder: Columns = { x: 0, y: 1, name: 2, kind: 3, unit: undefined, units: undefined };
  if (numberIn(first!.fields[0] ?? "") !== undefined) return { columns: inOrder, rows: cells };
  const heads = first!.fields.map(
    (field) =>
      (field.length <= longestHeading && /^(.*?)\s*[([]?\s*(mm|cm|m|in|ft|yd)?\s*[)\]]?$/i.exec(field)) || [
        field,
        field,
      ],
  );
  const place = (...names: readonly string[]): number =>
    heads.findIndex(([, head = ""]) => names.includes(head.trim().toLowerCase()));
  const [x, y] = [place("x"), place("y")];
  if (x < 0 || y < 0)
    throw new Refused("The headings have to name a column x and a column y.", {
      line: first!.row,
      hint: "Write a first row such as x (cm), y (cm), name, kind.",
    });
  const [unitX, unitY] = [x, y].map((column) => heads[column]![2]?.toLowerCase());
  if (unitX !== unitY) throw new Refused("The columns x and y are in different units.", { line: first!.row });
  if (cells.length === 1) throw new Refused("There is no point below the headings.", { line: first!.row });
  const unit = unitX === undefined ? undefined : millimetresIn.get(unitX);
  const units = unitX === "in" || unitX === "ft" || unitX === "yd" ? "in" : undefined;
  return { columns: { x, y, name: place("name", "point"), kind: place("kind"), unit, units }, rows: cells.slice(1) };
};

const pointIn = ({ row, fields }: Cells, columns: Columns, millimetres: number): MeasuredPoint => {
  const [x, y] = [columns.x, columns.y].map((column) => {
    const number = numberIn(fields[column] ?? "");
    if (number === undefined)
      throw new Refused(`A number has to stand here, and there is “${(fields[column] ?? "").slice(0, 40)}”.`, {
        line: row,
      });
    return number * millimetres;
  });
  const kind = (fields[columns.kind] ?? "").toLowerCase();
  if (kind !== "" && kind !== "corner" && kind !== "curve" && kind !== "notch" && kind !== "drill")
    throw new Refused(`A point is a corner, a curve, a notch or a drill, and not “${kind.slice(0, 40)}”.`, {
      line: row,
    });
  return { at: { x: x!, y: y! }, name: fields[columns.name] ?? "", kind, row };
};

/** A number with a point or a comma. */
const numberIn = (written: string): number | undefined => {
  const found = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/.exec(written.trim());
  return found ? Number(found[0].replace(",", ".")) : undefined;
};

const isCorner = (before: Point, here: Point, next: Point): boolean =>
  Math.abs(turnBetween(minus(here, before), minus(next, here))) > cornerTurn;

// Radians from which a measured outline turns a corner where the table does not say; points of a curve are set closer.
const cornerTurn = (40 * Math.PI) / 180;
