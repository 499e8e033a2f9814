// A table of measured points as a recipe: separators, decimals, units, names and kinds.
import { expect, test } from "vitest";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { boundary } from "../../kernel/outline.ts";
import { refusalOf, traced, tried } from "./traced.ts";

const square = "x,y\n0,0\n30,0\n30,40\n0,40\n";

test("points in turn make a piece; 1 is 1 cm where nothing is said, and that is told", () => {
  const { made, outcome } = traced(square, "csv");
  expect(made.notes[0]).toContain("does not say its units");
  expect(made.recipe).toContain("corner-3 = corner-2 down 40 cm");
  expect(outcome.garment.pieces.get("piece-1")!.outline).toHaveLength(4);
});

test.each([
  ["comma", square, 1],
  ["without headings", "0,0\n30,0\n30,40\n0,40\n", 1],
  ["semicolon and decimal comma", "x;y\n0,0;0,0\n30,0;0\n30;40,0\n0;40\n", 1],
  ["tabs and decimal comma", "x\ty\n0\t0\n30,0\t0\n30\t40\n0\t40\n", 1],
  [
    "quoted, columns in another order, first point again at the end",
    '"y","name","x"\r\n0,a,0\r\n0,b,30\r\n40,c,30\r\n40,d,0\r\n0,a,0\r\n',
    1,
  ],
  ["millimetres in the headings", "x (mm),y (mm)\n0,0\n300,0\n300,400\n0,400\n", 1],
  ["inches in the headings", "x in,y in\n0,0\n30,0\n30,40\n0,40\n", 2.54],
  ["as a spreadsheet saves it, with a mark in front", `\ufeff${square}`, 1],
])("%s", (_, text, times) => {
  const { outcome } = traced(text, "csv");
  const [piece] = [...outcome.garment.pieces.values()];
  const path = boundary(piece!)!;
  for (const [x, y] of [
    [0, 0],
    [30, 0],
    [30, 40],
    [0, 40],
  ] as const)
    expect(nearest(path, { x: x * 10 * times, y: y * 10 * times }).distance).toBeLessThan(0.01);
});

test("--units says what a table without units is in", () => {
  expect(traced(square, "csv", { units: "in" }).made.recipe).toContain("down 40 in");
  expect(traced(square, "csv", { units: "mm" }).made.notes).toEqual([]);
});

test("a curve goes through its points by name, corners are found by their turn, and marks stand on the outline", () => {
  const { made, pieces } = traced(
    `x (cm),y (cm),name,kind
8,0,neck point,corner
22,4,shoulder,
20.5,10,,curve
21.5,18,armhole notch,
27,24,underarm,corner
27,60,,
0,60,,corner
0,9,,corner
5,6.5,,curve
27,40,,notch
10,30,,drill
`,
    "csv",
  );
  expect(made.leftOut).toEqual([]);
  expect(made.recipe).toContain("point neck-point = ");
  expect(made.recipe).toMatch(/curve edge-\d = shoulder to underarm through \(20.5 cm, 10 cm\), armhole-notch/);
  const [piece] = pieces;
  expect(piece!.notches.map(({ point }) => point)).toEqual([{ x: expect.closeTo(270, 6), y: expect.closeTo(400, 6) }]);
  expect(piece!.drills.map(({ point }) => point)).toEqual([{ x: 100, y: 300 }]);
  // Every measured point lies on the outline as it is drawn.
  const path = boundary(piece!)!;
  for (const [x, y] of [
    [8, 0],
    [22, 4],
    [20.5, 10],
    [21.5, 18],
    [27, 24],
    [27, 60],
    [0, 60],
    [0, 9],
    [5, 6.5],
  ] as const)
    expect(nearest(path, { x: x * 10, y: y * 10 }).distance).toBeLessThan(0.01);
});

test("points all round a curve are one closed curve", () => {
  const rows = Array.from(
    { length: 16 },
    (_, i) => `${20 + 10 * Math.cos((i * Math.PI) / 8)},${20 + 10 * Math.sin((i * Math.PI) / 8)}`,
  );
  const { made } = traced(`x (cm),y (cm)\n${rows.join("\n")}\n`, "csv");
  expect(made.pieces[0]!.edges).toEqual(["edge-1"]);
});

test.each([
  ["", "The table is empty.", undefined],
  ["x,y\n1,2\n3,4\n", "An outline needs 3 points or more, and the table has 2 of them.", undefined],
  ["x,y\n", "There is no point below the headings.", 1],
  ["a,b\n1,2\n", "The headings have to name a column x and a column y.", 1],
  ["x,y\n1,2\n3,four\n5,6\n", "A number has to stand here, and there is “four”.", 3],
  ["x,y\n1,2\nNaN,4\n5,6\n", "A number has to stand here, and there is “NaN”.", 3],
  ["x,y\n1,2\n1e9,4\n5,6\n", "A number has to stand here, and there is “1e9”.", 3],
  ["x,y\n1,2\n999999,4\n5,6\n", "A point here lies more than 100 m from the middle of the sheet.", 2],
  ["x,y\n1,2\n1,2\n5,6\n", "This point lies on the same spot as the one before it.", 3],
  ["x (cm),y (in)\n1,2\n", "The columns x and y are in different units.", 1],
  [
    "x,y,name,kind\n1,2,,corner\n2,3,,dart\n4,4,,\n",
    "A point is a corner, a curve, a notch or a drill, and not “dart”.",
    3,
  ],
  ['x,y\n1,"2\n', "Row 2: a quote is opened and never closed.", undefined],
])("%j is refused at its line", (text, message, line) => {
  const found = refusalOf(text, "csv");
  expect(found.message).toBe(message);
  expect(found.line).toBe(line);
});

test("an outline that crosses itself is a recipe with a finding, not a crash", () => {
  const made = tried("x,y\n0,0\n30,40\n30,0\n0,40\n", "csv");
  expect("problem" in made).toBe(false);
});
