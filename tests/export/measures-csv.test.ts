// CSV of all measures: read by a reader written from RFC 4180 alone, and held against values worked by hand.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csvText } from "../../kernel/report/csv.ts";
import { measuresCsv } from "../../kernel/report/measures-csv.ts";
import type { Units } from "../../kernel/working.ts";
import { at, bent, madePiece, nowhere } from "../cloth/made-piece.ts";
import { garmentOf } from "../drawing/made-garment.ts";
import { lengthOf, workedRecipe } from "../worked-recipe.ts";

/** RFC 4180, section 2: records end with CRLF; a field may stand in double quotes, in which a double quote is two. */
const read = (text: string): string[][] => {
  const rows: string[][] = [];
  const token = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/gy;
  let row: string[] = [];
  while (token.lastIndex < text.length) {
    const found = token.exec(text);
    if (!found) throw new Error("this is no CSV");
    row.push(found[1]?.replaceAll('""', '"') ?? found[2]!);
    if (found[3] === ",") continue;
    rows.push(row);
    row = [];
  }
  return rows;
};

describe("CSV", () => {
  test("comes back as it was, whatever is in it, but for the quote before what would be a formula", () => {
    const cell = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.string({ unit: fc.constantFrom('"', ",", "\r", "\n", "a", "=") }),
    );
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 1 })), (rows) => {
        expect(
          read(csvText(rows)).map((row) => row.map((each) => each.replace(/^'(?=[=+\-@\t\r\n＝＋－＠])/, ""))),
        ).toEqual(rows);
      }),
    );
  });

  test("has no field that a spreadsheet takes for a formula (OWASP, CSV injection)", () => {
    const formulas = ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "＝1", '=HYPERLINK("x","y")'];
    for (const [field] of read(csvText(formulas.map((formula) => [formula])))) expect(field).toMatch(/^'/);
    // Numbers are none, negative ones either.
    expect(csvText([[-1.5, 2, undefined, ""]])).toBe("-1.5,2,,\r\n");
  });

  test("takes no number that is none", () => {
    expect(() => csvText([[Number.NaN]])).toThrow("not finite");
  });
});

const panel = madePiece(
  "panel",
  [
    { name: "waist", path: bent([0, 0], [254, 0]), allow: 10 },
    { name: "side", path: bent([254, 0], [254, 508]), allow: 12.7 },
    { name: "hem", path: bent([254, 508], [0, 508]), role: "hem", allow: 0 },
    { name: "center", path: bent([0, 508], [0, 0]), role: "fold" },
    { name: "hip", path: bent([0, 200], [254, 200]), inner: true },
    { name: "hip~1", path: bent([0, 200], [254, 200]), inner: true },
  ],
  {
    places: new Map([["apex", { name: "apex", point: at(100, -25.4), drawnBy: nowhere }]]),
    darts: new Map([
      [
        "waist-dart",
        {
          name: "waist-dart",
          edge: "waist",
          first: at(100, 0),
          second: at(125.4, 0),
          tip: at(112.7, 100),
          drawnBy: nowhere,
        },
      ],
    ]),
  },
);

const rowsIn = (units: Units): string[][] => read(measuresCsv({ ...garmentOf([panel]), units }));

describe("the measures", () => {
  test("of a panel are those one measures on it, in mm and inches", () => {
    // 254 mm are 10 in, 508 are 20, 25.4 one; the dart takes 25.4 mm out of the waist.
    expect(rowsIn("in")).toEqual(
      [
        "piece,kind,name,role,length cut mm,length cut in,length sewn mm,length sewn in,allowance mm,allowance in,x mm,x in,y mm,y in",
        "panel,edge,waist,seam,254,10,228.6,9,10,0.3937,,,,",
        "panel,edge,side,seam,508,20,508,20,12.7,0.5,,,,",
        "panel,edge,hem,hem,254,10,254,10,0,0,,,,",
        "panel,edge,center,fold,508,20,508,20,,,,,,",
        "panel,inner line,hip,seam,254,10,254,10,,,,,,",
        "panel,place,apex,,,,,,,,100,3.93701,-25.4,-1",
      ].map((row) => row.split(",")),
    );
  });

  test("are in mm once where the recipe is in mm, and in cm beside where it is in cm", () => {
    expect(rowsIn("mm")[0]).toEqual(
      "piece,kind,name,role,length cut mm,length sewn mm,allowance mm,x mm,y mm".split(","),
    );
    expect(rowsIn("cm")[1]).toEqual("panel,edge,waist,seam,254,25.4,228.6,22.86,10,1,,,,".split(","));
  });

  test("are there for every edge of every piece of a recipe", () => {
    const outcome = workedRecipe("uneven-jacket.chalk");
    const rows = read(measuresCsv(outcome.garment));
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    for (const piece of outcome.garment.pieces.values()) {
      for (const { edge } of piece.outline) {
        const row = rows.find(([of, kind, name]) => of === piece.name && kind === "edge" && name === edge)!;
        expect(Number(row[4])).toBeCloseTo(lengthOf(outcome, piece.name, edge), 3);
      }
    }
  });

  test("keep a name that would be a formula a name", () => {
    const rows = read(measuresCsv(garmentOf([{ ...panel, name: '=cmd|"x"!A1' }])));
    expect(rows[1]![0]).toBe(`'=cmd|"x"!A1`);
  });
});
