// Outlines that run over themselves, and where.
import { expect, test } from "vitest";
import { outlineSimple } from "../../kernel/checks/outline-simple.ts";
import { cubic, straight, through } from "../../kernel/geometry/path.ts";
import { at, garment, judgementsOf, madePiece, panel, rectangle } from "./made-garment.ts";

test("a rectangle does not cross itself", () => {
  expect(judgementsOf(outlineSimple, garment([rectangle("front", 300, 400)]))).toMatchObject([
    { on: "front", verdict: "pass", found: 0, wanted: 0 },
  ]);
});

// The side from (300, 0) to (0, 400) and the center from (0, 0) to (300, 400) are the diagonals of the rectangle.
test("a twisted panel crosses in its middle", () => {
  const twisted = panel("front", [at(0, 0), at(300, 0), at(0, 400), at(300, 400)]);
  expect(judgementsOf(outlineSimple, garment([twisted]))).toMatchObject([
    {
      on: "front",
      verdict: "error",
      found: 1,
      where: { line: 14 },
      message: "The center of front runs over its side at (150 mm, 200 mm).",
      related: [{ where: { line: 12 } }],
    },
  ]);
});

test("the place is told in the units of the recipe", () => {
  const twisted = panel("front", [at(0, 0), at(300, 0), at(0, 400), at(300, 400)]);
  const [finding] = judgementsOf(outlineSimple, garment([twisted], { units: "cm" }));
  expect(finding?.message).toBe("The center of front runs over its side at (15 cm, 20 cm).");
});

// A cubic with its handles swapped over makes a loop of its own.
test("an edge that loops runs over itself", () => {
  const looped = madePiece("flap", [
    ["lower", [cubic(at(0, 0), at(300, 200), at(-200, 200), at(100, 0))]],
    ["upper", through([at(100, 0), at(50, -50), at(0, 0)])],
  ]);
  const [finding] = judgementsOf(outlineSimple, garment([looped]));
  expect(finding).toMatchObject({ verdict: "error", where: { line: 11 } });
  expect(finding?.message).toMatch(/^The lower of flap runs over itself at \(50 mm, /);
});

test("several crossings are one finding", () => {
  const saw = madePiece("strap", [
    ["upper", through([at(0, 0), at(100, 20), at(200, -20), at(300, 0)])],
    ["end", straight(at(300, 0), at(300, 10))],
    ["lower", straight(at(300, 10), at(-10, 10))],
    ["start", straight(at(-10, 10), at(0, 0))],
  ]);
  const findings = judgementsOf(outlineSimple, garment([saw]));
  expect(findings).toMatchObject([{ verdict: "error", found: 2 }]);
  expect(findings[0]?.message).toMatch(/, and there is one more crossing\.$/);
});

test("an open outline and a piece with a failed line are not judged", () => {
  const open = madePiece("gore", [
    ["one", straight(at(0, 0), at(10, 0))],
    ["two", straight(at(50, 0), at(50, 50))],
  ]);
  const twisted = panel("front", [at(0, 0), at(300, 0), at(0, 400), at(300, 400)], { doubtful: true });
  expect(judgementsOf(outlineSimple, garment([open, twisted]))).toEqual([]);
});
