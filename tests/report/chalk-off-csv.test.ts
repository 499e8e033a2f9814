// The table of points for programs: what a hand would measure on simple pieces, and every recipe's pieces drawn again from it.
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { chalkFrame } from "../../kernel/chalk/chalk-frame.ts";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { through } from "../../kernel/geometry/path.ts";
import { type Point, plus, times } from "../../kernel/geometry/point.ts";
import { boundary } from "../../kernel/outline.ts";
import { chalkOffCsv } from "../../kernel/report/chalk-off-csv.ts";
import type { Garment, Piece } from "../../kernel/working.ts";
import { workedRecipe, workedText } from "../worked-recipe.ts";

interface Row {
  readonly piece: string;
  readonly kind: string;
  readonly point: number;
  readonly name: string;
  readonly down: number;
  readonly across: number;
  readonly off: number;
  readonly from: string;
  readonly level: string;
}

/** The rows of a garment; names hold neither commas nor quotes, so a row is parted at its commas. */
const rowsOf = (garment: Garment): Row[] => {
  const [head, ...rows] = chalkOffCsv(garment)
    .split("\r\n")
    .filter((line) => line !== "")
    .map((line) => line.split(","));
  const at = (row: readonly string[], name: string): string => row[head!.indexOf(name)]!;
  return rows.map((row) => ({
    piece: at(row, "piece"),
    kind: at(row, "kind"),
    point: Number(at(row, "point")),
    name: at(row, "name"),
    down: Number(at(row, "down mm")),
    across: Number(at(row, "across mm")),
    off: Number(at(row, "line to next off by at most mm")),
    from: at(row, "measured from"),
    level: at(row, "level with"),
  }));
};

const spots = (rows: readonly Row[], kind: string): string[] =>
  rows.filter((row) => row.kind === kind).map(({ name, down, across }) => `${name} ${down} ${across}`);

const apron = (units: string, width: string, height: string): string => `chalkline 1
recipe "Usher's apron"
units ${units}
piece apron {
  point top = (0, 0)
  point top-side = top right ${width}
  point low-side = top-side down ${height}
  point low = top down ${height}
  line waist = top to top-side
  line side = top-side to low-side
  line hem = low to low-side
  line center = top to low
  outline waist, side, hem, center
  mark center as fold
  mark hem as hem
  notch side at ${height} / 2
}
`;

test("a rectangle on the fold is four corners, measured from the fold and its upper end, and back along the fold", () => {
  const { garment } = workedText(apron("cm", "30 cm", "100 cm"));
  const rows = rowsOf(garment);
  expect(rows[0]).toMatchObject({ from: "the fold center", level: "top" });
  expect(spots(rows, "outline")).toEqual(["waist 0 0", "side 0 300", "hem 1000 300", "center 1000 0"]);
  expect(spots(rows, "notch")).toEqual(["side 500 300"]);
});

test("lengths are read to the nearest 2 mm, and in inches to the nearest eighth", () => {
  expect(spots(rowsOf(workedText(apron("cm", "30.12 cm", "99.95 cm")).garment), "outline")).toEqual([
    "waist 0 0",
    "side 0 302",
    "hem 1000 302",
    "center 1000 0",
  ]);
  // 12 3/16 in and a little lie nearer to 12 1/4 in, which is 311.15 mm; 40 in are 1016 mm.
  const csv = chalkOffCsv(workedText(apron("in", "12.19 in", "40 in")).garment);
  expect(csv).toContain("apron,outline,3,hem,1016,40,311.15,12.25,");
});

test("a quarter circle on the fold has points that lie on it to half a step each way", () => {
  const { garment } = workedText(`chalkline 1
recipe "Quarter of a stage cloak"
units mm
piece cloak {
  point top = (0, 0)
  point low = (0, 600 mm)
  point far = (600 mm, 0)
  arc hem = low to far around top
  line center = top to low
  line side = top to far
  outline center, hem, side
  mark center as fold
}
`);
  const hem = rowsOf(garment).filter(({ name, kind }) => name === "hem" && kind === "outline");
  // Source: geometry. A chord of the circle itself may span 2 acos(598/600), 9.36 deg, which is ten; one between points that
  // the tape puts 1.41 mm outside, 2 acos(598/601.41), 12.2 deg, which is eight. No way has fewer.
  expect(hem.length).toBeGreaterThanOrEqual(8);
  expect(hem.length).toBeLessThanOrEqual(10);
  for (const { down, across } of hem) expect(Math.abs(Math.hypot(down, across) - 600)).toBeLessThan(Math.SQRT2);
});

const folder = fileURLToPath(new URL("../../recipes/", import.meta.url));
const recipes = ["", "blocks/"].flatMap((under) =>
  readdirSync(folder + under)
    .filter((name) => name.endsWith(".chalk"))
    .map((name) => under + name),
);

/** Spots of a closed bent line, at most 4 mm apart. */
const along = (loop: readonly Point[]): Point[] => {
  const path = through([...loop, loop[0]!]);
  const length = pathLength(path);
  const count = Math.ceil(length / 4);
  return Array.from({ length: count }, (_, index) => pointAt(path, (index * length) / count));
};

const drawnAgain = (piece: Piece, rows: readonly Row[]): Point[] => {
  const { origin, down, right } = chalkFrame(piece);
  return rows.map((row) => plus(origin, plus(times(down, row.down), times(right, row.across))));
};

describe.each(recipes)("%s", (file) => {
  test("every piece drawn again from its points is as near to the true outline as the table says", () => {
    const { garment } = workedRecipe(file);
    const rows = rowsOf(garment).filter(({ kind }) => kind === "outline");
    const step = garment.units === "in" ? 25.4 / 8 : 2;
    for (const piece of garment.pieces.values()) {
      const own = rows.filter((row) => row.piece === piece.name);
      expect(own.map(({ point }) => point)).toEqual(own.map((_, index) => index + 1));
      const bound = Math.max(...own.map(({ off }) => off));
      expect(bound).toBeLessThanOrEqual(step);
      const outline = boundary(piece)!;
      const loop = drawnAgain(piece, own);
      const chalked = through([...loop, loop[0]!]);
      for (const p of along(loop)) expect(nearest(outline, p).distance).toBeLessThanOrEqual(bound);
      const length = pathLength(outline);
      for (let at = 0; at < length; at += 5)
        expect(nearest(chalked, pointAt(outline, at)).distance).toBeLessThanOrEqual(bound);
    }
  });
});
