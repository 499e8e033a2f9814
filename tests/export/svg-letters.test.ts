// Lettering in SVG files as outlines: the letters of the font file itself, where the PDF has them, and the same in every program.
// Looked at by opentype.js without our own reading, by svgpath, by rsvg-convert and by Chromium; a program that is not installed
// has its tests skipped.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import opentype from "opentype.js";
import type { Browser } from "playwright-core";
import svgpath from "svgpath";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { draw } from "../../kernel/drawing/draw.ts";
import type { Drawing, Text } from "../../kernel/drawing/drawing.ts";
import { svg } from "../../kernel/export/svg.ts";
import { layeredSvg } from "../../kernel/export/svg-layers.ts";
import { faceFrom } from "../../kernel/lettering/lettering.ts";
import { pdf } from "../../kernel/paper/pdf.ts";
import { lobbyCoat } from "../drawing/made-garment.ts";
import { browserPath, launch } from "../editor/page/browser.ts";
import { hostileGarment, hostileWords, sheetOf } from "./export-garments.ts";

const fontFile = (name: string): Buffer =>
  readFileSync(fileURLToPath(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
const [plainBytes, boldBytes] = [fontFile("DejaVuSans"), fontFile("DejaVuSans-Bold")];
const lettering = { plain: faceFrom(plainBytes), bold: faceFrom(boldBytes) };

const folder = mkdtempSync(join(tmpdir(), "chalkline-letters-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** A paper of 100 by 60 mm with these texts. */
const drawingOf = (...texts: readonly Text[]): Drawing => ({
  title: "Cloak room tags",
  words: "Tags.",
  paper: { left: 0, top: 0, right: 100, bottom: 60 },
  groups: [{ of: "piece", name: "tag", words: "A tag.", strokes: [], texts }],
});

const level: Text = { text: "STAGE door 7½", at: { x: 50, y: 30 }, size: 8, turn: 0, align: "middle", weight: "plain" };

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The box of a path with its transform, read by svgpath; curves lie within their handles, which in this font touch the box. */
const boxesIn = (file: string): Map<string, Box> =>
  new Map(
    [...file.matchAll(/<path aria-label="([^"]*)" transform="([^"]*)" d="([^"]*)"/g)].map(([, words, transform, d]) => {
      const xs: number[] = [];
      const ys: number[] = [];
      svgpath(d!)
        .transform(transform!)
        .abs()
        .iterate(([command, ...values]: readonly (string | number)[]) => {
          const spots = values as number[];
          if (command === "H") xs.push(spots[0]!);
          else if (command === "V") ys.push(spots[0]!);
          else for (const [index, value] of spots.entries()) (index % 2 === 0 ? xs : ys).push(value);
        });
      return [
        words!,
        { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) },
      ] as const;
    }),
  );

/** The same by the font file alone: opentype.js draws glyph after glyph, without kerning, as our prints do. */
const boxInFont = ({ text, at, size, align, weight }: Text): Box => {
  const bytes = weight === "bold" ? boldBytes : plainBytes;
  const font = opentype.parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer);
  const glyphs = [...text].map((character) => font.charToGlyph(character));
  const widths = glyphs.map(({ advanceWidth }) => (advanceWidth! * size) / font.unitsPerEm);
  const width = widths.reduce((sum, each) => sum + each, 0);
  let x = at.x - width * { start: 0, middle: 0.5, end: 1 }[align];
  const boxes = glyphs.flatMap((glyph, index) => {
    const box = glyph.getPath(x, at.y, size).getBoundingBox();
    x += widths[index]!;
    return box.isEmpty() || glyph.path.commands.length === 0 ? [] : [box];
  });
  return {
    left: Math.min(...boxes.map(({ x1 }) => x1)),
    top: Math.min(...boxes.map(({ y1 }) => y1)),
    right: Math.max(...boxes.map(({ x2 }) => x2)),
    bottom: Math.max(...boxes.map(({ y2 }) => y2)),
  };
};

const expectSame = (found: Box, expected: Box, within: number): void => {
  for (const side of ["left", "top", "right", "bottom"] as const)
    expect(Math.abs(found[side] - expected[side]), side).toBeLessThan(within);
};

describe("the outlines", () => {
  test.each([
    level,
    { ...level, align: "start", at: { x: 5, y: 20 } } as const,
    { ...level, align: "end", weight: "bold", at: { x: 95, y: 20 } } as const,
    { ...level, text: "Ärmel ĳŐж λ → ✂", size: 3.4 },
  ])("of $text $align $weight lie where the font file says", (text) => {
    const [box] = boxesIn(svg(drawingOf(text), lettering)).values();
    // Each letter is rounded to a thousandth of its size once, and each width too.
    expectSame(box!, boxInFont(text), (text.size / 1000) * (1 + text.text.length));
  });

  test("of a text that runs down are those of the level one, turned about its place", () => {
    const [box] = boxesIn(svg(drawingOf(level), lettering)).values();
    const [turned] = boxesIn(svg(drawingOf({ ...level, turn: Math.PI / 2 }), lettering)).values();
    const { x, y } = level.at;
    const expected = {
      left: x - (box!.bottom - y),
      right: x - (box!.top - y),
      top: y + (box!.left - x),
      bottom: y + (box!.right - x),
    };
    expectSame(turned!, expected, 0.002);
  });

  test("are the same bytes every time, the words beside them as they were written, and nothing asks for a font", () => {
    const { sheet } = draw(lobbyCoat);
    const files = [svg(sheet, lettering), layeredSvg(sheet, lettering)];
    const again = { plain: faceFrom(plainBytes), bold: faceFrom(boldBytes) };
    expect(files[0]).toBe(svg(structuredClone(sheet), again));
    for (const file of files) {
      expect(file).not.toMatch(/<text|font-|href|stroke="#fff"|NaN|undefined|Infinity/);
      const said = [...file.matchAll(/aria-label="([^"]*)"/g)].map(([, words]) => words!);
      const texts = sheet.groups.flatMap((group) => group.texts.map(({ text }) => text));
      expect(said.sort()).toEqual(texts.filter((text) => text.trim() !== "").sort());
    }
  });

  test("show a letter that the font lacks by its number, and say it as it was", () => {
    const shapeOf = (text: string): string =>
      new RegExp(`aria-label="${text.replace("+", "\\+")}" .* d="([^"]*)"`).exec(
        svg(drawingOf({ ...level, text }), lettering),
      )![1]!;
    // Unicode code charts: U+524D.
    expect(shapeOf("前")).toBe(shapeOf("U+524D"));
  });

  test("leave out what shows nothing", () => {
    for (const text of ["", "   ", "\u200b\u202e"])
      expect(svg(drawingOf({ ...level, text }), lettering)).not.toMatch(/aria-label=|class="text"/);
  });

  test("keep what a recipe says harmless", () => {
    for (const word of hostileWords) {
      const file = svg(sheetOf(hostileGarment(`${word}"/></path><script>&`)), lettering);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for.
      expect(file).not.toMatch(/<script|<\/path>|[\u0000-\u0009\u000b-\u001f]|\p{Cs}/u);
    }
  });
});

/** The box of what is darker than white on a picture in PGM (binary), in mm of a page so many mm wide. */
const inkIn = (picture: Buffer, across: number): Box => {
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(picture.toString("latin1"))!;
  const [w, h] = [Number(width), Number(height)];
  const dots = picture.subarray(head.length);
  let [left, top, right, bottom] = [w, h, -1, -1];
  for (let y = 0; y < h; y += 1)
    for (let x = 0; x < w; x += 1) {
      if (dots[y * w + x]! > 127) continue;
      [left, right, top, bottom] = [Math.min(left, x), Math.max(right, x), Math.min(top, y), Math.max(bottom, y)];
    }
  const mm = across / w;
  return { left: left * mm, top: top * mm, right: (right + 1) * mm, bottom: (bottom + 1) * mm };
};

const isHere = (program: string, ...args: readonly string[]): boolean => spawnSync(program, args).error === undefined;

test.skipIf(!isHere("rsvg-convert", "--version") || !isHere("pdftoppm", "-v"))(
  "a picture of the SVG has its ink where a picture of the PDF has it",
  async () => {
    const drawing = drawingOf(level, { ...level, weight: "bold", turn: -0.5, at: { x: 50, y: 50 }, align: "end" });
    writeFileSync(join(folder, "tag.svg"), svg(drawing, lettering));
    // rsvg-convert writes PDF too, which poppler then draws as it draws ours.
    execFileSync("rsvg-convert", ["-f", "pdf", "-o", join(folder, "from-svg.pdf"), join(folder, "tag.svg")]);
    const print = {
      title: "t",
      words: "w",
      groups: [],
      pages: [{ name: "1", width: 100, height: 60, strokes: [], texts: drawing.groups[0]!.texts }],
    };
    writeFileSync(join(folder, "ours.pdf"), await pdf(print, lettering));
    const ink = (name: string): Box => {
      execFileSync("pdftoppm", ["-r", "600", "-gray", "-singlefile", join(folder, `${name}.pdf`), join(folder, name)]);
      return inkIn(readFileSync(join(folder, `${name}.pgm`)), 100);
    };
    // Two dots of a 600 dpi picture are 0.085 mm.
    expectSame(ink("from-svg"), ink("ours"), 0.1);
  },
);

describe.skipIf(browserPath === undefined)("in a browser", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  }, 60_000);
  afterAll(() => browser?.close());

  test("letters have the extents of the font file, and those of the file with another font forced on it", async () => {
    const page = await (await browser.newContext()).newPage();
    const boxes = async (more: string): Promise<Box> => {
      await page.setContent(
        `<style>body{margin:0}${more}</style>${svg(drawingOf(level), lettering).replace(/^<\?.*\n/, "")}`,
      );
      return page.locator("path[aria-label]").evaluate((path) => {
        const { left, top, right, bottom } = path.getBoundingClientRect();
        // Pixels of CSS, 96 to the inch.
        const [l, t, r, b] = [left, top, right, bottom].map((each) => (each / 96) * 25.4);
        return { left: l!, top: t!, right: r!, bottom: b! };
      });
    };
    const usual = await boxes("");
    expectSame(usual, boxInFont(level), 0.1);
    expect(await boxes("*{font-family:monospace !important;font-size:40px !important}")).toEqual(usual);
  }, 60_000);
});
