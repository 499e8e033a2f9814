// Clicked points as the text of a piece: the recipe is worked, and its piece measured.
import fc from "fast-check";
import { expect, test } from "vitest";
import type { TracedPoint } from "../../../editor/paper/traced-edges.ts";
import {
  faultsOf,
  nameFault,
  pieceText,
  placeWordsOfRecipes,
  recipeText,
  type TracedPiece,
} from "../../../editor/paper/traced-outline.ts";
import { tidy } from "../../../grammar/print.ts";
import { statementWords } from "../../../grammar/statements.ts";
import { placeWords } from "../../../grammar/tokens.ts";
import { signedArea } from "../../../kernel/geometry/area.ts";
import { bounds } from "../../../kernel/geometry/bounds.ts";
import { boundary } from "../../../kernel/outline.ts";
import type { Piece } from "../../../kernel/working.ts";
import { chalkline, lengthOf, workedText } from "../../worked-recipe.ts";

const corner = (x: number, y: number, more: Partial<TracedPoint> = {}): TracedPoint => ({
  at: { x, y },
  kind: "corner",
  edge: "",
  isFold: false,
  allowance: "",
  ...more,
});
const onCurve = (x: number, y: number): TracedPoint => ({ ...corner(x, y), kind: "curve" });

const traced = (outline: TracedPoint[], more: Partial<TracedPiece> = {}): TracedPiece => ({
  name: "pocket",
  outline,
  line: "sewing",
  allowance: "1",
  grainAlong: "",
  units: "cm",
  ...more,
});

/** A sheet of 18 by 22 cm. */
const sheet = (more: Partial<TracedPoint>[] = []): TracedPoint[] =>
  [corner(40, 30), corner(220, 30), corner(220, 250), corner(40, 250)].map((point, i) => ({ ...point, ...more[i] }));

const worked = (piece: TracedPiece) => {
  expect(faultsOf(piece)).toEqual([]);
  const outcome = workedText(recipeText(piece));
  expect(outcome.findings, pieceText(piece)).toEqual([]);
  return outcome;
};
const pieceOf = (piece: TracedPiece): Piece => worked(piece).garment.pieces.get(piece.name)!;

test("a traced cutting line is stripped of its allowance and gets it back: 18 by 22 cm with 1 cm drawn in sews 16 by 20 cm", () => {
  const outcome = worked(traced(sheet(), { line: "cutting" }));
  expect(lengthOf(outcome, "pocket", "edge-1")).toBeCloseTo(160, 6);
  expect(lengthOf(outcome, "pocket", "edge-2")).toBeCloseTo(200, 6);
  const piece = outcome.garment.pieces.get("pocket")!;
  expect([...piece.allowances.values()].map(({ width }) => width)).toEqual([10, 10, 10, 10]);
});

test("a traced sewing line stays what it is, and an edge may have an allowance of its own", () => {
  const outcome = worked(traced(sheet([{ edge: "opening", allowance: "3" }, {}, { edge: "lower" }, {}])));
  expect(lengthOf(outcome, "pocket", "opening")).toBeCloseTo(180, 6);
  const { allowances } = outcome.garment.pieces.get("pocket")!;
  expect(allowances.get("opening")?.width).toBe(30);
  expect(allowances.get("lower")?.width).toBe(10);
});

test("a fold has no allowance, is the grain, and runs straight down however aslant it was traced", () => {
  // The sheet turned by the angle whose sine is 3/5 and cosine 4/5, so every coordinate is exact.
  const outline = sheet([{}, {}, {}, { edge: "center", isFold: true }]).map((point) => ({
    ...point,
    at: { x: 0.8 * point.at.x - 0.6 * point.at.y, y: 0.6 * point.at.x + 0.8 * point.at.y },
  }));
  const piece = pieceOf(traced(outline, { line: "cutting" }));
  const box = bounds([boundary(piece)!]);
  // The fold keeps its place, the three other edges move in by 1 cm.
  expect(box.left).toBeCloseTo(0, 6);
  expect(box.right).toBeCloseTo(170, 6);
  expect(box.bottom - box.top).toBeCloseTo(200, 6);
  expect(piece.edges.get("center")?.role).toBe("fold");
  expect(piece.allowances.has("center")).toBe(false);
});

test("points on a curve make one curve: a circle of 10 cm through eight of them is round within a tenth of a millimetre", () => {
  const round = Array.from({ length: 8 }, (_, i) =>
    onCurve(100 + 100 * Math.cos((i * Math.PI) / 4), 100 + 100 * Math.sin((i * Math.PI) / 4)),
  );
  const outcome = worked(traced(round, { name: "hat-tip" }));
  // The circumference and the area of a circle.
  expect(lengthOf(outcome, "hat-tip", "edge-1") / (200 * Math.PI)).toBeCloseTo(1, 3);
  const area = Math.abs(signedArea(boundary(outcome.garment.pieces.get("hat-tip")!)!));
  expect(area / (10_000 * Math.PI)).toBeCloseTo(1, 3);
});

test("neighbours of one name are one edge, over the first corner too, and a bend in a straight edge stays", () => {
  const bent = [corner(0, 0, { edge: "side" }), corner(100, 0, { edge: "hem" }), corner(100, 200, { edge: "hem" })];
  const outcome = worked(traced([...bent, onCurve(40, 210), corner(0, 200, { edge: "side" })]));
  expect([...outcome.garment.pieces.get("pocket")!.edges.keys()].sort()).toEqual(["hem", "side"]);
  expect(lengthOf(outcome, "pocket", "side")).toBeCloseTo(300, 6);
  expect(lengthOf(outcome, "pocket", "hem")).toBeGreaterThan(300);
});

test("in inches the points stand in inches", () => {
  // 7 by 9 in.
  const outline = [corner(0, 0), corner(177.8, 0), corner(177.8, 228.6), corner(0, 228.6)];
  const piece = traced(outline, { units: "in", allowance: "5/8" });
  expect(recipeText(piece)).toContain("units in\n");
  expect(pieceText(piece)).toContain("point corner-3 = (7 in, 9 in)");
  expect(pieceText(piece)).toContain("by 0.625 in");
  worked(piece);
});

test("the text is tidy as it stands, and the same each time", () => {
  const text = recipeText(traced(sheet(), { line: "cutting" }));
  expect(recipeText(traced(sheet(), { line: "cutting" }))).toBe(text);
  const { tree, forms } = chalkline.parse({ file: "test.chalk", text });
  expect(tidy(tree, forms)).toBe(text);
});

test("what keeps a tracing from becoming a recipe is said at its place", () => {
  const said = (piece: TracedPiece): string[] => faultsOf(piece).map(({ part, words }) => `${part}: ${words}`);
  expect(said(traced(sheet().slice(0, 2)))).toEqual([
    "outline: An outline needs 3 points or more, and 2 of them are set.",
  ]);
  const crossed = [corner(0, 0), corner(100, 100), corner(100, 0), corner(0, 100)];
  expect(said(traced(crossed))).toEqual([expect.stringMatching(/^outline: The outline crosses itself/)]);
  // The two lines are the diagonals of the square.
  const spot = faultsOf(traced(crossed))[0]!.spot!;
  expect([spot.x, spot.y].map(Math.round)).toEqual([50, 50]);
  expect(said(traced([...sheet(), corner(40.05, 250)]))).toEqual([
    "outline: Points 4 and 5 lie on one spot: take one of them away.",
  ]);
  expect(said(traced(sheet([{ edge: "side" }, {}, { edge: "side" }, {}])))).toEqual([
    "edges: Two edges apart from one another are called side; only neighbours can be one edge.",
  ]);
  expect(said(traced(sheet([{ edge: "my hem" }])))).toEqual([
    expect.stringMatching(/^edges: “my hem” has to be written/),
  ]);
  expect(said(traced(sheet([{ edge: "left" }])))).toEqual([expect.stringMatching(/^edges: “left” means something/)]);
  expect(said(traced(sheet([{ isFold: true }, {}, { isFold: true }, {}])))).toEqual([
    expect.stringMatching(/^edges: Two edges are said/),
  ]);
  expect(said(traced(sheet(), { allowance: "wide" }))).toEqual([expect.stringMatching(/^edges: Write how wide/)]);
  expect(said(traced(sheet([{ allowance: "x" }])))).toEqual(["edges: The allowance of edge-1 is no length: “x”."]);
  expect(said(traced(sheet(), { name: "" }))).toEqual([expect.stringMatching(/^recipe: A name has to be/)]);
  expect(said(traced(sheet(), { name: "piece" }))).toEqual([expect.stringMatching(/^recipe: “piece” means something/)]);
});

test("no name passes that the language would refuse", () => {
  expect([...placeWordsOfRecipes].sort()).toEqual([...placeWords].sort());
  for (const word of [...placeWords, ...statementWords]) expect(nameFault(word), word).toBeDefined();
  // Words of values, units and clauses are free.
  for (const name of [
    "x",
    "pi",
    "min",
    "length",
    "part",
    "middle",
    "cm",
    "in",
    "to",
    "through",
    "fold",
    "line",
    "strip",
  ])
    worked(traced(sheet([{ edge: name }]), { name }));
  fc.assert(
    fc.property(fc.stringMatching(/^[A-Za-z0-9-]{1,12}$/), (name) => {
      fc.pre(nameFault(name) === undefined);
      worked(traced(sheet([{ edge: name }]), { name }));
    }),
    { numRuns: 60, seed: 11 },
  );
});

test("names that the drawing needs for itself are no hindrance", () => {
  worked(traced(sheet([{ edge: "corner-2" }, { edge: "part" }, { edge: "side-part-1" }, {}])));
});

test("any star of points that does not cross itself becomes a piece without a mistake, or its curves are told where they run over", () => {
  const spoke = fc.record({ reach: fc.double({ min: 80, max: 200, noNaN: true }), isCurve: fc.boolean() });
  fc.assert(
    fc.property(fc.array(spoke, { minLength: 5, maxLength: 14 }), (spokes) => {
      const outline = spokes.map(({ reach, isCurve }, i) => {
        const angle = (2 * Math.PI * i) / spokes.length;
        const [x, y] = [300 + reach * Math.cos(angle), 300 + reach * Math.sin(angle)];
        return isCurve ? onCurve(x, y) : corner(x, y);
      });
      fc.pre(faultsOf(traced(outline, { allowance: "0.5" })).length === 0);
      const { findings } = workedText(recipeText(traced(outline, { allowance: "0.5" })));
      // A curve may bulge over its neighbor at a sharp corner, about once in three thousand stars, where the points alone do not
      // cross: that is not seen while clicking, and the kernel says it of the piece.
      const codes = findings.filter(({ severity }) => severity === "error").map(({ code }) => code);
      expect(codes.filter((code) => code !== "outline-simple")).toEqual([]);
    }),
    { numRuns: 60, seed: 11 },
  );
});
