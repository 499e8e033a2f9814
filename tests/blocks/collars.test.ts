// Stand and flat collar against the trade handbook, 4.21: check values 91 and 92.
import { describe, expect, test } from "vitest";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { endDirection, startDirection } from "../../kernel/geometry/path.ts";
import { toDegrees, turnBetween } from "../../kernel/geometry/trig.ts";
import type { Scalar } from "../../kernel/value.ts";
import { lengthOf, placeOf, workedRecipe, workedText } from "../worked-recipe.ts";

const scalarOf = (outcome: ReturnType<typeof workedRecipe>, name: string): number =>
  (outcome.values.get(name)!.value as Scalar).value;

describe("the stand collar for half a neck of 201.47, 8 shorter at its top, 35 high (check value 92)", () => {
  const stand = workedRecipe("blocks/stand-collar.chalk");
  test("comes out clean", () => expect(stand.findings).toEqual([]));
  test("has a radius of 881.4 and an angle of 13.096 deg", () => {
    expect(Math.abs(scalarOf(stand, "radius") - 881.4)).toBeLessThan(0.1);
    expect(toDegrees(scalarOf(stand, "bend"))).toBeCloseTo(13.096, 2);
  });
  test("rises 22.93 at the front", () => {
    expect(Math.abs(-placeOf(stand, "collar", "front").y - 22.93)).toBeLessThan(0.02);
  });
  test("is 201.47 at the neck and 193.47 at its top", () => {
    expect(lengthOf(stand, "collar", "neck")).toBeCloseTo(201.47, 3);
    expect(lengthOf(stand, "collar", "top")).toBeCloseTo(193.47, 3);
  });
  test("with a lap it goes straight on", () => {
    const lapped = workedText(`chalkline 1
use "blocks/stand-collar.chalk" as stand { lap = 2 cm }
piece collar = stand.collar { }
`);
    expect(lapped.findings).toEqual([]);
    expect(lengthOf(lapped, "collar", "neck")).toBeCloseTo(221.47, 3);
    expect(lengthOf(lapped, "collar", "front-end")).toBeCloseTo(35, 6);
  });
});

describe("the flat collar for shoulders of 120 that overlap by 25, 70 wide (check value 91)", () => {
  const drafted = (overlap: string) =>
    workedText(
      `chalkline 1
use "blocks/straight-coat.chalk" as coat { reach = 0 }
piece collar {
  flat-collar part(coat.back.neck, coat.back.nape, coat.back.neck-point), part(coat.front.neck, coat.front.front-neck, coat.front.neck-point) at coat.back.shoulder, coat.front.shoulder width 7 cm overlap ${overlap}
}
`,
      { measures: new Map([["shoulder-length", { kind: "length", value: 120 }]]) },
    );
  const turned = (outcome: ReturnType<typeof workedText>): number => {
    const { path } = outcome.garment.pieces.get("collar")!.edges.get("neck")!;
    return Math.abs(turnBetween(startDirection(path), endDirection(path)));
  };
  const [flat, overlapped] = [drafted("0"), drafted("2.5 cm")];

  test("comes out clean", () => expect(overlapped.findings).toEqual([]));
  test("turns the neck by 11.958 deg less", () => {
    expect(toDegrees(turned(flat) - turned(overlapped))).toBeCloseTo(11.958, 3);
  });
  test("has an outer edge that is 14.61 shorter, besides what its neck lost", () => {
    const neck = lengthOf(flat, "collar", "neck") - lengthOf(overlapped, "collar", "neck");
    const outer = lengthOf(flat, "collar", "outer") - lengthOf(overlapped, "collar", "outer");
    expect(Math.abs(outer - neck - 14.61)).toBeLessThan(0.01);
    // Handbook 4.21: the neck edge is 0 to 6 shorter than the neckline.
    expect(neck).toBeGreaterThanOrEqual(0);
    expect(neck).toBeLessThan(6);
  });
  // Handbook, worked example 3.2: necks of 81.84 and 119.63.
  test("without overlap is as long as the necks of the coat", () => {
    expect(lengthOf(flat, "collar", "neck")).toBeCloseTo(81.84 + 119.63, 1);
    const { edges } = flat.garment.pieces.get("collar")!;
    expect(pathLength(edges.get("center")!.path)).toBeCloseTo(70, 6);
  });
  test("the block of its own is clean", () => expect(workedRecipe("blocks/flat-collar.chalk").findings).toEqual([]));
});
