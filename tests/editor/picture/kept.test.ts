// What stays on the table while a line is broken.
import { expect, test } from "vitest";
import { keptPicture } from "../../../editor/picture/kept.ts";
import { pictured } from "../../../editor/picture/pictured.ts";
import { panel, worked } from "./worked-picture.ts";

const second = panel.replace('chalkline 1\nrecipe "Panel"\nunits cm\n', "").replace("piece panel", "piece other");
const good = pictured(worked(panel + second));
const broken = pictured(worked(panel.replace("drill A", "drill nowhere") + second));

test("a good picture is shown as it is, and so is a broken one that nothing came before", () => {
  expect(keptPicture(good, broken)).toBe(good);
  expect(keptPicture(broken, undefined)).toBe(broken);
});

test("of a piece with a failed line the last good drawing stays, in its place among the others", () => {
  const shown = keptPicture(broken, good);
  expect(shown.complete).toBe(false);
  expect(shown.pieces.map(({ name, kept }) => [name, kept])).toEqual([
    ["panel", true],
    ["other", undefined],
  ]);
  expect(shown.pieces[0]!.things).toEqual(good.pieces[0]!.things);
  expect(shown.pieces[1]).toBe(broken.pieces[1]);
});

test("it stays through further broken texts, and gives way to the next good one", () => {
  const later = pictured(worked(panel.replace("drill A", "drill nowhere else") + second));
  const shown = keptPicture(later, keptPicture(broken, good));
  expect(shown.pieces[0]!.shape).toBe(good.pieces[0]!.shape);
  expect(keptPicture(good, shown)).toBe(good);
});

test("a piece that a broken line took away altogether stays as well", () => {
  const gone = pictured(worked(panel.replace("piece panel {", "piece panel = nowhere {") + second));
  expect(gone.pieces.map(({ name }) => name)).toEqual(["other"]);
  expect(keptPicture(gone, good).pieces.map(({ name, kept }) => [name, kept])).toEqual([
    ["other", undefined],
    ["panel", true],
  ]);
});

test("a piece that never was good is shown as far as it goes", () => {
  const first = keptPicture(broken, pictured(worked("chalkline 1\n")));
  expect(first.pieces.map(({ name, kept }) => [name, kept])).toEqual([
    ["panel", undefined],
    ["other", undefined],
  ]);
});
