// DXF read back by two readers that are not ours: ezdxf (Debian's python3-ezdxf) and dxf-parser (npm). What they find is held
// against the pieces themselves, whose areas and extents come from the curves and not from what was written.
import DxfParser from "dxf-parser";
import { describe, expect, test } from "vitest";
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { cuttingRoomDxf } from "../../kernel/exchange/cutting-room.ts";
import { dxf } from "../../kernel/export/dxf.ts";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import type { Path } from "../../kernel/geometry/path.ts";
import { between } from "../../kernel/geometry/point.ts";
import { extentOf } from "../../kernel/report/extent.ts";
import { nested } from "../../kernel/sizes/nested.ts";
import type { Garment, Piece } from "../../kernel/working.ts";
import { garmentOf, lobbyCoat } from "../drawing/made-garment.ts";
import { tagsOf, valuesOf } from "./dxf-tags.ts";
import { hostileGarment, hostileWords, recipeGarment, sheetOf, sizesOf, vest } from "./export-garments.ts";
import { hasEzdxf, type ReadDxf, type ReadEntity, readByEzdxf } from "./ezdxf.ts";

const recipes = [
  "lobby-coat-swing.chalk",
  "uneven-jacket.chalk",
  "raglan-stage-cloak.chalk",
  "blocks/fitted-bodice.chalk",
  "circle-skirt.chalk",
];
const garments = new Map<string, Garment>([
  ["vest", vest],
  ["lobby coat", lobbyCoat],
  ...recipes.map((file) => [file, recipeGarment(file)] as const),
]);
const hostile = hostileWords.map((word, index) => [`hostile ${index}`, hostileGarment(word)] as const);
const sizes = sizesOf("blocks/straight-coat.chalk");
const nest = nested(sizes, { choices: [] });

const cuttingRoom = (garment: Garment): string => cuttingRoomDxf([{ base: true, garment }]);

const files = new Map<string, string>([
  ...[...garments, ...hostile].flatMap(([name, garment]): [string, string][] => [
    [`cutting room: ${name}`, cuttingRoom(garment)],
    [`plain: ${name}`, dxf(sheetOf(garment))],
  ]),
  ["cutting room: nest", cuttingRoomDxf(sizes)],
  ["plain: nest", dxf(nest.sheet)],
  ["cutting room: nothing", cuttingRoom(garmentOf([]))],
  ["plain: nothing", dxf(sheetOf(garmentOf([])))],
]);

const read: ReadonlyMap<string, ReadDxf> = hasEzdxf ? readByEzdxf(files) : new Map();

/** The area inside a bent line: Gauss's shoelace formula. */
const shoelace = (points: ReadEntity["points"]): number =>
  Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = points[(i + 1) % points.length]!;
      return sum + (x * nextY - nextX * y) / 2;
    }, 0),
  );

const box = (points: ReadEntity["points"]): number[] => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
};

/** How far the bent line strays from a path, at its corners and halfway between them. */
const farthest = (points: ReadEntity["points"], path: Path): { corners: number; between: number } => {
  const places = points.map(([x, y]) => ({ x, y: -y }));
  const off = (p: { x: number; y: number }): number => nearest(path, p).distance;
  return {
    corners: Math.max(...places.map(off)),
    between: Math.max(...places.map((p, i) => off(between(p, places[(i + 1) % places.length]!, 0.5)))),
  };
};

const onLayer = (entities: readonly ReadEntity[], layer: string): ReadEntity[] =>
  entities.filter((each) => each.layer === layer);

const pieces = [...garments].flatMap(([name, garment]) =>
  [...garment.pieces.values()].map((piece): [string, string, Piece] => [name, piece.name, piece]),
);

describe.skipIf(!hasEzdxf)("ezdxf", () => {
  test.each([...files.keys()])("opens %s and has nothing to say against it", (name) => {
    const { errors, units, measurement, version } = read.get(name)!;
    expect(errors).toEqual([]);
    // 4 is millimetres and 1 is metric (DXF reference, header variables).
    expect([units, measurement]).toEqual([4, 1]);
    expect(version).toBe(name.startsWith("plain") ? "AC1015" : "AC1009");
  });

  test.each(pieces)(
    "cutting room: %s, %s has the outline, area and extent that the piece has",
    (garment, name, piece) => {
      const block = read.get(`cutting room: ${garment}`)!.blocks[name.toUpperCase().replaceAll(".", "_")]!;
      const outlines = onLayer(block, "1").filter(({ type }) => type === "POLYLINE");
      const cutting = cuttingLine(piece)!.path;
      expect(outlines.length).toBe(1);
      const { points, closed } = outlines[0]!;
      expect(closed).toBe(true);
      const { area } = extentOf(cutting);
      expect(Math.abs(shoelace(points) - area) / area).toBeLessThan(0.001);
      const { left, top, right, bottom } = bounds([cutting]);
      const [l, b, r, t] = box(points);
      for (const [found, wanted] of [
        [l, left],
        [b, -bottom],
        [r, right],
        [t, -top],
      ] as const)
        expect(Math.abs(found! - wanted)).toBeLessThan(0.06);
      const off = farthest(points, cutting);
      // Written to 0.001 mm; the curve between two corners is within the 0.05 mm that is promised.
      expect(off.corners).toBeLessThan(0.0015);
      expect(off.between).toBeLessThan(0.0515);
      // Every corner of the outline is told as a turn point or as a curve point.
      const told = new Set([...onLayer(block, "2"), ...onLayer(block, "3")].map((each) => String(each.points[0])));
      expect(points.filter((p) => !told.has(String(p)))).toEqual([]);
      // Every edge that is sewn inside the cutting line is there, as long as it is.
      const sewn = onLayer(block, "14").reduce(
        (sum, { points: line, closed: round }) => sum + lengthOf(line, round),
        0,
      );
      const sewing = piece.outline
        .map(({ edge }) => piece.edges.get(edge)!)
        .filter((edge) => edge.role !== "fold" && (piece.allowances.get(edge.name)?.width ?? 0) > 0);
      if (piece.darts.size === 0)
        expect(Math.abs(sewn - sewing.reduce((sum, { path }) => sum + pathLength(path), 0))).toBeLessThan(0.5);
    },
  );

  test("cutting room: the vest's back has its marks where they were put", () => {
    const { blocks, entities, layers } = read.get("cutting room: vest")!;
    expect(layers).toEqual(expect.arrayContaining(["0", "1", "2", "3", "4", "6", "7", "8", "11", "13", "14", "15"]));
    const block = blocks.BACK!;
    // The fold from 15 mm above the nape to 25 mm below the hem, y up.
    expect(onLayer(block, "6").map(({ type, points }) => [type, points.map(String).sort()])).toEqual([
      ["LINE", ["0,-1025", "0,15"].sort()],
    ]);
    expect(onLayer(block, "13").map(({ type, points }) => [type, points])).toEqual([["POINT", [[120, -420]]]]);
    // One at the shoulder, two at the hem, one at the armhole. At the hem they are snipped upward, which is 90 degrees,
    // 5 mm deep, and lie on the cutting line 25 mm under the sewing line at 1000.
    const notches = onLayer(block, "4");
    expect(notches.length).toBe(4);
    const hem = notches.filter(({ points: [at] }) => at![1] < -900);
    expect(hem.map(({ points: [at] }) => at)).toEqual(
      expect.arrayContaining([
        [171, -1025],
        [179, -1025],
      ]),
    );
    for (const { angle, thickness } of hem) expect([angle, thickness]).toEqual([90, 5]);
    // The waist is marked and not sewn.
    expect(onLayer(block, "8").map(({ points }) => points)).toEqual([
      [
        [0, -400],
        [280, -400],
      ],
    ]);
    expect(onLayer(block, "7").map(({ type, points: [a, b] }) => [type, a![0] === b![0]])).toEqual([["LINE", true]]);
    const said = onLayer(block, "1").flatMap(({ type, text }) => (type === "TEXT" ? [text] : []));
    expect(said).toEqual(["Piece Name: back", "Quantity: 2", "Material: shell, lining"]);
    expect(onLayer(block, "15").map(({ text }) => text)).toEqual(
      expect.arrayContaining(["BACK", "CUT 1 SHELL ON FOLD", "CUT 1 LINING ON FOLD", "Interline to the waist."]),
    );
    expect(entities.filter(({ type }) => type === "INSERT").map(({ text }) => text)).toEqual(["BACK", "BELT-LOOP"]);
    expect(entities.filter(({ type }) => type === "TEXT").map(({ layer, text }) => [layer, text])).toEqual([
      ["1", "Style Name: Lobby coat, swing version"],
      ["1", "Units: METRIC"],
      ["0", "1 unit = 1 mm"],
    ]);
  });

  test("cutting room: turn points are the corners and the ends of edges, curve points are what lies between", () => {
    const block = read.get("cutting room: vest")!.blocks["BELT-LOOP"]!;
    // 400 x 30 with 10 all round, and the sewing lines inside it: corners only.
    expect(onLayer(block, "3")).toEqual([]);
    const turns = onLayer(block, "2").map(({ points: [at] }) => String(at));
    for (const corner of ["-10,10", "410,10", "410,-40", "-10,-40"]) expect(turns).toContain(corner);
    expect(new Set(turns).size).toBe(8);
  });

  test("cutting room: every size is a block, and no size is inserted over another", () => {
    const { blocks, entities } = read.get("cutting room: nest")!;
    expect(Object.keys(blocks)).toEqual(
      ["BACK", "FRONT", "SLEEVE"].flatMap((piece) => sizes.map(({ size }) => `${piece}_${size}`)),
    );
    const said = blocks.BACK_B92!.flatMap(({ type, layer, text }) => (type === "TEXT" && layer === "1" ? [text] : []));
    expect(said).toEqual(["Piece Name: back", "Size: B92"]);
    expect(onLayer(blocks.BACK_B92!, "15").map(({ text }) => text)).toContain("SIZE B92");
    expect(entities.map(({ text }) => text)).toContain("Sample Size: B88");
    const inserted = entities.filter(({ type }) => type === "INSERT");
    // No size lies over another: all backs in one row, each to the right of the one before.
    const backs = inserted.filter(({ text }) => text.startsWith("BACK_")).map(({ points: [at] }) => at!);
    expect(backs.length).toBe(7);
    // Their tops lie level, and the neck points that they are rise by a fifteenth of the neck's girth: 4 mm in all.
    expect(Math.max(...backs.map(([, y]) => y)) - Math.min(...backs.map(([, y]) => y))).toBeLessThan(5);
    for (const [i, [x]] of backs.entries()) if (i > 0) expect(x - backs[i - 1]![0]).toBeGreaterThan(200);
  });

  test("plain: a layer for each kind of line, outlines closed, areas and extent as drawn", () => {
    const { entities, layers, extents } = read.get("plain: vest")!;
    const sheet = sheetOf(vest);
    expect(layers).toEqual(
      expect.arrayContaining(["CUTTING-LINE", "SEWING-LINE", "HEM-LINE", "FOLD", "GRAIN", "NOTCH", "DRILL", "LABEL"]),
    );
    const drawn = bounds(sheet.groups.flatMap(({ strokes }) => strokes.map(({ path }) => path)));
    const wanted = [drawn.left, -drawn.bottom, drawn.right, -drawn.top];
    for (const [i, each] of wanted.entries()) expect(Math.abs(each - extents[i]!)).toBeLessThan(0.06);
    // The belt loop has no fold, and so its cutting line closes: 420 x 50.
    const closed = onLayer(entities, "CUTTING-LINE").filter((line) => line.closed);
    expect(closed.map(({ points }) => [points.length, Math.round(shoelace(points))])).toEqual([[4, 21_000]]);
    // The back's is open at the fold and one line all the same, beside the sample in the legend.
    expect(onLayer(entities, "CUTTING-LINE").length).toBe(3);
    const texts = sheet.groups.flatMap((group) => group.texts.map(({ text }) => text));
    expect(onLayer(entities, "LABEL").map(({ text }) => text)).toEqual(texts);
    expect(onLayer(entities, "0").map(({ text }) => text)).toEqual(["1 unit = 1 mm"]);
  });

  test("plain: every size of a nest has layers of its own", () => {
    const { layers, entities } = read.get("plain: nest")!;
    for (const { size, garment } of sizes) {
      expect(layers).toContain(`CUTTING-LINE_${size}`);
      const areas = onLayer(entities, `CUTTING-LINE_${size}`)
        .filter(({ closed }) => closed)
        .map(({ points }) => shoelace(points));
      const wanted = [...garment.pieces.values()].map((piece) => extentOf(cuttingLine(piece)!.path).area);
      expect(areas.length).toBe(3);
      for (const [i, area] of areas.entries()) expect(Math.abs(area - wanted[i]!) / wanted[i]!).toBeLessThan(0.001);
    }
  });

  test.each(hostile.map(([name], index) => [name, index] as const))(
    "%s: words stay words, and the file has the entities that a harmless one has",
    (name, index) => {
      const count = (entities: readonly ReadEntity[]): string =>
        JSON.stringify(entities.filter(({ layer }) => layer !== "15").map(({ type, layer }) => [type, layer]));
      const [tame, wild] = [read.get("cutting room: hostile 0")!, read.get(`cutting room: ${name}`)!];
      expect(count(wild.entities)).toBe(count(tame.entities));
      expect(Object.keys(wild.blocks).length).toBe(1);
      expect(count(Object.values(wild.blocks)[0]!)).toBe(count(Object.values(tame.blocks)[0]!));
      const lines = ({ entities }: ReadDxf): number => entities.filter(({ type }) => type !== "TEXT").length;
      expect(lines(read.get(`plain: ${name}`)!)).toBe(lines(read.get("plain: hostile 0")!));
      // The rest can be read: controls are spaces or gone, so are marks of reading direction, what has five digits is U+FFFD,
      // and percent signs that would begin a code are parted.
      const clean = hostileWords[index]!.replace(/[\t\n\r]+/g, " ")
        // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for.
        .replace(/[\u0000-\u001f\u202e\u2066]|\p{Cs}/gu, "")
        .replace(/[\u{10000}-\u{10ffff}]/gu, "\ufffd")
        .replace(/%(?=%)/g, "% ")
        .trim();
      const title = wild.entities.map(({ text }) => text).find((text) => text.startsWith("Style Name: "))!;
      if (clean.length < 200) expect(title).toBe(`Style Name: ${clean}`);
      else expect(title.endsWith("...")).toBe(true);
    },
  );
});

const lengthOf = (points: ReadEntity["points"], closed: boolean): number =>
  (closed ? [...points, points[0]!] : points).reduce((sum, [x, y], i, all) => {
    const before = all[i - 1];
    return before ? sum + Math.hypot(x - before[0], y - before[1]) : sum;
  }, 0);

describe("dxf-parser", () => {
  test.each([...files])("reads %s", (name, text) => {
    const parsed = new DxfParser().parseSync(text)!;
    expect(parsed.header.$INSUNITS).toBe(4);
    expect(parsed.header.$ACADVER).toBe(name.startsWith("plain") ? "AC1015" : "AC1009");
    const reference = read.get(name);
    if (reference) expect(parsed.entities.length).toBe(reference.entities.length);
    expect(parsed.entities.length).toBe(valuesOf(entitiesOf(text), 0).filter((type) => isEntity(type)).length);
  });

  test("finds the blocks with their outlines", () => {
    const { blocks } = new DxfParser().parseSync(files.get("cutting room: vest")!)!;
    const outline = blocks.BACK!.entities.find(({ type, layer }) => type === "POLYLINE" && layer === "1");
    const points = (outline as unknown as { vertices: { x: number; y: number }[] }).vertices.map(
      ({ x, y }) => [x, y] as const,
    );
    const { area } = extentOf(cuttingLine(vest.pieces.get("back")!)!.path);
    expect(Math.abs(shoelace(points) - area) / area).toBeLessThan(0.001);
  });
});

const isEntity = (type: string): boolean => !["SECTION", "ENDSEC", "VERTEX", "SEQEND"].includes(type);

const entitiesOf = (text: string) => {
  const tags = tagsOf(text);
  const start = tags.findIndex(([code, value]) => code === 2 && value === "ENTITIES");
  return tags.slice(
    start,
    tags.findIndex(([code, value], index) => index > start && code === 0 && value === "ENDSEC"),
  );
};

describe("the bytes", () => {
  test.each([...files.keys()])(
    "of %s are lines of printable ASCII, a group code and its value in turn, with one end",
    (name) => {
      const tags = tagsOf(files.get(name)!);
      expect(valuesOf(tags, 0).filter((value) => value === "EOF").length).toBe(1);
      expect(valuesOf(tags, 999)).toEqual([]);
      // No two handles alike.
      const handles = valuesOf(tags, 5);
      expect(new Set(handles).size).toBe(handles.length);
      for (const code of [10, 20, 11, 21, 40, 39])
        for (const value of valuesOf(tags, code)) expect(value).toMatch(/^-?\d+\.\d{1,3}$/);
    },
  );

  test("are the same for the same garment", () => {
    const again = structuredClone(lobbyCoat);
    expect(cuttingRoom(again)).toBe(files.get("cutting room: lobby coat"));
    expect(dxf(sheetOf(again))).toBe(files.get("plain: lobby coat"));
    expect(cuttingRoomDxf(sizesOf("blocks/straight-coat.chalk"))).toBe(files.get("cutting room: nest"));
  });

  test("hold no date and no name of a program", () => {
    for (const text of files.values()) expect(text).not.toMatch(/TDCREATE|TDUPDATE|Creation|20\d\d-|Chalkline/);
  });
});
