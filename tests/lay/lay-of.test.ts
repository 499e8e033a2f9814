import { describe, expect, test } from "vitest";
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { estimateOf } from "../../kernel/cloth/lay/estimate.ts";
import { layDrawing, lifeSize, tenth } from "../../kernel/cloth/lay/lay-drawing.ts";
import { type Asked, type LaidCloth, type Lay, layOf } from "../../kernel/cloth/lay/lay-of.ts";
import { endAllowance, lengthToBuy } from "../../kernel/cloth/lay/length-to-buy.ts";
import { svg } from "../../kernel/export/svg.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import type { Garment } from "../../kernel/working.ts";
import { judged } from "../packing/second-judge.ts";
import { workedRecipe, workedText } from "../worked-recipe.ts";

const quick: Asked = { spread: "flat", selvedge: 0, tilt: 0, effort: "quick", seed: 1 };

const laid = (garment: Garment, asked: Asked): Lay => {
  const search = layOf(garment, asked);
  for (;;) {
    const { done, value } = search.next();
    if (done) return value;
  }
};

const onlyCloth = ({ cloths }: Lay): LaidCloth => {
  expect(cloths).toHaveLength(1);
  return cloths[0]!;
};

/** Boards of so many cm, the first along the grain, without allowances. */
const boards = (fabric: string, cut: string, long = 60, wide = 40): Garment =>
  workedText(`chalkline 1
recipe "Stage flats"
units cm
fabric canvas "canvas" ${fabric}
piece board {
  line head = (0, 0) to (${wide} cm, 0)
  line far = (${wide} cm, 0) to (${wide} cm, ${long} cm)
  line foot = (0, ${long} cm) to (${wide} cm, ${long} cm)
  line near = (0, 0) to (0, ${long} cm)
  outline head, far, foot, near
  grain along near
  allow head, far, foot, near by 0
}
${cut}
`).garment;

/** No two pieces over one another and all on the cloth, by Clipper2 in WebAssembly; the rims stand out by some thousandths of a mm. */
const expectSound = (cloth: LaidCloth): void => {
  const strip = {
    width: cloth.usable.to,
    shapes: cloth.placements.map(({ outline }) => ({ outline, turns: [0], count: 1 })),
  };
  const placements = strip.shapes.map((_, shape) => ({ shape, turn: 0, by: { x: 0, y: 0 } }));
  const { overlap, outside } = judged(strip, { length: cloth.length, placements });
  expect(overlap).toBeLessThan(0.01);
  // A tenth of a mm is given, so that a piece just as wide as the cloth fits.
  expect(outside).toBeLessThan(0.101);
  for (const { outline } of cloth.placements)
    expect(Math.min(...outline.map(({ y }) => y))).toBeGreaterThan(cloth.usable.from - 0.1);
};

describe("boards, worked by hand", () => {
  test("two of 60 by 40 lie side by side on 80", () => {
    const cloth = onlyCloth(laid(boards("width 80 cm", "cut board 2 from canvas"), quick));
    expect(cloth.length).toBeCloseTo(600, 0);
    expect(cloth.efficiency).toBeCloseTo(1, 2);
    // 60 cm and 2 at both ends: 64, which a shop sells as 70.
    expect(cloth.lengthToBuy).toBe(700);
    expect(cloth.placements.map(({ piece, copy, mirrored }) => [piece, copy, mirrored])).toEqual([
      ["board", 1, false],
      ["board", 2, true],
    ]);
    expectSound(cloth);
  });

  test("and one behind the other on 79, or between selvedges of 1", () => {
    const narrow = onlyCloth(laid(boards("width 79 cm", "cut board 2 from canvas"), quick));
    expect(narrow.length).toBeCloseTo(1200, 0);
    const wide = onlyCloth(laid(boards("width 80 cm", "cut board 2 from canvas"), { ...quick, selvedge: 10 }));
    expect(wide.length).toBeCloseTo(1200, 0);
    expect(wide.usable).toEqual({ from: 10, to: 790 });
    expectSound(wide);
  });

  test("cloth that shrinks by a tenth in its width has room for one, and more of its length is bought", () => {
    const cloth = onlyCloth(
      laid(boards("width 80 cm shrink-width 10% shrink-length 5%", "cut board 2 from canvas"), quick),
    );
    expect(cloth.length).toBeCloseTo(1200, 0);
    // 124 cm after shrinking are 124 / 0.95 = 130.53 before.
    expect(cloth.lengthToBuy).toBe(1400);
  });

  test("folded, a pair is cut at one go, and an odd one leaves a copy over", () => {
    const folded = { ...quick, spread: "folded" } as const;
    const pair = onlyCloth(laid(boards("width 80 cm", "cut board 2 from canvas"), folded));
    expect(pair.placements).toHaveLength(1);
    expect(pair.length).toBeCloseTo(600, 0);
    expect(pair.efficiency).toBeCloseTo(1, 2);
    const three = onlyCloth(laid(boards("width 80 cm", "cut board 3 from canvas"), folded));
    expect(three.placements).toHaveLength(2);
    // Three boards of the four that are cut: 3/4.
    expect(three.efficiency).toBeCloseTo(0.75, 2);
  });

  test("a piece wider than the cloth gets the ways out in numbers, and the others are laid", () => {
    const cloth = onlyCloth(laid(boards("width 39 cm", "cut board 1 from canvas"), quick));
    expect(cloth.placements).toEqual([]);
    expect(cloth.length).toBe(0);
    const [wide] = cloth.tooWide;
    expect(wide?.message).toMatch(/^With its allowances board is 40\.?\d* cm wide across the grain; the cloth has 39/);
    // Two parts with 1.5 cm on either side of the seam: (40 + 3) / 2 = 21.5.
    expect(wide?.hint).toMatch(/2 parts of 21\.5\d? cm each/);
    expect(wide?.hint).not.toContain("turn its grain");
    const turned = onlyCloth(laid(boards("width 39 cm", "cut board 1 from canvas", 30, 60), quick)).tooWide[0];
    expect(turned?.hint).toMatch(/^Turn its grain line across, when it is 30/);
  });

  test("five hundred of them are laid in a moment", () => {
    const cloth = onlyCloth(laid(boards("width 120.1 cm", "cut board 500 from canvas"), quick));
    expect(cloth.placements).toHaveLength(500);
    // Three side by side: 167 rows of 60.
    expect(cloth.length).toBeCloseTo(167 * 600, -2);
  });
});

describe("the handbook's half circles", () => {
  // Trade handbook, lay rules: circle skirt, W 700, L 650, allowances 15: hem radius 761.41; each half needs 1552.8 along by
  // 791.4 across; two halves side by side 1552.8, end to end 3105.6.
  const halves = (width: number): Garment =>
    workedText(`chalkline 1
recipe "Circle skirt of two halves"
units mm
fabric shell "crepe" width ${width} mm
let radius = 700 mm / (2 * pi)
piece half {
  point middle-point = (0, 0)
  point waist-down = (0, radius)
  point waist-right = (radius, 0)
  point waist-left = (0 - radius, 0)
  arc waist-a = waist-right to waist-down around middle-point
  arc waist-b = waist-down to waist-left around middle-point
  point hem-down = waist-down down 650 mm
  arc hem-a = waist-right right 650 mm to hem-down around middle-point
  arc hem-b = hem-down to waist-left left 650 mm around middle-point
  line side-right = waist-right to hem-a.start
  line side-left = waist-left to hem-b.end
  outline waist-a, waist-b, side-left, hem-b, hem-a, side-right
  grain along side-right
  allow waist-a, waist-b, hem-a, hem-b by 15 mm
  allow side-left, side-right by 15 mm
}
cut half 2 from shell
`).garment;

  test("lie side by side on cloth of twice their breadth", () => {
    const cloth = onlyCloth(laid(halves(1583), quick));
    expect(cloth.length).toBeGreaterThan(1552.7);
    expect(cloth.length).toBeLessThan(1552.9 + 8);
    expectSound(cloth);
  });

  test("and at most twice as long on cloth of their breadth", () => {
    const cloth = onlyCloth(laid(halves(792), quick));
    expect(cloth.length).toBeLessThan(3105.7 + 16);
    // A little less than end to end, for one reaches into the waist of the other.
    expect(cloth.length).toBeGreaterThan(2800);
    expectSound(cloth);
  });
});

describe("recipes of the workroom", () => {
  const coat = workedRecipe("lobby-coat-collar.chalk").garment;

  test.each(["flat", "folded", "tubular"] as const)("the coat with a collar on %s cloth", (spread) => {
    const lay = laid(coat, { ...quick, spread, selvedge: 10 });
    const cloth = onlyCloth(lay);
    expectSound(cloth);
    expect(cloth.tooWide).toEqual([]);
    const counts = new Map<string, number>();
    for (const { piece } of cloth.placements) counts.set(piece, (counts.get(piece) ?? 0) + 1);
    for (const { piece, count } of coat.cuts) {
      const isOnFold = cloth.placements.some((each) => each.piece === piece && each.onFold);
      const wanted = spread === "flat" || isOnFold ? count : Math.ceil(count / 2);
      expect(counts.get(piece)).toBe(wanted);
    }
    // On the fold means at the fold.
    for (const { onFold, outline } of cloth.placements)
      if (onFold) expect(Math.min(...outline.map(({ y }) => y))).toBe(0);
  });

  test("the same question has the same answer, and another number another", () => {
    const swing = workedRecipe("lobby-coat-swing.chalk").garment;
    const lay = laid(swing, quick);
    expect(laid(swing, quick)).toEqual(lay);
    expect(laid(swing, { ...quick, seed: 2 })).not.toEqual(lay);
  });

  test("no piece is laid smaller than it is", () => {
    const cloth = onlyCloth(laid(coat, quick));
    for (const { outline } of cloth.placements.filter(({ piece }) => piece === "sleeve")) {
      const { left, right, top, bottom } = bounds([cuttingLine(coat.pieces.get("sleeve")!)!.path]);
      const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
      const [long, wide] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
      // The grain of the sleeve runs down the page; the rim stands out by some hundredths of a mm.
      expect(long - (bottom - top)).toBeGreaterThanOrEqual(0);
      expect(long - (bottom - top)).toBeLessThan(0.2);
      expect(wide - (right - left)).toBeGreaterThanOrEqual(0);
      expect(wide - (right - left)).toBeLessThan(0.2);
    }
  });

  test("one-way cloth has all pieces the same way up, and costs no less", () => {
    const cape = workedRecipe("stage-cape.chalk").garment;
    const oneWay = onlyCloth(laid(cape, quick));
    expect(oneWay.oneWay).toBe(true);
    expect(oneWay.placements.map(({ rotation }) => rotation)).toEqual(oneWay.placements.map(() => 0));
    const fabrics = new Map([...cape.fabrics].map(([name, fabric]) => [name, { ...fabric, oneWay: false }]));
    expect(onlyCloth(laid({ ...cape, fabrics }, quick)).length).toBeLessThan(oneWay.length);
  });

  test("a tilt is used up to what is allowed and no further", () => {
    const cloth = onlyCloth(laid(workedRecipe("lobby-coat-swing.chalk").garment, { ...quick, tilt: 0.02 }));
    const tilts = cloth.placements.map(({ rotation }) => Math.min(Math.abs(rotation), Math.abs(rotation - Math.PI)));
    expect(Math.max(...tilts)).toBeLessThanOrEqual(0.02 + 1e-12);
    expectSound(cloth);
  });

  test("stopped at the first chance, there is a whole lay", () => {
    const first = layOf(coat, { ...quick, effort: "buying" }).next();
    expect(first.done).toBe(false);
    const { best } = first.value as { best: Lay };
    expect(onlyCloth(best).placements).toHaveLength(12);
    expectSound(onlyCloth(best));
  });

  test("the drawing has every piece, in a tenth of the size and in life size", () => {
    const cloth = onlyCloth(laid(coat, quick));
    const [small, large] = [tenth, lifeSize].map((size) => layDrawing(cloth, "cm", size));
    const pieces = small!.groups.filter(({ of }) => of === "piece");
    expect(pieces.map(({ name }) => name).sort()).toEqual(
      cloth.placements.map(({ piece, copy }) => `${piece}-${copy}`).sort(),
    );
    const lengthOf = ({ groups }: typeof small & object): number => {
      const { left, right } = bounds(groups.flatMap(({ strokes }) => strokes.map(({ path }) => path)));
      return right - left;
    };
    expect(lengthOf(small!)).toBeCloseTo(cloth.length / 10, 0);
    expect(lengthOf(large!)).toBeCloseTo(cloth.length, 0);
    expect(svg(small!)).toBe(svg(layDrawing(cloth, "cm", tenth)));
  });
});

describe("a piece on the fold", () => {
  // Half a sail of 30 by 60 at the fold, broad at its top, and a gore that fills the rest of 60 cm only where the sail lies with
  // its foot toward the beginning.
  const sails = (fabric: string): Garment =>
    workedText(`chalkline 1
recipe "Stage sails"
units cm
fabric canvas "canvas" width 60 cm ${fabric}
piece sail {
  line head = (0, 0) to (30 cm, 0)
  line leech = (30 cm, 0) to (0, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline head, leech, center
  mark center as fold
  allow head, leech by 0
}
piece gore {
  line head = (0, 0) to (30 cm, 0)
  line leech = (30 cm, 0) to (0, 60 cm)
  line edge = (0, 0) to (0, 60 cm)
  outline head, leech, edge
  grain along edge
  allow head, leech, edge by 0
}
cut sail 1 from canvas
cut gore 2 from canvas
`).garment;
  const folded = { ...quick, spread: "folded" } as const;

  test("lies with its foot first where that is shorter, turned by half a turn as it opens out", () => {
    const cloth = onlyCloth(laid(sails(""), folded));
    expectSound(cloth);
    // Two triangles of 30 by 60 and a hair between them.
    expect(cloth.length).toBeLessThan(602);
    const sail = cloth.placements.find(({ onFold }) => onFold)!;
    const end = Math.max(...sail.outline.map(({ x }) => x));
    const broad = sail.outline.filter(({ y }) => y > 295).map(({ x }) => x);
    // Its broad end is where its rotation says that its top lies.
    expect(broad.every((x) => (sail.rotation === 0 ? x < 5 : x > end - 5))).toBe(true);
  });

  test("lies with its top first on cloth with one way", () => {
    const cloth = onlyCloth(laid(sails("one-way"), folded));
    expect(cloth.placements.map(({ rotation }) => rotation)).toEqual([0, 0]);
    expect(cloth.length).toBeGreaterThan(700);
  });
});

describe("what cannot be laid", () => {
  test("cloth of no width, cloth of nothing but selvedge, and a recipe without cloth", () => {
    expect(laid(boards("weight 200 gsm", "cut board 2 from canvas"), quick).none[0]?.because).toBe(
      "The recipe does not say how wide canvas is.",
    );
    expect(laid(boards("width 2 cm", "cut board 2 from canvas"), { ...quick, selvedge: 10 }).none[0]?.because).toBe(
      "Nothing of canvas is left between its selvedges.",
    );
    expect(laid(boards("width 80 cm", ""), quick)).toEqual({ cloths: [], none: [] });
    expect(laid(boards("weight 200 gsm", "cut board 2 from canvas"), { ...quick, width: 800 }).cloths).toHaveLength(1);
  });

  test("a piece without an outline is named, and the rest is laid", () => {
    const garment = boards(
      "width 80 cm",
      "cut board 2 from canvas\npiece flap {\n  line top = (0, 0) to (5 cm, 0)\n}\ncut flap 1 from canvas",
    );
    const cloth = onlyCloth(laid(garment, quick));
    expect(cloth.placements).toHaveLength(2);
    expect(cloth.notLaid).toEqual([{ piece: "flap", because: "The outline of flap is not drawn or stands open." }]);
  });

  test("an outline that crosses itself is laid by its outer rim", () => {
    const garment = workedText(`chalkline 1
recipe "A bow for a hat"
units cm
fabric ribbon "ribbon" width 20 cm
piece bow {
  line one = (0, 0) to (10 cm, 10 cm)
  line two = (10 cm, 10 cm) to (10 cm, 0)
  line three = (10 cm, 0) to (0, 10 cm)
  line four = (0, 10 cm) to (0, 0)
  outline one, two, three, four
  grain along two
  allow one, two, three, four by 1 cm
}
cut bow 2 from ribbon
`).garment;
    const { cloths } = laid(garment, quick);
    expect(cloths[0]!.placements).toHaveLength(2);
    expectSound(cloths[0]!);
  });
});

describe("lengths and rules", () => {
  test("cloth is sold by 10 cm, or by eighths of a yard", () => {
    expect(endAllowance).toBe(40);
    expect(lengthToBuy(1000, 0, "cm")).toBe(1100);
    expect(lengthToBuy(1060, 0, "mm")).toBe(1100);
    // 1040 mm are 9.1 eighths of 114.3 mm: ten, which are 1 1/4 yd.
    expect(lengthToBuy(1000, 0, "in")).toBeCloseTo(1143, 9);
    // Handbook, shrinkage: cut length = finished / (1 - s), 1000 at 5 % is 1052.63.
    expect(lengthToBuy(960, 0.05, "cm")).toBe(1100);
    expect(lengthToBuy(1006, 0.05, "cm")).toBe(1200);
  });

  test("the rule of area is the handbook's: 3.2 m2, 1450 wide, 0.80 used: 2758.6", () => {
    const { least, most } = estimateOf(3_200_000, 1450);
    expect((least * 0.85) / 0.8).toBeCloseTo(2758.6, 1);
    expect((most * 0.6) / 0.8).toBeCloseTo(2758.6, 1);
  });
});
