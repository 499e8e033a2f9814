// Bust, back and upper arm: what a fitting pins, worked on the handbook's blocks.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { minus } from "../../kernel/geometry/point.ts";
import { toDegrees, turnBetween } from "../../kernel/geometry/trig.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import { lengthOf, placeOf, workedText } from "../worked-recipe.ts";

const errors = ({ findings }: Outcome): string[] =>
  findings.filter(({ severity }) => severity === "error").map(({ message }) => message);

const codes = ({ findings }: Outcome): string[] => findings.map(({ code }) => code);

const sewn = ({ garment }: Outcome, piece: string, edge: string): number =>
  sewnLengthOf(garment.pieces.get(piece)!, edge);

/** The loose block; its front has the bust point of R88, check value 60, and its back a blade. */
const altered = (lines: { readonly front?: string; readonly back?: string }): Outcome =>
  workedText(`chalkline 1
units mm
use "blocks/loose-bodice.chalk" as loose
piece old-front = loose.front { }
piece old-back = loose.back { }
piece front = loose.front {
  point bust-point = (92.5 mm, 240.96 mm)
  mark center as opening
${lines.front ?? ""}
}
piece back = loose.back {
  point blade = (95 mm, 135 mm)
  point hollow = (130 mm, 410 mm)
${lines.back ?? ""}
}
`);

const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((mm) => mm.toFixed(4));

describe("a fuller bust", () => {
  const line = (by: string): string =>
    `  fuller-bust bust-dart = bust-point by ${by} mm about armscye at 55% to side at 60 mm`;

  test("keeps what is sewn, and adds its amount at the hem and what it fell at the center", () => {
    fc.assert(
      fc.property(amount(2, 40), (by) => {
        const outcome = altered({ front: line(by) });
        expect(errors(outcome)).toEqual([]);
        for (const edge of ["neck", "shoulder", "armscye", "side"])
          expect(sewn(outcome, "front", edge)).toBeCloseTo(lengthOf(outcome, "old-front", edge), 6);
        expect(lengthOf(outcome, "front", "hem")).toBeCloseTo(lengthOf(outcome, "old-front", "hem") + Number(by), 6);
        const [is, was] = [placeOf(outcome, "front", "bust-point"), { x: 92.5, y: 240.96 }];
        expect(is.x - was.x).toBeCloseTo(Number(by), 6);
        expect(lengthOf(outcome, "front", "center")).toBeCloseTo(
          lengthOf(outcome, "old-front", "center") + is.y - was.y,
          6,
        );
      }),
      { numRuns: 30 },
    );
  });

  test("has a dart of the angle that its cloth swung through, with legs of one length", () => {
    const outcome = altered({ front: line("20") });
    const dart = outcome.garment.pieces.get("front")!.darts.get("bust-dart")!;
    const [first, second] = [minus(dart.first, dart.tip), minus(dart.second, dart.tip)];
    expect(Math.hypot(first.x, first.y)).toBeCloseTo(Math.hypot(second.x, second.y), 6);
    const hinge = outcome.garment.pieces.get("old-front")!;
    expect(hinge.darts.size).toBe(0);
    expect(Math.abs(toDegrees(turnBetween(first, second)))).toBeGreaterThan(5);
  });

  test("lies on grain below the bust: side and hem keep their directions there", () => {
    const outcome = altered({ front: line("25") });
    const hem = outcome.garment.pieces.get("front")!.edges.get("hem")!.path;
    for (const span of hem) expect(span.end.y).toBeCloseTo(hem[0]!.start.y, 9);
    const corner = placeOf(outcome, "front", "side-hem");
    const { path } = outcome.garment.pieces.get("front")!.edges.get("side")!;
    expect(path.at(-1)!.start.x).toBeCloseTo(corner.x, 9);
  });

  test("is taken back: the dart gives what it took, all but a hair", () => {
    // Where the hinge lies on the armhole, as a share of it, does not change, since the armhole keeps its length.
    const outcome = altered({
      front: `${line("20")}
  fuller-bust bust-point by -19.999 mm about armscye at 55% into bust-dart`,
    });
    expect(errors(outcome)).toEqual([]);
    for (const edge of ["hem", "center", "side", "armscye"])
      expect(Math.abs(sewn(outcome, "front", edge) - lengthOf(outcome, "old-front", edge))).toBeLessThan(0.005);
  });

  test("widens a waist dart under the bust point, and narrows it for a flatter bust", () => {
    const waist = "  dart waist-dart = hem at 92.5 mm width 30 mm long 150 mm\n";
    const wider = altered({ front: `${waist}${line("12")}` });
    expect(errors(wider)).toEqual([]);
    const width = (of: Outcome): number => {
      const { first, second } = of.garment.pieces.get("front")!.darts.get("waist-dart")!;
      return Math.hypot(second.x - first.x, second.y - first.y);
    };
    expect(width(wider)).toBeCloseTo(42, 6);
    expect(sewn(wider, "front", "hem")).toBeCloseTo(lengthOf(wider, "old-front", "hem") - 30, 3);
    const flatter = altered({
      front: `${waist}${line("12")}
  fuller-bust bust-point by -5 mm about armscye at 55% into bust-dart`,
    });
    expect(errors(flatter)).toEqual([]);
    expect(width(flatter)).toBeCloseTo(37, 6);
  });

  test("cannot be flatter than the dart is wide", () => {
    const outcome = altered({
      front: `${line("10")}
  fuller-bust bust-point by -30 mm about armscye at 55% into bust-dart`,
    });
    expect(codes(outcome)).toContain("dart-used-up");
  });
});

test("a round back keeps what is sewn, and its center stays a fold", () => {
  fc.assert(
    fc.property(amount(2, 25), (by) => {
      const outcome = altered({ back: `  round-back blade-dart = blade by ${by} mm to shoulder at 45%` });
      expect(errors(outcome)).toEqual([]);
      for (const edge of ["neck", "shoulder", "armscye", "side", "hem"])
        expect(sewn(outcome, "back", edge)).toBeCloseTo(lengthOf(outcome, "old-back", edge), 6);
      expect(lengthOf(outcome, "back", "center")).toBeCloseTo(lengthOf(outcome, "old-back", "center") + Number(by), 6);
      for (const { start, end } of outcome.garment.pieces.get("back")!.edges.get("center")!.path) {
        expect(start.x).toBeCloseTo(0, 6);
        expect(end.x).toBeCloseTo(0, 6);
      }
    }),
    { numRuns: 30 },
  );
});

test("a hollow back keeps side, armhole, shoulder and neck, and loses its amount at the center", () => {
  fc.assert(
    fc.property(amount(-20, 20), (by) => {
      const outcome = altered({ back: `  hollow-back hollow by ${by} mm about side` });
      expect(errors(outcome)).toEqual([]);
      for (const edge of ["neck", "shoulder", "armscye", "side"])
        expect(lengthOf(outcome, "back", edge)).toBeCloseTo(lengthOf(outcome, "old-back", edge), 6);
      expect(lengthOf(outcome, "back", "center")).toBeCloseTo(lengthOf(outcome, "old-back", "center") - Number(by), 6);
    }),
    { numRuns: 30 },
  );
});

describe("a fuller upper arm, on the set-in sleeve of R88", () => {
  const sleeve = (lines: string): Outcome =>
    workedText(`chalkline 1
units mm
use "blocks/set-in-sleeve.chalk" as set-in { armhole-back = 228.04 mm, armhole-front = 236.84 mm }
piece block = set-in.sleeve { }
piece sleeve = set-in.sleeve {
${lines}
}
`);

  test.each([
    // Source: trade handbook 3.4, same cap length over a wider biceps line; check value 66 for 390.
    [30, 145.8],
    [60, 128.3],
    [90, 107.6],
  ])("%d wider has a cap %d high", (by, height) => {
    const outcome = sleeve(`  fuller-arm cap by ${by} mm`);
    expect(errors(outcome)).toEqual([]);
    const { path } = outcome.garment.pieces.get("sleeve")!.edges.get("cap")!;
    expect(Math.abs(path[0]!.start.y - placeOf(outcome, "sleeve", "crown").y - height)).toBeLessThanOrEqual(0.1);
  });

  test("keeps its cap, its crown and its wrist, and its two seams alike", () => {
    fc.assert(
      fc.property(amount(-40, 100), (by) => {
        const outcome = sleeve(`  fuller-arm cap by ${by} mm`);
        expect(errors(outcome)).toEqual([]);
        expect(Math.abs(lengthOf(outcome, "sleeve", "cap") - lengthOf(outcome, "block", "cap"))).toBeLessThan(0.001);
        expect(lengthOf(outcome, "sleeve", "wrist")).toBeCloseTo(lengthOf(outcome, "block", "wrist"), 9);
        expect(placeOf(outcome, "sleeve", "crown").y).toBeCloseTo(placeOf(outcome, "block", "crown").y, 9);
        // The back is 0.97 of the front in width, so the wrist is not quite centered any more: within what a seam takes.
        const off = lengthOf(outcome, "sleeve", "under-back") - lengthOf(outcome, "sleeve", "under-front");
        expect(Math.abs(off)).toBeLessThan(0.5);
      }),
      { numRuns: 25 },
    );
  });
});
