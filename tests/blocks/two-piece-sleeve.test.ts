// The two-piece sleeve against the set-in sleeve that it is made of: cap and wrist are shared out, and the elbow is eased.
import { describe, expect, test } from "vitest";
import { corners } from "../../kernel/geometry/path.ts";
import { toRadians } from "../../kernel/geometry/trig.ts";
import { pathOf } from "../alterations/made-piece.ts";
import { lengthOf, placeOf, workedRecipe } from "../worked-recipe.ts";

const sleeve = workedRecipe("blocks/two-piece-sleeve.chalk");
const piece = (name: string) => sleeve.garment.pieces.get(name)!;

test("comes out clean", () => expect(sleeve.findings).toEqual([]));

// Its armholes are 228 and 237 with 25 of ease.
test("the cap still is the armhole and its ease, 490", () => {
  expect(lengthOf(sleeve, "top-sleeve", "cap") + lengthOf(sleeve, "under-sleeve", "cap")).toBeCloseTo(490, 3);
});

// Biceps 330, of which the under sleeve takes 42 %, 138.6; to a wrist of 240 the sleeve comes in by 90, half of it on either part.
test("the wrist of 240 is shared out as the underarm is, less half of what the sleeve comes in", () => {
  expect(lengthOf(sleeve, "under-sleeve", "wrist")).toBeCloseTo(138.6 - 45, 6);
  expect(lengthOf(sleeve, "top-sleeve", "wrist")).toBeCloseTo(330 - 138.6 - 45, 6);
});

test("before it is eased, the edges of each seam are equally long", () => {
  for (const edge of ["hindarm", "forearm"]) {
    expect(lengthOf(sleeve, "upper", edge)).toBeCloseTo(lengthOf(sleeve, "under-sleeve", edge), 6);
  }
});

// Handbook 2.3: 6 to 15 of ease at the elbow of the back sleeve seam; 3.4, rule 5: 10 for a fitted sleeve. Trued, within 0.1.
test("the upper sleeve is eased on at the elbow by 10, and the forearm by nothing", () => {
  const more = (edge: string) => lengthOf(sleeve, "top-sleeve", edge) - lengthOf(sleeve, "under-sleeve", edge);
  expect(Math.abs(more("hindarm") - 10)).toBeLessThan(0.1);
  expect(Math.abs(more("forearm"))).toBeLessThan(0.1);
});

test("opened and trued, both seams of the upper sleeve are smooth", () => {
  for (const edge of ["hindarm", "forearm"])
    expect(corners(pathOf(piece("top-sleeve"), edge), toRadians(0.1))).toEqual([]);
});

// Handbook 3.4, rule 5, and the lengths of R88: the elbow lies at 345 of an arm of 590, and 10 lower on the sleeve.
test("the elbow lies 355 below the top of the cap", () => {
  const { y } = placeOf(sleeve, "upper", "hind-elbow");
  expect(y - placeOf(sleeve, "upper", "crown").y).toBeCloseTo(355, 6);
  expect(placeOf(sleeve, "under-sleeve", "fore-elbow").y).toBeCloseTo(y, 6);
});

test("the pitch notches stay where they are on the cap, the crown's on the upper sleeve", () => {
  // 228 / 3 up the cap from the back underarm is double, 237 / 3 from the front one single.
  const notches = (name: string) => piece(name).notches.filter(({ edge }) => edge === "cap");
  const at = (name: string, double: boolean) => notches(name).filter((notch) => notch.double === double);
  expect(notches("upper").length + notches("under-sleeve").length).toBe(3);
  expect(at("upper", false).map(({ point }) => point)).toContainEqual(placeOf(sleeve, "upper", "crown"));
  expect(at("under-sleeve", true)).toHaveLength(1);
});

test("the under sleeve hangs straight down its old underarm seam", () => {
  const grain = piece("under-sleeve").grain!;
  expect(grain.kind).toBe("line");
  if (grain.kind !== "line") return;
  const underarm = placeOf(sleeve, "under-sleeve", "back-underarm");
  expect(grain.from.x).toBeCloseTo(underarm.x, 6);
  expect(grain.to.x).toBeCloseTo(underarm.x, 6);
});

test("the cap of the under sleeve runs on across the old underarm seam without a corner", () => {
  const spans = pathOf(piece("under-sleeve"), "cap");
  const underarm = placeOf(sleeve, "under-sleeve", "back-underarm");
  const joint = spans.findIndex(({ end }) => Math.hypot(end.x - underarm.x, end.y - underarm.y) < 1e-6);
  const [before, after] = [spans[joint]!, spans[joint + 1]!];
  expect(before.kind === "cubic" && before.endHandle.y).toBeCloseTo(underarm.y, 6);
  expect(after.kind === "cubic" && after.startHandle.y).toBeCloseTo(underarm.y, 6);
});

describe.each(["B80", "B92", "B104", "misses-00", "misses-20"])("size %s", (size) => {
  test("is clean", () => expect(workedRecipe("blocks/two-piece-sleeve.chalk", { size }).findings).toEqual([]));
});
