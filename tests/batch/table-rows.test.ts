// The rows of a table read a stretch at a time are those of the same table read as a whole, wherever the stretches end.
import { closeSync, mkdtempSync, openSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { tableCells } from "../../editor/files/table-cells.ts";
import { longestRow, type TableRow, tableRows } from "../../editor/files/table-rows.ts";

const folder = mkdtempSync(join(tmpdir(), "chalkline-"));

const rowsOf = (content: string | Uint8Array): TableRow[] => {
  const path = join(folder, "bodies.csv");
  writeFileSync(path, content);
  const handle = openSync(path, "r");
  try {
    return [...tableRows(handle)];
  } finally {
    closeSync(handle);
  }
};

// A stretch is 64 KiB; a first field so long brings what follows to its end.
const stretch = 64 * 1024;
const filler = (bytes: number): string =>
  `name,note\n${`${"x".repeat(98)}\n`.repeat(Math.floor((bytes - 10) / 99))}${"y".repeat((bytes - 10) % 99)}`;

test("any table, at the end of a stretch", () => {
  const field = fc.constantFrom("70", " 70 ", "", '"a,b"', '"say ""no"""', '"two\nlines"', "é", "衣", '"x"y', "1,5");
  const end = fc.constantFrom("\n", "\r\n", "\r");
  const row = fc.tuple(fc.array(field, { minLength: 1, maxLength: 4 }), end);
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 12 }), fc.integer({ min: 0, max: 40 }), (rows, before) => {
      const text = `${filler(stretch - before)}\n${rows.map(([fields, close]) => fields.join(",") + close).join("")}`;
      expect(rowsOf(text)).toEqual((tableCells(text) as { cells: unknown }).cells);
    }),
    { numRuns: 60 },
  );
});

test("semicolons, tabs and the mark before the first letter, as in a table read as a whole", () => {
  for (const text of ["name;waist\nIda;70,5\n", "name\twaist\r\nIda\t70\r\n", "name,waist\nIda,70"])
    expect(rowsOf(`\ufeff${text}`)).toEqual((tableCells(text) as { cells: unknown }).cells);
  expect(rowsOf("name;waist\nIda;70,5\n")[1]).toEqual({ row: 2, fields: ["Ida", "70.5"] });
});

test("a quote that is never closed costs its own row alone", () => {
  const far = "z".repeat(longestRow);
  expect(rowsOf(`name,waist\nIda,"70\nBruno,80\n${"Maud,90\n".repeat(10_000)}`).slice(0, 4)).toEqual([
    { row: 1, fields: ["name", "waist"] },
    { row: 2, problem: "a quote is opened and never closed." },
    { row: 3, fields: ["Bruno", "80"] },
    { row: 4, fields: ["Maud", "90"] },
  ]);
  expect(rowsOf(`name,waist\nIda,"70`)[1]).toEqual({ row: 2, problem: "a quote is opened and never closed." });
  // The same for a line that goes on and on, a line end behind the stretch included.
  for (const end of ["\n", "\r\n"])
    for (const more of [0, 1, 2, 3, stretch])
      expect(rowsOf(`name,waist\n${far}${far}${"z".repeat(more)}${end}Ida,70${end}`)).toEqual([
        { row: 1, fields: ["name", "waist"] },
        { row: 2, problem: "this is far too long for a row of body measures." },
        { row: 3, fields: ["Ida", "70"] },
      ]);
});

test("bytes that are no UTF-8 are no table", () => {
  expect(() => rowsOf(Buffer.from("name,waist\nZo\xeb,70\n", "latin1"))).toThrow("it is not written in UTF-8");
});
