// The A-line skirt: the outer darts of the straight skirt, closed, open its hem (trade handbook 4.8 and the darts of 3.1).
import { expect, test } from "vitest";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import { lengthOf, placeOf, workedRecipe } from "../worked-recipe.ts";

const skirt = workedRecipe("a-line-skirt.chalk");

// Worked example of 3.1: the quarters are 255 and 245, the outer darts' tips at y = 79.5 and 124.1, their angles 10.49 and
// 10.69 deg. About its tip each dart opens the hem, 580 below the waist, by an arc.
test.each([
  ["front", 255, 79.5, 10.49],
  ["back", 245, 124.1, 10.69],
])("the hem of the %s grows by the arc of its closed dart", (piece, quarter, tip, degrees) => {
  const arc = (580 - tip) * ((degrees * Math.PI) / 180);
  expect(Math.abs(lengthOf(skirt, piece, "hem") - quarter - arc)).toBeLessThanOrEqual(0.3);
});

test("its band is as long as half the waist of 740, less up to 2 that trueing takes, and 30 for the closure", () => {
  const [front, back] = ["front", "back"].map((piece) => sewnLengthOf(skirt.garment.pieces.get(piece)!, "waist"));
  expect(placeOf(skirt, "band", "opening").x).toBeCloseTo(front! + back!, 6);
  expect(front! + back!).toBeGreaterThan(368);
  expect(front! + back!).toBeLessThanOrEqual(372);
  expect(lengthOf(skirt, "band", "seam-edge") - front! - back!).toBeCloseTo(30, 6);
});

test("it can be put on: the back has a center seam, and two of it are cut", () => {
  expect(skirt.garment.cuts.find(({ piece }) => piece === "back")).toMatchObject({ count: 2 });
  expect(skirt.garment.pieces.get("back")!.edges.get("center")!.role).toBe("seam");
});
