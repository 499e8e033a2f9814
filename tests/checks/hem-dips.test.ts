// Hems that dip where the language has no short way to it, and hems that other checks speak of.
import { describe, expect, test } from "vitest";
import { hemDips } from "../../kernel/checks/hem-dips.ts";
import { cubic, endOf, type Path, startOf, straight } from "../../kernel/geometry/path.ts";
import type { Judgement, Piece } from "../../kernel/working.ts";
import { at, garment, judgementsOf, madePiece, marked } from "./made-garment.ts";

const block = (hem: Path, source?: Piece): Piece =>
  marked(
    madePiece(
      "panel",
      [
        ["waist", straight(at(0, 0), at(240, 0))],
        ["side", straight(at(240, 0), startOf(hem))],
        ["hem", hem],
        ["center", straight(endOf(hem), at(0, 0))],
      ],
      source && { source },
    ),
    "hem",
    "hem",
  );

const level = block(straight(at(240, 600), at(0, 600)));

const judged = (hem: Path): Judgement[] => judgementsOf(hemDips, garment([block(hem, level)]));

/** Level at both ends, and so much lower in the middle. */
const bowed = (by: number): Path => [
  cubic(at(240, 600), at(200, 600), at(160, 600 + by), at(120, 600 + by)),
  cubic(at(120, 600 + by), at(80, 600 + by), at(40, 600), at(0, 600)),
];

// A slant of 10 on 240 is 2.4 deg, and hem-square lets it pass.
test.each([
  [9.9, "pass"],
  [10.1, "warning"],
] as const)("a hem that slants by %d: %s", (by, verdict) => {
  const [judgement, ...others] = judged(straight(at(240, 600 + by), at(0, 600)));
  expect(others).toEqual([]);
  expect(judgement!.verdict).toBe(verdict);
  expect(Number(judgement!.found)).toBeCloseTo(by, 6);
  if (verdict === "warning") expect(judgement!.message).toContain("at the side it hangs 10.1 mm lower");
});

describe("a hem that is lower in its middle", () => {
  test("by 30 is told by how far along it that is", () => {
    const [{ verdict, found, message, hint }] = judged(bowed(30)) as [Judgement];
    expect(verdict).toBe("warning");
    // Its places stand up to 40 mm apart, so the nearest to the lowest is within 20 of it.
    expect(Math.abs(Number(found) - 30)).toBeLessThan(2);
    const [, along] = message.match(/^The hem of panel will dip: ([\d.]+) mm from its start it hangs /)!;
    expect(Math.abs(Number(along) - 125)).toBeLessThan(21);
    expect(hint).toContain("`replace`");
  });
  test("by more than 80 is meant to be", () => expect(judged(bowed(90))).toEqual([]));
});

// One cause, one finding: hinge-trued and hem-square speak of these.
test.each([
  ["a kink", [...straight(at(240, 600), at(120, 630)), ...straight(at(120, 630), at(0, 600))]],
  ["an end that slants", straight(at(240, 640), at(0, 600))],
])("a hem with %s is left to other checks", (_, hem) => {
  expect(judged(hem)).toEqual([]);
});

test("a hem that stayed as it was is not asked about", () => {
  expect(judged(level.edges.get("hem")!.path)).toEqual([]);
});

test("a hem that is level now hangs well, however the older one did", () => {
  const older = block(bowed(40));
  expect(judgementsOf(hemDips, garment([block(straight(at(240, 600), at(0, 600)), older)]))[0]!.verdict).toBe("pass");
});
