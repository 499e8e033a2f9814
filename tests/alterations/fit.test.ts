// Bust, back and upper arm: what a fitting pins, worked on the handbook's blocks.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { distance, minus } from "../../kernel/geometry/point.ts";
import { toDegrees, turnBetween } from "../../kernel/geometry/trig.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { boundary } from "../../kernel/outline.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import type { Dart } from "../../kernel/working.ts";
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

describe("a bust dart above its hinge", () => {
  const mouths = ["shoulder at 50%", "shoulder at 20%", "neck at 50%", "armscye at 25%"] as const;
  const fuller = (by: string, mouth: string): string =>
    `  fuller-bust bust-dart = bust-point by ${by} mm about armscye at 55% to ${mouth}`;
  const dartOf = ({ garment }: Outcome): Dart => garment.pieces.get("front")!.darts.get("bust-dart")!;

  test("leaves a whole outline, keeps what is sewn, and adds its amount at the hem and what it fell at the center", () => {
    fc.assert(
      fc.property(amount(2, 30), fc.constantFrom(...mouths), (by, mouth) => {
        const outcome = altered({ front: fuller(by, mouth) });
        expect(errors(outcome)).toEqual([]);
        expect(boundary(outcome.garment.pieces.get("front")!)).toBeDefined();
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

  test("has legs of one length, and grows with its amount as 2 R sin of half its angle does", () => {
    // Source: trade handbook 4.9, intake at radius R of a dart of angle a: 2 R sin(a / 2).
    for (const mouth of mouths) {
      const widths = ["5", "15", "25"].map((by) => {
        const { first, second, tip } = dartOf(altered({ front: fuller(by, mouth) }));
        const [one, other] = [distance(first, tip), distance(second, tip)];
        expect(one).toBeCloseTo(other, 6);
        const angle = Math.abs(turnBetween(minus(first, tip), minus(second, tip)));
        expect(distance(first, second)).toBeCloseTo(2 * one * Math.sin(angle / 2), 6);
        return distance(first, second);
      });
      expect(widths[0]).toBeLessThan(widths[1]!);
      expect(widths[1]).toBeLessThan(widths[2]!);
    }
  });

  test("is the bust dart from the side, moved: a dart may sit anywhere round its bust point", () => {
    // Source: trade handbook 4.9, the angle at the pivot is the invariant of a dart that is moved.
    for (const mouth of mouths) {
      const here = altered({ front: fuller("20", mouth) });
      const moved = altered({
        front: `${fuller("20", "side at 60 mm")}
  move-dart bust-dart to ${mouth} about bust-point`,
      });
      for (const leg of ["first", "second", "tip"] as const)
        expect(distance(dartOf(here)[leg], dartOf(moved)[leg])).toBeLessThan(1e-6);
      for (const place of ["shoulder-tip", "underarm", "side-hem", "neck-point", "front-neck"])
        expect(distance(placeOf(here, "front", place), placeOf(moved, "front", place))).toBeLessThan(1e-6);
    }
  });

  test("gives for a flatter bust, and takes more for a fuller one, as if it had been at the side meanwhile", () => {
    for (const by of ["-8", "8"]) {
      const drawn = `${fuller("20", "shoulder at 50%")}\n`;
      const before = dartOf(altered({ front: drawn }));
      const here = altered({
        front: `${drawn}  fuller-bust bust-point by ${by} mm about armscye at 55% into bust-dart`,
      });
      const moved = altered({
        front: `${drawn}  move-dart bust-dart to side at 60 mm about bust-point
  fuller-bust bust-point by ${by} mm about armscye at 55% into bust-dart
  move-dart bust-dart to shoulder at 50% about bust-point`,
      });
      expect(errors(here)).toEqual([]);
      const { first, second, tip } = dartOf(here);
      expect(distance(first, tip)).toBeCloseTo(distance(second, tip), 6);
      expect(Math.sign(distance(first, second) - distance(before.first, before.second))).toBe(Math.sign(Number(by)));
      for (const edge of ["neck", "shoulder", "armscye", "side", "hem", "center"])
        expect(sewn(here, "front", edge)).toBeCloseTo(sewn(moved, "front", edge), 6);
      expect(placeOf(here, "front", "bust-point").x - 92.5).toBeCloseTo(20 + Number(by), 6);
    }
  });

  test("is refused where it would open between the cut to the hem and the cut to the center, which both move", () => {
    for (const mouth of ["hem at 40 mm", "hem at 92.5 mm", "center at 80%"]) {
      const outcome = altered({ front: fuller("12", mouth) });
      expect(codes(outcome)).toContain("bust-dart-below");
      expect(lengthOf(outcome, "front", "hem")).toBe(lengthOf(outcome, "old-front", "hem"));
    }
    expect(codes(altered({ front: fuller("12", "armscye at 54%") }))).toContain("dart-at-hinge");
  });
});

describe("where a round back may open", () => {
  const line = (mouth: string, blade = "blade"): Outcome =>
    altered({ back: `  round-back d = ${blade} by 8 mm to ${mouth}` });
  const refused = (outcome: Outcome): string =>
    outcome.findings
      .filter(({ severity }) => severity === "error")
      .map(({ code, message }) => `${code}: ${message}`)
      .join();

  test("is the shoulder, and what is named in its place is said", () => {
    expect(refused(line("shoulder at 50%"))).toBe("");
    for (const edge of ["neck", "armscye", "side", "hem", "center"]) {
      const outcome = line(`${edge} at 30%`);
      expect(refused(outcome)).toContain("dart-off-shoulder");
      expect(refused(outcome)).toContain(`would open on the ${edge}, and the shoulder above the armscye is shoulder`);
      expect(lengthOf(outcome, "back", "center")).toBe(lengthOf(outcome, "old-back", "center"));
    }
  });

  test("is found on a center that is a seam, since that reaches further down than an armhole", () => {
    expect(refused(altered({ back: "  mark center as seam\n  round-back d = blade by 8 mm to shoulder at 50%" }))).toBe(
      "",
    );
    expect(
      refused(altered({ back: "  mark center as seam\n  round-back d = blade by 8 mm to neck at 50%" })),
    ).toContain("dart-off-shoulder");
  });

  test.each(["(95 mm, 5 mm)", "(95 mm, 300 mm)"])(
    "is nowhere for a blade at %s, above or below the armhole",
    (blade) => {
      expect(refused(line("shoulder at 50%", blade))).toContain("blade-off-armhole");
      expect(refused(line("neck at 50%", blade))).toContain("blade-off-armhole");
    },
  );
});

describe("what a hollow back swings about", () => {
  const refused = (back: string): string => {
    const outcome = altered({ back });
    return outcome.findings
      .filter(({ severity }) => severity === "error")
      .map(({ code, message }) => `${code}: ${message}`)
      .join();
  };

  test("is not an armhole", () => {
    const found = refused("  hollow-back blade by 10 mm about armscye");
    expect(found).toContain("side-is-armhole");
    expect(found).toContain("side goes on below it");
  });

  test("is a side, of a skirt as well, and of one whose seam is in two parts", () => {
    for (const seam of ["side", "side-high"]) {
      const outcome = workedText(`chalkline 1
units mm
piece skirt {
  line waist     = (0, 0) to (190 mm, -8 mm)
  line side-high = (190 mm, -8 mm) to (240 mm, 200 mm)
  line side-low  = (240 mm, 200 mm) to (240 mm, 600 mm)
${seam === "side" ? "  join side = side-high, side-low\n" : ""}  line hem       = (0, 600 mm) to (240 mm, 600 mm)
  line center    = (0, 0) to (0, 600 mm)
  outline center, waist, ${seam === "side" ? "side" : "side-high, side-low"}, hem
  hollow-back (100 mm, 60 mm) by 8 mm about ${seam}
}
`);
      expect(errors(outcome)).toEqual([]);
    }
  });

  test.each(["fold", "opening", "seam"])("is not a center that is marked as %s", (role) => {
    const lines = `  mark center as ${role}\n  hollow-back hollow by 10 mm about`;
    expect(refused(`${lines} center`)).toContain("side-is-center");
    expect(refused(`${lines} center`)).toContain("center ");
    expect(refused(`${lines} side`)).toBe("");
  });
});

describe("a back cut low, whose side reaches higher than its center", () => {
  const low = (lines: string): Outcome =>
    workedText(`chalkline 1
units mm
piece low {
  line open-back = (0, 350 mm) to (150 mm, -20 mm)
  line shoulder  = (150 mm, -20 mm) to (180 mm, -10 mm)
  line armhole   = (180 mm, -10 mm) to (240 mm, 230 mm)
  line side      = (240 mm, 230 mm) to (240 mm, 600 mm)
  line hem       = (0, 600 mm) to (240 mm, 600 mm)
  line center    = (0, 350 mm) to (0, 600 mm)
  outline center, open-back, shoulder, armhole, side, hem
${lines}
}
`);

  test("is shortened about its side, whether the center is a seam or a fold", () => {
    for (const role of ["seam", "fold"])
      expect(errors(low(`  mark center as ${role}\n  hollow-back (120 mm, 420 mm) by 10 mm about side`))).toEqual([]);
  });

  test("is not shortened about a fold", () => {
    expect(codes(low("  mark center as fold\n  hollow-back (120 mm, 420 mm) by 10 mm about center"))).toContain(
      "side-is-center",
    );
  });

  test("is not shortened level with its open back, along which nothing can go straight up", () => {
    expect(codes(low("  hollow-back (170 mm, 300 mm) by 10 mm about side"))).toContain("waist-off-center");
  });
});

describe("an alteration done in two halves lies on the same grain", () => {
  const straight = (outcome: Outcome, piece: string): void => {
    for (const { start, end } of outcome.garment.pieces.get(piece)!.edges.get("center")!.path) {
      expect(start.x).toBeCloseTo(0, 6);
      expect(end.x).toBeCloseTo(0, 6);
    }
  };

  test("of a hollow back", () => {
    const outcome = altered({
      back: "  hollow-back hollow by 9 mm about side\n  hollow-back hollow by 9 mm about side",
    });
    expect(errors(outcome)).toEqual([]);
    straight(outcome, "back");
    expect(lengthOf(outcome, "back", "center")).toBeCloseTo(lengthOf(outcome, "old-back", "center") - 18, 6);
  });

  test("of a round back", () => {
    const outcome = altered({
      back: `  point low-blade = (95 mm, 200 mm)
  round-back d = low-blade by 9 mm to shoulder at 45%
  round-back low-blade by 9 mm into d`,
    });
    expect(errors(outcome)).toEqual([]);
    straight(outcome, "back");
    expect(lengthOf(outcome, "back", "center")).toBeCloseTo(lengthOf(outcome, "old-back", "center") + 18, 6);
  });

  test("of a bust, the second time with a hinge on the part that has turned", () => {
    const outcome = altered({
      front: `  fuller-bust d = bust-point by 9 mm about armscye at 55% to shoulder at 50%
  fuller-bust bust-point by 9 mm about armscye at 30% into d`,
    });
    expect(errors(outcome)).toEqual([]);
    straight(outcome, "front");
    expect(placeOf(outcome, "front", "bust-point").x).toBeCloseTo(92.5 + 18, 6);
    for (const { start, end } of outcome.garment.pieces.get("front")!.edges.get("hem")!.path)
      expect(start.y).toBeCloseTo(end.y, 6);
  });
});

test("a bust dart does not open on a fold", () => {
  const outcome = altered({
    front: "  mark center as fold\n  fuller-bust d = bust-point by 9 mm about armscye at 55% to center at 15%",
  });
  expect(codes(outcome)).toContain("dart-on-fold");
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

  test("leaves a notch near the underarm where the armhole has it, and one near the crown on its side of the crown", () => {
    // Source: trade handbook 3.4: the back of this cap is 242.75 long; no ease lies between underarm and notch, and the
    // notches are set at a third of each armhole. So 242.6 and 242.9 mm lie on either side of the crown.
    for (const by of ["-30", "60", "110"]) {
      const outcome = sleeve(`  notch cap at 242.6 mm
  notch cap at 242.9 mm
  fuller-arm cap by ${by} mm`);
      expect(errors(outcome)).toEqual([]);
      const { edges, notches } = outcome.garment.pieces.get("sleeve")!;
      const { path } = edges.get("cap")!;
      const along = notches.map(({ point }) => nearest(path, point).at).sort((a, b) => a - b);
      const crown = nearest(path, placeOf(outcome, "sleeve", "crown")).at;
      expect(along.length).toBe(5);
      expect(along[0]).toBeCloseTo(228.04 / 3, 3);
      expect(pathLength(path) - along[4]!).toBeCloseTo(236.84 / 3, 3);
      expect(along[2]).toBeCloseTo(crown, 6);
      for (const [beside, was] of [
        [along[1]!, 0.15],
        [along[3]!, -0.15],
      ] as const)
        expect(Math.abs(crown - beside - was)).toBeLessThan(0.01);
    }
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
