// `lay --most` and `lay --over`, on boards that are worked by hand and on the handbook's half circles.
import { describe, expect, test, vi } from "vitest";
import { mostThatFits } from "../../editor/terminal/lay-most.ts";
import { overValues } from "../../editor/terminal/lay-over.ts";
import { type Packers, packersHere } from "../../editor/terminal/packers.ts";
import type { Asked } from "../../kernel/cloth/lay/lay-of.ts";
import type { MostThatFits } from "../../kernel/cloth/lay/most-that-fits.ts";
import { overDrawing } from "../../kernel/cloth/lay/over-drawing.ts";
import { type OverValues, pointsOf } from "../../kernel/cloth/lay/over-values.ts";
import { rungsOf } from "../../kernel/cloth/lay/rungs.ts";
import { fineStep, roundStep, type Varied, variedOf } from "../../kernel/cloth/lay/varied.ts";
import { svg } from "../../kernel/export/svg.ts";
import { layMostReport } from "../../kernel/report/lay-most-report.ts";
import { layOverReport } from "../../kernel/report/lay-over-report.ts";
import { lettersOf } from "../../kernel/report/said.ts";
import { scalarInWords } from "../../kernel/units.ts";
import type { Scalar } from "../../kernel/value.ts";
import { workedText } from "../worked-recipe.ts";

// A busy machine takes its time to lay dozens of cloths.
vi.setConfig({ testTimeout: 60_000 });

const quick: Asked = { spread: "flat", selvedge: 10, tilt: 0, effort: "quick", seed: 1 };

/** Boards as broad as a param says and 60 cm long, on canvas 82 cm wide with 80 between its selvedges, or so many inches. */
const boards = (lines: string, units = "cm", wide = 'param wide = 40 cm from 10 cm to 100 cm "across"'): string =>
  `chalkline 1
recipe "Stage flats"
units ${units}
fabric canvas "canvas" width 82 cm
${wide}
piece board {
  line head = (0, 0) to (wide, 0)
  line far = (wide, 0) to (wide, 60 cm)
  line foot = (0, 60 cm) to (wide, 60 cm)
  line near = (0, 0) to (0, 60 cm)
  outline head, far, foot, near
  grain along near
  allow head, far, foot, near by 0
}
cut board 2 from canvas
${lines}
`;

const workWith =
  (text: string, { name, of }: Varied) =>
  (value: number) =>
    workedText(text, { params: new Map<string, Scalar>([[name, { kind: of, value }]]) });

const variedIn = (text: string, name: string): Varied => {
  const varied = variedOf(workedText(text), name, {});
  if (typeof varied === "string") throw new Error(varied);
  return varied;
};

const most = async (text: string, name: string, atHand: number | undefined, asked = quick): Promise<MostThatFits> => {
  const varied = variedIn(text, name);
  const { garment } = workedText(text);
  const hands = new Map(atHand === undefined ? [] : [[[...garment.fabrics.keys()][0]!, atHand]]);
  return mostThatFits(varied, fineStep(varied, garment.units), asked, hands, workWith(text, varied), packersHere());
};

const over = async (text: string, name: string, step?: number): Promise<OverValues> => {
  const varied = variedIn(text, name);
  const by = step ?? roundStep(varied, "cm", 12);
  return overValues(
    varied,
    by,
    rungsOf(varied.least, varied.most, by, 0),
    quick,
    workWith(text, varied),
    packersHere(),
  );
};

const said = (found: MostThatFits, units: "cm" | "in" = "cm"): string =>
  layMostReport(found, units).map(lettersOf).join("\n");

describe("the most that fits", () => {
  test("is the width between the selvedges, and a step more is too wide", async () => {
    const found = await most(boards(""), "wide", undefined);
    expect(found.largest?.value).toBe(800);
    expect(found.next).toMatchObject({ value: 801, obstacle: { kind: "too-wide", piece: "board", fabric: "canvas" } });
    expect(found.next!.obstacle!.takes).toBeCloseTo(801, 0);
    expect(found.next!.obstacle!.has).toBe(800);
    // One behind the other: 120 cm and 2 at both ends.
    expect(found.largest!.lay.cloths[0]!.length).toBeCloseTo(1200, 0);
    expect(said(found)).toMatch(
      /^wide 80 cm is the most that fits the width of the cloth\.\n {2}At 80\.1 cm, a step more: /,
    );
  });

  test("with cloth at hand is what lies side by side", async () => {
    // Two side by side take 60 cm and 2 at both ends; one behind the other 124.
    const around = (value: number) =>
      boards("", "cm", `param wide = ${value} cm from ${value - 0.5} cm to ${value + 0.5} cm "across"`);
    const found = await most(around(40), "wide", 1000);
    expect(found.largest?.value).toBe(400);
    expect(found.next).toMatchObject({ value: 401, obstacle: { kind: "too-long", fabric: "canvas", has: 1000 } });
    expect(found.next!.obstacle!.takes).toBeCloseTo(1240, 0);
    expect((await most(around(80), "wide", 1240.2)).largest?.value).toBe(800);
    expect((await most(around(80), "wide", 1239)).largest).toBeUndefined();
  });

  test("in inches goes by eighths", async () => {
    // 80 cm are 31.496 in: 31 3/8 fits, and 31 1/2 does not.
    const found = await most(boards("", "in"), "wide", undefined);
    expect(found.largest!.value).toBeCloseTo(31.375 * 25.4, 9);
    expect(found.next!.value).toBeCloseTo(31.5 * 25.4, 9);
    expect(said(found, "in")).toContain("wide 31 3/8 in is the most");
  });

  test("on folded cloth a pair goes through two layers", async () => {
    // 41 cm of each layer less the selvedges, which lie on one another: 40.
    const found = await most(boards(""), "wide", undefined, { ...quick, spread: "folded" });
    expect(found.largest?.value).toBe(400);
  });

  test("stops where a check fails, and names it", async () => {
    const found = await most(
      boards('check wide <= 52.3 cm because "it goes through the dock door"'),
      "wide",
      undefined,
    );
    // A check lets half a mm go.
    expect(found.largest?.value).toBe(523);
    expect(found.next?.obstacle).toMatchObject({ kind: "does-not-work", file: "test.chalk", line: 16 });
    expect(said(found)).toMatch(/the recipe does not work \([a-z-]+, test\.chalk:16\): .*dock door/);
  });

  test("is found beyond a stretch that does not work, which is told", async () => {
    const found = await most(boards("check wide < 30 cm or wide > 50 cm"), "wide", undefined);
    expect(found.largest?.value).toBe(800);
    expect(said(found)).toContain("not every smaller value fits: not ");
  });

  test("is the end of the range where that fits, and nothing where nothing does", async () => {
    const narrow = 'param wide = 40 cm from 10 cm to 60 cm "across"';
    const all = await most(boards("", "cm", narrow), "wide", undefined);
    expect([all.largest?.value, all.next]).toEqual([600, undefined]);
    expect(said(all)).toMatch(/^wide 60 cm, the end of its range, still fits the width of the cloth\./);
    const broad = 'param wide = 90 cm from 85 cm to 95 cm "across"';
    const none = await most(boards("", "cm", broad), "wide", undefined);
    expect([none.largest, none.next]).toEqual([undefined, undefined]);
    expect(said(none)).toMatch(
      /^No wide that was looked at fits the width of the cloth\.\n {2}At 85 cm: With its allowances board is 85(\.0\d)? cm wide across the grain; the cloth has 80 cm/,
    );
  });

  test("of a param without a range is looked for in one that is told", async () => {
    const found = await most(boards("", "cm", "param wide = 40 cm"), "wide", undefined);
    // Four times 40 cm.
    expect([found.varied.least, found.varied.most, found.varied.range]).toEqual([0, 1600, "chosen"]);
    expect(found.largest?.value).toBe(800);
    expect(said(found)).toContain("the recipe states no range, so this one was chosen");
  });

  test("stopped at once says what it knows", async () => {
    const text = boards("");
    const varied = variedIn(text, "wide");
    const stopped = packersHere();
    stopped.stop();
    const found = await mostThatFits(varied, 1, quick, new Map(), workWith(text, varied), stopped);
    expect([found.largest, found.isStopped]).toEqual([undefined, true]);
  });

  // Trade handbook, lay rules: circle skirt of two halves, waist W, length L, allowances of 15 all round: each half is
  // W / (2 pi) + L + 2 x 15 across. W 700: 111.41 + L + 30, so that L may be 658.59 on 800 of cloth.
  test("of the handbook's half circles is what their rule says", async () => {
    const found = await most(halfCircle, "skirt-length", undefined, { ...quick, selvedge: 0 });
    expect(found.largest?.value).toBe(658);
    expect(found.next!.obstacle!.takes).toBeCloseTo(111.41 + 659 + 30, 1);
  });
});

const halfCircle = `chalkline 1
recipe "Circle skirt of two halves"
units mm
fabric shell "crepe" width 800 mm
param skirt-length = 500 mm from 300 mm to 900 mm
let radius = 700 mm / (2 * pi)
piece half {
  point middle-point = (0, 0)
  point waist-down = (0, radius)
  point waist-right = (radius, 0)
  point waist-left = (0 - radius, 0)
  arc waist-a = waist-right to waist-down around middle-point
  arc waist-b = waist-down to waist-left around middle-point
  point hem-down = waist-down down skirt-length
  arc hem-a = waist-right right skirt-length to hem-down around middle-point
  arc hem-b = hem-down to waist-left left skirt-length around middle-point
  line side-right = waist-right to hem-a.start
  line side-left = waist-left to hem-b.end
  outline waist-a, waist-b, side-left, hem-b, hem-a, side-right
  grain along side-right
  allow waist-a, waist-b, hem-a, hem-b, side-left, side-right by 15 mm
}
cut half 2 from shell
`;

describe("what is varied", () => {
  const asked = (name: string, range: Parameters<typeof variedOf>[2] = {}) =>
    variedOf(workedText(boards("let twice = 2 * wide")), name, range);

  test("has to be there, to have a range, and to stay in it", () => {
    expect(asked("wied")).toBe("The recipe has no param or measure called wied. Did you mean wide?");
    expect(asked("something")).toContain("It has the param wide.");
    expect(asked("twice")).toContain("worked out by the recipe");
    expect(asked("wide", { to: { kind: "length", value: 2000 } })).toBe(
      "The recipe has wide from 10 cm to 100 cm; look no farther than that.",
    );
    expect(asked("wide", { from: { kind: "number", value: 3 } })).toBe("wide is a length, and 3 is a plain number.");
    const turned = { from: { kind: "length", value: 500 }, to: { kind: "length", value: 200 } } as const;
    expect(asked("wide", turned)).toContain("the first is the larger one");
    expect(asked("wide", { from: { kind: "length", value: 200 } })).toMatchObject({
      least: 200,
      most: 1000,
      range: "asked",
    });
  });

  test.each([
    [{ of: "length", least: 0, most: 200 }, "cm", "2 cm"],
    [{ of: "length", least: 0, most: 1000 }, "mm", "100 mm"],
    [{ of: "length", least: 0, most: 203.2 }, "in", "1 in"],
    [{ of: "length", least: 0, most: 12 * 25.4 * 12 }, "in", "12 in"],
    [{ of: "angle", least: 0, most: Math.PI / 2 }, "cm", "10 deg"],
    [{ of: "number", least: 0.5, most: 1 }, "cm", "0.05"],
    [{ of: "number", least: 4, most: 12 }, "cm", "1"],
  ] as const)("%j in %s goes by round steps of %s", (range, units, words) => {
    const isWhole = Number.isInteger(range.least) && Number.isInteger(range.most);
    const varied = { name: "x", kind: "param", note: "", standard: 1, range: "stated", isWhole, ...range } as Varied;
    expect(scalarInWords({ kind: range.of, value: roundStep(varied, units, 12) }, units)).toBe(words);
  });
});

describe("the cloth over a param", () => {
  test("has a row for every value, and says which are too wide and which do not work", async () => {
    const table = await over(boards("check wide > 15 cm"), "wide");
    expect(table.rows.map(({ value }) => value)).toEqual([100, 200, 300, 400, 500, 600, 700, 800, 900, 1000]);
    const points = pointsOf(table, "canvas", "cm");
    // 64 cm, sold as 70, while two lie side by side; and 124, sold as 130.
    expect(points.map(({ cloth, because }) => (because.length > 0 ? undefined : cloth?.lengthToBuy))).toEqual([
      undefined,
      700,
      700,
      700,
      1300,
      1300,
      1300,
      1300,
      undefined,
      undefined,
    ]);
    expect(points[1]!.cloth!.widest).toMatchObject({ piece: "board" });
    expect(points[1]!.cloth!.widest!.width).toBeCloseTo(200, 0);
    const text = layOverReport(table, "cm").map(lettersOf).join("\n");
    expect(text).toContain("Cloth over wide from 10 cm to 100 cm by 10 cm");
    expect(text).toMatch(/\n {2,}10 cm {2}none .*test\.chalk:16: /);
    expect(text).toMatch(/\n {2,}90 cm {2}none +board 90(\.0\d)? cm +board is 10(\.0\d)? cm too wide for it\./);
    const bars = text.split("\n").flatMap((line) => (line.match(/#+$/) ?? []).map((bar) => bar.length));
    // The longest bar has 24 signs: 24 x 70 / 130 = 12.9.
    expect(bars).toEqual([13, 13, 13, 24, 24, 24, 24]);
    expect(table.rows.at(0)!.failures).toHaveLength(1);
  });

  test("stopped on the way has the rows that were laid by then, and says so", async () => {
    const text = boards("");
    const varied = variedIn(text, "wide");
    const here = packersHere();
    let packed = 0;
    const packers: Packers = {
      ...here,
      pack: async (task) => {
        const result = await here.pack(task);
        packed += 1;
        if (packed === 3) here.stop();
        return result;
      },
      get isStopped() {
        return here.isStopped;
      },
    };
    const table = await overValues(varied, 100, rungsOf(100, 1000, 100, 0), quick, workWith(text, varied), packers);
    expect(table.isStopped).toBe(true);
    expect(table.rows.map(({ value }) => value)).toEqual([100, 200, 300]);
    for (const { lay } of table.rows) expect(lay.cloths[0]!.lengthToBuy).toBe(700);
    expect(layOverReport(table, "cm").map(lettersOf).join("\n")).toContain("Stopped");
  });

  test("is drawn as points in their places, with crosses where it cannot be cut, and the same every time", async () => {
    const table = await over(boards(""), "wide", 300);
    const drawing = overDrawing(table, "canvas", "canvas", "cm");
    const [{ strokes, texts }] = drawing.groups as [(typeof drawing.groups)[number]];
    // 10, 30, 60 and 90 cm, and 100 at the end of the range: three are cut, two are not.
    expect(strokes.filter(({ kind }) => kind === "arrowhead")).toHaveLength(3);
    const squares = strokes.filter(({ kind, path }) => kind === "notch" && path.length === 4);
    const crosses = strokes.filter(({ kind, path }) => kind === "notch" && path.length === 1);
    expect([squares.length, crosses.length]).toEqual([3, 4]);
    expect(texts.map(({ text }) => text)).toContain("board too wide");
    expect(texts.map(({ text }) => text)).toContain("wide (across)");
    // 0.7, 0.7 and 1.3 m on an axis that ends at 1.4 m, which stands 90 mm high.
    const middles = squares.map(({ path }) => path[0]!.start.y + 1.1);
    [700, 700, 1300].forEach((length, i) => {
      expect(middles[i]).toBeCloseTo(90 - (90 * length) / 1400, 6);
    });
    expect(drawing.words).toContain("At wide 30 cm buy 0.7 m");
    expect(svg(drawing)).toBe(svg(overDrawing(await over(boards(""), "wide", 300), "canvas", "canvas", "cm")));
  });
});
