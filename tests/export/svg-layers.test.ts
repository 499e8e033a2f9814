// SVG with its layers on top, measured by svgpath and bezier-js, which are not ours.
import { Bezier } from "bezier-js";
import svgpath from "svgpath";
import { describe, expect, test } from "vitest";
import type { Drawing, StrokeKind } from "../../kernel/drawing/drawing.ts";
import { svg } from "../../kernel/export/svg.ts";
import { layeredSvg } from "../../kernel/export/svg-layers.ts";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { nested } from "../../kernel/sizes/nested.ts";
import { hostileGarment, hostileWords, recipeGarment, sheetOf, sizesOf, vest } from "./export-garments.ts";

/** How long a path is by its `d` alone. */
const lengthOf = (d: string): number => {
  let length = 0;
  let start = [0, 0];
  svgpath(d)
    .abs()
    .iterate((segment, _, x, y) => {
      const [code, ...values] = segment as [string, ...number[]];
      if (code === "M") start = [values[0]!, values[1]!];
      if (code === "L") length += Math.hypot(values[0]! - x, values[1]! - y);
      if (code === "C") length += new Bezier([x, y, ...values]).length();
      if (code === "Z") length += Math.hypot(start[0]! - x, start[1]! - y);
    });
  return length;
};

interface Layer {
  readonly id: string;
  readonly title: string;
  readonly inside: readonly string[];
  readonly paths: readonly string[];
  readonly texts: number;
}

/** The groups right under the svg element. */
const layersOf = (file: string): Layer[] => {
  const layers: { id: string; title: string; inside: string[]; paths: string[]; texts: number }[] = [];
  let depth = 0;
  for (const line of file.split("\n")) {
    const id = /^<g id="([^"]*)"/.exec(line)?.[1];
    const layer = layers[layers.length - 1];
    if (line.startsWith("<g")) {
      if (depth === 0) layers.push({ id: id ?? "", title: "", inside: [], paths: [], texts: 0 });
      else if (id !== undefined) layer!.inside.push(id);
      depth += 1;
    } else if (line === "</g>") depth -= 1;
    else if (depth === 1 && line.startsWith("<title>")) layer!.title = line.replace(/<[^>]*>/g, "");
    else if (line.startsWith("<path")) layer!.paths.push(/ d="([^"]*)"/.exec(line)![1]!);
    else if (line.startsWith("<text")) layer!.texts += 1;
  }
  expect(depth).toBe(0);
  return layers;
};

const drawn = (drawing: Drawing, size: string | undefined, ...kinds: StrokeKind[]): number =>
  drawing.groups
    .filter((group) => group.size === size)
    .flatMap(({ strokes }) => strokes.filter(({ kind }) => kinds.includes(kind)))
    .reduce((sum, { path }) => sum + pathLength(path), 0);

const sum = (paths: readonly string[]): number => paths.reduce((all, d) => all + lengthOf(d), 0);

describe.each([
  ["vest", sheetOf(vest)],
  ["raglan-stage-cloak", sheetOf(recipeGarment("raglan-stage-cloak.chalk"))],
])("the layers of the %s", (_, drawing) => {
  const layers = layersOf(layeredSvg(drawing));

  test("are what it was before, sewing, cutting, marks and labels, in the order they lie on the paper", () => {
    expect(layers.map(({ id, title }) => [id, title])).toEqual([
      ["before", "As it was before"],
      ["sewing", "Sewing lines"],
      ["cutting", "Cutting lines"],
      ["marks", "Marks"],
      ["labels", "Labels"],
    ]);
  });

  test("hold lines as long as they were drawn, measured by other libraries", () => {
    const found = new Map(layers.map(({ id, paths }) => [id, sum(paths)]));
    // Every end is written to 0.001 mm.
    expect(Math.abs(found.get("cutting")! - drawn(drawing, undefined, "cutting-line"))).toBeLessThan(0.1);
    expect(Math.abs(found.get("sewing")! - drawn(drawing, undefined, "sewing-line", "hem-line"))).toBeLessThan(0.1);
    expect(Math.abs(found.get("labels")! - drawn(drawing, undefined, "scale-square", "frame"))).toBeLessThan(0.1);
  });

  test("hold all that the other SVG holds, in other order", () => {
    const shapes = (file: string): string[] =>
      file
        .split("\n")
        .filter((line) => /^<(?:path|text)/.test(line))
        .sort();
    expect(shapes(layeredSvg(drawing))).toEqual(shapes(svg(drawing)));
    const heads = [svg(drawing), layeredSvg(drawing)].map((file) => file.split("\n").slice(0, 5).join("\n"));
    expect(heads[0]).toBe(heads[1]);
  });

  test("hold no labels but in theirs, and every id once", () => {
    for (const { id, texts } of layers) expect(texts > 0).toBe(id === "labels");
    const ids = layers.flatMap(({ id, inside }) => [id, ...inside]);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe("a nest", () => {
  const sizes = sizesOf("blocks/straight-coat.chalk");
  const { sheet } = nested(sizes, { choices: [] });
  const layers = layersOf(layeredSvg(sheet));

  test("has the layers of each size, then those of all", () => {
    const cutting = layers.filter(({ id }) => id.startsWith("cutting_"));
    expect(cutting.map(({ id }) => id)).toEqual(sizes.map(({ size }) => `cutting_size-${size}`));
    for (const [i, { size }] of sizes.entries())
      expect(Math.abs(sum(cutting[i]!.paths) - drawn(sheet, size, "cutting-line"))).toBeLessThan(0.1);
    expect(cutting[0]!.inside).toEqual(
      ["piece-back", "piece-front", "piece-sleeve", "size-legend"].map((id) => `cutting_size-B80_${id}`),
    );
    expect(layers.slice(-3).map(({ id }) => id)).toEqual(["cutting", "marks", "labels"]);
  });

  test("has every id once, in both forms of SVG", () => {
    for (const file of [svg(sheet), layeredSvg(sheet)]) {
      const ids = [...file.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
      expect(new Set(ids).size).toBe(ids.length);
    }
  });
});

test("words of a recipe stay words", () => {
  for (const word of hostileWords) {
    const file = layeredSvg(sheetOf(hostileGarment(`${word}</title><script>`)));
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for.
    expect(file).not.toMatch(/<script|[\u0000-\u0009\u000b-\u001f]|\p{Cs}/u);
    layersOf(file);
  }
});
