// What each size measures and the growth between sizes, as a table and as data.
import type { GrowingEdge, Growth } from "../sizes/growth.ts";
import { lengthIn } from "../units.ts";
import type { Units } from "../working.ts";
import type { Json } from "./json.ts";
import { bad, blank, good, plain, type SaidLine, strong } from "./said.ts";
import { aligned, amount, type Cell, empty, words } from "./table.ts";

/** A table a piece: one row an edge, one column a size, and below each length what it grew by. */
export const growthReport = (file: string, tables: readonly Growth[]): SaidLine[] =>
  tables.flatMap((table, index) => [...(index === 0 ? [] : [blank]), ...tableReport(file, table)]);

const tableReport = (file: string, { table, sizes, edges, outcomes }: Growth): SaidLine[] => {
  const units = outcomes[0]?.garment.units ?? "cm";
  const pieces = [...new Set(edges.map(({ piece }) => piece))];
  const head = ["edge", ...sizes.map(({ name, base }) => `${name}${base ? ", base" : ""}`)].map((text) =>
    words(text, "quiet"),
  );
  const tables = pieces.map((piece) => [
    [strong(piece)],
    ...aligned([head, ...edges.filter((edge) => edge.piece === piece).flatMap((edge) => rowsOf(edge, units))]),
  ]);
  const uneven = edges.filter((edge) => edge.uneven !== undefined);
  return [...tables.flatMap((table) => [...table, blank]), ...verdict(file, table, sizes.length, edges.length, uneven)];
};

const rowsOf = ({ edge, lengths }: GrowingEdge, units: Units): Cell[][] => {
  const steps = lengths.map((length, index): Cell => {
    const before = lengths[index - 1];
    if (length === undefined || before === undefined) return empty;
    const by = length - before;
    if (Math.abs(by) < 0.05) return words("=", "quiet");
    return amount(`${by > 0 ? "+" : ""}${lengthIn(by, units)}`, "quiet");
  });
  const cells = lengths.map((length) =>
    length === undefined ? words("none", "quiet") : amount(lengthIn(length, units)),
  );
  return [
    [words(edge), ...cells],
    [empty, ...steps],
  ];
};

const verdict = (
  file: string,
  table: string,
  sizes: number,
  edges: number,
  uneven: readonly GrowingEdge[],
): SaidLine[] => [
  ...uneven.map(({ piece, edge, uneven: how }): SaidLine => [bad("uneven"), plain(` ${piece}.${edge} ${how}.`)]),
  [
    plain(`${file}: ${sizes} sizes${table === file ? "" : ` of ${table}`}, ${edges} edges, `),
    uneven.length === 0 ? good("all grow evenly") : bad(`${uneven.length} grow unevenly`),
  ],
];

/** The same in mm. */
export const growthJson = (tables: readonly Growth[]): Json => ({
  schema: 1,
  tables: tables.map(({ table, sizes, edges }) => ({
    table,
    sizes: sizes.map(({ name }) => name),
    edges: edges.map(({ piece, edge, lengths, uneven }) => ({
      piece,
      edge,
      lengths: lengths.map((length) => length ?? null),
      uneven: uneven ?? null,
    })),
  })),
});
