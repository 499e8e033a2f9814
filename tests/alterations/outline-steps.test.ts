// extend-hem, strip, move, replace and allow: steps that change the outline without a slash.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { cubic, endOf, startOf, straight, through } from "../../kernel/geometry/path.ts";
import { atan, toDegrees } from "../../kernel/geometry/trig.ts";
import { boundary, gaps } from "../../kernel/outline.ts";
import { allow } from "../../kernel/steps/allow.ts";
import { extendHem } from "../../kernel/steps/extend-hem.ts";
import { move } from "../../kernel/steps/move.ts";
import { replace } from "../../kernel/steps/replace.ts";
import { spreadFrom } from "../../kernel/steps/spread-from.ts";
import { strip } from "../../kernel/steps/strip.ts";
import type { Notch, Piece } from "../../kernel/working.ts";
import {
  apart,
  areaOf,
  at,
  lengthOf,
  madePiece,
  nowhere,
  pathOf,
  place,
  placeOf,
  problemOf,
  rectangle,
  worked,
} from "./made-piece.ts";

const notch = (edge: string, x: number, y: number): Notch => ({
  edge,
  point: at(x, y),
  double: false,
  drawnBy: nowhere,
});

describe("extend-hem", () => {
  const lengthened = (piece: Piece, length: number): Piece => worked(extendHem, { edge: "hem", length }, piece).now;

  test("carries straight sides on along their own direction", () => {
    // Source: handbook of the trade 4.11: each side of a flared piece widens the hem by length times tan of its slope.
    const piece = madePiece(
      [
        { name: "top", path: straight(at(0, 0), at(200, 0)) },
        { name: "side", path: straight(at(200, 0), at(260, 600)) },
        { name: "hem", path: straight(at(0, 600), at(260, 600)), turned: true },
        { name: "center", path: straight(at(0, 600), at(0, 0)) },
      ],
      { corner: at(260, 600), middle: at(100, 600), pocket: at(60, 300) },
      { notches: [notch("hem", 100, 600), notch("side", 230, 300)] },
    );
    const { now, words } = worked(extendHem, { edge: "hem", length: 100 }, piece, "cm");
    expect(words).toBe("lengthened 10 cm at the hem");
    expect(placeOf(now, "corner").x).toBeCloseTo(270, 9);
    expect(placeOf(now, "corner").y).toBeCloseTo(700, 9);
    expect(lengthOf(now, "hem")).toBeCloseTo(260 + 100 * (60 / 600), 9);
    expect(pathOf(now, "side")).toHaveLength(1);
    // What lies on the hem goes with it, the rest stays.
    expect(placeOf(now, "middle")).toEqual(at(100, 700));
    expect(now.notches.map(({ point }) => point)).toEqual([at(100, 700), at(230, 300)]);
    expect(placeOf(now, "pocket")).toEqual(at(60, 300));
    expect(startOf(pathOf(now, "hem"))).toEqual(endOf(pathOf(now, "hem")).x < 100 ? at(270, 700) : at(0, 700));
  });
  test("takes both corners to where the flared sides meet it, whichever way the hem was drafted", () => {
    for (const turned of [false, true]) {
      const hem = turned ? straight(at(-60, 600), at(260, 600)) : straight(at(260, 600), at(-60, 600));
      const piece = madePiece(
        [
          { name: "hem", path: hem, ...(turned && { turned }) },
          { name: "center", path: straight(at(-60, 600), at(0, 0)) },
          { name: "top", path: straight(at(0, 0), at(200, 0)) },
          { name: "side", path: straight(at(200, 0), at(260, 600)) },
        ],
        { left: at(-60, 600), right: at(260, 600) },
      );
      const now = lengthened(piece, 100);
      expect(apart(placeOf(now, "left"), at(-70, 700))).toBeLessThan(1e-9);
      expect(apart(placeOf(now, "right"), at(270, 700))).toBeLessThan(1e-9);
    }
  });
  test("changes a curved hem by length times the angle it turns through", () => {
    // Source: handbook of the trade 4.11 and 3.7: a quarter of a circle, radius 761.4, lengthened by 100: pi / 2 times 100 more.
    const piece = madePiece([
      { name: "waist", path: arcSpans(at(0, 0), at(111.4, 0), Math.PI / 2) },
      { name: "center", path: straight(at(0, 111.4), at(0, 761.4)) },
      { name: "hem", path: arcSpans(at(0, 0), at(761.4, 0), Math.PI / 2), turned: true },
      { name: "side", path: straight(at(761.4, 0), at(111.4, 0)) },
    ]);
    expect(lengthOf(lengthened(piece, 100), "hem") - lengthOf(piece, "hem")).toBeCloseTo(100 * (Math.PI / 2), 3);
    expect(lengthOf(lengthened(piece, 100), "side")).toBeCloseTo(750, 6);
  });
  test("carries a bridge on about its hinge", () => {
    const opened = worked(
      spreadFrom,
      { hinge: place(150, 0, { on: "top" }), target: { edge: "hem" }, opening: { length: 200 } },
      rectangle(300, 1000),
    ).now;
    const bridge = pathOf(lengthened(opened, 60), "hem").find(({ pivot }) => pivot)!;
    expect(bridge.kind).toBe("line");
    expect(apart(bridge.start, at(150, 0))).toBeCloseTo(1060, 9);
    expect(apart(bridge.end, at(150, 0))).toBeCloseTo(1060, 9);
    expect(apart(bridge.start, bridge.end)).toBeCloseTo(200 * 1.06, 9);
  });
  test("shortens where the length is negative, also where the sides are curved", () => {
    const piece = madePiece([
      { name: "top", path: straight(at(0, 0), at(200, 0)) },
      { name: "side", path: [cubic(at(200, 0), at(260, 200), at(260, 400), at(240, 600))] },
      { name: "hem", path: straight(at(240, 600), at(0, 600)) },
      { name: "center", path: straight(at(0, 600), at(0, 0)) },
    ]);
    const { now, words } = worked(extendHem, { edge: "hem", length: -50 }, piece);
    expect(words).toBe("shortened 50 mm at the hem");
    expect(startOf(pathOf(now, "hem"))).toEqual(endOf(pathOf(now, "side")));
    expect(nearest(pathOf(piece, "side"), startOf(pathOf(now, "hem"))).distance).toBeLessThan(1e-6);
    expect(startOf(pathOf(now, "hem")).y).toBeCloseTo(550, 9);
    expect(lengthOf(now, "center")).toBeCloseTo(550, 9);
  });
  test("out and back in by as much restores the piece", () => {
    // Further out the hem, which bends on a radius of about 60, would fold back on itself.
    const length = fc.double({ min: 1, max: 30, noNaN: true });
    const slant = fc.double({ min: -60, max: 60, noNaN: true });
    fc.assert(
      fc.property(length, slant, (far, lower) => {
        const piece = madePiece([
          { name: "top", path: straight(at(0, 0), at(200, 0)) },
          { name: "side", path: straight(at(200, 0), at(230, 600 + lower)) },
          // Straight beside the slanted side: what is trimmed off a curve there would come back as a straight line.
          {
            name: "hem",
            path: [
              ...straight(at(230, 600 + lower), at(130, 600 + lower)),
              cubic(at(130, 600 + lower), at(80, 600 + lower), at(60, 600), at(0, 600)),
            ],
          },
          { name: "center", path: straight(at(0, 600), at(0, 0)) },
        ]);
        const out = lengthened(piece, far);
        for (const { end } of pathOf(out, "hem")) {
          // A moved curve keeps within 1e-4 mm of the true one.
          expect(nearest(pathOf(piece, "hem"), end).distance).toBeGreaterThan(far - 2e-4);
        }
        const back = lengthened(out, -far);
        for (const name of piece.edges.keys())
          expect(Math.abs(lengthOf(back, name) - lengthOf(piece, name))).toBeLessThan(0.001);
        for (const { end } of pathOf(back, "hem"))
          expect(nearest(pathOf(piece, "hem"), end).distance).toBeLessThan(0.001);
      }),
      { numRuns: 60, seed: 1986 },
    );
  });
  test("of 0 does nothing, and of an edge that is none of the outline is refused", () => {
    const piece = rectangle(300, 1000);
    expect(worked(extendHem, { edge: "hem", length: 0 }, piece).now).toBe(piece);
    expect(problemOf(extendHem, { edge: "hem", length: -1000 }, piece).code).toBe("edge-used-up");
    expect(problemOf(extendHem, { edge: "hem", length: 10 }, { ...piece, outline: [] }).code).toBe("outline-missing");
  });
});

describe("strip", () => {
  test("5/8 in off a center back 285 wide leaves 269.125 to the fold", () => {
    // Source: handbook of the trade 4.14, check values 81 and 82.
    const { now } = worked(strip, { edges: ["center"], width: 0.625 * 25.4 }, rectangle(285, 1000));
    expect(lengthOf(now, "hem")).toBeCloseTo(269.125, 9);
    expect(lengthOf(now, "top")).toBeCloseTo(269.125, 9);
    expect(apart(placeOf(now, "A"), at(15.875, 0))).toBeLessThan(1e-9);
    expect(now.kept?.edges).toBe(now.edges);
  });
  test("places and notches on the edge move in, and places on what is trimmed go to the new corner", () => {
    const piece = madePiece(
      [
        {
          name: "neck",
          path: [...straight(at(-15, 0), at(0, 0)), cubic(at(0, 0), at(30, 0), at(60, -10), at(74, -25))],
        },
        { name: "side", path: through([at(74, -25), at(250, 200), at(250, 900)]) },
        { name: "hem", path: straight(at(250, 900), at(-15, 900)) },
        { name: "center", path: straight(at(-15, 0), at(-15, 900)), turned: true },
      ],
      { "center-top": at(-15, 0), nape: at(0, 0), mid: at(-5, 0), level: at(-15, 240), inside: at(-5, 100) },
      { notches: [notch("center", -15, 300)] },
    );
    const { now, words } = worked(strip, { edges: ["center"], width: 15 }, piece, "cm");
    expect(words).toBe("took 1.5 cm of allowance off center");
    for (const name of ["center-top", "nape", "mid"]) expect(apart(placeOf(now, name), at(0, 0))).toBeLessThan(1e-9);
    expect(placeOf(now, "level")).toEqual(at(0, 240));
    expect(placeOf(now, "inside")).toEqual(at(-5, 100));
    expect(now.notches[0]!.point).toEqual(at(0, 300));
    expect(lengthOf(now, "neck")).toBeCloseTo(lengthOf(piece, "neck") - 15, 9);
    expect(pathOf(now, "neck")).toHaveLength(1);
  });
  test("takes several edges at their shared corner", () => {
    const { now } = worked(strip, { edges: ["center", "hem"], width: 20 }, rectangle(300, 1000));
    expect(placeOf(now, "D")).toEqual(at(20, 980));
    expect(areaOf(now)).toBeCloseTo(280 * 980, 6);
  });
  test("of more than the piece is wide, or of less than nothing, is refused", () => {
    expect(problemOf(strip, { edges: ["center"], width: 300 }, rectangle(300, 1000))).toMatchObject({
      code: "edge-used-up",
    });
    expect(problemOf(strip, { edges: ["center"], width: -10 }, rectangle(300, 1000)).code).toBe("strip-negative");
  });
});

describe("move", () => {
  const vest = madePiece(
    [
      { name: "neck", path: straight(at(0, 0), at(140, 0)) },
      { name: "armhole", path: [cubic(at(140, 0), at(140, 120), at(160, 220), at(220, 220))] },
      { name: "side", path: straight(at(220, 500), at(220, 220)), turned: true },
      { name: "hem", path: straight(at(220, 500), at(0, 500)) },
      { name: "center", path: straight(at(0, 500), at(0, 0)) },
    ],
    { tip: at(140, 0), "same-tip": at(140, 0), underarm: at(220, 220), pocket: at(50, 50), half: at(70, 0) },
    { notches: [notch("side", 220, 240), notch("neck", 60, 0)] },
  );
  test("straight neighbours follow, a curved one leaves the outline open", () => {
    const { now, words } = worked(move, { name: "tip", to: at(100, -20) }, vest);
    expect(placeOf(now, "tip")).toEqual(at(100, -20));
    expect(placeOf(now, "same-tip")).toEqual(at(100, -20));
    expect(pathOf(now, "neck")).toEqual(straight(at(0, 0), at(100, -20)));
    expect(pathOf(now, "armhole")).toEqual(pathOf(vest, "armhole"));
    expect(gaps(now).map(({ before, after }) => [before.edge.name, after.edge.name])).toEqual([["neck", "armhole"]]);
    expect(words).toContain("armhole does not follow");
    // What lay on the neck lies on it still.
    expect(nearest(pathOf(now, "neck"), placeOf(now, "half")).distance).toBeLessThan(1e-9);
    expect(nearest(pathOf(now, "neck"), now.notches[1]!.point).distance).toBeLessThan(1e-9);
    expect(placeOf(now, "pocket")).toEqual(at(50, 50));
  });
  test("a corner of two straight edges stays closed", () => {
    const piece = rectangle(300, 1000);
    const now = worked(move, { name: "C", to: at(400, 1000) }, piece).now;
    expect(boundary(now)).toBeDefined();
    expect(lengthOf(now, "hem")).toBeCloseTo(400, 9);
    expect(lengthOf(now, "side")).toBeCloseTo(Math.hypot(100, 1000), 9);
  });
  test.each([
    // Source: handbook of the trade 4.6, check values 33 to 35: width added at the hem of a side seam, then trimmed to its length.
    [1000, 100, 5.711, 4.988, 99.5, 995.04],
    [600, 50, 4.764, 2.08, 49.83, 597.93],
  ])(
    "a side of %d with %d added at the hem slopes and is trimmed as the handbook says",
    (length, added, slope, trim, x, y) => {
      const piece = rectangle(200, length);
      const wide = worked(move, { name: "C", to: at(200 + added, length) }, piece).now;
      expect(toDegrees(atan(added / length))).toBeCloseTo(slope, 3);
      expect(lengthOf(wide, "side") - length).toBeCloseTo(trim, 2);
      const trimmed = worked(move, { name: "C", to: pointAt(pathOf(wide, "side"), length) }, wide).now;
      expect(placeOf(trimmed, "C").x - 200).toBeCloseTo(x, 2);
      expect(placeOf(trimmed, "C").y).toBeCloseTo(y, 2);
      expect(lengthOf(trimmed, "side")).toBeCloseTo(length, 6);
    },
  );
  test("60 of flare on the coat block's side brings the hem corner to (329.81, 997.63)", () => {
    // Source: handbook of the trade, check value 56: side from (270, 245) to (270, 1000).
    const piece = madePiece(
      [
        { name: "top", path: through([at(0, 0), at(200, 0), at(270, 245)]) },
        { name: "side", path: straight(at(270, 245), at(270, 1000)) },
        { name: "hem", path: straight(at(270, 1000), at(0, 1000)) },
        { name: "center", path: straight(at(0, 1000), at(0, 0)) },
      ],
      { corner: at(270, 1000) },
    );
    const wide = worked(move, { name: "corner", to: at(330, 1000) }, piece).now;
    const now = worked(move, { name: "corner", to: pointAt(pathOf(wide, "side"), 755) }, wide).now;
    expect(placeOf(now, "corner").x).toBeCloseTo(329.81, 2);
    expect(placeOf(now, "corner").y).toBeCloseTo(997.63, 2);
  });
  test("a place inside a straight edge bends it, inside a curve it is refused, off the outline too", () => {
    const bent = worked(move, { name: "half", to: at(70, 10) }, vest).now;
    expect(pathOf(bent, "neck")).toEqual(through([at(0, 0), at(70, 10), at(140, 0)]));
    const on = {
      ...vest,
      places: new Map(vest.places).set("on", {
        name: "on",
        point: pointAt(pathOf(vest, "armhole"), 100),
        drawnBy: nowhere,
      }),
    };
    expect(problemOf(move, { name: "on", to: at(0, 0) }, on).code).toBe("move-inside-curve");
    expect(problemOf(move, { name: "pocket", to: at(0, 0) }, vest).code).toBe("move-off-outline");
  });
});

describe("replace", () => {
  const piece = madePiece(
    [
      { name: "neck", path: straight(at(0, 0), at(140, 0)) },
      { name: "armhole", path: [cubic(at(140, 0), at(140, 120), at(160, 220), at(220, 220))] },
      { name: "side", path: straight(at(220, 220), at(220, 500)) },
      { name: "hem", path: straight(at(220, 500), at(0, 500)) },
      { name: "center", path: straight(at(0, 500), at(0, 0)) },
      { name: "deeper", path: [cubic(at(220, 220), at(150, 220), at(120, 120), at(140, 0))], inner: true },
      { name: "upper", path: straight(at(140, 0), at(130, 100)), inner: true },
      { name: "lower", path: straight(at(220, 220), at(130, 100)), inner: true },
      { name: "short", path: straight(at(140, 0), at(220, 200)), inner: true },
    ],
    {},
    {
      allowances: new Map([["armhole", { width: 8, corners: "square", drawnBy: nowhere }]]),
      notches: [notch("armhole", 145, 100), notch("side", 220, 300)],
    },
  );
  const replaced = (olds: string[], news: string[], of = piece): Piece => worked(replace, { olds, news }, of).now;

  test("one with one: turned where needed, allowance and notches pass on", () => {
    const now = replaced(["armhole"], ["deeper"]);
    expect(now.outline.map(({ edge, turned }) => `${edge}${turned ? " turned" : ""}`)).toEqual([
      "neck",
      "deeper turned",
      "side",
      "hem",
      "center",
    ]);
    expect(gaps(now)).toEqual([]);
    expect(now.allowances.get("deeper")).toMatchObject({ width: 8, corners: "square" });
    expect(now.allowances.has("armhole")).toBe(false);
    expect(now.notches[0]!.edge).toBe("deeper");
    expect(nearest(pathOf(now, "deeper"), now.notches[0]!.point).distance).toBeLessThan(1e-9);
    expect(now.notches[1]).toEqual(piece.notches[1]);
    expect(now.edges.has("armhole")).toBe(false);
  });
  test("one with several, in either order", () => {
    for (const news of [
      ["upper", "lower"],
      ["lower", "upper"],
    ]) {
      const now = replaced(["armhole"], news);
      expect(now.outline.map(({ edge }) => edge)).toEqual(["neck", "upper", "lower", "side", "hem", "center"]);
      expect(gaps(now)).toEqual([]);
      expect(now.allowances.has("upper")).toBe(false);
    }
  });
  test("a run across the start of the outline", () => {
    const inner = {
      ...piece,
      edges: new Map(piece.edges).set("sweep", {
        name: "sweep",
        path: straight(at(0, 500), at(140, 0)),
        role: "seam",
        drawnBy: nowhere,
      }),
    } as Piece;
    const now = replaced(["center", "neck"], ["sweep"], inner);
    expect(now.outline.map(({ edge }) => edge)).toEqual(["sweep", "armhole", "side", "hem"]);
    expect(gaps(now)).toEqual([]);
  });
  test("closes what a move has opened", () => {
    const withTip = { ...piece, places: new Map([["tip", { name: "tip", point: at(140, 0), drawnBy: nowhere }]]) };
    const open = worked(move, { name: "tip", to: at(100, 0) }, withTip).now;
    const narrow = {
      ...open,
      edges: new Map(open.edges).set("narrow", {
        name: "narrow",
        path: straight(at(220, 220), at(100, 0)),
        role: "seam",
        drawnBy: nowhere,
      }),
    } as Piece;
    expect(gaps(replaced(["armhole"], ["narrow"], narrow))).toEqual([]);
    expect(problemOf(replace, { olds: ["armhole"], news: ["deeper"] }, open).message).toBe(
      "neck and deeper do not meet: their ends are 40 mm apart.",
    );
  });
  test("role and grain pass on, unless the new edge has its own part to play", () => {
    const fold = (role: "seam" | "opening"): Piece =>
      ({
        ...piece,
        edges: new Map(piece.edges)
          .set("center", { ...piece.edges.get("center")!, role: "fold" })
          .set("straight", { name: "straight", path: straight(at(0, 0), at(0, 500)), role, drawnBy: nowhere }),
        grain: { kind: "along", edge: "center", drawnBy: nowhere },
      }) as Piece;
    expect(replaced(["center"], ["straight"], fold("seam")).edges.get("straight")!.role).toBe("fold");
    expect(replaced(["center"], ["straight"], fold("seam")).grain).toMatchObject({ edge: "straight" });
    expect(replaced(["center"], ["straight"], fold("opening")).edges.get("straight")!.role).toBe("opening");
  });
  test("a gap, edges apart, and an edge twice are refused", () => {
    expect(problemOf(replace, { olds: ["armhole"], news: ["short"] }, piece)).toMatchObject({
      code: "replace-gap",
      message: "short and side do not meet: their ends are 20 mm apart.",
    });
    expect(problemOf(replace, { olds: ["armhole", "center"], news: ["short"] }, piece).code).toBe("replace-apart");
    expect(problemOf(replace, { olds: ["armhole"], news: ["hem"] }, piece).code).toBe("replace-taken");
    expect(problemOf(replace, { olds: ["deeper"], news: ["upper"] }, piece).code).toBe("edge-off-outline");
  });
  test("a new edge has turned as the cloth beside it", () => {
    const turned = { ...piece, turned: [{ edge: "armhole", from: at(140, 0), angle: 0.2, here: 0.2 }] };
    expect(replaced(["armhole"], ["deeper"], turned).turned).toEqual([
      { edge: "deeper", from: at(220, 220), angle: 0.2, here: 0.2 },
    ]);
  });
});

describe("allow", () => {
  const piece = rectangle(300, 1000, { center: "fold", hem: "hem" });
  test("a later line replaces an earlier one, its corners too", () => {
    const first = worked(allow, { edges: ["hem", "side"], width: 40, corners: "turned" }, piece, "cm");
    expect(first.words).toBe("allowed 4 cm at hem, side");
    const now = worked(allow, { edges: ["hem"], width: 25 }, first.now).now;
    expect(now.allowances.get("hem")).toMatchObject({ width: 25, corners: "point" });
    expect(now.allowances.get("side")).toMatchObject({ width: 40, corners: "turned" });
  });
  test("by 0 says that there is none", () => {
    const { now, words } = worked(allow, { edges: ["top"], width: 0 }, piece);
    expect(now.allowances.get("top")?.width).toBe(0);
    expect(words).toBe("no allowance at top");
  });
  test("a fold, a negative width, and an edge off the outline are refused", () => {
    expect(problemOf(allow, { edges: ["hem", "center"], width: 15 }, piece)).toMatchObject({
      code: "fold-allowance",
      message: "center is a fold: the cloth goes on there, so it has no allowance.",
      hint: "Leave center out.",
    });
    expect(problemOf(allow, { edges: ["hem"], width: -15 }, piece).code).toBe("allowance-negative");
    expect(problemOf(allow, { edges: ["hem"], width: 15 }, { ...piece, outline: piece.outline.slice(0, 2) }).code).toBe(
      "edge-off-outline",
    );
    expect(pathLength(pathOf(piece, "hem"))).toBe(300);
  });
});
