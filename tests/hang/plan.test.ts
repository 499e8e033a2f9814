// The hem of a whole garment seen from below: on ellipses that are as long as they should be, and in folds that stand where the
// cloth was opened.
import { expect, test } from "vitest";
import { onEllipse } from "../../kernel/cloth/hang/ellipse.ts";
import { type Figure, figuresOf } from "../../kernel/cloth/hang/figures.ts";
import { rigged } from "../../kernel/cloth/hang/rigged.ts";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import type { Garment } from "../../kernel/working.ts";
import { workedRecipe } from "../worked-recipe.ts";
import { armholeCoat, centerCoat, middleCoat, sideCoat, straightCoat } from "./coats.ts";

/** Every round of a garment from below, and the length of its hem as it is cut, mm. */
const fromBelow = (garment: Garment, hip?: number): { figure: Figure; cut: number; pieces: readonly string[] }[] => {
  const { rounds, columns, straight } = rigged(garment, hip);
  return rounds.map((round) => {
    const pieces = round.turns.map(({ piece }) => piece);
    const edges = pieces.map((piece) => [...garment.pieces.get(piece)!.edges.values()]);
    return {
      figure: figuresOf(round, columns, straight).find(({ from }) => from === "below")!,
      cut: edges.reduce((sum, own) => sum + pathLength(own.find(({ role }) => role === "hem")!.path), 0),
      pieces,
    };
  });
};

const hemOf = ({ shapes }: Figure): readonly Point[] =>
  shapes.flatMap((shape) => (shape.kind === "rim" ? [shape.along] : []))[0]!;

const crestsOf = ({ shapes }: Figure): readonly Point[] =>
  shapes.flatMap((shape) => (shape.kind === "crest" ? [shape.along[0]!] : []));

const lengthOf = (points: readonly Point[]): number =>
  points.slice(1).reduce((sum, p, index) => sum + Math.hypot(p.x - points[index]!.x, p.y - points[index]!.y), 0);

/** Circumference of an ellipse of half width 1 by the arithmetic-geometric mean (Gauss; DLMF 19.8.6, from memory). */
const circumference = (depth: number): number => {
  let [a, b] = [1, depth];
  let [sum, power] = [(1 - depth * depth) / 2, 1];
  for (let turn = 0; turn < 8; turn += 1) {
    const [mean, root, half] = [(a + b) / 2, Math.sqrt(a * b), (a - b) / 2];
    sum += power * half * half;
    [a, b, power] = [mean, root, 2 * power];
  }
  return (2 * Math.PI * (1 - sum)) / a;
};

test.each([0.3, 0.5, 0.68, 1])(
  "an ellipse %d times as deep as wide is as long as Gauss and Ramanujan have it",
  (depth) => {
    const around = 1000;
    const half = onEllipse(0.25, around, depth).at.x;
    expect(around / half / circumference(depth)).toBeCloseTo(1, 5);
    // Ramanujan's second formula (1914; from memory), off by less than one in a hundred thousand for these.
    const flat = ((1 - depth) / (1 + depth)) ** 2;
    const ramanujan = Math.PI * (1 + depth) * (1 + (3 * flat) / (10 + Math.sqrt(4 - 3 * flat)));
    expect(around / half / ramanujan).toBeCloseTo(1, 4);
  },
);

test("shares of an ellipse are shares of its length, by Simpson's rule over its angle", () => {
  const [depth, around] = [0.68, 1000];
  const speed = (angle: number): number => Math.hypot(Math.cos(angle), depth * Math.sin(angle));
  for (const share of [0.05, 0.1, 0.2, 0.25, 0.4]) {
    const { at } = onEllipse(share, around, depth);
    const half = around / circumference(depth);
    const angle = Math.atan2(at.x / half, at.y / half / depth);
    const steps = 200;
    const sum = Array.from({ length: steps + 1 }, (_, step) => {
      const weight = step === 0 || step === steps ? 1 : step % 2 === 1 ? 4 : 2;
      return weight * speed((angle * step) / steps);
    }).reduce((total, each) => total + each, 0);
    expect((half * sum * angle) / steps / 3 / around).toBeCloseTo(share, 5);
  }
});

test.each([
  ["straight-coat without an armhole", straightCoat],
  ["straight coat with an armhole", armholeCoat],
  ["lobby coat, straight again", workedRecipe("lobby-coat-straight-again.chalk").garment],
])("the hem of a %s is an ellipse, as long as it is cut", (_, garment) => {
  const [{ figure, cut }] = fromBelow(garment) as [ReturnType<typeof fromBelow>[number]];
  expect(figure.folds).toBe(0);
  expect(crestsOf(figure)).toEqual([]);
  const hem = hemOf(figure);
  // ANSUR II, beside the constant in the kernel: 0.68 times as deep as wide.
  const half = cut / circumference(0.68);
  for (const { x, y } of hem) expect(Math.abs(Math.hypot(x / half, y / half / 0.68) - 1)).toBeLessThan(0.002);
  expect(figure.width).toBeCloseTo(2 * half, 0);
});

test("the hip inside is as long as its girth", () => {
  const [{ figure }] = fromBelow(workedRecipe("lobby-coat-swing.chalk").garment, 980) as [
    ReturnType<typeof fromBelow>[number],
  ];
  expect(lengthOf(figure.hip) / 980).toBeCloseTo(1, 2);
  expect(figure.hipWidth!).toBeCloseTo((2 * 980) / circumference(0.68), 1);
});

test.each([
  "lobby-coat-swing",
  "lobby-coat-collar",
  "conductors-cape-coat",
  "gored-skirt",
  "half-circle-skirt",
  "stage-smock",
  "dropped-overshirt",
])("every hem of %s is closed, as long as it is cut to 1 %, and goes round the body", (file) => {
  for (const { figure, cut } of fromBelow(workedRecipe(`${file}.chalk`).garment)) {
    const hem = hemOf(figure);
    expect(hem.at(-1)).toEqual(hem[0]);
    expect(Math.abs(lengthOf(hem) / cut - 1)).toBeLessThan(0.01);
    const turn = hem.slice(1).reduce((sum, p, index) => {
      const q = hem[index]!;
      return sum + Math.atan2(q.x * p.y - q.y * p.x, q.x * p.x + q.y * p.y);
    }, 0);
    expect(Math.abs(turn)).toBeCloseTo(2 * Math.PI, 6);
  }
});

test.each(["lobby-coat-swing", "a-line-skirt", "conductors-cape-coat", "raglan-stage-cloak", "ushers-vest-swing"])(
  "%s is drafted for one half, and its hem is its own mirror image",
  (file) => {
    const [{ figure }] = fromBelow(workedRecipe(`${file}.chalk`).garment) as [ReturnType<typeof fromBelow>[number]];
    const hem = hemOf(figure).slice(0, -1);
    hem.forEach((p, index) => {
      const { x, y } = hem[hem.length - 1 - index]!;
      expect(Math.abs(p.x + x)).toBeLessThan(1e-6);
      expect(Math.abs(p.y - y)).toBeLessThan(1e-6);
    });
  },
);

// Common practice, no source: fullness hangs below the place it was opened from. Half of the back is half of the round, its center
// at the top; 300 mm of slack lie at 0, 190 and 300 of 300 mm across.
test.each([
  ["the center", centerCoat, 0],
  ["mid-shoulder", middleCoat, 190 / 300 / 2],
  ["the side", sideCoat, 1 / 2],
])("folds of a coat opened at %s stand there", (_, garment, share) => {
  const { figure, cut } = fromBelow(garment).find(({ pieces }) => pieces.includes("coat"))!;
  expect(Math.abs(lengthOf(hemOf(figure)) / cut - 1)).toBeLessThan(0.01);
  const crests = crestsOf(figure);
  expect(crests.length).toBeGreaterThan(0);
  const { at } = onEllipse(share, 1000, 0.68);
  // One half after the other; on the middle line both are one.
  const isMiddle = share === 0 || share === 0.5;
  for (const side of isMiddle ? [1] : [1, -1]) {
    const own = crests.filter(({ x }) => isMiddle || x * side > 0);
    const mean = own.reduce((sum, { x, y }) => ({ x: sum.x + x / own.length, y: sum.y + y / own.length }), {
      x: 0,
      y: 0,
    });
    const off = Math.atan2(mean.x * side, -mean.y) - Math.atan2(at.x, at.y);
    expect(Math.abs(Math.atan2(Math.sin(off), Math.cos(off)))).toBeLessThan(Math.PI / 12);
  }
});
