// What lies on a sheet after an SVG was read: shapes, sizes, boxes in boxes, and what is left out.
import { expect, test } from "vitest";
import { svgSheet } from "../../editor/bring-in/svg-sheet.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { farthest, inMillimetres, refusalOf, traced } from "./traced.ts";

const boxes = (text: string, unit?: number) =>
  svgSheet(text, unit).lines.map(({ path }) => {
    const { left, top, right, bottom } = bounds([path]);
    return [left, top, right, bottom].map((value) => Math.round(value * 1000) / 1000);
  });

test("a unit is a unit: 1 in is 25.4 mm, 96 px, 72 pt and 6 pc (CSS Values and Units 3, 6.2)", () => {
  const square = '<rect width="1" height="1" stroke="black"/></svg>';
  for (const inch of ["1in", "25.4mm", "2.54cm", "96px", "72pt", "6pc", "96", "101.6Q"])
    expect(boxes(`<svg width="${inch}" height="${inch}" viewBox="0 0 1 1">${square}`)).toEqual([[0, 0, 25.4, 25.4]]);
  expect(boxes('<svg><rect width="1in" height="3pt" stroke="black"/></svg>')).toEqual([[0, 0, 25.4, 1.058]]);
});

test("a drawing without a size takes --units, and says so without", () => {
  const text = '<svg viewBox="0 0 30 20"><rect x="1" width="10" height="5" stroke="black"/></svg>';
  expect(boxes(text, 10)).toEqual([[10, 0, 110, 50]]);
  expect(svgSheet(text, 10).notes).toEqual([]);
  expect(svgSheet(text, undefined).notes[0]).toContain("does not say how large");
  // With a size of its own nothing else is asked.
  expect(boxes('<svg width="30mm" viewBox="0 0 30 20"><path d="M0 0h10v5z"/></svg>', 10)).toEqual([[0, 0, 10, 5]]);
});

test("shapes are what SVG 2, chapter 10, says", () => {
  const areas = svgSheet(
    inMillimetres(
      '<rect x="10" y="10" width="100" height="50" stroke="black"/>',
      '<rect x="10" y="10" width="100" height="50" rx="10" stroke="black"/>',
      '<rect x="10" y="10" width="100" height="50" ry="90" stroke="black"/>',
      '<circle cx="100" cy="100" r="20"/>',
      '<ellipse cx="100" cy="100" rx="20" ry="30"/>',
      '<polygon points="0,0 30,0 30,40"/>',
      '<rect width="50%" height="10%" stroke="black"/>',
    ),
    undefined,
  ).lines.map(({ path }) => signedArea(path));
  const corners = (rx: number, ry: number): number => (4 - Math.PI) * rx * ry;
  // A radius over half the side becomes half the side; the other one is clamped for itself.
  const expected = [5000, 5000 - corners(10, 10), 5000 - corners(50, 25), Math.PI * 400, Math.PI * 600, 600, 50_000];
  areas.forEach((area, i) => {
    expect(area / expected[i]!).toBeCloseTo(1, 5);
  });
});

test("a nested drawing has its own box, aligned as it says (SVG 2, 8.6)", () => {
  const inner = '<rect width="10" height="10" stroke="black"/></svg>';
  // A box of 10 by 10 in 40 by 20: scaled by 2, in the middle, at the left, or stretched.
  const nest = (align: string): string =>
    inMillimetres(`<svg x="100" y="50" width="40" height="20" viewBox="0 0 10 10" ${align}>${inner}`);
  expect(boxes(nest(""))).toEqual([[110, 50, 130, 70]]);
  expect(boxes(nest('preserveAspectRatio="xMinYMid"'))).toEqual([[100, 50, 120, 70]]);
  expect(boxes(nest('preserveAspectRatio="xMaxYMax slice"'))).toEqual([[100, 30, 140, 70]]);
  expect(boxes(nest('preserveAspectRatio="none"'))).toEqual([[100, 50, 140, 70]]);
});

test("use draws again what the file holds, where it says", () => {
  const text = inMillimetres(
    '<defs><path id="flap" d="M0 0h30v40z"/><symbol id="tab" viewBox="0 0 1 1"><path d="M0 0h1v1z"/></symbol></defs>',
    '<use href="#flap" x="5" y="6"/>',
    '<g transform="scale(2)"><use xlink:href="#flap"/></g>',
    '<use href="#tab" x="100" width="20" height="20"/>',
  );
  expect(boxes(text)).toEqual([
    [5, 6, 35, 46],
    [0, 0, 60, 80],
    [100, 0, 120, 20],
  ]);
  // It stands in the drawing where it is used.
  expect(svgSheet(text, undefined).lines.map(({ line }) => line)).toEqual([3, 4, 5]);
});

test("what cannot be drawn is told, with its first line", () => {
  const { leftOut, lines } = svgSheet(
    inMillimetres(
      "<script>alert(1)</script>",
      '<image href="http://example.org/a.png" width="10" height="10"/>',
      '<use href="http://example.org/a.svg#b"/>',
      '<use href="#nowhere"/>',
      '<path d="M0 0h9v9z" display="none"/>',
      '<path d="M0 0h9v9z" style="visibility:hidden"/>',
      '<path d="M0 0h9v9z" style="transform:rotate(3deg)"/>',
      '<path d="M0 0h9v9z" transform="turn(3)"/>',
      '<circle r="3em"/>',
      "<foreignObject><p/></foreignObject>",
    ),
    undefined,
  );
  expect(lines).toEqual([]);
  expect(leftOut).toEqual([
    { what: "scripts, which are never run", count: 1, line: 2 },
    { what: "pictures", count: 1, line: 3 },
    { what: "references to outside of the file", count: 1, line: 4 },
    { what: "references to what is not in the file", count: 1, line: 5 },
    { what: "hidden elements", count: 2, line: 6 },
    { what: "elements with a transform that cannot be read", count: 2, line: 8 },
    { what: "elements (circle) with a measure that cannot be read", count: 1, line: 10 },
    { what: "pages inside the drawing", count: 1, line: 11 },
  ]);
});

test("the paper under a drawing is no piece, and a rectangle with an outline is one", () => {
  const paper = '<rect width="1000" height="1000" fill="#fff"/>';
  const piece = '<path d="M10 10h100v100z"/>';
  expect(traced(inMillimetres(paper, piece), "svg").pieces).toHaveLength(1);
  expect(boxes(inMillimetres(paper.replace("/>", ' stroke="black"/>')))).toHaveLength(1);
});

test("loose lines that meet within a hair make an outline; a wider gap is told with its size", () => {
  const lines = (gap: number): string =>
    inMillimetres(
      '<line x1="0" y1="0" x2="100" y2="0"/>',
      `<line x1="0" y1="100" x2="${gap}" y2="${gap / 2}"/>`,
      '<polyline points="100,0 100,100 0,100"/>',
    );
  const { made, outlines } = traced(lines(0.1), "svg");
  expect(made.pieces[0]!.edges).toHaveLength(4);
  // The ends, (0.1, 0.05) apart, meet halfway.
  expect(farthest([{ x: 0.05, y: 0.025 }], outlines[0]!)).toBeLessThan(0.01);
  expect(refusalOf(lines(4), "svg")).toEqual({
    // The gap of (4, 2) mm.
    message: "No line in this drawing is closed. The one that begins here lacks 4.5 mm between its ends.",
    line: 2,
    hint: "Close it in the drawing; ends within 0.15 mm count as meeting.",
  });
});

test("what was drawn twice is counted once, whichever way it runs", () => {
  const once = "1 line was drawn twice, and counted once.";
  const triangles = traced(inMillimetres('<path d="M0 0L100 0L50 80z"/>', '<path d="M0 0L100 0L50 80z"/>'), "svg");
  expect(triangles.pieces).toHaveLength(1);
  expect(triangles.made.notes).toEqual([once]);
  const lines = inMillimetres('<path d="M0 0L100 0"/>', '<path d="M100 0L0 0"/>', '<path d="M100 0L50 80L0 0"/>');
  expect(traced(lines, "svg").pieces).toHaveLength(1);
  expect(traced(lines, "svg").made.notes).toEqual([once]);
});
