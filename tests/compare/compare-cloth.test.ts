// A comparison says how much cloth is needed before and after, on boards that are worked by hand.
import { expect, test } from "vitest";
import { compareCloth } from "../../kernel/compare/compare-cloth.ts";
import { compareGarments } from "../../kernel/compare/compare-garments.ts";
import { clothSection, clothSummary } from "../../kernel/report/compare-cloth-section.ts";
import { compareJson } from "../../kernel/report/compare-json.ts";
import { toldOf } from "../../kernel/report/compare-sections.ts";
import type { Review } from "../../kernel/report/compare-told.ts";
import { workedText } from "../worked-recipe.ts";

/** Boards of 60 by so many cm on canvas with 80 between its selvedges. */
const boards = (wide: number, cuts = "cut board 2 from canvas", fabrics = "", name = "board") =>
  workedText(`chalkline 1
recipe "Stage flats"
units cm
fabric canvas "canvas" width 82 cm
${fabrics}
piece ${name} {
  line head = (0, 0) to (${wide} cm, 0)
  line far = (${wide} cm, 0) to (${wide} cm, 60 cm)
  line foot = (0, 60 cm) to (${wide} cm, 60 cm)
  line near = (0, 0) to (0, 60 cm)
  outline head, far, foot, near
  grain along near
  allow head, far, foot, near by 0
}
${cuts}
`);

const reviewed = (was: ReturnType<typeof boards>, is: ReturnType<typeof boards>): Review => ({
  title: "Stage flats",
  before: "before",
  after: "after",
  units: "cm",
  comparison: compareGarments(was, is),
  cloth: compareCloth(was.garment, is.garment),
  causes: { causes: [], untried: 0 },
  blame: new Map(),
  isSameText: false,
  remarks: [],
});

test("what lay side by side and no longer does needs twice the cloth", () => {
  // Two of 40 cm on 80: 60 cm and 2 at both ends, sold as 70. Of 41 cm one behind the other: 124, sold as 130.
  const review = reviewed(boards(40), boards(41));
  const [canvas] = review.cloth!;
  expect(canvas).toMatchObject({ fabric: "canvas", before: { lengthToBuy: 700 }, after: { lengthToBuy: 1300 } });
  expect(canvas!.before!.length).toBeCloseTo(600, 0);
  expect(canvas!.after!.length).toBeCloseTo(1200, 0);
  expect(clothSummary(review)).toEqual(["buy 1.3 m of canvas instead of 0.7 m"]);
  const told = toldOf(review);
  expect(told.summary).toContain("buy 1.3 m of canvas instead of 0.7 m");
  const section = told.sections.find(({ heading }) => heading === "Cloth to buy")!;
  expect(section.rows.map((row) => row.map(({ text }) => text))).toEqual([
    ["cloth", "before", "after", "pieces take", "then"],
    ["canvas", "0.7 m", "1.3 m", "60 cm", "120 cm"],
  ]);
  expect(compareJson(review)).toMatchObject({
    cloth: [{ fabric: "canvas", before: { lengthToBuy: 700, because: [] }, after: { lengthToBuy: 1300 } }],
  });
});

test("nothing is laid where the same is cut, whatever a piece is called", () => {
  expect(compareCloth(boards(40).garment, boards(40).garment)).toEqual([]);
  // Longer by a letter, so that the lines below it stand elsewhere in the text.
  const plank = boards(40, "cut planks 2 from canvas", "# Renamed.", "planks");
  expect(compareCloth(boards(40).garment, plank.garment)).toEqual([]);
  expect(compareCloth(boards(40, "").garment, boards(41, "").garment)).toEqual([]);
  expect(clothSection(reviewed(boards(40, ""), boards(41, ""))).rows).toEqual([]);
});

test("a piece that has grown too wide is told, and not measured", () => {
  const review = reviewed(boards(40), boards(85));
  expect(review.cloth![0]).toMatchObject({ before: { lengthToBuy: 700 }, after: { lengthToBuy: null, length: null } });
  const { rows, sentences } = clothSection(review);
  expect(rows[1]!.map(({ text }) => text)).toEqual(["canvas", "0.7 m", "cannot be cut", "60 cm", ""]);
  expect(sentences[0]!.text).toMatch(/^With its allowances board is 85(\.0\d)? cm wide/);
  expect(clothSummary(review)).toEqual([]);
  // Too wide before as well, it is no news.
  expect(clothSection(reviewed(boards(85), boards(85, "cut board 1 from canvas"))).sentences).toEqual([]);
});

test("a cloth that only one side is cut from, and one that is cut twice as often", () => {
  const lining = boards(40, "cut board 2 from canvas\ncut board 2 from lining", 'fabric lining "lining" width 82 cm');
  const [canvas, other] = compareCloth(boards(40).garment, lining.garment);
  expect(canvas).toMatchObject({ fabric: "canvas", before: { lengthToBuy: 700 }, after: { lengthToBuy: 700 } });
  expect(other).toMatchObject({ fabric: "lining", before: null, after: { lengthToBuy: 700 } });
  const four = compareCloth(boards(40).garment, boards(40, "cut board 4 from canvas").garment);
  expect(four[0]!.after!.lengthToBuy).toBe(1300);
});
