// A slash turns one part of a piece as a stiff sheet: what the handbook works out by hand, and what the language page settles.
import { describe, expect, test } from "vitest";
import { turnAt } from "../../kernel/alter/turned.ts";
import { pointAt } from "../../kernel/geometry/arc-length.ts";
import { endOf, startOf, straight, through } from "../../kernel/geometry/path.ts";
import { rotated } from "../../kernel/geometry/rotate.ts";
import { toDegrees, toRadians } from "../../kernel/geometry/trig.ts";
import { spreadFrom } from "../../kernel/steps/spread-from.ts";
import { trueSeam } from "../../kernel/steps/true-seam.ts";
import type { Piece } from "../../kernel/working.ts";
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

const spread = (piece: Piece, fill: Readonly<Record<string, unknown>>): Piece => worked(spreadFrom, fill, piece).now;
const middleToHem = (length: number) => ({
  hinge: place(150, 0, { on: "top" }),
  target: { edge: "hem" },
  opening: { length },
});

describe("the rectangle of the handbook, 300 x 1000, opened by 200 from the middle of its top", () => {
  // Source: handbook of the trade 4.2 and check values 15 to 24. The left half stays here, where the handbook turns
  // each half by 5.739 deg, so points are held against the handbook's after turning ours back by half.
  const opened = spread(rectangle(300, 1000), middleToHem(200));

  test("turns by 11.4783 deg", () => {
    expect(toDegrees(turnAt(opened, "side", at(0, 0)))).toBeCloseTo(-11.4783, 4);
  });
  test("moves the hem corners 498.496 apart", () => {
    expect(apart(placeOf(opened, "C"), placeOf(opened, "D"))).toBeCloseTo(498.496, 3);
  });
  test("keeps the left half, the hinge, top and sides", () => {
    expect(placeOf(opened, "A")).toEqual(at(0, 0));
    expect(placeOf(opened, "D")).toEqual(at(0, 1000));
    expect(startOf(pathOf(opened, "top").slice(1))).toEqual(at(150, 0));
    expect(lengthOf(opened, "top")).toBeCloseTo(300, 9);
    expect(lengthOf(opened, "side")).toBeCloseTo(1000, 9);
    expect(lengthOf(opened, "center")).toBeCloseTo(1000, 9);
  });
  test("bridges the opening straight, with its hinge remembered, as part of the hem", () => {
    const bridge = pathOf(opened, "hem").find(({ pivot }) => pivot);
    expect(bridge).toMatchObject({ kind: "line", pivot: { x: 150, y: 0 } });
    expect(apart(bridge!.start, bridge!.end)).toBeCloseTo(200, 9);
    expect(lengthOf(opened, "hem")).toBeCloseTo(500, 9);
  });
  test("adds the triangle, 99498.7 square mm", () => {
    expect(areaOf(opened) - 300_000).toBeCloseTo(99_498.7, 1);
  });
});

test.each([
  ["as it was bridged", (piece: Piece) => piece],
  ["trued", (piece: Piece) => worked(trueSeam, { edges: ["hem"] }, piece).now],
])("opening, then closing by as much, restores the piece, the hem %s", (_, between) => {
  const piece = rectangle(300, 1000);
  const back = spread(between(spread(piece, middleToHem(200))), middleToHem(-200));
  for (const name of ["A", "B", "C", "D"]) expect(apart(placeOf(back, name), placeOf(piece, name))).toBeLessThan(1e-9);
  expect(lengthOf(back, "hem")).toBeCloseTo(300, 9);
  expect(areaOf(back)).toBeCloseTo(300_000, 6);
  expect(pathOf(back, "hem").some(({ pivot }) => pivot)).toBe(false);
  expect(back.turned).toEqual([]);
  expect(back.hinges).toEqual([]);
});

describe("three slashes of 66.667 in the same rectangle", () => {
  // Source: handbook of the trade 4.4 and check value 27.
  const opened = [50, 150, 250].reduce(
    (piece, x) =>
      spread(piece, {
        hinge: place(...hingeAfter(piece, x), { on: "top" }),
        target: { edge: "hem" },
        opening: { length: 200 / 3 },
      }),
    rectangle(300, 1000),
  );
  test("turn by 11.4613 deg in all", () => {
    expect(Math.abs(toDegrees(turnAt(opened, "side", placeOf(opened, "C"))))).toBeCloseTo(11.4613, 4);
  });
  test("open the hem by their sum", () => {
    expect(lengthOf(opened, "hem")).toBeCloseTo(500, 6);
  });
});

/** The point so many mm along the top. */
function hingeAfter(piece: Piece, x: number): [number, number] {
  const { x: px, y } = pointAt(pathOf(piece, "top"), x);
  return [px, y];
}

test("four tucks take a hem of 1200 to 1000 at 4.0934 deg each", () => {
  // Source: handbook of the trade 4.17 and check value 45: radius 700, 50 each.
  const piece = rectangle(1200, 700);
  const folded = [150, 450, 750, 1050].reduce((now, x) => {
    const before = turnAt(now, "side", placeOf(now, "C"));
    const next = spread(now, {
      hinge: place(...hingeAfter(now, x), { on: "top" }),
      target: { edge: "hem" },
      opening: { length: -50 },
    });
    expect(toDegrees(turnAt(next, "side", placeOf(next, "C")) - before)).toBeCloseTo(4.0934, 4);
    return next;
  }, piece);
  expect(lengthOf(folded, "top")).toBeCloseTo(1200, 9);
  expect(lengthOf(folded, "side")).toBeCloseTo(700, 9);
  // The hem was straight, so each tuck takes out more than its chord there, and leaves a step that belongs to the hem:
  // 700 tan 4.0934 deg = 50.096 out, 700 / cos 4.0934 deg - 700 = 1.790 back.
  const out = 700 * Math.tan(toRadians(4.0934));
  const step = 700 / Math.cos(toRadians(4.0934)) - 700;
  expect(lengthOf(folded, "hem")).toBeCloseTo(1200 - 4 * (out - step), 2);
});

describe("along a fold", () => {
  // Source: handbook of the trade 4.7 and check value 31: a wedge of 30 at the fold adds 60 in the garment.
  const piece = rectangle(
    300,
    1000,
    { center: "fold", hem: "hem" },
    { notches: [{ edge: "center", point: at(0, 200), double: false, drawnBy: nowhere }] },
  );
  const fill = { hinge: place(0, 0, { name: "A" }), target: { edge: "hem" }, opening: { length: 30 }, along: "center" };
  const { now, words, amount } = worked(spreadFrom, fill, piece, "cm");

  test("the fold stays and all else turns away from it", () => {
    expect(pathOf(now, "center")).toEqual(pathOf(piece, "center"));
    expect(placeOf(now, "D")).toEqual(at(0, 1000));
    expect(now.notches[0]!.point).toEqual(at(0, 200));
    expect(placeOf(now, "C").x).toBeGreaterThan(300);
    expect(apart(startOf(pathOf(now, "hem")), at(0, 1000))).toBe(0);
    expect(pathOf(now, "hem")[0]).toMatchObject({ pivot: at(0, 0) });
    expect(lengthOf(now, "hem")).toBeCloseTo(330, 9);
    expect(areaOf(now) - 300_000).toBeCloseTo(15 * Math.sqrt(1000 ** 2 - 15 ** 2), 6);
  });
  test("the line in words names hem and hinge, and the amount that the garment doubles", () => {
    expect(words).toBe("opened 3 cm at the hem, 1.7 deg about A");
    expect(amount).toBeCloseTo(30, 9);
  });
  test("closing again restores it", () => {
    const back = spread(now, { ...fill, opening: { length: -30 } });
    expect(lengthOf(back, "hem")).toBeCloseTo(300, 9);
    expect(apart(placeOf(back, "C"), at(300, 1000))).toBeLessThan(1e-9);
  });
});

test("along a fold that the outline walks the other way", () => {
  const piece = rectangle(300, 1000, { side: "fold" });
  const fill = { hinge: place(300, 0), target: { edge: "hem" }, opening: { length: 30 }, along: "side" };
  const now = spread(piece, fill);
  for (const name of ["B", "C"]) expect(placeOf(now, name)).toEqual(placeOf(piece, name));
  expect(placeOf(now, "D").x).toBeLessThan(0);
  expect(pathOf(now, "hem").at(-1)).toMatchObject({ end: at(300, 1000), pivot: at(300, 0) });
  expect(apart(placeOf(spread(now, { ...fill, opening: { length: -30 } }), "D"), at(0, 1000))).toBeLessThan(1e-9);
});

describe("along a seam", () => {
  const piece = rectangle(300, 1000, { hem: "hem" });
  const fill = {
    hinge: place(300, 0, { on: "side" }),
    target: { edge: "hem" },
    opening: { length: 60 },
    along: "side",
  };
  const opened = spread(piece, fill);

  test("the piece stays and the edge turns outward", () => {
    for (const name of ["A", "B", "C", "D"]) expect(placeOf(opened, name)).toEqual(placeOf(piece, name));
    expect(lengthOf(opened, "side")).toBeCloseTo(1000, 9);
    expect(endOf(pathOf(opened, "side")).x).toBeGreaterThan(350);
    expect(lengthOf(opened, "hem")).toBeCloseTo(360, 9);
    expect(pathOf(opened, "hem").at(-1)).toMatchObject({ pivot: at(300, 0) });
  });
  test("closing again restores it", () => {
    const back = spread(opened, { ...fill, opening: { length: -60 } });
    expect(apart(endOf(pathOf(back, "side")), at(300, 1000))).toBeLessThan(1e-9);
    expect(lengthOf(back, "hem")).toBeCloseTo(300, 9);
  });
  test("closing a seam that was never opened turns it inward and takes the corner along", () => {
    const taken = spread(piece, { ...fill, opening: { length: -60 } });
    expect(apart(placeOf(taken, "C"), endOf(pathOf(taken, "side")))).toBeLessThan(1e-9);
    expect(placeOf(taken, "C").x).toBeLessThan(250);
    expect(lengthOf(taken, "side")).toBeCloseTo(1000, 9);
  });
});

describe("which part stays", () => {
  const staysLeft = (piece: Piece, more = {}): boolean =>
    placeOf(spread(piece, { ...middleToHem(100), ...more }), "A").x === 0;
  test("the part with the fold", () => {
    expect(staysLeft(rectangle(300, 1000, { center: "fold" }))).toBe(true);
    expect(staysLeft(rectangle(300, 1000, { side: "fold" }))).toBe(false);
  });
  test("else the part with the middle of the grain line", () => {
    const grain = (x: number) =>
      ({ grain: { kind: "line", from: at(x, 100), to: at(x, 900), drawnBy: nowhere } }) as const;
    expect(staysLeft(rectangle(300, 1000, {}, grain(40)))).toBe(true);
    expect(staysLeft(rectangle(300, 1000, {}, grain(240)))).toBe(false);
    expect(staysLeft(rectangle(300, 1000, {}, { grain: { kind: "along", edge: "side", drawnBy: nowhere } }))).toBe(
      false,
    );
    expect(staysLeft(rectangle(300, 1000, { center: "fold" }, grain(240)))).toBe(true);
  });
  test("else the part that holds the start of the first edge", () => {
    const piece = rectangle(300, 1000);
    const fromSide = { ...piece, outline: [...piece.outline.slice(1), piece.outline[0]!] };
    expect(staysLeft(piece)).toBe(true);
    expect(staysLeft(fromSide)).toBe(false);
    // The top as drafted starts on the left, whichever way the outline walks it.
    const turned = {
      ...piece,
      outline: [...piece.outline].reverse().map((part) => ({ ...part, turned: !part.turned })),
    };
    expect(staysLeft({ ...turned, outline: [turned.outline.at(-1)!, ...turned.outline.slice(0, -1)] })).toBe(true);
  });
  test("moving names an edge of the other", () => {
    expect(staysLeft(rectangle(300, 1000, { center: "fold" }), { moving: "center" })).toBe(false);
    expect(staysLeft(rectangle(300, 1000), { moving: "side" })).toBe(true);
    expect(problemOf(spreadFrom, { ...middleToHem(100), moving: "hem" }, rectangle(300, 1000)).code).toBe(
      "moving-edge-cut",
    );
  });
});

describe("where a slash to an edge runs", () => {
  test("down as drafted, turned with the part that the hinge lies in", () => {
    const opened = spread(rectangle(300, 1000), middleToHem(200));
    const hinge = pointAt(pathOf(opened, "top"), 250);
    const again = spread(opened, {
      hinge: place(hinge.x, hinge.y, { on: "top" }),
      target: { edge: "hem" },
      opening: { length: 10 },
    });
    // Down the turned half lies 1000 from the top, square to it; straight down the page it would be another length.
    const bridge = pathOf(again, "hem")
      .filter(({ pivot }) => pivot)
      .at(-1)!;
    expect(apart(bridge.start, hinge)).toBeCloseTo(1000, 9);
    expect(toDegrees(turnAt(again, "side", placeOf(again, "C")))).toBeCloseTo(-11.4783 - 0.573, 3);
  });
  test("a hinge that two parts share takes the part that stayed", () => {
    const once = spread(rectangle(300, 1000), middleToHem(200));
    const twice = spread(once, middleToHem(100));
    const [second, first] = pathOf(twice, "hem").filter(({ pivot }) => pivot);
    expect(apart(second!.start, at(150, 1000))).toBeLessThan(1e-9);
    expect(apart(first!.start, first!.end)).toBeCloseTo(200, 9);
  });
  test("where the line down misses, it divides the edge as the hinge divides its own", () => {
    const piece = madePiece([
      { name: "top", path: straight(at(0, 0), at(200, 0)) },
      { name: "right", path: straight(at(200, 0), at(600, 500)) },
      { name: "hem", path: straight(at(600, 500), at(300, 500)) },
      { name: "left", path: straight(at(300, 500), at(0, 0)) },
    ]);
    const opened = spread(piece, {
      hinge: place(50, 0, { on: "top" }),
      target: { edge: "hem" },
      opening: { length: 20 },
    });
    // A quarter of the top lies on the left of the slash, so a quarter of the hem does.
    expect(apart(pathOf(opened, "hem").find(({ pivot }) => pivot)!.end, at(375, 500))).toBeLessThan(1e-9);
  });
});

describe("a slash to a corner of the outline", () => {
  const toCorner = {
    hinge: place(0, 400, { on: "center" }),
    target: { place: at(300, 1000) },
    opening: { length: 50 },
  };
  test("opens the hem there, if one of its edges is a hem", () => {
    for (const moving of ["side", "hem"]) {
      const now = spread(rectangle(300, 1000, { hem: "hem" }), { ...toCorner, moving });
      expect([lengthOf(now, "hem"), lengthOf(now, "side")].map((length) => Math.round(length))).toEqual([350, 1000]);
      expect(placeOf(now, "C")).toEqual(at(300, 1000));
    }
  });
  test("else the edge on the side that moves", () => {
    const lengths = (moving: string): number[] => {
      const now = spread(rectangle(300, 1000), { ...toCorner, moving });
      return [lengthOf(now, "hem"), lengthOf(now, "side")].map((length) => Math.round(length));
    };
    expect(lengths("side")).toEqual([300, 1050]);
    expect(lengths("hem")).toEqual([350, 1000]);
  });
});

describe("folding away where slashes from the same hinge have opened", () => {
  const openedBy = (...lengths: number[]): Piece =>
    lengths.reduce((now, length) => spread(now, { ...middleToHem(length), moving: "center" }), rectangle(300, 1000));
  const bridges = (piece: Piece): number[] =>
    pathOf(piece, "hem").flatMap(({ start, end, pivot }) => (pivot ? [Math.round(apart(start, end) * 1e6) / 1e6] : []));

  test("takes out the bridge on the side that moves, at the place the slash runs to", () => {
    const twice = openedBy(30, 70);
    expect(bridges(twice)).toEqual([30, 70]);
    const joint = pathOf(twice, "hem").find(({ pivot }) => pivot)!.end;
    const closed = spread(twice, { ...middleToHem(-30), target: { place: joint }, moving: "center" });
    expect(bridges(closed)).toEqual([70]);
  });
  test("takes a bridge out from whichever end the slash runs to", () => {
    const once = openedBy(80);
    const bridge = pathOf(once, "hem").find(({ pivot }) => pivot)!;
    for (const target of [
      bridge.start,
      bridge.end,
      { x: (bridge.start.x + bridge.end.x) / 2, y: (bridge.start.y + bridge.end.y) / 2 },
    ]) {
      const closed = spread(once, { ...middleToHem(-80), target: { place: target }, moving: "center" });
      expect(lengthOf(closed, "hem")).toBeCloseTo(300, 9);
      expect(bridges(closed)).toEqual([]);
    }
  });
  test("a place a hair inside the wedge's corner goes with the corner", () => {
    const once = openedBy(80);
    const { start, end } = pathOf(once, "hem").find(({ pivot }) => pivot)!;
    const hair = at(start.x + (end.x - start.x) * 1e-4, start.y + (end.y - start.y) * 1e-4);
    const named = {
      ...once,
      places: new Map(once.places).set("slit", { name: "slit", point: hair, drawnBy: nowhere }),
    };
    const closed = spread(named, { ...middleToHem(-80), moving: "center" });
    expect(apart(placeOf(closed, "slit"), at(150, 1000))).toBeLessThan(0.01);
  });
});

describe("what rides along", () => {
  const piece = madePiece(
    [
      { name: "top", path: straight(at(0, 0), at(300, 0)) },
      { name: "side", path: straight(at(300, 0), at(300, 1000)) },
      { name: "hem", path: straight(at(300, 1000), at(0, 1000)) },
      { name: "center", path: straight(at(0, 1000), at(0, 0)) },
      { name: "waist", path: straight(at(0, 400), at(300, 400)), inner: true },
      { name: "outside", path: straight(at(400, 0), at(400, 1000)), inner: true },
    ],
    { hinge: at(150, 0), foot: at(150, 1000), pocket: at(220, 500), dart: at(80, 500), far: at(500, 500) },
    {
      notches: [
        { edge: "side", point: at(300, 250), double: true, drawnBy: nowhere },
        { edge: "center", point: at(0, 250), double: false, drawnBy: nowhere },
      ],
      drills: [{ point: at(200, 300), drawnBy: nowhere }],
      labels: [{ text: "back", at: at(250, 600), drawnBy: nowhere }],
      grain: { kind: "line", from: at(60, 100), to: at(60, 900), drawnBy: nowhere },
    },
  );
  const opened = spread(piece, middleToHem(200));
  const turned = (x: number, y: number) => rotated(at(x, y), at(150, 0), -2 * Math.asin(0.1));

  test("all of the part that turns", () => {
    expect(apart(placeOf(opened, "pocket"), turned(220, 500))).toBeLessThan(1e-9);
    expect(apart(opened.notches[0]!.point, turned(300, 250))).toBeLessThan(1e-9);
    expect(apart(opened.drills[0]!.point, turned(200, 300))).toBeLessThan(1e-9);
    expect(apart(opened.labels[0]!.at!, turned(250, 600))).toBeLessThan(1e-9);
  });
  test("and nothing of the part that stays, of the hinge, of the target, or off the cloth", () => {
    for (const name of ["hinge", "foot", "dart", "far"]) expect(placeOf(opened, name)).toEqual(placeOf(piece, name));
    expect(opened.notches[1]).toEqual(piece.notches[1]);
    expect(opened.grain).toEqual(piece.grain);
    expect(pathOf(opened, "outside")).toEqual(pathOf(piece, "outside"));
  });
  test("a line that the slash crosses is cut there and bridged", () => {
    const waist = pathOf(opened, "waist");
    expect(waist).toHaveLength(3);
    expect(waist[1]).toMatchObject({ kind: "line", pivot: at(150, 0) });
    // 400 from the hinge the opening is 400/1000 of 200.
    expect(apart(waist[1]!.start, waist[1]!.end)).toBeCloseTo(80, 9);
    expect(lengthOf(opened, "waist")).toBeCloseTo(380, 9);
  });
  test("the hinge is remembered inside an edge, and not at a corner", () => {
    expect(opened.hinges).toEqual([{ edge: "top", point: at(150, 0), drawnBy: nowhere }]);
    const fromCorner = spread(piece, { hinge: place(0, 0), target: { place: at(200, 1000) }, opening: { length: 20 } });
    expect(fromCorner.hinges).toEqual([]);
  });
  test("no place may lie in the cloth that is taken out", () => {
    // The wedge reaches 150 + 500 tan 8.49 deg = 224.6 at the level of the pocket.
    expect(problemOf(spreadFrom, { ...middleToHem(-148) }, piece)).toMatchObject({
      code: "place-folded-away",
      message: "pocket lies in the cloth that would be taken out.",
    });
  });
});

describe("what cannot be cut", () => {
  const piece = rectangle(300, 1000);
  const code = (fill: Readonly<Record<string, unknown>>, of = piece): string =>
    problemOf(spreadFrom, { ...middleToHem(100), ...fill }, of).code;
  const notched = madePiece([
    { name: "top", path: straight(at(0, 0), at(300, 0)) },
    { name: "side", path: through([at(300, 0), at(300, 200), at(100, 300), at(300, 400), at(300, 600)]) },
    { name: "hem", path: straight(at(300, 600), at(0, 600)) },
    { name: "center", path: straight(at(0, 600), at(0, 0)) },
  ]);

  test("a hinge off the outline", () => {
    expect(problemOf(spreadFrom, { ...middleToHem(100), hinge: place(150, 4) }, piece).message).toBe(
      "The hinge lies 4 mm off the outline of back; the nearest edge is top.",
    );
  });
  test("a hinge on the edge that opens", () => expect(code({ hinge: place(150, 1000) })).toBe("hinge-on-target"));
  test("a target on the hinge's own edge", () =>
    expect(code({ target: { place: at(50, 0) } })).toBe("target-on-hinge-edge"));
  test("a target off the outline", () => expect(code({ target: { place: at(50, 50) } })).toBe("target-off-outline"));
  test("a target that is no edge of the outline", () => {
    const inner = madePiece([
      ...[...piece.edges.values()].map(({ name, path }, index) => ({
        name,
        path,
        ...(index > 1 && { turned: true as const }),
      })),
      { name: "line", path: straight(at(0, 10), at(9, 10)), inner: true },
    ]);
    expect(code({ target: { edge: "line" } }, inner)).toBe("edge-off-outline");
  });
  test("a slash that crosses another edge", () => {
    expect(problemOf(spreadFrom, { ...middleToHem(50), hinge: place(200, 0) }, notched).message).toBe(
      "The slash crosses side, 250 mm from its hinge.",
    );
  });
  test("a slash that runs outside", () => {
    const legs = madePiece([
      { name: "left", path: through([at(100, 400), at(0, 400), at(0, 0), at(300, 0), at(300, 400), at(200, 400)]) },
      { name: "inner-right", path: straight(at(200, 400), at(200, 100)) },
      { name: "fork", path: straight(at(200, 100), at(100, 100)) },
      { name: "inner-left", path: straight(at(100, 100), at(100, 400)) },
    ]);
    expect(code({ hinge: place(200, 300), target: { place: at(100, 300) } }, legs)).toBe("slash-leaves-piece");
  });
  test("a slash along an edge that does not say so", () => {
    expect(problemOf(spreadFrom, { ...middleToHem(50), hinge: place(0, 0, { on: "top" }) }, piece).hint).toBe(
      "Add `along center` to open the piece there, or let the slash run elsewhere.",
    );
  });
  test("an opening wider than the slash allows", () => {
    expect(problemOf(spreadFrom, middleToHem(2001), piece).message).toBe(
      "The slash is 1000 mm long and opens by 2000 mm at most; 2001 mm is asked for.",
    );
    expect(code({ opening: { angle: toRadians(181) } })).toBe("opening-too-wide");
  });
  test("a wedge wider than the cloth beside the slash", () => {
    expect(code({ opening: { length: -160 } })).toBe("cloth-too-narrow");
    expect(worked(spreadFrom, middleToHem(-140), piece).now).toBeDefined();
  });
  test("an opening that makes the outline cross itself", () => {
    // A slit down to the hinge's level: the moving side runs into the other side of it.
    const slit = madePiece([
      { name: "left", path: through([at(0, 600), at(0, 0), at(140, 0)]) },
      { name: "slit", path: through([at(140, 0), at(150, 300), at(160, 0)]) },
      { name: "right", path: through([at(160, 0), at(300, 0), at(300, 600)]) },
      { name: "hem", path: straight(at(300, 600), at(0, 600)) },
    ]);
    expect(
      problemOf(
        spreadFrom,
        { hinge: place(150, 300, { on: "slit" }), target: { edge: "hem" }, opening: { length: 100 } },
        slit,
      ),
    ).toMatchObject({
      code: "outline-crosses-itself",
      message: "This opening makes the outline cross itself.",
    });
  });
  test("along an edge from elsewhere than its end, or to elsewhere than its other end", () => {
    expect(code({ along: "center" })).toBe("along-from-end");
    expect(code({ along: "center", hinge: place(0, 0), target: { edge: "side" } })).toBe("along-away-from-target");
  });
  test("a slash that bends a fold", () => {
    expect(problemOf(spreadFrom, middleToHem(50), rectangle(300, 1000, { top: "fold" }))).toMatchObject({
      code: "fold-bent",
      message: "This bends top, and cloth folds along a straight line only.",
    });
  });
  test("a piece without an outline", () => expect(code({}, { ...piece, outline: [] })).toBe("outline-missing"));
  test("but 0 does nothing", () => {
    expect(worked(spreadFrom, middleToHem(0), piece)).toEqual({ now: piece, words: "" });
  });
});

test("folding away leaves a step in a slanted hem, which belongs to the hem", () => {
  // Hem from (0, 500) to (300, 600): beside the slash down from (100, 0) it lies lower, so the folded side ends lower.
  const piece = madePiece([
    { name: "top", path: straight(at(0, 0), at(300, 0)) },
    { name: "side", path: straight(at(300, 0), at(300, 600)) },
    { name: "hem", path: straight(at(300, 600), at(0, 500)) },
    { name: "center", path: straight(at(0, 500), at(0, 0)) },
  ]);
  const radius = 500 + 100 / 3;
  const angle = toRadians(5);
  const folded = spread(piece, { hinge: place(100, 0), target: { edge: "hem" }, opening: { angle: -angle } });
  // The ray 5 deg off the slash meets the hem y = 500 + x / 3 where 100 + t sin 5 and t cos 5 lie on it.
  const out = radius / (Math.cos(angle) - Math.sin(angle) / 3);
  const meets = at(100 + out * Math.sin(angle), out * Math.cos(angle));
  const left = apart(at(300, 600), meets) + apart(at(0, 500), at(100, radius)) + (out - radius);
  expect(lengthOf(folded, "hem")).toBeCloseTo(left, 6);
  for (const name of ["top", "side", "center"]) expect(lengthOf(folded, name)).toBeCloseTo(lengthOf(piece, name), 9);
});
