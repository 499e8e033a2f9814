// The picture of a garment: what the page can show and point at, and the lines behind it.
import { expect, test } from "vitest";
import { pictured } from "../../../editor/picture/pictured.ts";
import { lineOf, panel, worked } from "./worked-picture.ts";

const [piece] = pictured(worked(panel)).pieces;

test("it says what the garment is, and that every line could be worked", () => {
  const { title, units, complete, pieces } = pictured(worked(panel));
  expect({ title, units, complete }).toEqual({ title: "Panel", units: "cm", complete: true });
  expect(pieces.map(({ name }) => name)).toEqual(["panel"]);
});

test("the shape of a piece is its cutting line: a centimetre out, and none at the fold", () => {
  const [plain] = pictured(worked(panel.replace(/ *dart.*\n/, ""))).pieces;
  // From (0, -10) round by (210, -10) and (210, 310) to (0, 310).
  const numbers = plain!.shape.match(/-?[\d.]+/g)!.map(Number);
  const [across, down] = [numbers.filter((_, i) => i % 2 === 0), numbers.filter((_, i) => i % 2 === 1)];
  expect([Math.min(...across), Math.max(...across)]).toEqual([0, 210]);
  expect([Math.min(...down), Math.max(...down)]).toEqual([-10, 310]);
});

test("each edge tells its length as sewn, its middle, and the way out of the piece", () => {
  const edge = (name: string) => piece!.edges.find((each) => each.name === name)!;
  // 20 cm less the 2 cm of the dart.
  expect([edge("waist").length, edge("waist").lengthInWords]).toEqual([expect.closeTo(180, 6), "18 cm"]);
  expect(edge("hem").middle).toEqual({ x: expect.closeTo(100, 6), y: 300 });
  expect(edge("fold").outward).toEqual({ x: expect.closeTo(-1, 9), y: expect.closeTo(0, 9) });
  expect(edge("side").outward).toEqual({ x: expect.closeTo(1, 9), y: expect.closeTo(0, 9) });
  expect(edge("hem").outward).toEqual({ x: expect.closeTo(0, 9), y: expect.closeTo(1, 9) });
  expect(edge("fold").role).toBe("fold");
  expect(edge("hem").lines).toEqual([lineOf(panel, "line hem")]);
});

test("places and notches have the lines that set them", () => {
  expect(piece!.places.find(({ name }) => name === "A")).toEqual({
    name: "A",
    at: { x: 50, y: 200 },
    lines: [lineOf(panel, "point A")],
    inside: [],
  });
  expect(piece!.notches).toEqual([
    { edge: "side", at: { x: 200, y: expect.closeTo(100, 6) }, lines: [lineOf(panel, "notch side")], inside: [] },
  ]);
});

test("a dart, a drill hole and the grain line are things to point at, each with all its lines", () => {
  expect(piece!.things.map(({ kind, name, lines }) => [kind, name, lines])).toEqual([
    ["grain", "grain", [lineOf(panel, "grain along")]],
    ["drill", "drill", [lineOf(panel, "drill A")]],
    ["dart", "tuck", [lineOf(panel, "dart tuck")]],
  ]);
  const dart = piece!.things.find(({ kind }) => kind === "dart")!;
  // Both legs end at the tip; a leg begins 1 cm beside the middle of the mouth.
  expect(dart.d).toContain("M90 0 L100 90");
  expect(dart.d).toContain("M110 0 L100 90");
  const drill = piece!.things.find(({ kind }) => kind === "drill")!;
  // A cross of two lines about the place.
  expect(drill.d).toBe("M46 200 L54 200 M50 196 L50 204");
});

test("gathers on an edge are one thing, called after the edge", () => {
  const text = panel.replace("  drill A", "  gather hem into 15 cm\n  drill A");
  const [gathered] = pictured(worked(text)).pieces;
  const thing = gathered!.things.find(({ kind }) => kind === "take-up")!;
  expect([thing.name, thing.lines]).toEqual(["hem", [lineOf(text, "gather hem")]]);
});

test("in a copy of another recipe's piece marks belong to the line that copied it", () => {
  const text = 'chalkline 1\nunits cm\nuse "block.chalk" as block\npiece front = block.panel { }\n';
  const [copy] = pictured(worked(text, panel)).pieces;
  expect(copy!.things.map(({ lines }) => lines)).toEqual([[4], [4], [4]]);
  expect(copy!.notches.map(({ lines }) => lines)).toEqual([[4]]);
  expect(copy!.edges.map(({ lines }) => lines)).toEqual([[4], [4], [4], [4]]);
});

test("names that a block kept to itself are not shown", () => {
  const text = panel.replace(
    "  drill A",
    "  if 1 < 2 {\n    line inner = (2 cm, 2 cm) to (2 cm, 8 cm)\n  }\n  drill A",
  );
  const [with_] = pictured(worked(text)).pieces;
  expect(with_!.edges.map(({ name }) => name)).toEqual(["waist", "side", "hem", "fold"]);
});

test("a piece with a failed line says so", () => {
  const { complete, pieces } = pictured(worked(panel.replace("drill A", "drill nowhere")));
  expect([complete, pieces[0]!.doubtful]).toEqual([false, true]);
});
