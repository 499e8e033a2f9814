// What a slash may leave behind: kinks at hinges, straight bridges over openings.
import { describe, expect, test } from "vitest";
import { hingeTrued } from "../../kernel/checks/hinge-trued.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { line, type Path, straight, through } from "../../kernel/geometry/path.ts";
import { rotated } from "../../kernel/geometry/rotate.ts";
import { toRadians } from "../../kernel/geometry/trig.ts";
import type { Piece } from "../../kernel/working.ts";
import { at, atLine, garment, judgementsOf, madePiece } from "./made-garment.ts";

const hinge = at(150, 0);

/** A shoulder of two straight halves of 150 mm that turn by this many degrees at the hinge. */
const kinked = (degrees: number): Piece => {
  const end = rotated(at(300, 0), hinge, toRadians(degrees));
  return madePiece(
    "back",
    [
      ["shoulder", through([at(0, 0), hinge, end])],
      ["rest", through([end, at(320, 400), at(0, 400), at(0, 0)])],
    ],
    { hinges: [{ edge: "shoulder", point: hinge, drawnBy: atLine(40) }] },
  );
};

// Source of the 1 degree: trade handbook 5.3.
describe("a kink at the hinge", () => {
  test.each([
    [0, "pass"],
    [0.99, "pass"],
    [1, "pass"],
    [1.01, "warning"],
    [-1, "pass"],
    [-1.01, "warning"],
    [5.2, "warning"],
  ])("of %f deg: %s", (degrees, verdict) => {
    const judgements = judgementsOf(hingeTrued, garment([kinked(degrees)]));
    expect(judgements).toMatchObject([{ on: "back.shoulder", verdict, wanted: 0, where: { line: 40 } }]);
    expect(judgements[0]?.found).toBeCloseTo(Math.abs(degrees), 9);
  });

  test("in words", () => {
    expect(judgementsOf(hingeTrued, garment([kinked(5.2)]))[0]).toMatchObject({
      message: "The shoulder of back has a kink of 5.2 deg where its slash was hinged.",
      hint: "Add `true-seam shoulder` below the last slash.",
      related: [{ where: { line: 11 } }],
    });
  });
});

test("a corner elsewhere in the edge was drafted so", () => {
  const zigzag = madePiece(
    "back",
    [
      ["shoulder", through([at(0, 0), at(80, 30), hinge, at(220, -30)])],
      ["rest", through([at(220, -30), at(220, 400), at(0, 400), at(0, 0)])],
    ],
    { hinges: [{ edge: "shoulder", point: at(200, -60), drawnBy: atLine(40) }] },
  );
  expect(judgementsOf(hingeTrued, garment([zigzag]))).toMatchObject([{ verdict: "pass", found: 0 }]);
});

test("an edge that is no longer in the outline is in nobody's way", () => {
  const piece = kinked(10);
  const replaced = { ...piece, hinges: [{ ...piece.hinges[0]!, edge: "old-shoulder" }] };
  expect(judgementsOf(hingeTrued, garment([replaced]))).toEqual([]);
});

describe("the bridge over an opening", () => {
  const pivot = at(0, 0);
  // A hem square to the two slash edges, 1000 mm from the hinge at the origin, which opened by this angle.
  const opened = (degrees: number, bridge: (from: { x: number; y: number }) => Path): Piece => {
    const turn = toRadians(degrees);
    const [left, right] = [at(0, 1000), rotated(at(0, 1000), pivot, -turn)];
    const rightEnd = rotated(at(150, 1000), pivot, -turn);
    return madePiece("back", [
      ["hem", [...straight(at(-150, 1000), left), ...bridge(right), ...straight(right, rightEnd)]],
      ["rest", through([rightEnd, at(150, 500), at(-150, 500), at(-150, 1000)])],
    ]);
  };
  const straightBridge = (degrees: number): Piece =>
    opened(degrees, (right) => [{ ...line(at(0, 1000), right), pivot }]);

  // A chord leaves each slash edge at 90 deg less half the opening, so each corner is half the opening.
  test.each([
    [1.98, "pass"],
    [2, "pass"],
    [2.02, "warning"],
    [11.4783, "warning"],
  ])("straight over %f deg: %s", (degrees, verdict) => {
    const judgements = judgementsOf(hingeTrued, garment([straightBridge(degrees)]));
    expect(judgements).toMatchObject([{ on: "back.hem", verdict, wanted: 0, where: { line: 11 } }]);
    expect(judgements[0]?.found).toBeCloseTo(degrees / 2, 9);
  });

  test("taken as the arc about its hinge is smooth", () => {
    const trued = opened(11.4783, () =>
      arcSpans(pivot, at(0, 1000), -toRadians(11.4783)).map((span) => ({ ...span, pivot })),
    );
    expect(judgementsOf(hingeTrued, garment([trued]))).toEqual([]);
  });

  test("points at the slash when its hinge is known", () => {
    const piece = {
      ...straightBridge(6),
      hinges: [{ edge: "shoulder", point: pivot, drawnBy: atLine(40) }],
    };
    expect(judgementsOf(hingeTrued, garment([piece]))).toMatchObject([
      {
        where: { line: 40 },
        message: "The hem of back runs straight across its opening, with a corner of 3 deg.",
        related: [{ where: { line: 11 } }],
      },
    ]);
  });

  test("an edge drafted with corners has no bridge", () => {
    const piece = opened(11.4783, (right) => straight(at(0, 1000), right));
    expect(judgementsOf(hingeTrued, garment([piece]))).toEqual([]);
  });
});

test("a piece with a failed line is not judged", () => {
  expect(judgementsOf(hingeTrued, garment([{ ...kinked(10), doubtful: true }]))).toEqual([]);
});
