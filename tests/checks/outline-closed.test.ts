// When an outline counts as closed, and what is said of one that is not.
import { expect, test } from "vitest";
import { outlineClosed } from "../../kernel/checks/outline-closed.ts";
import { straight } from "../../kernel/geometry/path.ts";
import { at, garment, judgementsOf, madePiece, rectangle } from "./made-garment.ts";

/** A triangle whose last edge stops this far short of where the first began. */
const triangle = (gap: number) =>
  madePiece("gore", [
    ["left-side", straight(at(0, 0), at(-50, 200))],
    ["hem", straight(at(-50, 200), at(50, 200))],
    ["right-side", straight(at(50, 200), at(gap, 0))],
  ]);

test("a closed outline passes", () => {
  expect(judgementsOf(outlineClosed, garment([rectangle("front", 300, 400)]))).toMatchObject([
    { on: "front", verdict: "pass", found: "closed" },
  ]);
});

test("ends within 0.01 mm meet, beyond it they do not", () => {
  expect(judgementsOf(outlineClosed, garment([triangle(0.01)]))).toMatchObject([{ verdict: "pass" }]);
  expect(judgementsOf(outlineClosed, garment([triangle(0.011)]))).toMatchObject([{ verdict: "error" }]);
});

test("an open outline names both edges and the distance, and points at the second", () => {
  const [finding, ...others] = judgementsOf(outlineClosed, garment([triangle(3)]));
  expect(others).toEqual([]);
  expect(finding).toMatchObject({
    on: "gore.right-side at gore.left-side",
    verdict: "error",
    found: 3,
    wanted: 0,
    where: { line: 11 },
    message: "The outline of gore stands open by 3 mm between right-side and left-side.",
    related: [{ where: { line: 13 } }],
  });
});

test("a piece without an outline is a finding", () => {
  const bare = { ...rectangle("front", 300, 400), outline: [] };
  expect(judgementsOf(outlineClosed, garment([bare]))).toMatchObject([
    { on: "front", verdict: "error", found: "not drawn", where: { line: 10 }, message: "front has no outline." },
  ]);
});

test("a piece with a failed line is not judged", () => {
  const doubtful = { ...triangle(3), doubtful: true };
  expect(judgementsOf(outlineClosed, garment([doubtful]))).toEqual([]);
});
