// Pieces made by their lengths, slits that they fit into, pleats and gathers: the handbook's figures and published examples.
import { describe, expect, test } from "vitest";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { endOf, startOf, straight } from "../../kernel/geometry/path.ts";
import { toRadians } from "../../kernel/geometry/trig.ts";
import { kernel, type Outcome } from "../../kernel/kernel.ts";
import { cornersOf } from "../../kernel/outline.ts";
import { sewnLengthOf, sewnUpTo, takenAlong } from "../../kernel/sewn.ts";
import { gather } from "../../kernel/steps/gather.ts";
import { pleat } from "../../kernel/steps/pleat.ts";
import { slit } from "../../kernel/steps/slit.ts";
import { spreadApart } from "../../kernel/steps/spread-apart.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
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
  problemOf,
  rectangle,
  worked,
} from "./made-piece.ts";

const atelier = kernel(vocabulary);
const garment = (text: string): Outcome => atelier.work({ file: "test.chalk", text: `chalkline 1\n${text}` });
const made = (line: string): Piece => {
  const { garment: now, findings } = garment(line);
  const errors = findings.filter(({ severity }) => severity === "error").map(({ message }) => message);
  expect(errors).toEqual([]);
  return [...now.pieces.values()].at(-1)!;
};

describe("a gore of six, waist 720, hem 2400, 700 deep", () => {
  // Source: handbook of the trade 3.7 and check values 11 and 12.
  const piece = made("gore panel = 720 mm hem 2400 mm deep 700 mm in 6");
  const chord = (edge: string): number => apart(startOf(pathOf(piece, edge)), endOf(pathOf(piece, edge)));
  test("has a top of 120, a hem of 400 and sides of 700", () => {
    expect(lengthOf(piece, "top")).toBeCloseTo(120, 6);
    expect(lengthOf(piece, "hem")).toBeCloseTo(400, 6);
    for (const side of ["left-side", "right-side"]) expect(lengthOf(piece, side)).toBeCloseTo(700, 9);
  });
  test("has chords of 119.202 and 397.339, and a sagitta of 19.933 at the hem", () => {
    expect(chord("top")).toBeCloseTo(119.202, 3);
    expect(chord("hem")).toBeCloseTo(397.339, 3);
    const hem = pathOf(piece, "hem");
    expect(bounds([hem]).bottom - startOf(hem).y).toBeCloseTo(19.933, 3);
  });
  test("has its centre 300 above its top, and its corners square", () => {
    expect(apart(pathOf(piece, "top")[0]!.pivot!, at(0, -300))).toBeLessThan(1e-9);
    for (const { interior } of cornersOf(piece)) expect(interior).toBeCloseTo(Math.PI / 2, 6);
  });
  test("turns by 22.918 deg", () => {
    expect(areaOf(piece)).toBeCloseTo((toRadians(22.918_311_8) / 2) * (1000 ** 2 - 300 ** 2), 0);
  });
});

test("a flounce of 72 in to 112 in, 12 in deep, has a radius of 21.6 in", () => {
  // Source: a published worked example of 1916, as the handbook of the trade 3.7 quotes it; check values 9 and 10.
  const { records, garment: now } = garment(
    "units in\npiece skirt {\n  line top = (0, 0) to (72 in, 0)\n  line rest = (72 in, 0) to (0, 0) through (36 in, 30 in)\n  outline top, rest\n}\nflounce frill = skirt.top deep 12 in hem 112 in",
  );
  const frill = now.pieces.get("frill")!;
  expect(pathOf(frill, "top")[0]!.pivot!.y / -25.4).toBeCloseTo(21.6, 9);
  expect(lengthOf(frill, "hem") / 25.4).toBeCloseTo(112, 6);
  expect(records.at(-1)!.words).toBe("flounce frill, top 72 in, hem 112 in, 12 in deep: radius 21 5/8 in, 191 deg");
});

test.each([
  // Source: handbook of the trade 3.7 and check values 2, 3, 4 and 7: W 700, L 650.
  [0.75, 148.5446, 3763.05],
  [0.5, 222.8169, 2742.04],
  [0.25, 445.6338, 1721.02],
])("%f of a circle for a waist of 700 has its waist radius", (share, radius, hem) => {
  const piece = made(`gore skirt = 700 mm hem ${700 + 2 * Math.PI * share * 650} mm deep 650 mm`);
  expect(lengthOf(piece, "hem")).toBeCloseTo(hem, 2);
  expect(-pathOf(piece, "top")[0]!.pivot!.y).toBeCloseTo(radius, 4);
});

test("the annular limit of a rectangle slashed without end has a radius of 1500", () => {
  // Source: handbook of the trade 4.4 and check value 29: 300 to 500 over 1000.
  expect(pathOf(made("gore panel = 300 mm hem 500 mm deep 1000 mm"), "top")[0]!.pivot!.y).toBeCloseTo(-1500, 6);
});

test("a hem shorter than the top bends the other way, and one as long makes a strip", () => {
  const yoke = made("gore yoke = 500 mm hem 300 mm deep 1000 mm");
  expect(lengthOf(yoke, "top")).toBeCloseTo(500, 6);
  expect(lengthOf(yoke, "hem")).toBeCloseTo(300, 6);
  expect(pathOf(yoke, "top")[0]!.pivot!.y).toBeCloseTo(2500, 6);
  expect(areaOf(yoke)).toBeCloseTo((500 + 300) * 500, 2);
  expect(areaOf(made("gore strip = 300 mm hem 300 mm deep 80 mm"))).toBeCloseTo(24_000, 9);
});

test("a ring goes round once, and is made of two pieces", () => {
  // Source: handbook of the trade 4.16 and check value 95: ring 60, width 120, inner 376.99, outer 1130.97.
  const { findings } = garment("gore ring = 376.99112 mm hem 1130.97336 mm deep 120 mm");
  expect(findings).toMatchObject([{ code: "sector-full-turn", hint: "Make it of 2 pieces or more: `in 2`." }]);
  expect(lengthOf(made("gore ring = 376.99112 mm hem 1130.97336 mm deep 120 mm in 2"), "hem")).toBeCloseTo(565.487, 3);
});

describe("a godet 200 wide in a slit of 400", () => {
  // Source: handbook of the trade 4.17 and check value 46: 28.955 deg, arc 202.14.
  const panel = `units mm
piece panel {
  line waist = (0, 0) to (300 mm, 0)
  line side  = (300 mm, 0) to (300 mm, 700 mm)
  line hem   = (0, 700 mm) to (300 mm, 700 mm)
  line front = (0, 0) to (0, 700 mm)
  outline waist, side, hem, front
  mark hem as hem
  slit vent = hem at 50% to (150 mm, 300 mm)
}
`;
  const outcome = garment(`${panel}godet insert = panel.vent wide 200 mm
seam insert.left-side with panel.vent
seam insert.right-side with panel.vent`);
  const insert = outcome.garment.pieces.get("insert")!;
  test("has sides of 400 and an arc of 202.14", () => {
    expect(lengthOf(insert, "left-side")).toBeCloseTo(400, 9);
    expect(lengthOf(insert, "right-side")).toBeCloseTo(400, 9);
    expect(lengthOf(insert, "hem")).toBeCloseTo(202.14, 2);
    expect(apart(startOf(pathOf(insert, "hem")), endOf(pathOf(insert, "hem")))).toBeCloseTo(200, 9);
  });
  test("says so, and its seams fit both sides of the slit", () => {
    expect(outcome.records.find(({ step }) => step === "godet")!.words).toBe(
      "godet insert, 400 mm deep and 200 mm wide, 29 deg, hem 202.1 mm",
    );
    const seams = outcome.judgements.filter(({ check }) => check === "seam-length");
    expect(seams.map(({ verdict }) => verdict)).toEqual(["pass", "pass"]);
  });
  test("a godet that cannot be", () => {
    const code = (line: string) =>
      garment(`${panel}${line}`)
        .findings.filter(({ severity }) => severity === "error")
        .map((each) => each.code);
    expect(code("godet insert = panel.vent wide 900 mm")).toEqual(["godet-wide"]);
    expect(code("godet insert = panel.vent, panel.side wide 100 mm")).toEqual(["godet-uneven"]);
    expect(code("godet insert = panel.vent wide 0")).toEqual(["godet-narrow"]);
    expect(code("godet panel = panel.vent wide 100 mm")).toEqual(["name-taken"]);
  });
});

test("a slit stays inside the piece", () => {
  const code = (from: object, to: object): string =>
    problemOf(slit, { name: "vent", from, to }, rectangle(300, 600)).code;
  expect(code(at(100, 500), at(100, 300))).toBe("slit-off-edge");
  expect(code(at(150, 600), at(150, 700))).toBe("slit-outside");
  expect(code(at(150, 600), at(300, 600))).toBe("slit-outside");
});

/** A strip whose top is pleated or gathered. */
const strip = (width: number): Piece => rectangle(width, 200);

describe("pleats", () => {
  // Source: handbook of the trade 4.20 and check values 93 and 94.
  test("that just meet take three times the cloth: 720 out of 2160", () => {
    const { now, words } = worked(pleat, { edge: "top", count: 18, depth: 40 }, strip(2160), "cm");
    expect(sewnLengthOf(now, "top")).toBeCloseTo(720, 6);
    expect(words).toBe("18 knife pleats 4 cm deep: 216 cm of top folded into 72 cm, 3 : 1");
  });
  test("of depth 20, 18 of them, take 1440 to 720", () => {
    const { now } = worked(pleat, { edge: "top", count: 18, length: 720 }, strip(1440));
    expect(sewnLengthOf(now, "top")).toBeCloseTo(720, 6);
    for (const { amount, from, to } of now.takeUps) {
      expect(amount).toBeCloseTo(40, 9);
      expect(apart(from, to)).toBeCloseTo(40, 9);
    }
  });
  test.each(["box", "inverted"] as const)("%s, meeting, take 3 to 1", (kind) => {
    // Each takes 4 x 30 and shows 60.
    const { now } = worked(pleat, { edge: "top", count: 4, depth: 30, kind }, strip(720));
    expect(sewnLengthOf(now, "top")).toBeCloseTo(240, 6);
    expect(now.takeUps).toHaveLength(8);
  });
  test("lie with half a space at both ends, laid toward the end unless said otherwise", () => {
    const { now } = worked(pleat, { edge: "top", count: 2, depth: 20 }, strip(200));
    // 100 of cloth a pleat: 40 taken, 60 shown.
    expect(now.takeUps.map(({ from, to }) => [from.x, to.x])).toEqual([
      [30, 70],
      [130, 170],
    ]);
    expect(now.takeUps.map(({ laid }) => laid)).toEqual(["end", "end"]);
    const other = worked(pleat, { edge: "top", count: 2, depth: 20, facing: "start" }, strip(200)).now;
    expect(other.takeUps.map(({ laid }) => laid)).toEqual(["start", "start"]);
  });
  test("of a box are laid away from each other, the box between them; inverted ones meet", () => {
    const box = worked(pleat, { edge: "top", count: 1, depth: 30, kind: "box" }, strip(200)).now.takeUps;
    // 120 taken, 80 shown, of which the box is 60.
    expect(box.map(({ from, to, laid }) => [from.x, to.x, laid])).toEqual([
      [10, 70, "start"],
      [130, 190, "end"],
    ]);
    const inverted = worked(pleat, { edge: "top", count: 1, depth: 30, kind: "inverted" }, strip(200)).now.takeUps;
    expect(inverted.map(({ from, to, laid }) => [from.x, to.x, laid])).toEqual([
      [40, 100, "end"],
      [100, 160, "start"],
    ]);
  });
  test("shift the notches behind them by what they take up", () => {
    const { now } = worked(pleat, { edge: "top", count: 1, depth: 25, from: at(40, 0), until: at(140, 0) }, strip(300));
    // The pleat takes 50 from 65 to 115.
    const sewn = (x: number): number => sewnUpTo(pathOf(now, "top"), takenAlong(now, "top"), x);
    expect(sewn(60)).toBeCloseTo(60, 9);
    expect(sewn(200)).toBeCloseTo(150, 9);
  });
  test("go with the cloth when a slash moves it", () => {
    const pleated = worked(
      pleat,
      { edge: "top", count: 1, depth: 25, from: at(140, 0), until: at(240, 0) },
      strip(300),
    ).now;
    const fill = { hinge: place(100, 0, { on: "top" }), target: { edge: "hem" }, near: 30, far: 30 };
    const { now } = worked(spreadApart, fill, pleated);
    expect(now.takeUps[0]!.from.x).toBeCloseTo(165 + 30, 9);
    expect(sewnLengthOf(now, "top")).toBeCloseTo(300 + 30 - 50, 6);
  });
  test("that cannot be", () => {
    const code = (fill: object, piece = strip(300)): string =>
      problemOf(pleat, { edge: "top", count: 3, ...fill }, piece).code;
    expect(code({ depth: 50 })).toBe("pleat-depth");
    expect(code({ length: 320 })).toBe("pleat-depth");
    expect(code({ depth: 10, count: 0 })).toBe("pleat-count");
    expect(code({ depth: 10, kind: "box", facing: "end" })).toBe("pleat-facing");
    expect(code({ depth: 10, from: at(20, 30) })).toBe("take-up-off-edge");
    const gathered = worked(gather, { edge: "top", length: 200 }, strip(300)).now;
    expect(code({ depth: 10 }, gathered)).toBe("taken-up-twice");
  });
});

describe("gathers", () => {
  test("draw a stretch up, and tell how full it is", () => {
    const { now, words } = worked(
      gather,
      { edge: "top", length: 120, from: at(50, 0), until: at(290, 0) },
      strip(400),
      "cm",
    );
    expect(sewnLengthOf(now, "top")).toBeCloseTo(280, 9);
    expect(words).toBe("gathered 24 cm of top into 12 cm, 2 : 1");
  });
  test("never make it longer, or nothing", () => {
    const code = (length: number): string => problemOf(gather, { edge: "top", length }, strip(300)).code;
    expect(code(310)).toBe("gather-length");
    expect(code(0)).toBe("gather-length");
    expect(worked(gather, { edge: "top", length: 300 }, strip(300)).words).toBe("");
  });
  test("and the edge they are sewn to fits", () => {
    const text = garment(`units cm
piece skirt {
  line waist = (0, 0) to (60 cm, 0)
  line side  = (60 cm, 0) to (60 cm, 50 cm)
  line hem   = (0, 50 cm) to (60 cm, 50 cm)
  line front = (0, 0) to (0, 50 cm)
  outline waist, side, hem, front
  mark hem as hem
  gather waist into 35 cm
}
piece band {
  line top = (0, 0) to (35 cm, 0)
  line far = (35 cm, 0) to (35 cm, 4 cm)
  line low = (0, 4 cm) to (35 cm, 4 cm)
  line end-edge = (0, 0) to (0, 4 cm)
  outline top, far, low, end-edge
}
seam band.low with skirt.waist`);
    expect(text.judgements.find(({ check }) => check === "seam-length")).toMatchObject({ verdict: "pass" });
  });
});

test("a pleat on an edge that is drafted from right to left is laid by that edge", () => {
  const piece = madePiece([
    { name: "top", path: straight(at(200, 0), at(0, 0)), turned: true },
    { name: "side", path: straight(at(200, 0), at(200, 100)) },
    { name: "hem", path: straight(at(200, 100), at(0, 100)) },
    { name: "front", path: straight(at(0, 100), at(0, 0)) },
  ]);
  const { takeUps } = worked(pleat, { edge: "top", count: 1, depth: 20, facing: "start" }, piece).now;
  expect(takeUps).toMatchObject([{ from: { x: 120 }, to: { x: 80 }, laid: "start", drawnBy: nowhere }]);
  expect(pathLength(pathOf(piece, "top"))).toBe(200);
});
