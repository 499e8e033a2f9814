// Nested sizes: each size is the piece that it is alone, laid on the others where it was asked to be, and can be told from them.
import { describe, expect, test } from "vitest";
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { rim, room } from "../../kernel/drawing/box.ts";
import { draw } from "../../kernel/drawing/draw.ts";
import type { Drawing, Group } from "../../kernel/drawing/drawing.ts";
import { boxOf } from "../../kernel/drawing/lettering.ts";
import { lineStyle, sizesIn, styleOf } from "../../kernel/drawing/line-style.ts";
import { svg } from "../../kernel/export/svg.ts";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { crossings } from "../../kernel/geometry/intersect.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, joined, type Path, startOf, through } from "../../kernel/geometry/path.ts";
import { minus, type Point } from "../../kernel/geometry/point.ts";
import { canNestAt, nested } from "../../kernel/sizes/nested.ts";
import { garmentsOf, type SizedGarment } from "../../kernel/sizes/size-tables.ts";
import { beltLoop, garmentOf } from "../drawing/made-garment.ts";
import { sizesOf, sizeTablesOf } from "../export/export-garments.ts";

const coat = sizesOf("blocks/straight-coat.chalk");
const bodice = sizesOf("blocks/fitted-bodice.chalk");
const remarks = { choices: [] };

const groupsOf = (drawing: Drawing, piece: string): Group[] =>
  drawing.groups.filter(({ of, name }) => of === "piece" && name === piece);

const cuttingOf = (drawing: Drawing, piece: string, size: string): Path[] =>
  groupsOf(drawing, piece)
    .filter((group) => group.size === size)
    .flatMap(({ strokes }) => strokes.filter(({ kind }) => kind === "cutting-line").map(({ path }) => path));

/** How far a place of a piece moves from one size to the next in the nest, found by the shape alone. */
const startsOf = (drawing: Drawing, piece: string, size: string): Point[] =>
  cuttingOf(drawing, piece, size).map(startOf);

const placeIn = (sized: readonly SizedGarment[], size: string, piece: string, place: string): Point =>
  sized
    .find((each) => each.size === size)!
    .garment.pieces.get(piece)!
    .places.get(place)!.point;

describe("where sizes lie", () => {
  test("points move from B88 to B92 as the handbook's worked grading has it", () => {
    // Handbook of the trade 8.2, coat block B 880 -> 920: nape stays, neck point, back tip and underarm move by so much.
    const back = nested(coat, remarks).pieces.get("back")!;
    const names = ["nape", "neck-point", "shoulder-tip", "underarm"];
    const wanted = [
      [0, 0],
      [2, -0.67],
      [3.9, -0.05],
      [10, 5],
    ];
    const found = names.map((name) => {
      const [from, to] = ["B88", "B92"].map((size) => {
        const place = placeIn(coat, size, "back", name);
        // B88 is the base and lies where it was drafted; the other has a corner where its own place would be in the nest.
        return {
          place,
          spots: cuttingOf(back, "back", size)
            .flat()
            .flatMap(({ start, end }) => [start, end]),
        };
      }) as [{ place: Point; spots: Point[] }, { place: Point; spots: Point[] }];
      const here = from.spots.find((spot) => Math.hypot(spot.x - from.place.x, spot.y - from.place.y) < 1e-6)!;
      const there = to.spots.find((spot) => Math.hypot(spot.x - to.place.x, spot.y - to.place.y) < 1e-6)!;
      return minus(there, here);
    });
    for (const [i, { x, y }] of found.entries()) {
      expect(Math.abs(x - wanted[i]![0]!)).toBeLessThan(0.006);
      expect(Math.abs(y - wanted[i]![1]!)).toBeLessThan(0.006);
    }
  });

  test("at the fold's upper end, where nothing else is asked for", () => {
    const { pieces } = nested(bodice, remarks);
    for (const piece of ["back", "front"]) {
      const tops = groupsOf(pieces.get(piece)!, piece).flatMap(({ strokes, size }) =>
        size === undefined ? [] : strokes.filter(({ kind }) => kind === "fold").map(({ path }) => bounds([path]).top),
      );
      expect(tops.length).toBe(bodice.length);
      for (const top of tops) expect(top).toBeCloseTo(tops[0]!, 9);
    }
  });

  test("at a place that is named", () => {
    const { pieces } = nested(coat, remarks, "underarm");
    const base = placeIn(coat, "B88", "back", "underarm");
    for (const { size } of coat)
      expect(
        startsOf(pieces.get("back")!, "back", size).some((p) => Math.hypot(p.x - base.x, p.y - base.y) < 1e-6),
      ).toBe(true);
  });

  test("at the upper end of an edge that is named; a piece without it keeps the usual way", () => {
    const { pieces } = nested(coat, remarks, "side");
    const base = placeIn(coat, "B88", "front", "underarm");
    for (const { size } of coat)
      expect(nearest(joined(cuttingOf(pieces.get("front")!, "front", size)), base).distance).toBeLessThan(1e-6);
    const usual = nested(coat, remarks).pieces.get("sleeve")!;
    expect(startsOf(pieces.get("sleeve")!, "sleeve", "B104")).toEqual(startsOf(usual, "sleeve", "B104"));
  });

  test("a name that no piece has can be told beforehand", () => {
    expect(canNestAt(coat, "underarm")).toBe(true);
    expect(canNestAt(coat, "side")).toBe(true);
    expect(canNestAt(coat, "tail")).toBe(false);
  });

  test("with the grain one: no size is turned", () => {
    const { pieces } = nested(coat, remarks, "underarm");
    for (const { size, garment } of coat) {
      const alone = draw(garment)
        .pieces.get("back")!
        .groups[0]!.strokes.filter(({ kind }) => kind === "cutting-line");
      const laid = cuttingOf(pieces.get("back")!, "back", size);
      const by = minus(startOf(laid[0]!), startOf(alone[0]!.path));
      for (const [i, path] of laid.entries()) {
        const off = minus(minus(endOf(path), endOf(alone[i]!.path)), by);
        expect(Math.hypot(off.x, off.y)).toBeLessThan(1e-9);
      }
    }
  });
});

describe("each size", () => {
  test("has the length and the area that it has alone", () => {
    const { sheet } = nested(coat, remarks);
    for (const { size, garment } of coat) {
      for (const piece of garment.pieces.values()) {
        const paths = cuttingOf(sheet, piece.name, size);
        const alone = cuttingLine(piece)!.path;
        expect(paths.reduce((sum, path) => sum + pathLength(path), 0)).toBeCloseTo(pathLength(alone), 6);
        expect(signedArea(joined(paths))).toBeCloseTo(signedArea(alone), 3);
      }
    }
  });

  test("has a group in every piece, with its cutting lines, darts and notches, and no sewing line along an edge", () => {
    const { sheet } = nested(bodice, remarks);
    expect(sizesIn(sheet)).toEqual(bodice.map(({ size }) => size));
    for (const { size } of bodice) {
      const own = groupsOf(sheet, "front").find((group) => group.size === size)!;
      expect(own.strokes.filter(({ of }) => of?.kind === "dart").length).toBeGreaterThan(5);
      expect(own.strokes.some(({ kind }) => kind === "notch")).toBe(true);
      expect(own.strokes.filter(({ kind, of }) => (kind === "sewing-line" || kind === "hem-line") && !of)).toEqual([]);
    }
  });

  test("is told from every other by its dashes, in black, however many there are", () => {
    const names = Array.from({ length: 16 }, (_, index) => `size ${index}`);
    const looks = names.map((name) => JSON.stringify(styleOf("cutting-line", name, names).dashes));
    expect(new Set(looks).size).toBe(names.length);
    for (const name of names) expect(styleOf("cutting-line", name, names).ink).toBe("black");
    // One size alone has nothing to be told from.
    expect(styleOf("cutting-line", "M", ["M"])).toEqual(lineStyle["cutting-line"]);
  });

  test("that has no piece of a name leaves it to the others", () => {
    const [first, ...others] = coat;
    const without = new Map([...first!.garment.pieces].filter(([name]) => name !== "sleeve"));
    const sized = [{ ...first!, garment: { ...first!.garment, pieces: without } }, ...others];
    const { sheet } = nested(sized, remarks);
    expect(groupsOf(sheet, "sleeve").map(({ size }) => size)).toEqual([...others.map(({ size }) => size), undefined]);
  });

  test("that is like all others is drawn once, for all", () => {
    const sized = ["S", "M", "L"].map((size) => ({ size, base: size === "M", garment: garmentOf([beltLoop]) }));
    const groups = groupsOf(nested(sized, remarks).sheet, "belt-loop");
    expect(groups.map(({ size }) => size)).toEqual([undefined]);
    expect(groups[0]!.words).toMatch(/^All sizes: /);
    expect(groups[0]!.texts.some(({ text }) => text.includes("SIZES S M L"))).toBe(true);
  });
});

const tables = sizeTablesOf("blocks/straight-coat.chalk");

describe("the names of the sizes", () => {
  const nests: [string, Drawing][] = [
    ["coat, 7 sizes", nested(coat, remarks).sheet],
    ["coat, 12 sizes", nested(garmentsOf(tables[1]!), remarks).sheet],
    ["bodice", nested(bodice, remarks).sheet],
  ];

  test.each(nests)("stand in every piece, and lie on no other word: %s", (_, sheet) => {
    const texts = sheet.groups.flatMap((group) => group.texts);
    for (const [i, text] of texts.entries()) {
      const others = texts.filter((_, j) => j !== i).map((each) => rim(boxOf(each)));
      expect(room(boxOf(text), others), text.text).toBeGreaterThan(1);
    }
    for (const group of sheet.groups) {
      if (group.size === undefined) continue;
      expect(group.texts.map(({ text }) => text)).toContain(group.size);
    }
  });

  test("stand nearest to the line that they name", () => {
    const sheet = nests[0]![1];
    const sides = coat.map(({ size }) => {
      const group = groupsOf(sheet, "back").find((each) => each.size === size)!;
      return { size, group, line: cuttingOf(sheet, "back", size) };
    });
    for (const { size, group } of sides) {
      for (const { at } of group.texts) {
        const off = sides.map((each) => ({
          size: each.size,
          distance: Math.min(...each.line.map((path) => nearest(path, at).distance)),
        }));
        expect(off.sort((a, b) => a.distance - b.distance)[0]!.size).toBe(size);
      }
    }
  });
});

describe("names that have no room between the lines", () => {
  const collar = nested(garmentsOf(sizeTablesOf("blocks/flat-collar.chalk")[1]!), remarks);
  const groups = groupsOf(collar.sheet, "collar");
  const led = groups.flatMap((group) => {
    const leader = group.size === undefined ? undefined : group.strokes.find(({ kind }) => kind === "frame");
    return leader ? [{ size: group.size!, path: leader.path, group }] : [];
  });

  test("stand outside, and a line leads from each to the line that it names", () => {
    expect(led.length).toBeGreaterThan(5);
    for (const { size, path, group } of led) {
      const tip = group.strokes.find(({ kind }) => kind === "arrowhead")!.path;
      const off = groups
        .filter((each) => each.size !== undefined)
        .map((each) => ({
          size: each.size,
          distance: Math.min(
            ...cuttingOf(collar.sheet, "collar", each.size!).map((line) => nearest(line, startOf(tip)).distance),
          ),
        }))
        .sort((a, b) => a.distance - b.distance)[0]!;
      expect(off.size).toBe(size);
      expect(off.distance).toBeLessThan(1e-6);
      // The name stands where the leader begins.
      expect(Math.hypot(group.texts[0]!.at.x - startOf(path).x, group.texts[0]!.at.y - startOf(path).y)).toBeLessThan(
        3,
      );
    }
  });

  test("have leaders that do not cross one another, nor run through a name", () => {
    const texts = groups.flatMap((group) => group.texts.map((text) => rim(boxOf(text))));
    for (const [i, { path }] of led.entries()) {
      for (const { path: other } of led.slice(i + 1)) expect(crossings(path, other)).toEqual([]);
      for (const text of texts) expect(crossings(path, through(text))).toEqual([]);
    }
  });
});

describe("the sheet", () => {
  test("says which line is which size, and where they were laid on one another", () => {
    const { sheet, pieces } = nested(coat, remarks, "underarm");
    for (const drawing of [sheet, ...pieces.values()]) {
      const legend = drawing.groups.filter(({ of }) => of === "size-legend");
      expect(legend.map(({ size }) => size)).toEqual([undefined, ...coat.map(({ size }) => size)]);
      expect(legend[0]!.texts[0]!.text).toMatch(/^Sizes, laid on one another/);
    }
    expect(sheet.title).toBe("Straight coat block, sizes B80 to B104");
  });

  test("keeps within its paper, and groups of one piece together", () => {
    const { sheet } = nested(bodice, remarks);
    const box = bounds(sheet.groups.flatMap(({ strokes }) => strokes.map(({ path }) => path)));
    expect(box.left).toBeGreaterThan(sheet.paper.left);
    expect(box.top).toBeGreaterThan(sheet.paper.top);
    expect(box.right).toBeLessThan(sheet.paper.right);
    expect(box.bottom).toBeLessThan(sheet.paper.bottom);
    // On the sheet a piece's sizes lie to one another as on the paper of the piece alone.
    const alone = nested(bodice, remarks).pieces.get("front")!;
    const apart = (drawing: Drawing): Point =>
      minus(startsOf(drawing, "front", "B104")[0]!, startsOf(drawing, "front", "B80")[0]!);
    expect(apart(sheet).x).toBeCloseTo(apart(alone).x, 9);
    expect(apart(sheet).y).toBeCloseTo(apart(alone).y, 9);
  });

  test("is the same bytes for the same sizes", () => {
    expect(svg(nested(structuredClone(coat), remarks).sheet)).toBe(svg(nested(coat, remarks).sheet));
  });

  test("needs a size", () => {
    expect(() => nested([], remarks)).toThrow("A nest needs a size.");
  });
});

test("a used table has the base that it says itself, a recipe's own tables come first, and each has its sizes", () => {
  expect(tables.map(({ table, sizes }) => [table, sizes.length, sizes.find(({ base }) => base)?.name])).toEqual([
    ["blocks/sizes/working-table.chalk", 7, "B88"],
    ["blocks/sizes/misses-table.chalk", 12, "misses-8"],
  ]);
});

describe("the legend says where the sizes of each piece lie", () => {
  const said = (drawing: Drawing): string[] =>
    drawing.groups.flatMap(({ of, size, texts }) =>
      of === "size-legend" && size === undefined ? texts.map(({ text }) => text) : [],
    );
  const { nests, pieces, sheet } = nested(coat, remarks, "nape");

  test("at the place that was asked for, and where a piece has none, at what stands for it", () => {
    expect(said(pieces.get("back")!)).toEqual(["Sizes, laid on one another at nape"]);
    expect(said(pieces.get("sleeve")!)).toEqual(["Sizes, laid on one another at the upper end of the grain line"]);
    expect(said(sheet)).toEqual([
      "Sizes, laid on one another",
      "back: at nape",
      "front, sleeve: at the upper end of the grain line",
    ]);
  });

  test("and there they lie: the spot that it names is one and the same in every size", () => {
    for (const { name, about } of nests) {
      const way = about === "at nape" ? "nape" : undefined;
      const tops = coat.map(({ size, garment }) => {
        const piece = garment.pieces.get(name)!;
        const [cut, laid] = [
          draw(garment).pieces.get(name)!.groups[0]!.strokes,
          groupsOf(pieces.get(name)!, name).find((group) => group.size === size)!.strokes,
        ].map((strokes) => startOf(strokes.find(({ kind }) => kind === "cutting-line")!.path)) as [Point, Point];
        const grain = draw(garment)
          .pieces.get(name)!
          .groups[0]!.strokes.find(({ of }) => of?.kind === "grain")!.path;
        const upper = [startOf(grain), endOf(grain)].sort((a, b) => a.y - b.y)[0]!;
        const spot = way === undefined ? upper : piece.places.get(way)!.point;
        return { x: spot.x + laid.x - cut.x, y: spot.y + laid.y - cut.y };
      });
      for (const { x, y } of tops) expect(Math.hypot(x - tops[0]!.x, y - tops[0]!.y)).toBeLessThan(1e-6);
    }
  });

  test("at the upper end of an edge; and of a piece that no size changes it says so", () => {
    expect(said(nested(coat, remarks, "side").pieces.get("back")!)).toEqual([
      "Sizes, laid on one another at the upper end of side",
    ]);
    const loops = ["S", "L"].map((size) => ({ size, base: size === "S", garment: garmentOf([beltLoop]) }));
    expect(said(nested(loops, remarks).sheet)).toEqual([
      "Sizes, laid on one another",
      `${beltLoop.name}: the same in every size`,
    ]);
  });
});
