// Which edges must say their allowance.
import { expect, test } from "vitest";
import { allowanceSaid } from "../../kernel/checks/allowance-said.ts";
import { allowed, cut, garment, judgementsOf, marked, rectangle, verdictsOf } from "./made-garment.ts";

const cuff = rectangle("cuff", 260, 70);
const cuts = { cuts: [cut("cuff")] };

test("every edge of a piece that is cut says its allowance", () => {
  expect(verdictsOf(allowanceSaid, garment([allowed(cuff, 15)], cuts))).toEqual([
    "cuff.top: pass",
    "cuff.side: pass",
    "cuff.hem: pass",
    "cuff.center: pass",
  ]);
});

test("none is said too", () => {
  expect(judgementsOf(allowanceSaid, garment([allowed(cuff, 0)], cuts))).toMatchObject(
    ["top", "side", "hem", "center"].map((edge) => ({ on: `cuff.${edge}`, verdict: "pass", found: 0 })),
  );
});

test("an edge that was forgotten is pointed at", () => {
  const judgements = judgementsOf(allowanceSaid, garment([allowed(cuff, 15, ["top", "side", "center"])], cuts));
  expect(judgements.filter(({ verdict }) => verdict !== "pass")).toMatchObject([
    {
      on: "cuff.hem",
      verdict: "warning",
      where: { line: 13 },
      message: "The hem of cuff does not say its allowance.",
      hint: "Add `allow hem by LENGTH` to the piece; `by 0` if it is to have none.",
      related: [{ where: { line: 60 }, message: "cuff is cut here." }],
    },
  ]);
});

test("an edge drawn in another recipe is mended where the piece is made from it", () => {
  const borrowed = new Map(
    [...cuff.edges].map(([name, edge]) => [name, { ...edge, drawnBy: { ...edge.drawnBy, file: "blocks/cuff.chalk" } }]),
  );
  const piece = { ...allowed(cuff, 15, ["top", "side", "center"]), edges: borrowed };
  const finding = judgementsOf(allowanceSaid, garment([piece], cuts)).find(({ verdict }) => verdict !== "pass");
  expect(finding?.where).toEqual(cuff.drawnBy);
});

test("a piece without any allowance is one finding", () => {
  expect(judgementsOf(allowanceSaid, garment([marked(cuff, "center", "fold")], cuts))).toMatchObject([
    {
      on: "cuff",
      verdict: "warning",
      where: { line: 10 },
      message: "cuff is cut from shell, but no edge of it says its allowance.",
      hint: "Add `allow top, side, hem by LENGTH` to the piece.",
    },
  ]);
});

test("a fold has no allowance", () => {
  const folded = marked(cuff, "center", "fold");
  expect(verdictsOf(allowanceSaid, garment([allowed(folded, 15)], cuts))).toEqual([
    "cuff.top: pass",
    "cuff.side: pass",
    "cuff.hem: pass",
  ]);
});

test("a piece that is not cut says nothing", () => {
  expect(judgementsOf(allowanceSaid, garment([cuff]))).toEqual([]);
});

test("a piece with a failed line is not judged", () => {
  expect(judgementsOf(allowanceSaid, garment([{ ...cuff, doubtful: true }], cuts))).toEqual([]);
});
