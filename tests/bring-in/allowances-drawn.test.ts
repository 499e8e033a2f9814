// Drawings with cutting and sewing lines: the sewing line becomes the outline, and each edge gets the allowance that lies between
// them. The drawings are written by hand, so that every width is known without our own reckoning.
import { describe, expect, test } from "vitest";
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { boundary } from "../../kernel/outline.ts";
import { inMillimetres, traced, tried } from "./traced.ts";

const allowLines = (recipe: string): string[] =>
  recipe.split("\n").flatMap((line) => (/^ *(?:allow|strip) /.test(line) ? [line.trim()] : []));

/** A stage cuff of 200 by 100 mm with its upper left corner at (100, 100), and another line round it. */
const cuff = (cutting: string, sewing = "M100 100H300V200H100Z"): string =>
  inMillimetres(
    `<g id="piece-cuff"><path class="cutting-line" d="${cutting}"/><path class="sewing-line" d="${sewing}"/></g>`,
  );

describe("where both lines are drawn", () => {
  test("each edge has the width that lies between them", () => {
    // 15 above, 20 on the right, 30 below, 10 on the left.
    const { made, pieces } = traced(cuff("M90 85H320V230H90Z"), "svg", { line: "sewing" });
    expect(allowLines(made.recipe)).toEqual([
      "allow edge-1 by 1.5 cm",
      "allow edge-2 by 2 cm",
      "allow edge-3 by 3 cm",
      "allow edge-4 by 1 cm",
    ]);
    expect(bounds([boundary(pieces[0]!)!])).toEqual({ left: 0, top: 0, right: 200, bottom: 100 });
    const { left, top, right, bottom } = bounds([cuttingLine(pieces[0]!)!.path]);
    for (const [found, drawn] of [
      [left, -10],
      [top, -15],
      [right, 220],
      [bottom, 130],
    ] as const)
      expect(found).toBeCloseTo(drawn, 6);
  });

  test("widths of one kind are one line, in inches by sixteenths, and a width that nobody means is told as it is", () => {
    // 5/8 in are 15.875 mm.
    const eighths = "M84.125 84.125H315.875V215.875H84.125Z";
    expect(allowLines(traced(cuff(eighths), "svg", { line: "sewing", units: "in" }).made.recipe)).toEqual([
      "allow edge-1, edge-2, edge-3, edge-4 by 0.625 in",
    ]);
    expect(allowLines(traced(cuff("M92.7 92.7H307.3V207.3H92.7Z"), "svg", { line: "sewing" }).made.recipe)).toEqual([
      "allow edge-1, edge-2, edge-3, edge-4 by 0.73 cm",
    ]);
  });

  test("a hem that is mirrored at its corners gets corners turned", () => {
    // A flared panel, its sides leaning out by 40 in 200; a hem of 30 turned up comes to lie on the side seams, so that its cutting line
    // goes in again by 6 on each side. Sides and top have no allowance.
    const sewing = "M100 100H200L240 300H60Z";
    const { made } = traced(cuff("M100 100H200L240 300L234 330H66L60 300Z", sewing), "svg", { line: "sewing" });
    expect(allowLines(made.recipe)).toEqual([
      "allow edge-1, edge-2, edge-4 by 0",
      "allow edge-3 by 3 cm corners turned",
    ]);
    expect(made.notes).toEqual([]);
  });

  test("an edge that is drawn once, since it has no allowance, closes the sewing line", () => {
    // The lower edge is bound: there the cutting line is the sewing line too.
    const { made, pieces } = traced(cuff("M85 85H315V200H85Z", "M100 200V100H300V200"), "svg", { line: "sewing" });
    expect(allowLines(made.recipe)).toEqual(["allow edge-1, edge-2, edge-4 by 1.5 cm", "allow edge-3 by 0"]);
    expect(bounds([boundary(pieces[0]!)!])).toEqual({ left: 0, top: 0, right: 200, bottom: 100 });
  });

  test("a seam drawn right across a piece does not make half of it the piece", () => {
    const { made, pieces } = traced(cuff("M0 0H500V400H0Z", "M250 0V400"), "svg", { line: "sewing" });
    expect(bounds([boundary(pieces[0]!)!])).toEqual({ left: 0, top: 0, right: 500, bottom: 400 });
    expect(made.pieces).toHaveLength(1);
  });

  test("a dart drawn as a sewing line stays a line inside", () => {
    const dart = '<path class="sewing-line" d="M200 120L205 150L200 180L195 150Z"/>';
    const drawing = cuff("M85 85H315V215H85Z").replace("</g>", `${dart}</g>`);
    const { made, pieces } = traced(drawing, "svg", { line: "sewing" });
    expect(made.pieces).toHaveLength(1);
    expect([...pieces[0]!.edges.keys()].filter((name) => name.startsWith("inner"))).toHaveLength(1);
  });

  test("an allowance that grows along its edge is told, for no recipe line says it", () => {
    // 10 mm at the left end of the upper edge, 20 at the right one.
    const made = tried(cuff("M90 90L310 80V210H90Z"), "svg", { line: "sewing" });
    if ("problem" in made) throw new Error(made.problem.message);
    expect(made.notes).toHaveLength(1);
    expect(made.notes[0]).toMatch(/^cuff: its allowances are no single width.* up to \d\.\d mm off the drawn one\.$/);
  });

  test("the cutting line is the outline where that is asked for", () => {
    const { made, pieces } = traced(cuff("M90 85H320V230H90Z"), "svg");
    expect(bounds([boundary(pieces[0]!)!])).toEqual({ left: 0, top: 0, right: 230, bottom: 145 });
    expect(allowLines(made.recipe)).toEqual([]);
  });
});

describe("an allowance that was said", () => {
  const untold = inMillimetres('<path d="M0 0H200V100H0Z"/>');

  test("is stripped off a line that says nothing of itself, and allowed again", () => {
    const { made, pieces } = traced(untold, "svg", { drawnIn: 15 });
    expect(allowLines(made.recipe)).toEqual([
      "strip edge-1, edge-2, edge-3, edge-4 by 1.5 cm",
      "allow edge-1, edge-2, edge-3, edge-4 by 1.5 cm",
    ]);
    const box = (path: Parameters<typeof bounds>[0][0]): number[] => {
      const { left, top, right, bottom } = bounds([path]);
      return [left, top, right, bottom].map((each) => Math.round(each * 1e6) / 1e6);
    };
    expect(box(boundary(pieces[0]!)!)).toEqual([15, 15, 185, 85]);
    expect(box(cuttingLine(pieces[0]!)!.path)).toEqual([0, 0, 200, 100]);
  });

  test("is not stripped off a sewing line, and that is told", () => {
    const sewing = inMillimetres('<path class="sewing-line" d="M0 0H200V100H0Z"/>');
    const { made } = traced(sewing, "svg", { drawnIn: 15 });
    expect(allowLines(made.recipe)).toEqual([]);
    expect(made.notes).toEqual(["Every outline is a sewing line, so that no allowance is taken off."]);
  });
});
