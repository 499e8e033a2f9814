// What a comparison tells of garments whose changes are known by hand, and its two laws: a garment against itself is empty, and
// the comparison the other way round is the same one mirrored.
import { describe, expect, test } from "vitest";
import { compareGarments } from "../../kernel/compare/compare-garments.ts";
import { compareSources } from "../../kernel/compare/compare-sources.ts";
import { type Comparison, isUnchanged } from "../../kernel/compare/comparison.ts";
import { apron, compared, pieceOf, recipeFiles, recipeText, workedAfresh } from "./compared.ts";

describe("a garment against itself", () => {
  test.each(recipeFiles)("%s is unchanged", (file) => {
    const text = recipeText(file);
    expect(isUnchanged(compared(text, text, file))).toBe(true);
  });

  test("remarks and blank lines are text alone", () => {
    expect(isUnchanged(compared(apron, apron.replace("units cm", "\n# for the winter season\nunits cm")))).toBe(true);
  });

  test("a piece that is moved on the table has not changed", () => {
    expect(isUnchanged(compared(apron, apron.replace("point A = (0, 0)", "point A = (40 cm, 7 cm)")))).toBe(true);
  });
});

describe("a rectangle made wider", () => {
  // 300 x 1000 mm becomes 320 x 1000 mm.
  const comparison = compared(apron, apron.replace("wide = 30 cm", "wide = 32 cm"));
  const panel = pieceOf(comparison, "panel");

  test("its level edges are 20 mm longer, its side as long 20 mm further out", () => {
    expect(panel.edges.map(({ name, before, after }) => [name, before, after])).toEqual([
      ["hem", 300, 320],
      ["waist", 300, 320],
      ["side", 1000, 1000],
    ]);
    expect(panel.edges.map(({ difference, moved }) => [difference, moved])).toEqual([
      [20, 20],
      [20, 20],
      [0, 20],
    ]);
  });

  test("places and corners on the side moved by that, and no others", () => {
    expect(panel.places.map(({ name, moved }) => [name, moved])).toEqual([
      ["B", 20],
      ["C", 20],
    ]);
    expect(panel.corners.map(({ edges, moved, angle }) => [edges.join(), moved, Math.round(angle.after!)])).toEqual([
      ["hem,side", 20, 90],
      ["side,waist", 20, 90],
    ]);
  });

  test("it has 20 x 1000 square mm more", () => {
    expect(panel.area!.before).toBeCloseTo(300_000, 6);
    expect(panel.area!.after).toBeCloseTo(320_000, 6);
    expect(panel.area!.added).toBeCloseTo(20_000, 6);
    expect(panel.area!.removed).toBe(0);
  });

  test("the value is told, and notch and allowances are not", () => {
    expect(comparison.values.map(({ name, before, after, words }) => [name, before, after, words.after])).toEqual([
      ["wide", 300, 320, "32 cm"],
    ]);
    expect(panel.marks).toEqual([]);
  });
});

describe("what is only marked", () => {
  const marks = (from: string, to: string) =>
    pieceOf(compared(apron, apron.replace(from, to)), "panel").marks.map(({ kind, on, before, after }) => [
      kind,
      on,
      before,
      after,
    ]);

  test("an allowance", () => expect(marks("hem by 3 cm", "hem by 4 cm")).toEqual([["allowance", "hem", 30, 40]]));
  test("how its corners are cut", () =>
    expect(marks("hem by 3 cm", "hem by 3 cm corners turned")).toEqual([["corners", "hem", "point", "turned"]]));
  test("a notch", () => expect(marks("side at 20 cm", "side at 25 cm")).toEqual([["notch", "side", 200, 250]]));
  test("a notch more", () =>
    expect(marks("notch side at 20 cm", "notch side at 20 cm\n  notch side at 50 cm")).toEqual([
      ["notch", "side", null, 500],
    ]));
  test("the grain", () => expect(marks("grain along center", "grain along waist")).toEqual([["grain", "", 90, 0]]));
  test("the part that an edge plays", () =>
    expect(marks("mark hem as hem", "mark hem as hem\n  mark center as fold")).toEqual([
      ["part", "center", "seam", "fold"],
    ]));
});

test("a dart is told by its width, and once where it came or went", () => {
  const darted = apron.replace(
    "mark hem as hem",
    "mark hem as hem\n  dart d = waist at 50% width 3 cm to (15 cm, 10 cm)",
  );
  const marks = (before: string, after: string) =>
    pieceOf(compared(before, after), "panel").marks.map(({ on, before: was, after: is }) => [
      on,
      was === null ? null : Math.round(Number(was)),
      is === null ? null : Math.round(Number(is)),
    ]);
  expect(marks(apron, darted)).toEqual([["d, width", null, 30]]);
  expect(marks(darted, apron)).toEqual([["d, width", 30, null]]);
  // 40 mm wide and 100 mm long: its angle is 2 atan(20 / 100) = 22.6 degrees, its legs sqrt(20^2 + 100^2) = 101.98 mm; of 30 mm
  // it was 17.1 degrees and 101.12 mm.
  expect(marks(darted, darted.replace("width 3 cm", "width 4 cm"))).toEqual([
    ["d, between the legs", 17, 23],
    ["d, longer leg", 101, 102],
    ["d, width", 30, 40],
  ]);
  // The waist is sewn shorter by what the dart takes up.
  const waist = pieceOf(compared(apron, darted), "panel").edges.find(({ name }) => name === "waist");
  expect(waist!.difference).toBeCloseTo(-30, 6);
});

describe("what goes by another name", () => {
  test("a piece", () => {
    const [piece, other] = compared(apron, apron.replace("piece panel", "piece front-panel")).pieces;
    expect([piece!.name, piece!.status, piece!.from]).toEqual(["front-panel", "renamed", "panel"]);
    expect([piece!.edges, piece!.places, piece!.area, other]).toEqual([[], [], null, undefined]);
  });

  test("an edge and a place", () => {
    const panel = pieceOf(compared(apron, apron.replaceAll("waist", "top").replaceAll("pocket", "bag")), "panel");
    expect(panel.renamed).toEqual([
      { kind: "edge", before: "waist", after: "top" },
      { kind: "place", before: "pocket", after: "bag" },
    ]);
    expect([panel.edges, panel.places, panel.marks]).toEqual([[], [], []]);
  });

  test("a piece that is new is no other", () => {
    const more = `${apron}piece tie {\n  point A = (0, 0)\n  line a = A to (5 cm, 0)\n  line b = a.end to (5 cm, 80 cm)\n  line c = b.end to A\n  outline a, b, c\n}\n`;
    const { pieces } = compared(apron, more);
    expect(pieces.map(({ name, status, area }) => [name, status, Math.round(area!.added)])).toEqual([
      // Half of 50 x 800.
      ["tie", "added", 20_000],
    ]);
  });
});

test("a seam that no longer fits comes before all others, and its check began to fail", () => {
  const sewn = `${apron}piece other = panel {\n}\nseam panel.side with other.side\n`;
  const longer = sewn.replace("piece other = panel {", "piece other = panel {\n  extend-hem hem by 2 cm");
  const { seams, checks } = compared(sewn, longer);
  expect(
    seams.map(({ name, before, after }) => [
      name,
      before!.verdict,
      after!.verdict,
      Math.round(after!.difference * 1e6) / 1e6,
    ]),
  ).toEqual([["panel.side with other.side", "pass", "error", -20]]);
  expect(checks.began.map(({ check }) => check)).toContain("seam-length");
  expect(checks.ceased).toEqual([]);
});

test("a side that does not work is compared as far as it goes", () => {
  const { pieces, checks } = compared(apron, `${apron}piece tie {\n  line a = Q to R\n}\n`);
  expect(pieces.map(({ name, status }) => [name, status])).toEqual([["tie", "added"]]);
  expect(checks.began.length).toBeGreaterThan(0);
});

test("a fabric and a cut are told in words", () => {
  const cut = `${apron}fabric shell "drill" width 150 cm\ncut panel 2 from shell\n`;
  const { cuts } = compared(cut, cut.replace("width 150 cm", "width 140 cm").replace("panel 2", "panel 1"));
  expect(cuts).toEqual([
    { name: "fabric shell", before: '"drill", width 150 cm', after: '"drill", width 140 cm' },
    { name: "panel", before: "cut 2 from shell", after: "cut 1 from shell" },
  ]);
});

test("inside one recipe a derived piece is held against its source", () => {
  const wide = `${apron}piece long-panel = panel {\n  extend-hem hem by 5 cm\n}\n`;
  const { pieces } = compareSources(workedAfresh(wide));
  expect(pieces.map(({ name, from, status }) => [name, from, status])).toEqual([["long-panel", "panel", "changed"]]);
  // Both upright edges carried on by 50 mm, and 300 x 50 square mm of cloth.
  expect(pieces[0]!.edges.map(({ name, difference }) => [name, difference])).toEqual([
    ["center", 50],
    ["side", 50],
    ["hem", 0],
  ]);
  expect(pieces[0]!.area!.added).toBeCloseTo(15_000, 3);
});

describe("the other way round", () => {
  const swing = recipeText("lobby-coat-swing.chalk");
  const pairs: readonly (readonly [string, string, string])[] = [
    ["a wider flare", swing, swing.replace("flare  = 9 cm", "flare  = 13 cm")],
    ["another garment", swing, recipeText("lobby-coat-belt.chalk")],
    [
      "another length, allowance and notch",
      apron,
      apron.replace("100 cm from", "97.3 cm from").replace("3 cm", "2 cm"),
    ],
    ["names", apron, apron.replaceAll("waist", "top").replace("pocket", "bag")],
    ["a block and its collar", swing, recipeText("lobby-coat-collar.chalk")],
  ];
  test.each(pairs)("%s: the same, mirrored", (_, before, after) => {
    const [was, is] = [workedAfresh(before), workedAfresh(after)];
    expect(shortly(mirrored(compareGarments(was, is)))).toEqual(shortly(compareGarments(is, was)));
  });
});

/** A comparison with its sides changed over. */
const mirrored = ({ values, pieces, seams, cuts, checks }: Comparison): Comparison => {
  const over = <T extends { readonly before: unknown; readonly after: unknown }>(each: T): T => ({
    ...each,
    before: each.after,
    after: each.before,
  });
  return {
    values: values.map((each) => ({ ...over(each), words: over(each.words) })),
    pieces: pieces.map((piece) => ({
      ...piece,
      name: piece.from ?? piece.name,
      from: piece.status === "removed" ? null : piece.name,
      status: piece.status === "added" ? "removed" : piece.status === "removed" ? "added" : piece.status,
      edges: piece.edges.map((edge) => ({
        ...over(edge),
        difference: edge.difference === null ? null : -edge.difference,
      })),
      places: piece.places.map(over),
      corners: piece.corners.map((corner) => ({ ...corner, angle: over(corner.angle) })),
      marks: piece.marks.map(over),
      renamed: piece.renamed.map(over),
      area: piece.area && { ...over(piece.area), added: piece.area.removed, removed: piece.area.added },
    })),
    seams: seams.map(over),
    cuts: cuts.map(over),
    checks: { began: checks.ceased, ceased: checks.began },
  };
};

/** Numbers to 0.001, without the dust of the last digits, and lists whose order names decide by name. */
const shortly = (comparison: Comparison): unknown => {
  const { values, pieces, seams, ...rest } = comparison;
  const byName = (a: { readonly name: string }, b: { readonly name: string }): number => (a.name < b.name ? -1 : 1);
  const renamed = new Map(
    pieces.flatMap((piece) => piece.renamed.map(({ before, after }) => [before, after] as const)),
  );
  const text = JSON.stringify({
    ...rest,
    values: [...values].sort(byName),
    seams: [...seams].sort(byName),
    pieces: pieces.map((piece) => ({ ...piece, edges: [...piece.edges].sort(byName) })),
  });
  expect(renamed.size).toBeLessThan(3);
  return JSON.parse(text, (_, value) => (typeof value === "number" ? Math.round(value * 1000) / 1000 + 0 : value));
};
