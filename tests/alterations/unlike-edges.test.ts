// Steps for shoulder, armhole, neck and front edge take the edges that can be these, and no others: on the coat block, whose
// edges the trade handbook (3.2) names, and on garments that are cut another way.
import { describe, expect, test } from "vitest";
import type { Diagnostic } from "../../grammar/diagnostic.ts";
import { workedText } from "../worked-recipe.ts";

const edges = ["opening", "neck", "shoulder", "armscye", "side", "hem"] as const;

/** Each step with an edge, and the edges of a front that will do (common practice, no source: their names say what they are for). */
const steps: readonly (readonly [step: string, line: (edge: string) => string, ofCoat: string])[] = [
  ["widen-shoulder", (edge) => `widen-shoulder ${edge} by 5 mm`, "shoulder"],
  ["drop-shoulder", (edge) => `drop-shoulder ${edge} by 5 mm lowering 20 mm`, "shoulder"],
  ["slope-shoulder", (edge) => `slope-shoulder ${edge} by 2 deg`, "shoulder"],
  ["lower-armhole", (edge) => `lower-armhole ${edge} by 5 mm`, "armscye"],
  ["square-armhole", (edge) => `square-armhole pit = ${edge}`, "armscye"],
  ["lower-neck", (edge) => `lower-neck ${edge} by 5 mm`, "neck"],
  ["widen-neck", (edge) => `widen-neck ${edge} by 5 mm`, "neck"],
  ["draw-neck", (edge) => `draw-neck ${edge} depth 80 mm`, "neck"],
  ["extend-front", (edge) => `extend-front old-edge = ${edge} by 20 mm`, "opening"],
  ["fold-back-facing", (edge) => `fold-back-facing facing = ${edge} by 40 mm`, "opening"],
  ["cascade-front", (edge) => `cascade-front fall = ${edge}`, "opening"],
];

const errorsOf = (text: string): readonly Diagnostic[] =>
  workedText(text).findings.filter(({ severity }) => severity === "error");

const stretchOf = (text: string, { where: { from, to } }: Diagnostic): string => text.slice(from, to);

const coat = (lines: string): string => `chalkline 1
units mm
use "blocks/straight-coat.chalk" as coat
piece front = coat.front {
${lines}
}
`;

describe.each(steps)("%s on the front of the coat block", (_step, line, right) => {
  test.each(edges)("takes %s only where it is the edge for it", (edge) => {
    const text = coat(line(edge));
    const errors = errorsOf(text);
    if (edge === right) return expect(errors).toEqual([]);
    const [error] = errors;
    expect(errors).toHaveLength(1);
    expect(stretchOf(text, error!)).toBe(edge);
    expect(error!.message.startsWith(`${edge} is no `)).toBe(true);
    expect(error!.hint).toMatch(new RegExp(`^Name ${right}[,.]`));
  });

  test("takes the same edges where no fold and no opening is marked", () => {
    const unmarked = (edge: string): string => coat(`mark opening as seam\n${line(edge)}`);
    expect(edges.filter((edge) => errorsOf(unmarked(edge)).length === 0)).toEqual([right]);
  });
});

describe("forward-shoulder on back and front of the coat block", () => {
  const forward = (front: string, back: string): string => `chalkline 1
units mm
use "blocks/straight-coat.chalk" as coat
piece back = coat.back { }
piece front = coat.front { }
forward-shoulder ${front} onto ${back} by 10 mm
`;

  test("takes two shoulders", () => expect(errorsOf(forward("front.shoulder", "back.shoulder"))).toEqual([]));
  test.each(["neck", "armscye", "side", "hem"])("does not take %s of either", (edge) => {
    for (const [front, back, wrong] of [
      [`front.${edge}`, "back.shoulder", "front"],
      ["front.shoulder", `back.${edge}`, "back"],
    ] as const) {
      const text = forward(front, back);
      const [error, ...others] = errorsOf(text);
      expect(others).toEqual([]);
      expect(stretchOf(text, error!)).toBe(`${wrong}.${edge}`);
      expect(error!.message.startsWith(`${wrong}.${edge} is no shoulder: `)).toBe(true);
      expect(error!.hint).toBe(`Name ${wrong}.shoulder.`);
    }
  });
});

/** A half of a garment cut another way, with lines in it, in cm. */
const half = (drafted: string, line: string): string => `chalkline 1
units cm
piece half {
${drafted}
  ${line}
}
`;

// A straight tunic: level shoulders, an armhole in one line with the side, nothing marked.
const tunic = `  line neck     = (0, 0) to (9 cm, 0)
  line shoulder = (9 cm, 0) to (30 cm, 0)
  line armhole  = (30 cm, 0) to (30 cm, 28 cm)
  line side     = (30 cm, 28 cm) to (34 cm, 100 cm)
  line hem      = (0, 100 cm) to (34 cm, 100 cm)
  line center   = (0, 0) to (0, 100 cm)
  outline center, neck, shoulder, armhole, side, hem`;

// Its front neck cut deeper than its armhole, straight down to the fold; front and back cut in one along the shoulders.
const plunging = `  line neck     = (0, 40 cm) to (9 cm, 0)
  line shoulder = (9 cm, 0) to (30 cm, 0)
  line armhole  = (30 cm, 0) to (30 cm, 28 cm)
  line side     = (30 cm, 28 cm) to (34 cm, 100 cm)
  line hem      = (0, 100 cm) to (34 cm, 100 cm)
  line center   = (0, 40 cm) to (0, 100 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark center as fold
  mark shoulder as fold`;

// A cape: a shoulder, and no armhole below it.
const cape = `  curve neck     = (0, 6 cm) to (7.4 cm, -2.5 cm) leaving right arriving -72 deg
  line shoulder  = (7.4 cm, -2.5 cm) to (22 cm, 8 cm)
  line over-arm  = (22 cm, 8 cm) to (60 cm, 90 cm)
  line hem       = (0, 110 cm) to (60 cm, 90 cm)
  line center    = (0, 6 cm) to (0, 110 cm)
  outline center, neck, shoulder, over-arm, hem`;

// A quarter of a circle: no shoulder at all, an opening in front and a fold behind.
const circleCape = `  arc neck          = (0, 12 cm) to (12 cm, 0) radius 12 cm bulging toward (12 cm, 12 cm)
  arc hem           = (0, 90 cm) to (90 cm, 0) radius 90 cm bulging toward (90 cm, 90 cm)
  line center-front = (0, 12 cm) to (0, 90 cm)
  line center-back  = (12 cm, 0) to (90 cm, 0)
  outline center-front, neck, center-back, hem
  mark center-front as opening
  mark center-back as fold`;

// A front whose slanting edge runs from the neck point across to the other side's waist.
const surplice = `  line front-edge = (7.4 cm, -2.5 cm) to (-12 cm, 40 cm)
  line shoulder   = (7.4 cm, -2.5 cm) to (20 cm, 2.7 cm)
  curve armhole   = (20 cm, 2.7 cm) to (27 cm, 24 cm) through (17.5 cm, 13 cm) heading down arriving right
  line side       = (27 cm, 24 cm) to (27 cm, 42 cm)
  line waist      = (-12 cm, 40 cm) to (27 cm, 42 cm)
  outline front-edge, shoulder, armhole, side, waist`;

// A halter: hardly any shoulder, and an armhole that falls by 39 degrees.
const halter = `  curve neck    = (0, 8 cm) to (7 cm, 1 cm) leaving right arriving up
  line strap    = (7 cm, 1 cm) to (10 cm, 1.5 cm)
  curve armhole = (10 cm, 1.5 cm) to (29 cm, 17 cm) leaving down arriving right
  line side     = (29 cm, 17 cm) to (26 cm, 40 cm)
  line waist    = (0, 42 cm) to (26 cm, 40 cm)
  line center   = (0, 8 cm) to (0, 42 cm)
  outline center, neck, strap, armhole, side, waist`;

// A back whose center is drawn in two.
const splitCenter = `  curve neck        = (0, 2 cm) to (9 cm, 0) leaving right arriving up
  line shoulder     = (9 cm, 0) to (21 cm, 4.3 cm)
  curve armhole     = (21 cm, 4.3 cm) to (27 cm, 27 cm) through (19 cm, 15 cm) heading down leaving down arriving right
  line side         = (27 cm, 27 cm) to (27 cm, 60 cm)
  line hem          = (0, 60 cm) to (27 cm, 60 cm)
  line center-upper = (0, 2 cm) to (0, 15 cm)
  line center       = (0, 15 cm) to (0, 60 cm)
  outline center, center-upper, neck, shoulder, armhole, side, hem`;

const skirt = `  line waist  = (0, 0) to (20 cm, 0)
  line side   = (20 cm, 0) to (26 cm, 70 cm)
  line hem    = (0, 70 cm) to (26 cm, 70 cm)
  line center = (0, 0) to (0, 70 cm)
  outline center, waist, side, hem`;

describe("a garment that is cut another way is altered as well", () => {
  test.each([
    ["a tunic with level shoulders", tunic, "widen-shoulder shoulder by -2 cm"],
    ["a tunic with a straight armhole", tunic, "lower-armhole armhole by 3 cm"],
    ["a tunic with a straight neck", tunic, "draw-neck neck depth 8 cm"],
    ["a tunic with nothing marked", tunic, "extend-front c = center by 2 cm"],
    ["a neck that plunges below the armhole", plunging, "widen-neck neck by 1 cm"],
    ["shoulders on a fold", plunging, "lower-armhole armhole by 3 cm"],
    ["shoulders on a fold over a plunging neck", plunging, "widen-shoulder shoulder by -2 cm"],
    ["a cape", cape, "draw-neck neck depth 9 cm"],
    ["a cape that opens in front", cape, "fold-back-facing facing = center by 5 cm"],
    ["a cape carried up", cape, "cascade-front fall = center"],
    ["a cape that is a quarter of a circle", circleCape, "lower-neck neck by 2 cm"],
    ["a circle cape with a lap", circleCape, "extend-front c = center-front by 2 cm"],
    ["a surplice front", surplice, "fold-back-facing facing = front-edge by 4 cm"],
    ["a surplice front with a lap", surplice, "extend-front c = front-edge by 2 cm"],
    ["a halter", halter, "lower-armhole armhole by 1 cm"],
    ["the strap of a halter", halter, "widen-shoulder strap by -1 cm"],
    ["a neck over a center drawn in two", splitCenter, "lower-neck neck by 1 cm"],
    ["a neck over a center drawn in two, anew", splitCenter, "draw-neck neck depth 8 cm"],
    [
      "a neck beside a shoulder on a fold, over a center seam",
      `${plunging.replaceAll("(0, 40 cm)", "(0, 10 cm)")}\n  mark center as seam`,
      "lower-neck neck by 2 cm",
    ],
    ["a skirt that laps at the center", skirt, "extend-front c = center by 3 cm"],
    ["a skirt that laps at the side", skirt, "extend-front c = side by 3 cm"],
    ["a shoulder that opens", plunging, "mark shoulder as opening\n  extend-front c = shoulder by 2 cm"],
    [
      "a cape that opens in front and over the arms",
      `${cape}\n  mark center as opening\n  mark over-arm as opening`,
      "lower-neck neck by 1 cm",
    ],
    ["a tunic that opens at the side", `${tunic}\n  mark side as opening`, "extend-front c = center by 2 cm"],
  ])("%s", (_what, drafted, line) => expect(errorsOf(half(drafted, line)).map(({ message }) => message)).toEqual([]));
});

describe("what has no such edge says so", () => {
  test.each([
    ["a cape has no armhole", cape, "widen-shoulder shoulder by 1 cm", "shoulder", "Draw half with"],
    ["nor one to lower", cape, "lower-armhole over-arm by 1 cm", "over-arm", "Draw half with"],
    [
      "the shoulder of a cape that opens",
      `${cape}\n  mark center as opening`,
      "lower-neck shoulder by 1 cm",
      "shoulder",
      "Name neck.",
    ],
    ["a skirt has no shoulder", skirt, "draw-neck waist depth 2 cm", "waist", "Draw half with"],
    [
      "a whole back has its center inside",
      `${tunic}\n  mark center as fold\n  unfold center`,
      "lower-neck neck by 1 cm",
      "neck",
      "Draw half with",
    ],
    ["the fold of a circle cape is no neck", circleCape, "lower-neck center-back by 1 cm", "center-back", "Name neck."],
    ["no neck lies over a surplice edge", surplice, "cascade-front fall = front-edge", "front-edge", "Draw half with"],
    [
      "the upper part of a fold is no armhole",
      `${splitCenter}\n  mark center-upper as fold`,
      "widen-shoulder neck by 1 cm",
      "neck",
      "Name shoulder.",
    ],
    [
      "nor is what goes on as a fold",
      `${splitCenter}\n  mark center as fold`,
      "widen-shoulder neck by 1 cm",
      "neck",
      "Name shoulder.",
    ],
  ])("%s", (_what, drafted, line, edge, hint) => {
    const text = half(drafted, line);
    const [error, ...others] = errorsOf(text);
    expect(others).toEqual([]);
    expect(stretchOf(text, error!)).toBe(edge);
    expect(error!.hint).toContain(hint);
  });
});

test("a raglan body has no armhole with a shoulder, and its armhole is no neck", () => {
  const text = `chalkline 1
units mm
use "blocks/raglan.chalk" as raglan
piece back = raglan.back {
  lower-neck armscye by 5 mm
  lower-armhole armscye by 5 mm
}
`;
  expect(errorsOf(text).map((error) => [error.code, stretchOf(text, error)])).toEqual([
    ["no-neck", "armscye"],
    ["no-armhole", "armscye"],
  ]);
});

test("a shoulder turns as far as the limits in the hint, and no further", () => {
  // The front shoulder of the block slopes by 22 deg (trade handbook 3.2, rule 4): 22 deg up and 23 deg down are left.
  for (const [degrees, isIn] of [
    [-23, false],
    [-22, true],
    [23, true],
    [24, false],
  ] as const) {
    const errors = errorsOf(coat(`slope-shoulder shoulder by ${degrees} deg`));
    expect(errors.map(({ code }) => code)).toEqual(isIn ? [] : ["slope-too-much"]);
    if (!isIn) expect(errors[0]!.hint).toBe("Take an amount between -22 deg and 23 deg.");
  }
});

test("the tip of a shoulder moves forward until the back shoulder is level", () => {
  // The back shoulder of 138 mm slopes by 18 deg (trade handbook 3.2, rules 4): 2 x 138 sin 9 deg = 43.2 mm.
  const forward = (by: number): readonly Diagnostic[] =>
    errorsOf(`chalkline 1
units mm
use "blocks/straight-coat.chalk" as coat
piece back = coat.back { }
piece front = coat.front { }
forward-shoulder front.shoulder onto back.shoulder by ${by} mm
`);
  expect(forward(43.2)).toEqual([]);
  expect(forward(50).map(({ code, hint }) => [code, hint])).toEqual([["slope-too-much", "Take 43.2 mm or less."]]);
  // Backward the back shoulder has 27 deg to 45, and the front one 22 to level: 2 x 138 sin 11 deg = 52.7 mm.
  expect(forward(-52)).toEqual([]);
  expect(forward(-60).map(({ code, hint }) => [code, hint])).toEqual([["slope-too-much", "Take -52.7 mm or less."]]);
});

test("a level shoulder has no room to move forward onto", () => {
  const text = `chalkline 1
units cm
piece back {
${tunic}
}
piece front = back { }
forward-shoulder front.shoulder onto back.shoulder by 1 cm
`;
  const [error, ...others] = errorsOf(text);
  expect(others).toEqual([]);
  expect(stretchOf(text, error!)).toBe("1 cm");
  expect(error!.hint).toBe("Slope the back shoulder first, with slope-shoulder.");
});

test("a side may be marked as an opening, where that is said", () => {
  const [lap] = errorsOf(coat("extend-front c = side by 20 mm"));
  expect(lap!.hint).toBe("Name opening, or mark side as opening above this line if it opens there.");
  expect(errorsOf(coat("mark side as opening\nextend-front c = side by 20 mm"))).toEqual([]);
  // A hem does not open, and no marking makes a neck of what lies over a side.
  expect(errorsOf(coat("extend-front c = hem by 20 mm"))[0]!.hint).toBe("Name opening.");
  expect(errorsOf(coat("cascade-front fall = side"))[0]!.hint).toBe("Name opening.");
});
