// What is printed, judged by readers that are not ours: poppler draws and reads the pages, qpdf looks at the file, pdf.js lists
// the layers. Where a program is not installed its tests are skipped.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import { afterAll, describe, expect, test } from "vitest";
import { type Drawings, draw } from "../../kernel/drawing/draw.ts";
import type { Drawing, Group, StrokeKind, Text } from "../../kernel/drawing/drawing.ts";
import { extentOf } from "../../kernel/drawing/paper.ts";
import { straight } from "../../kernel/geometry/path.ts";
import { faceFrom } from "../../kernel/lettering/lettering.ts";
import { lacking, written } from "../../kernel/lettering/readable.ts";
import type { Print } from "../../kernel/paper/page.ts";
import { papers } from "../../kernel/paper/papers.ts";
import { pdf } from "../../kernel/paper/pdf.ts";
import { printOn } from "../../kernel/paper/print.ts";
import { nested } from "../../kernel/sizes/nested.ts";
import { lobbyCoat } from "../drawing/made-garment.ts";
import { sizesOf } from "../export/export-garments.ts";
import { workedRecipe } from "../worked-recipe.ts";

const isHere = (program: string): boolean => spawnSync(program, ["-v"]).error === undefined;
const withoutPoppler = !isHere("pdftoppm");
const withoutQpdf = spawnSync("qpdf", ["--version"]).error !== undefined;

const folder = mkdtempSync(join(tmpdir(), "chalkline-print-"));
afterAll(() => rmSync(folder, { recursive: true }));

const fontFile = (name: string): Uint8Array =>
  readFileSync(fileURLToPath(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
const lettering = { plain: faceFrom(fontFile("DejaVuSans")), bold: faceFrom(fontFile("DejaVuSans-Bold")) };

const printed = (drawings: Drawings, paper: string): Print => {
  const print = printOn(papers.find(({ name }) => name === paper)!, drawings);
  if ("tooLarge" in print) throw new Error("too large");
  return print;
};

const saved = async (name: string, print: Print): Promise<string> => {
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, await pdf(print, lettering));
  return file;
};

/** A drawing of one piece made of these lines and texts, and nothing else. */
const alone = (strokes: Group["strokes"], texts: readonly Text[] = []): Drawings => {
  const group: Group = { of: "piece", name: "flap", words: "A flap.", strokes, texts };
  const drawing: Drawing = {
    title: "Usher's flap",
    words: "A flap.",
    paper: { left: 0, top: 0, right: 1, bottom: 1 },
    groups: [group],
  };
  return { pieces: new Map([["flap", drawing]]), sheet: drawing, column: [] };
};

const text = (words: string, x: number, y: number): Text => ({
  text: words,
  at: { x, y },
  size: 5,
  turn: 0,
  align: "start",
  weight: "plain",
});

// Dots to the inch that pages are rendered at; a dot is 0.042 mm.
const dpi = 600;
const dots = (mm: number): number => Math.round((mm / 25.4) * dpi);

interface Strip {
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The middles of the dark lines that a strip of a page crosses, in mm from the page's left, or from its top for an upright strip. */
const linesAcross = (file: string, { page, x, y, width, height }: Strip, along: "x" | "y"): number[] => {
  const [left, top, wide, high] = [dots(x), dots(y), dots(width), dots(height)];
  const crop = ["-x", left, "-y", top, "-W", wide, "-H", high].map(String);
  const args = ["-r", String(dpi), "-gray", "-f", String(page), "-l", String(page), ...crop, file];
  const image = execFileSync("pdftoppm", args, { maxBuffer: 1 << 28 });
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(image.subarray(0, 40).toString("latin1"))!;
  const [columns, rows] = [Number(header[1]), Number(header[2])];
  const [count, across] = along === "x" ? [columns, rows] : [rows, columns];
  // The darkness of each column of dots (or row), as the mean over the strip's breadth.
  const darkness = Array.from({ length: count }, (_, i) => {
    let sum = 0;
    for (let j = 0; j < across; j += 1) {
      const at = along === "x" ? j * columns + i : i * columns + j;
      sum += 255 - image[header[0].length + at]!;
    }
    return sum / across;
  });
  const found: number[] = [];
  let [weight, moment] = [0, 0];
  for (const [i, dark] of [...darkness, 0].entries()) {
    if (dark > 8) {
      weight += dark;
      moment += dark * (i + 0.5);
    } else if (weight > 0) {
      found.push((((along === "x" ? left : top) + moment / weight) / dpi) * 25.4);
      [weight, moment] = [0, 0];
    }
  }
  return found;
};

/** How far apart the first two lines are. */
const apart = ([first, second]: readonly number[]): number => second! - first!;

describe.skipIf(withoutPoppler)("true to scale, as poppler draws it", () => {
  test("the squares on the first page are 100 mm and 4 in, on tiles and on a roll", async () => {
    const drawings = draw(lobbyCoat);
    const tiled = await saved("squares-a4", printed(drawings, "a4"));
    const thin = 2;
    // On tiles the squares stand one under the other along the left margin, clear of the words in their middle.
    const first = linesAcross(tiled, { page: 1, x: 5, y: 40, width: 113, height: thin }, "x");
    const firstDown = linesAcross(tiled, { page: 1, x: 20, y: 18, width: thin, height: 106 }, "y");
    const second = linesAcross(tiled, { page: 1, x: 5, y: 140, width: 113, height: thin }, "x");
    const secondDown = linesAcross(tiled, { page: 1, x: 20, y: 124.5, width: thin, height: 110 }, "y");
    for (const lines of [first, firstDown]) expect(Math.abs(apart(lines) - 100)).toBeLessThan(0.05);
    // 4 in of 25.4 mm exactly (international inch, 1959).
    for (const lines of [second, secondDown]) expect(Math.abs(apart(lines) - 101.6)).toBeLessThan(0.05);
    const roll = await saved("squares-roll", printed(drawings, "roll-914mm"));
    const row = linesAcross(roll, { page: 1, x: 5, y: 25, width: 215, height: thin }, "x");
    expect(Math.abs(row[1]! - row[0]! - 100)).toBeLessThan(0.05);
    expect(Math.abs(row[3]! - row[2]! - 101.6)).toBeLessThan(0.05);
  });

  test("a slanted line over four pages is one line again when the crosses are laid on one another", async () => {
    // It begins in the corner of 1a and ends in the middle of 2b.
    const [start, end] = [
      { x: 3, y: 3 },
      { x: 330, y: 480 },
    ];
    const print = printed(alone([{ kind: "cutting-line", path: straight(start, end) }]), "a4");
    const file = await saved("slanted", print);
    const names = print.pages.map(({ name }) => name);
    expect(names).toContain("1a");
    expect(names).toContain("2b");
    const pageOf = (name: string): number => names.indexOf(name) + 1;
    const { width, height } = print.pages[1]!;
    expect([width, height].sort((a, b) => a - b)).toEqual([210, 297]);
    const [stepX, stepY] = [width - 30, height - 30];
    const off = (lines: readonly number[], wanted: number): number =>
      Math.min(...lines.map((x) => Math.abs(x - wanted)));
    // The line starts at the upper left corner of its block, which is laid 5 mm inside the corner of 1a.
    const at = (y: number): number => 5 + ((end.x - start.x) / (end.y - start.y)) * (y - 5);
    let seen = 0;
    for (const name of names.slice(1)) {
      const [row, column] = [Number(name[0]) - 1, name.charCodeAt(1) - 97];
      for (const down of [40, 90, 140]) {
        const found = linesAcross(file, { page: pageOf(name), x: 5, y: 10 + down, width: width - 9, height: 0.1 }, "x");
        // Everything is measured from the line along which the page is trimmed.
        const [left, ...others] = found;
        const lines = others.map((x) => x - left!);
        // Where the next page is laid, this one shows a line.
        expect(off(lines, stepX)).toBeLessThan(0.05);
        const wanted = at(row * stepY + down + 0.05) - column * stepX;
        if (wanted < 3 || wanted > stepX - 3) continue;
        expect(off(lines, wanted)).toBeLessThan(0.1);
        seen += 1;
      }
    }
    expect(seen).toBeGreaterThan(3);
  });

  test.each([
    // ISO 216: A4 210 x 297, A3 297 x 420, A0 841 x 1189 mm. ANSI/ASME Y14.1: A 8.5 x 11, B 11 x 17 in (from memory).
    ["a4", 210, 297],
    ["letter", 8.5 * 25.4, 11 * 25.4],
    ["a3", 297, 420],
    ["tabloid", 11 * 25.4, 17 * 25.4],
    ["a0", 841, 1189],
  ])("pages of %s are that large", async (paper, width, height) => {
    const file = await saved(`size-${paper}`, printed(draw(lobbyCoat), paper));
    const sizes = execFileSync("pdfinfo", ["-l", "99", file], { encoding: "utf8" }).matchAll(
      /size:\s+([\d.]+) x ([\d.]+) pts/g,
    );
    const all = [...sizes].map(([, w, h]) => [Number(w), Number(h)].map((each) => (each / 72) * 25.4));
    expect(all.length).toBeGreaterThan(0);
    for (const size of all) {
      const [narrow, long] = size.sort((a, b) => a - b);
      expect(Math.abs(narrow! - width)).toBeLessThan(0.01);
      expect(Math.abs(long! - height)).toBeLessThan(0.01);
    }
  });
});

/** How many lines of a page each layer draws, by the layer's name, as pdf.js reads them. */
const linesByLayer = async (bytes: Uint8Array, pageNumber: number): Promise<Map<string, number>> => {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const config = await document.getOptionalContentConfig();
  const { fnArray, argsArray } = await (await document.getPage(pageNumber)).getOperatorList();
  const counts = new Map<string, number>();
  const open: string[] = [];
  for (const [index, operator] of fnArray.entries()) {
    const args = argsArray[index] as [string, { id: string } | null] | null;
    if (operator === OPS.beginMarkedContentProps)
      open.push(args?.[0] === "OC" ? config.getGroup(args[1]!.id).name : "");
    else if (operator === OPS.endMarkedContent) open.pop();
    else if (operator === OPS.constructPath && open.at(-1))
      counts.set(open.at(-1)!, (counts.get(open.at(-1)!) ?? 0) + 1);
  }
  await document.destroy();
  return counts;
};

test("what was before is on a layer of its own", async () => {
  const across = (kind: StrokeKind, y: number) => ({ kind, path: straight({ x: 0, y }, { x: 100, y }) });
  const lines = [across("cutting-line", 0), across("before", 20), across("before", 30), across("notch", 40)];
  const counts = await linesByLayer(await pdf(printed(alone(lines), "a4"), lettering), 2);
  expect([...counts].sort()).toEqual([
    ["Before", 2],
    ["Cutting lines", 1],
    ["Marks", 1],
  ]);
});

test.skipIf(withoutPoppler)("lines of the pattern stop at the words of the page", async () => {
  // Upright lines 3 mm apart, which run on over the strip under the trim line where the page says what it is.
  const lines = Array.from({ length: 50 }, (_, index) => ({
    kind: "cutting-line" as const,
    path: straight({ x: 3 * index, y: 0 }, { x: 3 * index, y: 600 }),
  }));
  const print = printed(alone(lines), "a4");
  const file = await saved("white", print);
  const { at, size } = print.pages[1]!.texts[0]!;
  // From 0.76 of their size up there is no letter any more (DejaVu Sans, heights of its capitals and l), and the ground goes on.
  const row = { page: 2, y: at.y - 0.82 * size, height: 0.1 };
  expect(linesAcross(file, { ...row, x: at.x + 1, width: 24 }, "x")).toEqual([]);
  const above = { page: 2, y: at.y - 3 * size, height: 0.1 };
  expect(linesAcross(file, { ...above, x: at.x + 1, width: 24 }, "x").length).toBeGreaterThanOrEqual(7);
});

const wordsOn = (print: Print, name: string): string[] =>
  print.pages.find((page) => page.name === name)!.texts.map((each) => each.text);

test("a page inside a piece that has nothing on it is left out, and the map and its neighbors say so", () => {
  // 700 x 700 mm, laid 5 mm inside, take 4 steps of 180 mm and 3 of 267 mm: 12 pages, of which 2 lie within the lines.
  const corners = [
    { x: 0, y: 0 },
    { x: 700, y: 0 },
    { x: 700, y: 700 },
    { x: 0, y: 700 },
  ];
  const sides = corners.map((from, index) => ({
    kind: "cutting-line" as const,
    path: straight(from, corners[(index + 1) % 4]!),
  }));
  const print = printed(alone(sides), "a4");
  const names = print.pages.map(({ name }) => name);
  expect(names.length - 1).toBe(10);
  expect(names).not.toContain("2b");
  expect(wordsOn(print, "1b")).toContain("2b is empty, left out");
  expect(wordsOn(print, "2a")).toContain("2b is empty, left out");
  expect(wordsOn(print, "1a")).toContain("1b comes here");
  expect(wordsOn(print, "map").join(" ")).toContain("Pages crossed out on the map are empty and left out");
  const diagonals = print.pages[0]!.strokes.filter(({ kind, path }) => kind === "frame" && path.length === 1);
  expect(diagonals.length).toBe(2 * 2);
  // A belt laid aslant has nothing to its sides, and no page would be looked for there.
  const aslant = alone([{ kind: "cutting-line", path: straight({ x: 0, y: 0 }, { x: 700, y: 700 }) }]);
  expect(wordsOn(printed(aslant, "a4"), "map").join(" ")).not.toContain("crossed out");
});

/** A drawing for each of some rectangles, mm. */
const cloths = (...sizes: readonly (readonly [number, number])[]): Drawings => {
  const drawings = sizes.map(
    ([x, y]) =>
      alone([
        { kind: "cutting-line", path: straight({ x: 0, y: 0 }, { x, y: 0 }) },
        { kind: "cutting-line", path: straight({ x, y: 0 }, { x, y }) },
        { kind: "cutting-line", path: straight({ x, y }, { x: 0, y }) },
        { kind: "cutting-line", path: straight({ x: 0, y }, { x: 0, y: 0 }) },
      ]).sheet,
  );
  return {
    pieces: new Map(drawings.map((drawing, index) => [`cloth ${index + 1}`, drawing])),
    sheet: drawings[0]!,
    column: [],
  };
};

describe("what the lines mean", () => {
  const wordsOfPage = ({ texts, groups = [] }: Print["pages"][number]): string[] =>
    [...texts, ...groups.flatMap((group) => group.texts)].map((each) => each.text);

  test.each(["a4", "letter", "a3", "tabloid"])("stands beside the map on %s, and takes no tile", (paper) => {
    const print = printed(draw(lobbyCoat), paper);
    expect(print.pages.filter((page) => wordsOfPage(page).includes("cut here")).map(({ name }) => name)).toEqual([
      "map",
    ]);
    expect(print.groups.flatMap(({ texts }) => texts).map((each) => each.text)).not.toContain("cut here");
    const [map] = print.pages;
    const { left, top, right, bottom } = extentOf(map!.groups!);
    const scale = map!.window!;
    // Right of the squares, under the map, above the words, and within the paper's margins.
    expect(left).toBeGreaterThan(10 + 101.6);
    expect(top).toBeGreaterThan(scale.at.y + (scale.of.bottom - scale.of.top) * scale.scale);
    expect(right).toBeLessThan(map!.width - 9);
    expect(bottom).toBeLessThan(10 + 12 + 208);
  });

  test("of many sizes takes a page of its own, once, each sample with the dashes of its size", async () => {
    // With as many choices as leave no room for it beside the map.
    const choices = Array.from({ length: 30 }, (_, index) => `choice-${index} 12.5 cm`);
    const print = printed(nested(sizesOf("blocks/straight-coat.chalk"), { choices }), "a4");
    const saying = print.pages.filter((page) => wordsOfPage(page).some((words) => words.startsWith("Sizes, laid")));
    expect(saying.map(({ name }) => name)).toEqual(["lines"]);
    expect(print.groups.filter(({ of }) => of === "size-legend")).toEqual([]);
    const { right, bottom } = extentOf(saying[0]!.groups!);
    expect(right).toBeLessThan(200);
    expect(bottom).toBeLessThan(287);
    const { groups = [] } = saying[0]!;
    const sizes = groups.flatMap(({ size }) => size ?? []);
    expect(sizes).toEqual(["B80", "B84", "B88", "B92", "B96", "B100", "B104"]);
    // As pdf.js reads the page: a dash pattern for each size but the one that is solid.
    const document = await getDocument({ data: await pdf(print, lettering), verbosity: 0 }).promise;
    const { fnArray, argsArray } = await (await document.getPage(2)).getOperatorList();
    const dashes = argsArray.flatMap((args, index) => (fnArray[index] === OPS.setDash ? [JSON.stringify(args)] : []));
    expect(new Set(dashes).size).toBeGreaterThanOrEqual(sizes.length - 1);
    await document.destroy();
  });

  test("has a title that is never wider than the page", () => {
    const drawings = draw({ ...lobbyCoat, title: "Cloak for the third usher in the winter play ".repeat(4) });
    const title = printed(drawings, "a4").pages[0]!.texts.find(({ text: words }) => words.startsWith("Cloak"))!;
    expect(extentOf([{ of: "page", name: "t", words: "", strokes: [], texts: [title] }]).right).toBeLessThan(200.1);
  });
});

describe("how pieces are laid on tiles", () => {
  test("a piece is turned a quarter where that saves pages", () => {
    // A cloth that fills one page of A4, and four belts of 530 x 50 mm: laid beside one another they are 224 mm high and lie on three
    // pages upright (3 steps of 180 mm), for on pages lying they would take two rows. A single one that stays square to the others
    // takes a page more.
    const [cloth, lying, upright] = [
      [172, 259],
      [530, 50],
      [50, 530],
    ] as const;
    for (const belts of [
      [lying, lying, lying, lying],
      [lying, lying, lying, upright],
      [upright, upright, upright, lying],
    ])
      expect(printed(cloths(cloth, ...belts), "a4").pages.length - 1).toBe(4);
  });

  test("what reaches no further than the lap of the page before takes no page of its own", () => {
    // Steps of 180 mm, the pattern 5 mm inside, a lap of 10 mm: at 182 mm a cloth reaches 7 mm into the lap, at 190 mm beyond it.
    // A page lying is too low for either.
    const names = (wide: number): string[] => printed(cloths([wide, 250]), "a4").pages.map(({ name }) => name);
    expect(names(182)).toEqual(["map", "1a"]);
    expect(names(190)).toHaveLength(3);
  });

  test("of layouts with as many pages, one that is no strip", () => {
    // Nine cloths that fill one page of A4 each (steps of 180 x 267 mm, 8 mm between cloths): 9 pages, in as many columns as one likes.
    const names = printed(cloths(...Array.from({ length: 9 }, () => [172, 259] as const)), "a4").pages.map(
      ({ name }) => name,
    );
    expect(names.length - 1).toBe(9);
    expect(names).toContain("3a");
    expect(names).toContain("1c");
    expect(names).not.toContain("4a");
  });
});

test("where a roll is cut, the page says so, and the last one has no cut", () => {
  // Two cloths of 3 m do not stand in 5 m under one another, nor in 914 mm beside one another.
  const { pages } = printed(cloths([500, 3000], [500, 3000]), "roll-914mm");
  expect(pages.map(({ name }) => name)).toEqual(["1", "2"]);
  const cut = pages[0]!.texts.find((each) => each.text.startsWith("Cut the roll here"))!;
  expect(cut.text).toContain("2 of 2 has the others");
  expect(cut.at.y).toBeLessThan(pages[0]!.height - 2);
  expect(pages[1]!.texts.filter((each) => each.text.includes("Cut the roll"))).toEqual([]);
});

describe("what is longer than a page of a roll", () => {
  // A festoon of 11 m: three pages, for none may be longer than 5 m, and each laps over the next by 10 mm: (11000 + 20) / 3.
  const slanted = straight({ x: 0, y: 0 }, { x: 600, y: 11_000 });
  const print = printed(alone([{ kind: "cutting-line", path: slanted }]), "roll-914mm");

  test("goes over pages of one length, each at most 5 m, named as parts", () => {
    expect(print.pages.map(({ name }) => name)).toEqual(["1", "2, part 1 of 3", "2, part 2 of 3", "2, part 3 of 3"]);
    for (const { height } of print.pages.slice(1)) expect(height).toBeCloseTo(11_020 / 3 + 20, 6);
    const said = print.pages.map(({ texts }) => texts.map(({ text }) => text).join(" "));
    expect(said[1]).toContain("2 of 2, part 1 of 3");
    expect(said[1]).toContain("Part 2 comes here");
    expect(said[2]).toContain("Part 3 comes here");
    expect(said[3]).not.toContain("comes here");
    expect(said.join(" ").match(/Cut the roll here/g)).toHaveLength(1);
  });

  test.skipIf(withoutPoppler)("is one line again when the parts are laid on one another", async () => {
    const file = await saved("festoon", print);
    const length = 11_020 / 3;
    // Across each page at the line that the next part is laid up to, and at the upper line of that part: a little below both, so that
    // neither the line itself nor words are met.
    const across = (page: number, y: number): number[] =>
      linesAcross(file, { page, x: 20, y: y + 2, width: 600, height: 0.1 }, "x");
    for (const [page, from] of [
      [2, 0],
      [3, length - 10],
      [4, 2 * (length - 10)],
    ] as const) {
      for (const y of page === 4 ? [0, 1000] : [0, length - 10]) {
        if (page === 2 && y === 0) continue;
        // The line slants by 600 in 11000, and begins at the margin of 10 mm.
        const wanted = 10 + ((from + y + 2.05) * 600) / 11_000;
        const found = across(page, 10 + y);
        expect(Math.min(...found.map((x) => Math.abs(x - wanted)))).toBeLessThan(0.1);
      }
    }
  });

  test("is refused where it is wider than the roll, too", () => {
    const wide = alone([{ kind: "cutting-line", path: straight({ x: 0, y: 0 }, { x: 950, y: 6000 }) }]);
    expect("tooLarge" in printOn(papers.find(({ name }) => name === "roll-914mm")!, wide)).toBe(true);
  });
});

test("pages that nothing comes to are left out", async () => {
  // Two short lines 1000 mm apart, so that whole rows of pages lie empty between them.
  const print = printed(
    alone([
      { kind: "cutting-line", path: straight({ x: 0, y: 0 }, { x: 50, y: 0 }) },
      { kind: "cutting-line", path: straight({ x: 0, y: 1000 }, { x: 50, y: 1000 }) },
    ]),
    "a4",
  );
  expect(print.pages.map(({ name }) => name)[0]).toBe("map");
  expect(print.pages.length).toBe(3);
});

test("a stage cloth is printed on as many pages as it takes, and a field is not", () => {
  const square = (side: number): Drawings =>
    alone([{ kind: "cutting-line", path: straight({ x: 0, y: 0 }, { x: side, y: side }) }]);
  // 4490 mm on A4 are 25 columns of 180 mm and 17 rows of 267 mm, or the other way round; the slanted line comes to 25 + 17 - 1 of them at most.
  const pages = printed(square(4490), "a4").pages.length - 1;
  expect(pages).toBeGreaterThanOrEqual(25);
  expect(pages).toBeLessThanOrEqual(41);
  // 90 m on A4 would be 500 columns; a label or belt that long is refused as well.
  for (const paper of papers) {
    expect(printOn(paper, square(90_000))).toHaveProperty("tooLarge");
  }
  expect(
    printOn(papers[0]!, alone([{ kind: "cutting-line", path: straight({ x: 0, y: 0 }, { x: 190_000, y: 1 }) }])),
  ).toHaveProperty("tooLarge");
});

const wordsOf = (file: string): string =>
  execFileSync("pdftotext", ["-enc", "UTF-8", file, "-"], { encoding: "utf8", maxBuffer: 1 << 28 });

describe.skipIf(withoutPoppler)("lettering", () => {
  test("every label can be searched for, whatever its script", async () => {
    const labels = ["żółć", "Πανωφόρι", "Чертёж", "Größe 3½", "CUT 2"];
    const lines = [{ kind: "cutting-line", path: straight({ x: 0, y: 0 }, { x: 100, y: 90 }) }] as const;
    const drawings = alone(
      lines,
      labels.map((words, index) => text(words, 10, 10 + 12 * index)),
    );
    for (const paper of ["a4", "roll-36in"]) {
      const words = wordsOf(await saved(`labels-${paper}`, printed(drawings, paper)));
      for (const label of labels) expect(words).toContain(label);
    }
  });

  test("every label of a garment is there", async () => {
    const drawings = draw(workedRecipe("lobby-coat-swing.chalk").garment);
    const words = wordsOf(await saved("all-labels", printed(drawings, "roll-36in"))).replace(/\s+/g, " ");
    for (const { groups } of drawings.pieces.values())
      for (const { of, texts } of groups)
        for (const each of of === "piece" ? texts : []) expect(words).toContain(each.text);
  });

  test("a letter that the font lacks is seen as its number", async () => {
    const words = wordsOf(
      await saved(
        "lacking",
        printed(
          alone([{ kind: "notch", path: straight({ x: 0, y: 0 }, { x: 50, y: 30 }) }], [text("前 back", 5, 20)]),
          "a4",
        ),
      ),
    );
    expect(words).toContain("back");
    // Unicode: U+524D, CJK UNIFIED IDEOGRAPH-524D.
    expect(words).toMatch(/U\+524D|前/);
  });

  test("scripts that run from right to left or whose letters join are not set letter by letter", () => {
    // The font has these letters, so that only their script tells. Unicode code charts: HEBREW LETTER SHIN, ARABIC LETTER BEH,
    // NKO LETTER A, LAO LETTER KO.
    for (const [letter, number] of [
      ["ש", "U+05E9"],
      ["ب", "U+0628"],
      ["ߊ", "U+07CA"],
      ["ກ", "U+0E81"],
    ] as const) {
      expect(lettering.plain.glyph(letter)).toBeDefined();
      expect(written(`a${letter}b`, "plain", lettering)).toBe(`a${number}b`);
    }
    for (const words of ["żółć", "Πανωφόρι", "Чертёж", "Հագուստ", "ქსოვილი"]) {
      expect(written(words, "bold", lettering)).toBe(words);
      expect(lacking([alone([], [text(words, 0, 0)]).sheet], lettering)).toEqual([]);
    }
    expect(lacking([alone([], [text("שב", 0, 0)]).sheet], lettering)).toEqual(["ש", "ב"]);
  });

  test("a label with every control character, with PDF's own signs and without an end does no harm", async () => {
    const controls = Array.from({ length: 0xa0 }, (_, code) => String.fromCharCode(code)).join("");
    const hostile = `${controls}) >> /JS (app.alert(1)) \\ endstream endobj ${"\u202e\ud800\uffff"}`;
    const drawings = alone(
      [{ kind: "cutting-line", path: straight({ x: 0, y: 0 }, { x: 100, y: 90 }) }],
      [text(hostile, 5, 20), text("x".repeat(10_000), 5, 40)],
    );
    const file = await saved("hostile", { ...printed(drawings, "a4"), title: hostile });
    expect(execFileSync("pdfinfo", [file], { encoding: "utf8" })).toMatch(/JavaScript:\s+no/);
    expect(wordsOf(file)).toContain("endstream endobj");
    if (!withoutQpdf) execFileSync("qpdf", ["--check", file], { stdio: "pipe" });
  });
});

test.skipIf(withoutQpdf)("qpdf finds nothing wrong", async () => {
  for (const recipe of ["lobby-coat-swing", "circle-skirt", "stage-cape", "ushers-vest-fitted"]) {
    for (const paper of ["a4", "roll-36in"]) {
      const outcome = printOn(
        papers.find(({ name }) => name === paper)!,
        draw(workedRecipe(`${recipe}.chalk`).garment),
      );
      if ("tooLarge" in outcome) continue;
      const file = await saved(`${recipe}-${paper}`, outcome);
      const { status, stdout, stderr } = spawnSync("qpdf", ["--check", file], { encoding: "utf8" });
      expect(`${stdout}${stderr}`).toContain("No syntax or stream encoding errors found");
      expect(status).toBe(0);
    }
  }
});

test("layers stand in the panel in order: sizes, then kinds of line, as pdf.js reads them", async () => {
  const { pieces, sheet } = alone([{ kind: "cutting-line", path: straight({ x: 0, y: 0 }, { x: 100, y: 90 }) }]);
  const groups = ["S", "M", "L"].map((size) => ({ ...sheet.groups[0]!, size }));
  const nested = { ...sheet, groups };
  const print = printed(
    { pieces: new Map([...pieces.keys()].map((name) => [name, nested])), sheet: nested, column: [] },
    "a3",
  );
  const bytes = await pdf(print, lettering);
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const config = await document.getOptionalContentConfig();
  const names = (config.getOrder() as string[]).map((id) => config.getGroup(id).name);
  expect(names).toEqual(["Size S", "Size M", "Size L", "Cutting lines", "Sewing lines", "Marks", "Labels", "Before"]);
  // Acrobat leaves the dialog at actual size where the file asks for it (ISO 32000-1, table 150).
  expect(await document.getViewerPreferences()).toMatchObject({ PrintScaling: "None" });
  await document.destroy();
});

test("the same garment gives the same bytes, and another one another seal", async () => {
  const seal = (bytes: Uint8Array): string => /\/ID \[ ?<(\w+)>/.exec(Buffer.from(bytes).toString("latin1"))![1]!;
  const [one, two] = [
    await pdf(printed(draw(lobbyCoat), "a4"), lettering),
    await pdf(printed(draw(lobbyCoat), "a4"), lettering),
  ];
  expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
  const other = await pdf(printed(draw(lobbyCoat), "letter"), lettering);
  expect(seal(other)).not.toBe(seal(one));
  expect(Buffer.from(one).toString("latin1")).not.toMatch(/CreationDate|ModDate/);
});
