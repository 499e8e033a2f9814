// How far a garment opens out, and how much of that its cloth carries.
import { describe, expect, test } from "vitest";
import { openingForWeight } from "../../kernel/checks/opening-for-weight.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { straight } from "../../kernel/geometry/path.ts";
import { toRadians } from "../../kernel/geometry/trig.ts";
import type { Garment, Piece } from "../../kernel/working.ts";
import { at, cut, garment, judgementsOf, madePiece, marked, rectangle, run, seam, shell } from "./made-garment.ts";

/** A sector whose hem turns by so many degrees. */
const sector = (name: string, degrees: number): Piece => {
  const half = toRadians(degrees) / 2;
  const on = (r: number, angle: number) => at(r * Math.sin(angle), r * Math.cos(angle));
  return marked(
    madePiece(name, [
      ["waist", arcSpans(at(0, 0), on(200, -half), -2 * half)],
      ["side", straight(on(200, half), on(700, half))],
      ["hem", arcSpans(at(0, 0), on(700, -half), -2 * half)],
      ["center", straight(on(200, -half), on(700, -half))],
    ]),
    "hem",
    "hem",
  );
};

const inCloth = (pieces: readonly Piece[], weight: number | undefined, more: Partial<Garment> = {}): Garment =>
  garment(pieces, {
    cuts: pieces.map(({ name }) => cut(name)),
    fabrics: new Map([["shell", weight === undefined ? shell : { ...shell, weight }]]),
    ...more,
  });

// Source: handbook of the trade 7.1 (classes of weight) and 7.4 (circles that each carries well), both common practice.
describe.each([
  [50, 2],
  [100, 1.5],
  [180, 1],
  [260, 0.5],
  [400, 0.25],
])("cloth of %f g/m2", (weight, circles) => {
  const halves = (share: number): Piece => sector("skirt", share * 180);
  test("carries its circles", () => {
    expect(judgementsOf(openingForWeight, inCloth([halves(circles)], weight))).toMatchObject([
      { on: "skirt", verdict: "pass", found: circles },
    ]);
  });
  test("and no more", () => {
    const more = inCloth([halves(circles * 0.9), sector("back", circles * 0.3 * 180)], weight);
    const sewn = {
      ...more,
      seams: [seam([run(more.pieces.get("skirt")!, "side")], [run(more.pieces.get("back")!, "side")])],
    };
    expect(judgementsOf(openingForWeight, sewn)).toMatchObject([
      { on: "skirt", verdict: "warning", found: Number((circles * 1.2).toFixed(3)) },
    ]);
  });
});

test("two sleeves hang from a body each for itself, the gores of a skirt all together", () => {
  const body = marked(rectangle("body", 400, 700), "hem", "hem");
  const sleeve = sector("sleeve", 90);
  const closing = seam([run(sleeve, "side")], [run(sleeve, "center")]);
  const seams = [closing, seam([run(sleeve, "waist")], [run(body, "top")])];
  const [, ring] = judgementsOf(openingForWeight, inCloth([body, sleeve], 180, { seams }));
  expect(ring).toMatchObject({ on: "sleeve", found: 0.25 });
  expect(judgementsOf(openingForWeight, inCloth([sleeve], 180, { seams: [closing] }))).toMatchObject([{ found: 0.5 }]);
});

test("the finding says how far it opens, and shows the cloth", () => {
  const [finding] = judgementsOf(openingForWeight, inCloth([sector("skirt", 90)], 400));
  expect(finding).toMatchObject({
    verdict: "warning",
    wanted: "at most 0.25 circles",
    message:
      "Together the hems of skirt open out by 0.5 of a circle; shell is heavy cloth, 400 g/m2, and carries 0.25 of a circle well.",
    hint: "Open it less far, or choose a lighter cloth.",
    related: [{ message: "shell is described here." }],
  });
});

test("cloth whose weight is not known, and pieces with no hem or not cut, are not judged", () => {
  expect(judgementsOf(openingForWeight, inCloth([sector("skirt", 90)], undefined))).toEqual([]);
  expect(judgementsOf(openingForWeight, inCloth([rectangle("pocket", 200, 200)], 180))).toEqual([]);
  expect(judgementsOf(openingForWeight, { ...inCloth([sector("skirt", 90)], 180), cuts: [] })).toEqual([]);
});
