// The lines of the recipe behind each thing on the table, read out of the record.
import { expect, test } from "vitest";
import { type LinesOf, lineIn, linesOf } from "../../../editor/picture/lines-of.ts";
import { mapped } from "../../../kernel/geometry/path.ts";
import type { Point } from "../../../kernel/geometry/point.ts";
import type { StepRecord } from "../../../kernel/record.ts";
import type { Piece } from "../../../kernel/working.ts";
import { lineOf, panel, worked } from "./worked-picture.ts";

test("the line that drew a thing stands first, then those that changed it", () => {
  const text = panel.replace("  drill A", "  extend-hem hem by 2 cm\n  drill A");
  const lines = linesOf(worked(text));
  const longer = lineOf(text, "extend-hem");
  expect(lines.ofEdge("panel", "hem").lines).toEqual([lineOf(text, "line hem"), longer]);
  expect(lines.ofEdge("panel", "side").lines).toEqual([lineOf(text, "line side"), longer]);
  // A dart gives the edge its cap.
  expect(lines.ofEdge("panel", "waist").lines).toEqual([lineOf(text, "line waist"), lineOf(text, "dart tuck")]);
  expect(lines.ofPlace("panel", "A").lines).toEqual([lineOf(text, "point A")]);
  expect(lines.ofPiece("panel").lines[0]).toBe(lineOf(text, "piece panel"));
});

const copied =
  'chalkline 1\nunits cm\nuse "block.chalk" as block\npiece front = block.panel {\n  extend-hem hem by 2 cm\n}\n';

test("an edge of a copy that no step touched belongs to the line that copied the piece", () => {
  const lines = linesOf(worked(copied, panel));
  expect(lines.ofEdge("front", "waist").lines).toEqual([4]);
  expect(lines.ofPlace("front", "A").lines).toEqual([4]);
  expect(lines.ofEdge("front", "hem").lines).toEqual([4, 5]);
});

/** The record with one more step at its end, which draws all edges and places anew, so many mm further right. */
const redrawn = (by: number): LinesOf => {
  const outcome = worked(panel);
  const before = outcome.garment.pieces.get("panel")!;
  const right = ({ x, y }: Point): Point => ({ x: x + by, y });
  const after: Piece = {
    ...before,
    edges: new Map([...before.edges].map(([name, edge]) => [name, { ...edge, path: mapped(edge.path, right) }])),
    places: new Map([...before.places].map(([name, place]) => [name, { ...place, point: right(place.point) }])),
  };
  const where = { file: "test.chalk", from: 0, to: 0, line: 99 };
  const step: StepRecord = { where, piece: "panel", step: "redraw", changed: [{ before, after }], words: "" };
  return linesOf({ ...outcome, records: [...outcome.records, step] });
};

test("what a step drew anew in its old place, to a millionth of a millimetre, has not changed", () => {
  const [hem, place] = [lineOf(panel, "line hem"), lineOf(panel, "point A")];
  expect(redrawn(1e-7).ofEdge("panel", "hem").lines).toEqual([hem]);
  expect(redrawn(1e-7).ofPlace("panel", "A").lines).toEqual([place]);
  expect(redrawn(1e-5).ofEdge("panel", "hem").lines).toEqual([hem, 99]);
  expect(redrawn(1e-5).ofPlace("panel", "A").lines).toEqual([place, 99]);
});

test("parts of a piece that was cut belong to the line that cut it", () => {
  const text = `${panel.replace("  drill A", "  line low = (0, 15 cm) to (20 cm, 15 cm)")}split upper, lower = panel along panel.low\n`;
  const lines = linesOf(worked(text));
  const cut = lineOf(text, "split upper");
  expect(lines.ofPiece("upper").lines).toEqual([cut]);
  expect(lines.ofEdge("lower", "hem").lines).toEqual([cut]);
  expect(lines.ofEdge("panel", "hem").lines).toEqual([lineOf(text, "line hem")]);
});

test("what a step of the recipe's own does belongs to the line that calls it", () => {
  const own = "units cm\nstep hole (place spot) {\n  drill spot\n}\n";
  const text = panel.replace("units cm\n", own).replace("  drill A", "  hole spot A");
  const outcome = worked(text);
  const [drill] = outcome.garment.pieces.get("panel")!.drills;
  const called = lineOf(text, "  hole spot A");
  expect(lineIn("test.chalk", drill!.drawnBy)).toBe(called);
  expect(linesOf(outcome).ofMark("panel", drill!.drawnBy)).toEqual({
    lines: [called],
    inside: [{ under: called, line: lineOf(text, "  drill spot") }],
  });
});

test("nothing stands behind what is not there", () => {
  const lines = linesOf(worked(panel));
  expect(lines.ofEdge("panel", "nowhere").lines).toEqual([]);
  expect(lines.ofPiece("nowhere").lines).toEqual([]);
});
