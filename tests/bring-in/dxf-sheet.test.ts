// DXF as it is read, against ezdxf (Debian's python3-ezdxf), which writes the files and says what they draw, and against
// dxf-parser (npm), which reads them too.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import DxfParser from "dxf-parser";
import { describe, expect, test } from "vitest";
import { dxfSheet } from "../../editor/bring-in/dxf-sheet.ts";
import { dxfManyWords, dxfWords } from "../../editor/bring-in/dxf-words.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { type Path, through } from "../../kernel/geometry/path.ts";
import { hasEzdxf } from "../export/ezdxf.ts";
import { dxfOf } from "./dxf-of.ts";
import { howFar, tried } from "./traced.ts";
import { type WrittenDxf, writtenByEzdxf } from "./written-by-ezdxf.ts";

const flat: readonly (readonly [string, string])[] = [
  ["lines", "msp.add_line((0, 0), (100, 50))"],
  [
    "arcs",
    "msp.add_arc((10, 20), 80, 350, 20)\nmsp.add_arc((10, 20), 80, -30, 200)\nmsp.add_arc((0, 0), 50, 90, 90.5)",
  ],
  ["circles", "msp.add_circle((10, -20), 65)"],
  [
    "ellipses",
    "msp.add_ellipse((5, 5), (80, 30), 0.4)\nmsp.add_ellipse((5, 5), (0, 60), 0.5, 1, 4)\nmsp.add_ellipse((5, 5), (60, 0), 0.5, 5, 1)",
  ],
  [
    "light polylines with bulges",
    'msp.add_lwpolyline([(0, 0, 0.5), (100, 0, -0.3), (100, 80, 0), (0, 80, 1)], format="xyb", close=True)\nmsp.add_lwpolyline([(0, 0, 3), (100, 0, -3), (300, 0, 0)], format="xyb")',
  ],
  [
    "polylines with bulges",
    'msp.add_polyline2d([(0, 0, 0.5), (100, 0, -0.3), (100, 80, 0)], format="xyb", close=True)',
  ],
  ["flat polylines in space", "msp.add_polyline3d([(0, 0, 7), (50, 10, 7), (80, 60, 7)])"],
  ["cubic splines", "msp.add_open_spline([(0, 0), (30, 80), (90, 90), (120, 10), (160, -30), (200, 40)], degree=3)"],
  [
    "splines of other degrees",
    "for d in (1, 2, 4, 5): msp.add_open_spline([(0, 0), (30, 80), (90, 90), (120, 10), (160, -30), (200, 40)], degree=d)",
  ],
  [
    "closed splines",
    "msp.add_spline(degree=3).set_closed([(0, 0, 0), (30, 80, 0), (90, 90, 0), (120, 10, 0), (60, -30, 0)], degree=3)",
  ],
  [
    "splines with weights",
    "msp.add_rational_spline([(0, 0), (30, 80), (90, 90), (120, 10), (160, -30)], [1, 5, 1, 0.3, 1], degree=3)",
  ],
  [
    "splines with uneven knots",
    "s = msp.add_spline(degree=3)\ns.control_points = [(0,0),(20,50),(60,70),(100,0),(140,20),(170,90)]\ns.knots = [0,0,0,0,1,1,4,4,4,4]",
  ],
  [
    "blocks turned, scaled, stretched and mirrored",
    `b = doc.blocks.new("flap", base_point=(10, 5))
b.add_line((0, 0), (60, 20))
b.add_arc((20, 20), 30, 10, 170)
b.add_lwpolyline([(0, 0, 0.5), (40, 0, 0), (40, 30, 0)], format="xyb", close=True)
msp.add_blockref("flap", (200, 100), dxfattribs={"rotation": 33, "xscale": 2, "yscale": 2})
msp.add_blockref("flap", (-200, 100), dxfattribs={"rotation": -70, "xscale": -1, "yscale": 1})
c = doc.blocks.new("pair")
c.add_blockref("flap", (0, 0), dxfattribs={"rotation": 20})
c.add_blockref("flap", (0, 90), dxfattribs={"xscale": 0.5, "yscale": 0.5})
msp.add_blockref("pair", (0, 400), dxfattribs={"rotation": 45})
msp.add_blockref("flap", (500, 0), dxfattribs={"rotation": 30, "row_count": 2, "column_count": 3, "row_spacing": 80, "column_spacing": 120})`,
  ],
  [
    "blocks stretched one way",
    'b = doc.blocks.new("o")\nb.add_lwpolyline([(0, 0), (40, 0), (40, 30)], close=True)\nmsp.add_blockref("o", (20, 10), dxfattribs={"rotation": 30, "xscale": 3, "yscale": 0.5})',
  ],
  [
    "things seen from behind",
    'msp.add_arc((10, 20), 80, 350, 20, dxfattribs={"extrusion": (0, 0, -1)})\nmsp.add_lwpolyline([(0, 0, 0.5), (100, 0, 0), (100, 80, 0)], format="xyb", dxfattribs={"extrusion": (0, 0, -1)})\nmsp.add_circle((30, 0), 12, dxfattribs={"extrusion": (0, 0, -1)})',
  ],
];

const standing = `msp.add_arc((10, 20), 80, 350, 20, dxfattribs={"extrusion": (0, 1, 1)})
msp.add_polyline3d([(0, 0, 7), (50, 10, 9)])`;

const written = hasEzdxf ? writtenByEzdxf([...flat, ["standing", standing]]) : new Map<string, WrittenDxf>();

describe.skipIf(!hasEzdxf)("ezdxf writes, and says what it drew", () => {
  test.each(flat)("%s", (name, script) => {
    const { dxf, lines } = written.get(name)!;
    const sheet = dxfSheet(dxf, 1);
    expect(sheet.leftOut).toEqual([]);
    expect(sheet.lines).toHaveLength(lines.length);
    lines.forEach((points, i) => {
      const expected: Path = through(points.map(([x, y]) => ({ x, y: -y })));
      // ezdxf flattens to 0.0005, and takes a cubic for a quarter of the circle of a bulge (0.03 % of the radius).
      expect(howFar(sheet.lines[i]!.path, expected)).toBeLessThan(script.includes("xyb") ? 0.02 : 0.004);
    });
  });

  test("what does not lie flat is left out", () => {
    const { leftOut, lines } = dxfSheet(written.get("standing")!.dxf, 1);
    expect(leftOut.map(({ what }) => what)).toEqual([
      "ARC entities that do not lie flat on the page",
      "POLYLINE entities that do not lie flat on the page",
    ]);
    expect(lines).toEqual([]);
  });
});

describe("units", () => {
  const line = [0, "LINE", 8, 0, 10, 0, 20, 0, 11, 10, 21, 0];
  const width = (
    header: readonly (string | number)[],
    unit?: number,
    extra: readonly (string | number)[] = [],
  ): number => {
    const head = [0, "SECTION", 2, "HEADER", ...header, 0, "ENDSEC"].map((each) => `${each}\n`).join("");
    const { lines } = dxfSheet(head + dxfOf(line, extra), unit);
    const { left, right } = bounds([lines[0]!.path]);
    return right - left;
  };

  test.each([
    // $INSUNITS by number (DXF reference, HEADER section): inches, feet, mm, cm, m, yards, dm.
    [1, 254],
    [2, 3048],
    [4, 10],
    [5, 100],
    [6, 10_000],
    [10, 9144],
    [14, 1000],
  ])("$INSUNITS %i makes ten units %f mm", (code, millimetres) => {
    expect(width([9, "$INSUNITS", 70, code])).toBeCloseTo(millimetres, 9);
    // What the file says is not overruled.
    expect(width([9, "$INSUNITS", 70, code], 25.4)).toBeCloseTo(millimetres, 9);
  });

  test("without $INSUNITS the words of the standard count, then $MEASUREMENT, then what was said, then millimetres", () => {
    const words = (units: string) => [0, "TEXT", 8, 1, 10, 0, 20, 0, 1, `Units: ${units}`];
    expect(width([9, "$INSUNITS", 70, 0], undefined, words("ENGLISH"))).toBeCloseTo(254, 9);
    expect(width([], 25.4, words("METRIC"))).toBe(10);
    expect(width([9, "$MEASUREMENT", 70, 0])).toBeCloseTo(254, 9);
    expect(width([9, "$MEASUREMENT", 70, 1])).toBe(10);
    expect(width([], 25.4)).toBeCloseTo(254, 9);
    expect(width([])).toBe(10);
    expect(dxfSheet(dxfOf(line), undefined).notes[0]).toContain("does not say its units");
  });
});

test("hidden, frozen and switched-off things, and page layouts, are not drawn", () => {
  const layers = [
    0,
    "SECTION",
    2,
    "TABLES",
    0,
    "TABLE",
    2,
    "LAYER",
    0,
    "LAYER",
    2,
    "off",
    62,
    -7,
    0,
    "LAYER",
    2,
    "frozen",
    70,
    1,
    0,
    "LAYER",
    2,
    "on",
    62,
    7,
    70,
    0,
    0,
    "ENDTAB",
    0,
    "ENDSEC",
  ];
  const line = (layer: string, ...more: readonly number[]) => [
    0,
    "LINE",
    8,
    layer,
    ...more,
    10,
    0,
    20,
    0,
    11,
    10,
    21,
    0,
  ];
  const text =
    layers.map((each) => `${each}\n`).join("") +
    dxfOf(line("off"), line("frozen"), line("on"), line("on", 60, 1), line("on", 67, 1));
  const { lines, leftOut } = dxfSheet(text, 1);
  expect(lines).toHaveLength(1);
  expect(leftOut.map(({ what, count }) => `${count} ${what}`)).toEqual([
    "3 hidden entities",
    "1 entities of page layouts",
  ]);
});

test("texts are read as they are shown (DXF reference, Control codes)", () => {
  expect(dxfWords("45%%d %%p1 %%c3 100%%% \\U+00E9t\\U+00e9 a^ b%%065")).toBe(
    "45° ±1 ⌀3 100% été a^b%%065".replace("a^b", "a^b"),
  );
  expect(dxfManyWords("{\\fArial|b1;\\H2.5x;one}\\Ptwo \\Lthree\\l \\{four\\}")).toBe("one two three {four}");
});

test("dxf-parser reads the same numbers", () => {
  const text = dxfOf(
    [0, "CIRCLE", 8, "marks", 10, 12.5, 20, -3, 40, 7.25],
    [0, "LINE", 8, "cut", 10, "1.5E1", 20, 2, 11, -30, 21, "4."],
    [0, "LWPOLYLINE", 8, "cut", 90, 3, 70, 1, 10, 0, 20, 0, 10, 100, 20, 0, 10, 100, 20, 60],
  );
  const [circle, line, bent] = new DxfParser().parseSync(text)!.entities as unknown as {
    center: { x: number; y: number };
    radius: number;
    vertices: { x: number; y: number }[];
  }[];
  const { lines } = dxfSheet(text, 1);
  const box = bounds([lines[0]!.path]);
  expect([(box.left + box.right) / 2, (box.top + box.bottom) / 2]).toEqual([
    expect.closeTo(circle!.center.x, 6),
    expect.closeTo(-circle!.center.y, 6),
  ]);
  expect((box.right - box.left) / 2).toBeCloseTo(circle!.radius, 5);
  const ends = (path: Path) => [path[0]!.start, ...path.map(({ end }) => end)].map(({ x, y }) => [x + 0, -y + 0]);
  expect(ends(lines[1]!.path)).toEqual(line!.vertices.map(({ x, y }) => [x, y]));
  expect(ends(lines[2]!.path).slice(0, 3)).toEqual(bent!.vertices.map(({ x, y }) => [x, y]));
});

const samples = new URL("../../../shared/data/dxf-samples/", import.meta.url);

describe.skipIf(!existsSync(samples))("samples from elsewhere end in a recipe or in words", () => {
  const files = existsSync(samples) ? readdirSync(samples).filter((name) => /\.dxf$/i.test(name)) : [];

  // By hand from the files: what is drawn in them, and why nothing comes of the others.
  const expected = new Map<string, string | number>([
    ["AC1003_LINE_Example.dxf", "No closed line in this drawing is as large as a square centimetre"],
    ["ASCII_R12.dxf", "No line in this drawing is closed"],
    ["Minimal_DXF_AC1009.dxf", "There is no line in this drawing"],
    ["R12_with_trash_beyond_EOF.dxf", "No closed line in this drawing is as large as a square centimetre"],
    ["cc_dxflib.dxf", "There is no line in this drawing"],
    ["r12_blocks_with_no_names.dxf", "There is no line in this drawing"],
    ["POLI-ALL210_12.DXF", "There is no line in this drawing"],
    ["empty_handles.dxf", 1],
    ["issue1106.dxf", 3],
  ]);

  test.each(files)("%s", (file) => {
    const made = tried(new TextDecoder("windows-1252").decode(readFileSync(new URL(file, samples))), "dxf");
    const outcome = "problem" in made ? made.problem.message : made.pieces.length;
    const wanted = expected.get(file);
    if (typeof wanted === "string") expect(outcome).toContain(wanted);
    else expect(outcome).toBe(wanted);
  });
});
